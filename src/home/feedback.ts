import { answerKey } from '../answers/typed'
import type { Question, Unit } from '../arithmetic/question'
import type { Feedback } from './choices'
import { hintsFor } from './hints'

/** What is said of an answer. */
export const SAYS = { right: 'Right', again: 'Look again', unclear: 'Type one number' } as const

/** What the formulas call an answer; 'unclear' is one that cannot be read as a number, which is not wrong. */
type State = 'blank' | 'right' | 'again' | 'unclear'
const state = (word: State) => `"${word}"`

const BLANKS = ['', '-', '−', '–', '—', '/', 'n/a']
const MOST_DIGITS = 15

/** The steps by which an answer is read: each takes one thing off what the steps before it left, until it is a value and a state. */
export const STEPS = [
  'typed',
  'without =',
  'without sign',
  'without £',
  'without stop',
  'without unit',
  'point at',
  'grouped',
  'whole',
  'decimals',
  'is number',
  'value',
  'state',
] as const
export type Step = (typeof STEPS)[number]

/**
 * The formulas, without their =, that read the answer in `cell` (an address with its sheet) as `readTyped` does; `at` gives the cell of a
 * step. None turns a text with a point or a comma into a number by itself, so that they read alike whatever decimal sign the computer has.
 * They know less than `readTyped` of letters in other widths: such an answer is 'unclear'.
 */
export function readingSteps(
  cell: string,
  question: Question,
  at: (step: Step) => string,
): Readonly<Record<Step, string>> {
  const { value: key, unit } = answerKey(question)
  const [number, whole, decimals, value] = [at('without unit'), at('whole'), at('decimals'), at('value')]
  const spaces = ['\u00a0', '\u202f', '\u2009'].reduce(
    (text, space) => `SUBSTITUTE(${text},"${space}"," ")`,
    `LOWER(${cell})`,
  )
  const isBlank = `OR(${BLANKS.map((text) => `${at('typed')}="${text}"`).join(',')})`
  const isSigned = `${at('without =')}<>${at('without sign')}`
  const spaced = `SUBSTITUTE(${at('grouped')},","," ")`
  return {
    typed: `IF(ISERROR(${cell}),"?",TRIM(${spaces}))`,
    'without =': withoutFirst(at('typed'), ['=']),
    'without sign': withoutFirst(at('without ='), ['-', '−', '–']),
    'without £': withoutFirst(at('without sign'), ['£']),
    'without stop': withoutLast(at('without £'), ['.']),
    'without unit': withoutLast(at('without stop'), suffixesOf(unit)),
    'point at': `FIND(".",${number}&".")`,
    grouped: `LEFT(${number},${at('point at')}-1)`,
    whole: `SUBSTITUTE(${spaced}," ","")`,
    decimals: `MID(${number},${at('point at')}+1,99)`,
    'is number':
      `AND(OR(${at('grouped')}=${whole},${at('grouped')}=${inGroups(whole, ',')},${at('grouped')}=${inGroups(whole, ' ')}),` +
      `LEN(${whole}&${decimals})>0,LEN(${whole})<=${MOST_DIGITS},${withoutDigits(`${whole}&${decimals}`)}="")`,
    value:
      `IF(ISNUMBER(${cell}),${cell},IF(${at('is number')},` +
      `(VALUE("0"&${whole})+VALUE("0"&${decimals})/10^LEN(${decimals}))${inUnit(unit, at)},""))`,
    state:
      `IF(${isBlank},${state('blank')},IF(${value}="",${state('unclear')},IF(${isSigned},${state('again')},` +
      `IF(ABS(${value}-${key})<1E-9,${state('right')},${state('again')}))))`,
  }
}

/** What is said of an answer that was read by `readingSteps`. */
export function sayingFormula(
  question: Question,
  feedback: Exclude<Feedback, 'none'>,
  at: (step: Step) => string,
): string {
  const hints = feedback === 'hints' ? hintsFor(question) : []
  const again = hints.reduceRight(
    (otherwise, { answer, says }) =>
      `IF(ABS(${at('value')}-${answer})<1E-9,"${SAYS.again}. ${says}",${otherwise})`,
    `"${SAYS.again}"`,
  )
  const is = (word: State) => `${at('state')}=${state(word)}`
  return `IF(${is('right')},"${SAYS.right}",IF(${is('again')},${again},IF(${is('unclear')},"${SAYS.unclear}","")))`
}

/** How many of `count` answers are in, by the cells of their states. */
export function countInFormula(states: string, count: number): string {
  return `${count}-COUNTIF(${states},${state('blank')})`
}

const withoutFirst = (text: string, signs: readonly string[]) =>
  `IF(OR(${signs.map((sign) => `LEFT(${text},1)="${sign}"`).join(',')}),TRIM(MID(${text},2,99)),${text})`

function withoutLast(text: string, endings: readonly string[]): string {
  return endings.reduceRight(
    (otherwise, ending) =>
      `IF(RIGHT(${text},${ending.length})="${ending}",TRIM(LEFT(${text},LEN(${text})-${ending.length})),${otherwise})`,
    text,
  )
}

/** What may stand behind an answer: a p, or the measure that the question is in. */
function suffixesOf(unit: Unit): string[] {
  return unit === '' || unit === '£' || unit === 'p' ? ['p'] : [unit, 'p']
}

/** How a value is brought into the question's unit, where pence or pounds were typed. */
function inUnit(unit: Unit, at: (step: Step) => string): string {
  const isPounds = `${at('without sign')}<>${at('without £')}`
  if (unit === '£') return `/IF(${isPounds},1,IF(RIGHT(${at('without stop')},1)="p",100,1))`
  return unit === 'p' ? `*IF(${isPounds},100,1)` : ''
}

/** Digits with a sign between groups of three, up to nine digits. */
function inGroups(digits: string, sign: string): string {
  const length = `LEN(${digits})`
  return (
    `IF(${length}<4,${digits},IF(${length}<7,LEFT(${digits},${length}-3)&"${sign}"&RIGHT(${digits},3),` +
    `LEFT(${digits},${length}-6)&"${sign}"&MID(${digits},${length}-5,3)&"${sign}"&RIGHT(${digits},3)))`
  )
}

function withoutDigits(text: string): string {
  return Array.from('0123456789').reduce((rest, digit) => `SUBSTITUTE(${rest},"${digit}","")`, text)
}
