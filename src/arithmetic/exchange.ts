import type { Column, Written } from './columns'
import { wholeDigits } from './numeral'

/** The exchange types of subtraction questions, in the order in which they are tried: the first that fits counts. */
export const SUBTRACTION_TYPES = [
  'no exchange',
  'through two or more zeros',
  'through a zero',
  'three or more exchanges',
  'two exchanges, next to each other',
  'two exchanges, apart',
  'one exchange, tens to ones',
  'one exchange, hundreds to tens',
  'one exchange, thousands to hundreds',
  'one exchange, ten thousands to thousands',
  'one exchange, beyond ten thousands',
  'one exchange, ones to tenths',
  'one exchange, tenths to hundredths',
  'one exchange, hundredths to thousandths',
] as const

/** The carry types of addition questions, in the order in which they are tried. */
export const ADDITION_TYPES = [
  'no carry',
  'three or more carries',
  'two carries, next to each other',
  'two carries, apart',
  'one carry, ones to tens',
  'one carry, tens to hundreds',
  'one carry, hundreds to thousands',
  'one carry, thousands to ten thousands',
  'one carry, beyond ten thousands',
  'one carry, tenths to ones',
  'one carry, hundredths to tenths',
  'one carry, thousandths to hundredths',
] as const

export type ExchangeType = (typeof SUBTRACTION_TYPES)[number] | (typeof ADDITION_TYPES)[number]

/** What subtraction questions can demand of a pupil. */
export const SUBTRACTION_SKILLS = [
  'subtract.tens-to-ones',
  'subtract.hundreds-to-tens',
  'subtract.thousands-to-hundreds',
  'subtract.beyond-thousands',
  'subtract.into-decimals',
  'subtract.next-to-each-other',
  'subtract.through-zero',
  'subtract.different-length',
  'subtract.zero-below',
] as const

/** What addition questions can demand of a pupil. */
export const ADDITION_SKILLS = [
  'add.ones-to-tens',
  'add.tens-to-hundreds',
  'add.hundreds-to-thousands',
  'add.beyond-thousands',
  'add.from-decimals',
  'add.next-to-each-other',
  'add.new-column',
  'add.different-length',
] as const

export type Skill = (typeof SUBTRACTION_SKILLS)[number] | (typeof ADDITION_SKILLS)[number]

/** One exchange, by the place that receives the ten; from the ten thousands on they share a name. */
const ONE_EXCHANGE: Readonly<Record<string, ExchangeType>> = {
  '0': 'one exchange, tens to ones',
  '1': 'one exchange, hundreds to tens',
  '2': 'one exchange, thousands to hundreds',
  '3': 'one exchange, ten thousands to thousands',
  '-1': 'one exchange, ones to tenths',
  '-2': 'one exchange, tenths to hundredths',
  '-3': 'one exchange, hundredths to thousandths',
}

/** One carry, by the place that sends the ten. */
const ONE_CARRY: Readonly<Record<string, ExchangeType>> = {
  '0': 'one carry, ones to tens',
  '1': 'one carry, tens to hundreds',
  '2': 'one carry, hundreds to thousands',
  '3': 'one carry, thousands to ten thousands',
  '-1': 'one carry, tenths to ones',
  '-2': 'one carry, hundredths to tenths',
  '-3': 'one carry, thousandths to hundredths',
}

/**
 * What a worked calculation holds. `places`: the columns in which a ten changes hands, from the right; in a subtraction those
 * that receive one, in an addition those that send one. `zerosCrossed`: printed zeros through which an exchange runs (0 in
 * additions).
 */
export interface Exchanges {
  readonly places: readonly number[]
  readonly zerosCrossed: number
  readonly type: ExchangeType
  readonly skills: readonly Skill[]
}

/** Classifies a worked calculation by its exchanges or carries, and names the skills it demands. */
export function exchangesOf(written: Written): Exchanges {
  return written.calculation.operation === 'subtract'
    ? subtractionExchanges(written)
    : additionExchanges(written)
}

/** The type of a subtraction whose columns at these places receive a ten, `zerosCrossed` of them printed zeros that also lend. */
export function subtractionType(places: readonly number[], zerosCrossed: number): ExchangeType {
  const [first, second] = places
  if (first === undefined) return 'no exchange'
  if (zerosCrossed >= 2) return 'through two or more zeros'
  if (zerosCrossed === 1) return 'through a zero'
  if (places.length >= 3) return 'three or more exchanges'
  if (second === undefined) return ONE_EXCHANGE[first] ?? 'one exchange, beyond ten thousands'
  return second - first === 1 ? 'two exchanges, next to each other' : 'two exchanges, apart'
}

/** The type of an addition whose columns at these places send a ten. */
export function additionType(places: readonly number[]): ExchangeType {
  const [first, second] = places
  if (first === undefined) return 'no carry'
  if (places.length >= 3) return 'three or more carries'
  if (second === undefined) return ONE_CARRY[first] ?? 'one carry, beyond ten thousands'
  return second - first === 1 ? 'two carries, next to each other' : 'two carries, apart'
}

function subtractionExchanges(written: Written): Exchanges {
  const { columns, calculation } = written
  const places = columns.filter((column) => column.receives).map((column) => column.place)
  const zerosCrossed = columns.filter((column) => column.lends && (column.top ?? 0) === 0).length
  const demanded: [Skill, boolean][] = [
    ['subtract.tens-to-ones', places.includes(0)],
    ['subtract.hundreds-to-tens', places.includes(1)],
    ['subtract.thousands-to-hundreds', places.includes(2)],
    ['subtract.beyond-thousands', places.some((place) => place >= 3)],
    ['subtract.into-decimals', places.some((place) => place < 0)],
    ['subtract.next-to-each-other', columns.some((column) => column.lends && column.receives)],
    ['subtract.through-zero', zerosCrossed > 0],
    ['subtract.different-length', differInLength(written)],
    ['subtract.zero-below', calculation.bottom.digits.includes(0)],
  ]
  return { places, zerosCrossed, type: subtractionType(places, zerosCrossed), skills: held(demanded) }
}

function additionExchanges(written: Written): Exchanges {
  const { columns } = written
  const places = columns.filter((column) => column.lends).map((column) => column.place)
  const demanded: [Skill, boolean][] = [
    ['add.ones-to-tens', places.includes(0)],
    ['add.tens-to-hundreds', places.includes(1)],
    ['add.hundreds-to-thousands', places.includes(2)],
    ['add.beyond-thousands', places.some((place) => place >= 3)],
    ['add.from-decimals', places.some((place) => place < 0)],
    ['add.next-to-each-other', columns.some((column) => column.lends && column.receives)],
    ['add.new-column', isNewColumn(columns.at(-1))],
    ['add.different-length', differInLength(written)],
  ]
  return { places, zerosCrossed: 0, type: additionType(places), skills: held(demanded) }
}

function held(demanded: readonly [Skill, boolean][]): Skill[] {
  return demanded.filter(([, demands]) => demands).map(([skill]) => skill)
}

function differInLength({ calculation: { top, bottom } }: Written): boolean {
  return wholeDigits(top) !== wholeDigits(bottom) || top.places !== bottom.places
}

function isNewColumn(column: Column | undefined): boolean {
  return column !== undefined && column.top === undefined && column.bottom === undefined
}
