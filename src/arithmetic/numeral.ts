/**
 * A number as it is printed: its digits from the right-hand column leftwards, `places` of them after the point.
 * 8.60 is `{ digits: [0, 6, 8], places: 2 }`. Every digit is kept, so that a printed 0 can be told from an empty column.
 */
export interface Numeral {
  readonly digits: readonly number[]
  readonly places: number
}

/** The most digits before the point that a question may have. */
export const MOST_WHOLE_DIGITS = 15
/** The most digits after the point that a question may have. */
export const MOST_PLACES = 3

/** Reads plain digits with an optional point ("7214", "8.60", ".5"), without separators. Null where it is no such number. */
export function readNumeral(text: string): Numeral | null {
  const match = /^(\d*)(?:\.(\d+))?$/.exec(text)
  const [, whole = '', decimals = ''] = match ?? []
  if (!match || whole + decimals === '') return null
  const trimmed = whole.replace(/^0+(?=\d)/, '') || '0'
  return { digits: Array.from(trimmed + decimals, Number).reverse(), places: decimals.length }
}

/** A whole number as a numeral. Throws RangeError below 0, above 2^53 − 1 or for a fraction. */
export function wholeNumeral(value: number): Numeral {
  if (!Number.isSafeInteger(value) || value < 0)
    throw new RangeError(`${value} is not a whole number from 0 up.`)
  return { digits: Array.from(String(value), Number).reverse(), places: 0 }
}

/** The digits as text, without separators: "7214", "8.60". */
export function numeralText({ digits, places }: Numeral): string {
  const text = [...digits].reverse().join('')
  return places === 0 ? text : `${text.slice(0, -places)}.${text.slice(-places)}`
}

/** The digits with commas between groups of three, as English primary books print them: "7,214". */
export function groupedText(numeral: Numeral): string {
  const [whole = '', decimals] = numeralText(numeral).split('.')
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ',')
  return decimals === undefined ? grouped : `${grouped}.${decimals}`
}

/** One text for each value: no zeros in front, none behind the point. 8.60 and 8.6 are both "8.6". */
export function valueText(numeral: Numeral): string {
  const text = numeralText(numeral).replace(/^0+(?=\d)/, '')
  return numeral.places === 0 ? text : text.replace(/\.?0+$/, '')
}

/** The digit printed in a column (0 the ones, 1 the tens, −1 the tenths); undefined where none is printed. */
export function digitAt({ digits, places }: Numeral, column: number): number | undefined {
  return digits[column + places]
}

/** How many digits are printed before the point. */
export function wholeDigits({ digits, places }: Numeral): number {
  return digits.length - places
}

/** The value times 10^places, exactly. Throws RangeError where that would cut digits off. */
export function scaledValue(numeral: Numeral, places: number): bigint {
  if (places < numeral.places) throw new RangeError('Digits after the point would be lost.')
  return BigInt(numeralText(numeral).replace('.', '')) * 10n ** BigInt(places - numeral.places)
}

/** Below 0 where a is the smaller value, 0 where they are equal, above 0 where a is the greater. */
export function compareNumerals(a: Numeral, b: Numeral): number {
  const places = Math.max(a.places, b.places)
  const difference = scaledValue(a, places) - scaledValue(b, places)
  return difference < 0n ? -1 : difference > 0n ? 1 : 0
}

/** The same digits with the point moved to the left, or to the right where `by` is below 0: 86 by 2 is 0.86, pence as pounds. */
export function movePoint({ digits, places }: Numeral, by: number): Numeral {
  const moved = places + by
  const padded = [...Array<number>(Math.max(0, -moved)).fill(0), ...digits]
  while (padded.length <= moved) padded.push(0)
  return { digits: padded, places: Math.max(0, moved) }
}

/**
 * Text as a reader sees it: full-width digits and other variants folded (Unicode NFKC), every run of white space, thin and
 * non-breaking spaces and line breaks included, one space; lower case, nothing around it.
 */
export function foldText(text: string): string {
  return text.normalize('NFKC').replace(/\s+/g, ' ').trim().toLowerCase()
}

/** What stands before a grouped number (no lookbehind: browsers of older Macs refuse it), and the number. */
const GROUPED = /(^|[^\d.,])(\d{1,3}(?:(?:,\d{3})+|(?: \d{3})+))(?![\d,])/g

/** Folded text with the commas or spaces between groups of three digits taken out: "7,214 − 86" is "7214 − 86", "3 28" stays. */
export function withoutSeparators(text: string): string {
  return text.replace(GROUPED, (_all, before: string, number: string) => before + number.replace(/[, ]/g, ''))
}
