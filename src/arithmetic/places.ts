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
 * to −3; RangeError outside. Money in pounds keeps these names, which are also those of the exchange types: a tenth of a
 * pound is 10p.
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
