import {
  compareNumerals,
  foldText,
  groupedText,
  MOST_PLACES,
  MOST_WHOLE_DIGITS,
  movePoint,
  readNumeral,
  wholeDigits,
  withoutSeparators,
  type Numeral,
} from './numeral'

export type Operation = 'add' | 'subtract'

/** What the written method works out: top and bottom number; in a subtraction the top is not the smaller. */
export interface Calculation {
  readonly operation: Operation
  readonly top: Numeral
  readonly bottom: Numeral
}

/** The number that the pupil is to find: the result, or the number before or behind the sign. */
export type Missing = 'result' | 'first' | 'second'

/** The measures that a number can be in. */
export const MEASURES = ['kg', 'g', 'km', 'm', 'cm', 'mm', 'l', 'ml'] as const

/**
 * '' for plain numbers, '£' for pounds (pence are turned into pounds), 'p' where every number is in pence, or the measure that all
 * numbers are in.
 */
export type Unit = '' | '£' | 'p' | (typeof MEASURES)[number]

/** A question, and the calculation whose answer is the missing number (□ − 46 = 30 is found by 30 + 46). */
export interface Question {
  readonly sign: Operation
  readonly missing: Missing
  readonly unit: Unit
  readonly calculation: Calculation
}

/** A question, or the sentence that says why there is none. */
export type Reading = { readonly question: Question } | { readonly problem: string }

const NOT_A_QUESTION = 'This is not an addition or subtraction question such as 7,214 − 86.'
const SMALLER_ON_TOP = 'The number taken away is greater than the number it is taken from.'
const TOO_LONG = `A number has more than ${MOST_WHOLE_DIGITS} digits before the point or ${MOST_PLACES} after it.`
const NO_SUCH_NUMBER = 'No number from 0 up makes this calculation true.'
const MIXED_UNITS = 'The numbers are in different measures.'
const NOTHING_MISSING = 'No number is missing: the calculation already has its answer.'

/** The longest text, in characters, that is looked at: a calculation with its label and the words before and behind it. */
const LONGEST_TEXT = 400

const NUMBER = String.raw`£? ?(?:\d+(?:\.\d+)?|\.\d+)(?: ?(?:p|${MEASURES.join('|')})\b)?`
const BLANK = String.raw`[□▢☐◻⬜◯○■▭]|\?+|\[ ?\]|\( ?\)|_(?: ?_)*|\.{3,}`
const MINUS = String.raw`[-−–—‐‑‒➖]|subtract|take away|minus|less`
const PLUS = String.raw`\+|➕|add|plus`

const operand = (name: string) => `(?<${name}>${NUMBER}|${BLANK})`
const SIGN = `(?:(?<minus>${MINUS})|(?<plus>${PLUS}))`
const ASKED = `(?: ?(?:=|equals))?(?: ?(?:${BLANK}))?(?: ?[.:])?$`
const CALCULATION = [
  new RegExp(`^${operand('first')} ?${SIGN} ?${operand('second')}${ASKED}`),
  new RegExp(`^${operand('first')} ?${SIGN} ?${operand('second')} ?= ?${operand('result')}(?: ?[.:])?$`),
  new RegExp(`^${operand('result')} ?= ?${operand('first')} ?${SIGN} ?${operand('second')}(?: ?[.:])?$`),
  new RegExp(
    `^(?<minus>subtract|take(?: away)?) ${operand('second')} (?:away )?from ${operand('first')}${ASKED}`,
  ),
  new RegExp(`^(?<plus>add) ${operand('second')} to ${operand('first')}${ASKED}`),
  new RegExp(`^(?<plus>add|(?:the )?(?:sum|total) of) ${operand('first')} and ${operand('second')}${ASKED}`),
  new RegExp(`^(?<minus>(?:the )?difference between) ${operand('first')} and ${operand('second')}${ASKED}`),
]

const LABEL = new RegExp(
  '^(?:' +
    String.raw`\(?(?:\d{1,3} ?[a-z]?|[a-z]|[ivx]{1,4})[):] ?` + // 1) 2: (a) iv)
    String.raw`|(?:\d{1,3}[a-z]?|[a-z])\. ` + // 3. a. (with a space: 3.5 is a number)
    String.raw`|(?:question|qu|q|no\.?|number|#)\.? ?\d{1,3} ?[a-z]?(?:[):.] ?| ?[-–—] | )` + // Q4, Question 4:
    String.raw`|[★☆*•▪] ?|(?:challenge|extension|bonus|starter|warm up): ?` +
    ')',
)
const LEAD_IN =
  /^(?:please )?(?:work out|calculate|compute|find|solve|complete|answer|what is|what's|how much is)(?: the answer to)?:? /
/** What may stand behind a question: the marks it is worth, a star. */
const TAIL = /(?: ?[([]\d{1,2}(?: ?(?:marks?|points?|pts?|m))?[)\]]| \/ ?\d{1,2}| ?\*+)$/
/** A number in a line of its own above the question. */
const NUMBER_ABOVE = /^\s*\(?\d{1,3}[a-z]?[).:]?[^\S\r\n]*[\r\n]+(?=[^\d]*\d[\d,. ]*[^\d,. ][^\d]*\d)/i

/** The question alone, folded: without its number, the words before it, brackets around it and the marks behind it. */
function bareText(text: string): string {
  const folded = foldText(text.replace(NUMBER_ABOVE, '').replaceAll('\ufe0f', ''))
  const bare = folded.replace(LABEL, '').replace(LEAD_IN, '').replace(LABEL, '').replace(TAIL, '')
  return bare.replace(/^\((.*\d.*)\)$/, '$1').replace(/^= ?(?=.*\d.*\D.*\d)/, '')
}

/**
 * Reads a question as it stands in a marksheet: "932 − 457", "Q4) Work out 2,092 − 1,885.", "subtract 86 from 7,214",
 * "£3.45 + 86p =", "□ − 46 = 30". The problem is a sentence for the teacher.
 */
export function readQuestion(text: string): Reading {
  if (text.length > LONGEST_TEXT) return { problem: NOT_A_QUESTION }
  const plain = withoutSeparators(bareText(text))
  const groups = CALCULATION.map((form) => form.exec(plain)?.groups).find((found) => found !== undefined)
  if (!groups) return { problem: NOT_A_QUESTION }
  const sign: Operation = groups.plus === undefined ? 'subtract' : 'add'
  const printed = [groups.first, groups.second, groups.result].map(readAmount)
  const numbers = printed.filter((amount) => amount !== null)
  const unit = unitOf(numbers)
  if (unit === null) return { problem: MIXED_UNITS }
  const [first, second, result] = printed.map((amount) => amount && inUnit(amount, unit))
  if (numbers.length < 2) return { problem: NOT_A_QUESTION }
  if ([first, second, result].some((numeral) => numeral && isTooLong(numeral))) return { problem: TOO_LONG }
  return first && second
    ? result
      ? { problem: NOTHING_MISSING }
      : withResultMissing(sign, first, second, unit)
    : result
      ? withOperandMissing(sign, first, second, result, unit)
      : { problem: NOT_A_QUESTION }
}

/** The question that asks for the result of a calculation. The problem is a sentence where the bottom number is greater. */
export function questionOf(calculation: Calculation, unit: Unit = ''): Reading {
  return withResultMissing(calculation.operation, calculation.top, calculation.bottom, unit)
}

function withResultMissing(sign: Operation, top: Numeral, bottom: Numeral, unit: Unit): Reading {
  if (sign === 'subtract' && compareNumerals(top, bottom) < 0) return { problem: SMALLER_ON_TOP }
  return { question: { sign, missing: 'result', unit, calculation: { operation: sign, top, bottom } } }
}

function withOperandMissing(
  sign: Operation,
  first: Numeral | null | undefined,
  second: Numeral | null | undefined,
  result: Numeral,
  unit: Unit,
): Reading {
  const missing = first ? 'second' : 'first'
  const known = first ?? second
  if (!known) return { problem: NOT_A_QUESTION }
  const [top, bottom] = sign === 'subtract' && first ? [first, result] : [result, known]
  const operation = sign === 'subtract' && missing === 'first' ? 'add' : 'subtract'
  if (operation === 'subtract' && compareNumerals(top, bottom) < 0) return { problem: NO_SUCH_NUMBER }
  return { question: { sign, missing, unit, calculation: { operation, top, bottom } } }
}

interface Amount {
  readonly numeral: Numeral
  readonly unit: Unit
}

function readAmount(text: string | undefined): Amount | null {
  if (text === undefined) return null
  const numeral = readNumeral(text.replace(/[^\d.]/g, ''))
  const measure = MEASURES.find((each) => text.replace(/[\d. ]/g, '') === each)
  return numeral && { numeral, unit: text.startsWith('£') ? '£' : text.endsWith('p') ? 'p' : (measure ?? '') }
}

/** The unit of a question's numbers, where a number without one is in that of the others; null where they do not go together. */
function unitOf(amounts: readonly Amount[]): Unit | null {
  const units = new Set(amounts.map(({ unit }) => unit).filter((unit) => unit !== ''))
  if (units.has('£')) units.delete('p')
  const [unit = ''] = units
  return units.size > 1 ? null : unit
}

function inUnit({ numeral, unit }: Amount, wanted: Unit): Numeral {
  return unit === 'p' && wanted === '£' ? movePoint(numeral, 2) : numeral
}

function isTooLong(numeral: Numeral): boolean {
  return wholeDigits(numeral) > MOST_WHOLE_DIGITS || numeral.places > MOST_PLACES
}

/** A number with its unit, as printed for a pupil: "7,214", "£3.45", "86p", "5.2 kg". */
export function amountText(numeral: Numeral, unit: Unit): string {
  if (unit === '£') return `£${groupedText(numeral)}`
  return groupedText(numeral) + (unit === '' || unit === 'p' ? unit : ` ${unit}`)
}

/** The question as printed for a pupil, with the real minus sign: "7,214 − 86", "□ − 46 = 30". */
export function printQuestion({ sign, missing, unit, calculation }: Question): string {
  const mark = sign === 'add' ? '+' : '−'
  const top = amountText(calculation.top, unit)
  const bottom = amountText(calculation.bottom, unit)
  if (missing === 'result') return `${top} ${mark} ${bottom}`
  if (missing === 'first') return `□ ${mark} ${bottom} = ${top}`
  return sign === 'add' ? `${bottom} ${mark} □ = ${top}` : `${top} ${mark} □ = ${bottom}`
}
