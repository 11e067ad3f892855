import { digitAt, readNumeral, valueText, wholeDigits, type Numeral } from '../../arithmetic/numeral'

/**
 * One column as a pupil works it, rightly or wrongly. `place`, `top` and `bottom` as in the written method; `marks` are the
 * values written over the top digit, oldest first; `carried` is what an addition sends into the column, left out where that is
 * nothing; `written` is what stands in the answer row: a digit, two figures, or nothing.
 */
export interface WorkedColumn {
  readonly place: number
  readonly top: number | undefined
  readonly bottom: number | undefined
  readonly marks: readonly number[]
  readonly carried?: number
  readonly written: string
}

/** Two numbers as they stand under each other. Moved to the left, a number can have fewer than no places (86 as 86__ has −2). */
export interface SetOut {
  readonly top: Numeral
  readonly bottom: Numeral
}

/** The places taken up by two numbers under each other, from the right. */
export function placesTaken({ top, bottom }: SetOut): number[] {
  const right = Math.min(0, -top.places, -bottom.places)
  const left = Math.max(wholeDigits(top), wholeDigits(bottom))
  return Array.from({ length: left - right }, (_, index) => right + index)
}

/** The printed digits, column by column from the right. */
export function columnsOf(setOut: SetOut): Pick<WorkedColumn, 'place' | 'top' | 'bottom'>[] {
  return placesTaken(setOut).map((place) => ({
    place,
    top: digitAt(setOut.top, place),
    bottom: digitAt(setOut.bottom, place),
  }))
}

/** The number with fewer digits before the point moved left until both begin in the same column. */
export function linedUpLeft({ top, bottom }: SetOut): SetOut {
  const left = Math.max(wholeDigits(top), wholeDigits(bottom))
  const moved = (numeral: Numeral): Numeral => ({
    digits: numeral.digits,
    places: numeral.digits.length - left,
  })
  return { top: moved(top), bottom: moved(bottom) }
}

/** The number with fewer digits after the point moved right until both end in the same column. */
export function linedUpRight({ top, bottom }: SetOut): SetOut {
  const places = Math.max(top.places, bottom.places)
  return { top: { digits: top.digits, places }, bottom: { digits: bottom.digits, places } }
}

/** The value that stands in the answer row, in the one text for each value ("475", "8.6"); "0" where nothing is written. */
export function answerRow(columns: readonly WorkedColumn[]): string {
  const row = (part: readonly WorkedColumn[]) =>
    part.map(({ written }) => written).reduceRight((a, b) => a + b, '')
  const whole = row(columns.filter(({ place }) => place >= 0))
  const decimals = row(columns.filter(({ place }) => place < 0))
  const numeral = readNumeral(decimals === '' ? whole : `${whole}.${decimals}`)
  return numeral ? valueText(numeral) : '0'
}
