/** The name of one of a place, from the ones leftwards. A billion is a thousand millions, as is usual in England today. */
const WHOLE = [
  'one',
  'ten',
  'hundred',
  'thousand',
  'ten thousand',
  'hundred thousand',
  'million',
  'ten million',
  'hundred million',
  'billion',
  'ten billion',
  'hundred billion',
  'trillion',
  'ten trillion',
  'hundred trillion',
  'quadrillion',
]
const DECIMAL = ['tenth', 'hundredth', 'thousandth']

/**
 * The name of one of a place: "ten" for 1, "tenth" for −1. From 15 (what two numbers of fifteen digits can carry into) down
 * to −3; RangeError outside. The exchange types keep these names for money too; what is said of it has its own (`wordsFor`).
 */
export function oneOf(place: number): string {
  const name = place < 0 ? DECIMAL[-place - 1] : WHOLE[place]
  if (name === undefined) throw new RangeError(`There is no name for place ${place}.`)
  return name
}

/** The name of a place: "tens" for 1, "tenths" for −1. RangeError as `oneOf`. */
export function placeName(place: number): string {
  return `${oneOf(place)}s`
}

/** So many of a place: "1 ten", "12 tens", "0 tens". RangeError as `oneOf`. */
export function countOf(count: number, place: number): string {
  return `${count} ${count === 1 ? oneOf(place) : placeName(place)}`
}

/** How the places are spoken of: one of a place, the column, so many of a place. Each throws RangeError as `oneOf`. */
export interface PlaceWords {
  readonly oneOf: (place: number) => string
  readonly placeName: (place: number) => string
  readonly countOf: (count: number, place: number) => string
}

const PLAIN: PlaceWords = { oneOf, placeName, countOf }

/** One, several, and the column, by the place of a pound. */
const MONEY: Readonly<Partial<Record<number, readonly [one: string, many: string, column: string]>>> = {
  [-2]: ['penny', 'pennies', 'pennies'],
  [-1]: ['ten-pence coin', 'ten-pence coins', 'ten-pence coins'],
  0: ['pound', 'pounds', 'pounds'],
  1: ['ten-pound note', 'ten-pound notes', 'ten-pound notes'],
}

/** A pound by the place of a penny. */
const POUND = 2

/** How the places of amounts are spoken of: money as coins, notes and hundreds of pounds; other measures as plain numbers. */
export function wordsFor(unit: string): PlaceWords {
  if (unit !== '£' && unit !== 'p') return PLAIN
  const inPounds = (place: number) => (unit === 'p' ? place - POUND : place)
  const words = (place: number) => MONEY[inPounds(place)] ?? largeMoney(inPounds(place))
  return {
    oneOf: (place) => words(place)[0],
    placeName: (place) => words(place)[2],
    countOf: (count, place) => `${count} ${words(place)[count === 1 ? 0 : 1]}`,
  }
}

/** Hundreds of pounds and beyond; tenths of a penny and below. */
function largeMoney(place: number): readonly [one: string, many: string, column: string] {
  if (place < 0) {
    const many = `${placeName(place + POUND)} of a penny`
    return [`${oneOf(place + POUND)} of a penny`, many, many]
  }
  return [`${oneOf(place)} pounds`, `${oneOf(place)} pounds`, `${placeName(place)} of pounds`]
}
