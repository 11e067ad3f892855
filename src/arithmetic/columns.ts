import { digitAt, wholeDigits, type Numeral } from './numeral'
import type { Calculation } from './question'

/**
 * One column of the written method.
 *
 * `place` is 0 for the ones, 1 for the tens, −1 for the tenths. `top` and `bottom` are the printed digits, undefined where
 * none is printed. Subtraction: `receives` a ten from the column on the left, `lends` one to the column on the right.
 * Addition: `receives` the ten carried from the right, `lends` a ten on to the left.
 * `marks` are the values written over the top digit, oldest first, none where it stays as printed: the 0 of 305 − 128 becomes
 * 10, then 9. `result` is the digit of the answer.
 */
export interface Column {
  readonly place: number
  readonly top: number | undefined
  readonly bottom: number | undefined
  readonly receives: boolean
  readonly lends: boolean
  readonly marks: readonly number[]
  readonly result: number
}

/** The worked calculation: its columns from the right, and the answer with as many places as the longer number. */
export interface Written {
  readonly calculation: Calculation
  readonly columns: readonly Column[]
  readonly answer: Numeral
}

/**
 * Works a calculation in columns: subtraction by decomposition, addition with carrying.
 * A subtraction whose top is the smaller number throws RangeError.
 */
export function workOut(calculation: Calculation): Written {
  const { operation, top, bottom } = calculation
  const columns = operation === 'add' ? addColumns(top, bottom) : subtractColumns(top, bottom)
  const places = Math.max(top.places, bottom.places)
  const digits = columns.map((column) => column.result)
  while (digits.length > places + 1 && digits.at(-1) === 0) digits.pop()
  return { calculation, columns, answer: { digits, places } }
}

/** The places that two numbers written under each other take up, from the right. */
function placesOf(top: Numeral, bottom: Numeral): number[] {
  const right = -Math.max(top.places, bottom.places)
  const left = Math.max(wholeDigits(top), wholeDigits(bottom))
  return Array.from({ length: left - right }, (_, index) => right + index)
}

function addColumns(top: Numeral, bottom: Numeral): Column[] {
  const columns: Column[] = []
  let carried = false
  for (const place of placesOf(top, bottom)) {
    const upper = digitAt(top, place)
    const lower = digitAt(bottom, place)
    const total: number = (upper ?? 0) + (lower ?? 0) + Number(carried)
    const lends: boolean = total >= 10
    columns.push({
      place,
      top: upper,
      bottom: lower,
      receives: carried,
      lends,
      marks: [],
      result: total % 10,
    })
    carried = lends
  }
  if (carried) {
    const place = (columns.at(-1)?.place ?? 0) + 1
    columns.push({
      place,
      top: undefined,
      bottom: undefined,
      receives: true,
      lends: false,
      marks: [],
      result: 1,
    })
  }
  return columns
}

function subtractColumns(top: Numeral, bottom: Numeral): Column[] {
  const columns: Column[] = []
  let lends = false
  for (const place of placesOf(top, bottom)) {
    const upper = digitAt(top, place)
    const lower = digitAt(bottom, place)
    const left: number = (upper ?? 0) - Number(lends)
    const receives: boolean = left < (lower ?? 0)
    const result = left + (receives ? 10 : 0) - (lower ?? 0)
    const marks = marksOver(upper ?? 0, lends, receives)
    columns.push({ place, top: upper, bottom: lower, receives, lends, marks, result })
    lends = receives
  }
  if (lends) throw new RangeError('The number taken away is greater than the number it is taken from.')
  return columns
}

/** A zero must receive before it can lend (10, then 9); any other digit lends first and receives when its turn comes. */
function marksOver(digit: number, lends: boolean, receives: boolean): number[] {
  if (!lends) return receives ? [digit + 10] : []
  if (digit === 0) return [10, 9]
  return receives ? [digit - 1, digit + 9] : [digit - 1]
}

/** The digit set out in a column: the printed one, or the 0 that fills an empty place after the point; undefined where none stands. */
export function digitSetOut(numeral: Numeral, place: number): number | undefined {
  return digitAt(numeral, place) ?? (place < 0 ? 0 : undefined)
}

/** Whether one of the two numbers has a digit in the column; only a column that an addition carries into anew has none. */
export function hasDigits({ top, bottom }: Column): boolean {
  return top !== undefined || bottom !== undefined
}
