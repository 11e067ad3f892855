import type { ExchangeType } from '../arithmetic/exchange'
import type { Operation } from '../arithmetic/question'
import type { Kind } from './kind'
import { MIXED, RUNGS } from './rungs'

/** The year groups of England's primary schools in which column addition and subtraction are taught. */
export type Year = 3 | 4 | 5

/** A kind of question as a teacher asks for it. `topic` and `name` are headings, `objective` one sentence to show the class. */
export interface Recipe {
  readonly year: Year
  readonly topic: string
  readonly operation: Operation
  readonly name: string
  readonly objective: string
  readonly kind: Kind
}

type Numbers = Omit<Kind, 'operation' | 'type' | 'zerosBelow' | 'answerDigits'>

/** `difference`: digits of the answer to a subtraction, so that few are better done by counting on. */
interface Topic {
  readonly year: Year
  readonly topic: string
  readonly numbers: Numbers
  readonly difference: Kind['answerDigits']
  readonly subtract: readonly ExchangeType[]
  readonly add: readonly ExchangeType[]
}

const TWO_COLUMNS_EXCHANGE: readonly ExchangeType[] = ['two exchanges, next to each other', 'through a zero']
const THREE_COLUMNS_EXCHANGE: readonly ExchangeType[] = [
  'two exchanges, apart',
  'two exchanges, next to each other',
  'three or more exchanges',
  'through a zero',
  'through two or more zeros',
]
const THREE_COLUMNS_CARRY: readonly ExchangeType[] = [
  'two carries, apart',
  'two carries, next to each other',
  'three or more carries',
]

/**
 * Placed by the programmes of study in the National curriculum in England (Department for Education, 2013), read in copies of
 * its statements: Year 3 three digits, pounds and pence recorded separately; Year 4 four digits, money and measures to two
 * decimal places; Year 5 more than four digits, numbers to three decimal places. That Year 5 mixes numbers of decimal places
 * is from memory.
 */
const TOPICS: readonly Topic[] = [
  {
    year: 3,
    topic: 'Three-digit numbers',
    numbers: { topDigits: 3, bottomDigits: 3 },
    difference: [2, 3],
    subtract: [
      'no exchange',
      'one exchange, tens to ones',
      'one exchange, hundreds to tens',
      ...TWO_COLUMNS_EXCHANGE,
    ],
    add: [
      'no carry',
      'one carry, ones to tens',
      'one carry, tens to hundreds',
      'one carry, hundreds to thousands',
      ...THREE_COLUMNS_CARRY,
    ],
  },
  {
    year: 3,
    topic: 'A three-digit and a two-digit number',
    numbers: { topDigits: 3, bottomDigits: 2 },
    difference: [2, 3],
    subtract: [
      'no exchange',
      'one exchange, tens to ones',
      'one exchange, hundreds to tens',
      ...TWO_COLUMNS_EXCHANGE,
    ],
    add: [
      'no carry',
      'one carry, ones to tens',
      'one carry, tens to hundreds',
      'two carries, next to each other',
    ],
  },
  {
    year: 3,
    topic: 'Amounts in pence',
    numbers: { topDigits: 3, bottomDigits: [2, 3], unit: 'p' },
    difference: [2, 3],
    subtract: ['no exchange', 'one exchange, tens to ones', ...TWO_COLUMNS_EXCHANGE],
    add: ['no carry', 'one carry, ones to tens', 'two carries, next to each other'],
  },
  {
    year: 4,
    topic: 'Four-digit numbers',
    numbers: { topDigits: 4, bottomDigits: 4 },
    difference: [3, 4],
    subtract: [
      'no exchange',
      'one exchange, tens to ones',
      'one exchange, hundreds to tens',
      'one exchange, thousands to hundreds',
      ...THREE_COLUMNS_EXCHANGE,
    ],
    add: [
      'no carry',
      'one carry, ones to tens',
      'one carry, tens to hundreds',
      'one carry, hundreds to thousands',
      'one carry, thousands to ten thousands',
      ...THREE_COLUMNS_CARRY,
    ],
  },
  {
    year: 4,
    topic: 'A four-digit and a shorter number',
    numbers: { topDigits: 4, bottomDigits: [2, 3] },
    difference: [3, 4],
    subtract: [
      'no exchange',
      'one exchange, tens to ones',
      'one exchange, hundreds to tens',
      'one exchange, thousands to hundreds',
      ...THREE_COLUMNS_EXCHANGE,
    ],
    add: [
      'no carry',
      'one carry, ones to tens',
      'one carry, tens to hundreds',
      'one carry, hundreds to thousands',
      ...THREE_COLUMNS_CARRY,
    ],
  },
  {
    year: 4,
    topic: 'Pounds and pence',
    numbers: { topDigits: 2, bottomDigits: [1, 2], topDecimals: 2, bottomDecimals: 2, unit: '£' },
    difference: [1, 2],
    subtract: [
      'no exchange',
      'one exchange, tenths to hundredths',
      'one exchange, ones to tenths',
      'one exchange, tens to ones',
      ...THREE_COLUMNS_EXCHANGE,
    ],
    add: [
      'no carry',
      'one carry, hundredths to tenths',
      'one carry, tenths to ones',
      'one carry, ones to tens',
      'one carry, tens to hundreds',
      ...THREE_COLUMNS_CARRY,
    ],
  },
  {
    year: 4,
    topic: 'Measures with one decimal place',
    numbers: {
      topDigits: 2,
      bottomDigits: [1, 2],
      topDecimals: 1,
      bottomDecimals: 1,
      unit: ['kg', 'm', 'l'],
    },
    difference: [1, 2],
    subtract: [
      'no exchange',
      'one exchange, ones to tenths',
      'one exchange, tens to ones',
      ...TWO_COLUMNS_EXCHANGE,
    ],
    add: [
      'no carry',
      'one carry, tenths to ones',
      'one carry, ones to tens',
      'two carries, next to each other',
    ],
  },
  {
    year: 5,
    topic: 'Five-digit numbers',
    numbers: { topDigits: 5, bottomDigits: 5 },
    difference: [4, 5],
    subtract: [
      'no exchange',
      'one exchange, tens to ones',
      'one exchange, hundreds to tens',
      'one exchange, thousands to hundreds',
      'one exchange, ten thousands to thousands',
      ...THREE_COLUMNS_EXCHANGE,
    ],
    add: [
      'no carry',
      'one carry, ones to tens',
      'one carry, tens to hundreds',
      'one carry, hundreds to thousands',
      'one carry, thousands to ten thousands',
      'one carry, beyond ten thousands',
      ...THREE_COLUMNS_CARRY,
    ],
  },
  {
    year: 5,
    topic: 'A six-digit and a shorter number',
    numbers: { topDigits: 6, bottomDigits: [4, 5] },
    difference: [5, 6],
    subtract: [
      'no exchange',
      'one exchange, ten thousands to thousands',
      'one exchange, beyond ten thousands',
      ...THREE_COLUMNS_EXCHANGE,
    ],
    add: [
      'no carry',
      'one carry, thousands to ten thousands',
      'one carry, beyond ten thousands',
      ...THREE_COLUMNS_CARRY,
    ],
  },
  {
    year: 5,
    topic: 'Numbers with three decimal places',
    numbers: { topDigits: [1, 2], bottomDigits: 1, topDecimals: 3, bottomDecimals: 3 },
    difference: [1, 2],
    subtract: [
      'no exchange',
      'one exchange, hundredths to thousandths',
      'one exchange, tenths to hundredths',
      'one exchange, ones to tenths',
      ...THREE_COLUMNS_EXCHANGE,
    ],
    add: [
      'no carry',
      'one carry, thousandths to hundredths',
      'one carry, hundredths to tenths',
      'one carry, tenths to ones',
      ...THREE_COLUMNS_CARRY,
    ],
  },
  {
    year: 5,
    topic: 'Different numbers of decimal places',
    numbers: { topDigits: [1, 2], bottomDigits: 1, topDecimals: 1, bottomDecimals: 2 },
    difference: [1, 2],
    subtract: ['one exchange, tenths to hundredths', ...THREE_COLUMNS_EXCHANGE],
    add: [
      'no carry',
      'one carry, tenths to ones',
      'one carry, ones to tens',
      'two carries, next to each other',
    ],
  },
]

/**
 * The recipes of every year: by topic, additions before subtractions, from easy to hard. All but the last of each ladder keep
 * printed zeros out of the bottom number, so that one difficulty is met at a time.
 */
export const RECIPES: readonly Recipe[] = TOPICS.flatMap((topic) => [
  ...ladderOf(topic, 'add', topic.add),
  ...ladderOf(topic, 'subtract', topic.subtract),
])

function ladderOf(
  { year, topic, numbers, difference }: Topic,
  operation: Operation,
  types: readonly ExchangeType[],
): Recipe[] {
  const asked = operation === 'subtract' ? { ...numbers, answerDigits: difference } : numbers
  const rungs = types.map((type) => ({
    ...RUNGS[type],
    kind: { ...asked, operation, type, zerosBelow: false },
  }))
  const mixed = { ...MIXED[operation], kind: { ...asked, operation, type: 'any' as const } }
  return [...rungs, mixed].map((rung) => ({ year, topic, operation, ...rung }))
}

/** The recipes of one year group for one operation, in their order. */
export function recipesFor(year: Year, operation: Operation): Recipe[] {
  return RECIPES.filter((recipe) => recipe.year === year && recipe.operation === operation)
}
