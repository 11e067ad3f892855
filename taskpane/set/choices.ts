import type { MadeReading } from '../../src/items/makeSet'
import type { Year } from '../../src/items/recipes'
import { aimsFor, TOPICS, type Aim, type Numbers, type OwnNumbers, type Wish } from '../../src/items/wish'
import { datedName } from '../../src/marksheet/setting/sheetNames'
import { counted } from '../common/words'

/** How numbers of the teacher's own choice are written. */
export const FORMS = [
  { id: 'whole', name: 'Whole numbers', decimals: 0, unit: '' },
  { id: 'pounds', name: 'Pounds and pence', decimals: 2, unit: '£' },
  { id: 'pence', name: 'Pence', decimals: 0, unit: 'p' },
  { id: 'tenths', name: 'One decimal place', decimals: 1, unit: '' },
  { id: 'hundredths', name: 'Two decimal places', decimals: 2, unit: '' },
  { id: 'thousandths', name: 'Three decimal places', decimals: 3, unit: '' },
] as const

export type FormId = (typeof FORMS)[number]['id']

/** The most digits before the point that the pane offers. */
export const MOST_DIGITS = 7

/** What the teacher has chosen. `topic` is the index of a topic among TOPICS, or null for numbers of the teacher's own choice. */
export interface Choices {
  readonly operation: Wish['operation']
  readonly topic: number | null
  readonly topDigits: number
  readonly bottomDigits: number
  readonly form: FormId
  readonly aim: Aim
  readonly count: number
}

/** What the pane starts with: graded subtraction of Year 4's four-digit numbers. */
export const FIRST_CHOICES: Choices = {
  operation: 'subtract',
  topic: TOPICS.findIndex(({ topic }) => topic === 'Four-digit numbers'),
  topDigits: 4,
  bottomDigits: 3,
  form: 'whole',
  aim: 'graded',
  count: 10,
}

/** The choices with a change made to them; an aim that the new numbers do not allow gives way to a graded set. */
export function changed(choices: Choices, change: Partial<Choices>): Choices {
  const now = { ...choices, ...change }
  const allowed = aimsFor(wishOf(now)).some(({ aim }) => aim === now.aim)
  return allowed ? now : { ...now, aim: 'graded' }
}

/** The wish that choices make. */
export function wishOf(choices: Choices): Wish {
  const { operation, aim, count } = choices
  return { operation, numbers: numbersOf(choices), aim, count }
}

function numbersOf({ topic, topDigits, bottomDigits, form }: Choices): Numbers {
  const chosen = topic === null ? undefined : TOPICS[topic]
  if (chosen) return chosen
  const { decimals = 0, unit = '' } = FORMS.find(({ id }) => id === form) ?? {}
  const own: OwnNumbers = { topDigits, bottomDigits, topDecimals: decimals, bottomDecimals: decimals, unit }
  return { own }
}

/** The topics by year, each with its index among TOPICS. */
export const TOPICS_BY_YEAR: readonly {
  readonly year: Year
  readonly topics: readonly { readonly index: number; readonly topic: string }[]
}[] = ([3, 4, 5] as const).map((year) => ({
  year,
  topics: TOPICS.flatMap((each, index) => (each.year === year ? [{ index, topic: each.topic }] : [])),
}))

const TITLES = {
  add: 'Addition',
  subtract: 'Subtraction',
  both: 'Addition and subtraction',
} as const

/** Short enough for a sheet's name with a day and a number behind it. */
const SHEETS = { ...TITLES, both: 'Add and subtract' } as const

/** What the sheet is called on which a marksheet is laid out on a day ("2026-11-06"). */
export function sheetNameOf({ operation }: Choices, day: string): string {
  return datedName(SHEETS[operation], day)
}

/** What heads a marksheet: "Kingfisher: column subtraction, four-digit numbers (set 4827)". */
export function titleOf({ operation, topic }: Choices, set: string, className: string): string {
  const chosen = topic === null ? undefined : TOPICS[topic]
  const what = [
    `Column ${TITLES[operation].toLowerCase()}`,
    ...(chosen ? [startingSmall(chosen.topic)] : []),
  ].join(', ')
  return `${className === '' ? what : `${className}: ${startingSmall(what)}`} (set ${set})`
}

const startingSmall = (text: string) => text.charAt(0).toLowerCase() + text.slice(1)

/** The number or word of a set as it counts: without spaces around, in small letters. */
export function setNumber(typed: string): string {
  return typed.trim().toLowerCase()
}

/** The number of a new draw, from 1000 to 9999, so that it is quick to say and to type. */
export function newSetNumber(random: () => number = randomFromSystem): string {
  return String(1000 + Math.floor(random() * 9000))
}

function randomFromSystem(): number {
  const [value = 0] = crypto.getRandomValues(new Uint32Array(1))
  return value / 2 ** 32
}

/** How many such questions there are, how many of them Record holds, and what was exchanged for that reason; a sentence each. */
export function factsOf(made: MadeReading, { aim }: Choices, set: string): string[] {
  if ('problem' in made) return made.exist === 0n ? [] : [existSentence(made.exist)]
  const { exist, avoided, exchanged, questions } = made
  const others = exchanged === questions.length ? 'All questions' : counted(exchanged, 'question')
  const was = exchanged === 1 ? 'was' : 'were'
  return [
    ...(aim === 'why' ? [] : [existSentence(exist)]),
    ...(avoided === 0
      ? []
      : [`${avoided.toLocaleString('en-GB')} ${avoided === 1 ? 'is' : 'are'} in Record and not set again.`]),
    ...(exchanged === 0
      ? []
      : [
          `${others} of set ${set} ${was} exchanged for that reason: a parallel class without ` +
            `${exchanged === 1 ? 'it' : 'them'} in Record gets others there.`,
        ]),
  ]
}

function existSentence(exist: bigint): string {
  return exist === 1n
    ? 'There is one such question.'
    : `There are ${exist.toLocaleString('en-GB')} such questions.`
}
