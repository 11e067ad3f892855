import { columnsOf, linedUpLeft, linedUpRight, type SetOut, type WorkedColumn } from './working'

/** A column when its turn comes: the printed digits, and what the top digit is by now. */
export interface Met {
  readonly printedTop: number | undefined
  readonly top: number
  readonly bottom: number | undefined
}

/** The columns to the left of one that is short, nearest first: what each stands at, and writing a new value over it. */
export interface Lender {
  readonly standing: () => number
  readonly mark: (value: number) => void
}

/**
 * A way of subtracting that departs from the written method at one moment or more; what is left out is done as taught.
 * `lineUp` sets the numbers under each other. `write` gives what is written in a column without more ado, undefined where the
 * column is worked as taught. `lend` fetches the ten for a short column; false where there is nobody to lend, and then the
 * digits are taken the other way round. `instead` does another calculation altogether.
 */
export interface SubtractionHabit {
  readonly instead?: (setOut: SetOut) => WorkedColumn[]
  readonly lineUp?: (setOut: SetOut) => SetOut
  readonly write?: (column: Met) => number | '' | undefined
  readonly lend?: (left: readonly Lender[]) => boolean
}

/** The first digit on the left that is not 0 lends; the values given are written over every zero between. */
function lendFromFirstDigit(overZeros: readonly number[]) {
  return (left: readonly Lender[]): boolean => {
    const index = left.findIndex((column) => column.standing() > 0)
    const lender = left[index]
    if (!lender) return false
    for (const zero of left.slice(0, index)) overZeros.forEach(zero.mark)
    lender.mark(lender.standing() - 1)
    return true
  }
}

const lendAsTaught = lendFromFirstDigit([10, 9])
const nobodyLends = () => false

const isShort = ({ top, bottom }: Met) => top < (bottom ?? 0)
const isUntouchedZero = ({ printedTop, top }: Met) => printedTop === 0 && top === 0

/** In every column, the smaller digit from the larger. */
export const smallerFromLarger: SubtractionHabit = {
  write: (column) => (isShort(column) ? (column.bottom ?? 0) - column.top : undefined),
}

/** 0 in every column that is short. */
export const zeroWhenShort: SubtractionHabit = { write: (column) => (isShort(column) ? 0 : undefined) }

/** A short column receives a ten that nobody has lent. */
export const noReduction: SubtractionHabit = { lend: () => true }

/** A printed top 0 that has not lent, less n, gives n. */
export const zeroGivesDigit: SubtractionHabit = {
  write: (column) => (isUntouchedZero(column) ? (column.bottom ?? 0) : undefined),
}

/** A printed top 0 that has not lent, less n, gives 0. */
export const zeroGivesZero: SubtractionHabit = {
  write: (column) => (isUntouchedZero(column) ? 0 : undefined),
}

/** The first digit that is not 0 lends, and the zeros between stay 0. */
export const skipsOverZero: SubtractionHabit = { lend: lendFromFirstDigit([]) }

/** A zero that should lend becomes 9, and nothing further left is reduced. */
export const nineForFree: SubtractionHabit = {
  lend: ([neighbour]) => {
    neighbour?.mark(neighbour.standing() === 0 ? 9 : neighbour.standing() - 1)
    return neighbour !== undefined
  },
}

/** A zero lent through is left at 10. */
export const zeroLeftAsTen: SubtractionHabit = { lend: lendFromFirstDigit([10]) }

/** A printed bottom 0 gives 0. */
export const takeZeroGivesZero: SubtractionHabit = { write: ({ bottom }) => (bottom === 0 ? 0 : undefined) }

/** Nothing is written in a column with nothing beneath. */
export const dropsUnpaired: SubtractionHabit = {
  write: ({ bottom }) => (bottom === undefined ? '' : undefined),
}

/** The numbers begin in the same column. */
export const subtractLinedUpLeft: SubtractionHabit = { lineUp: linedUpLeft }

/** The numbers end in the same column. */
export const subtractLinedUpRight: SubtractionHabit = { lineUp: linedUpRight }

/** Both habits at once; where both would write in a column, the first does. */
export function bothWhenSubtracting(first: SubtractionHabit, second: SubtractionHabit): SubtractionHabit {
  return {
    ...second,
    ...first,
    write: (column) => first.write?.(column) ?? second.write?.(column),
  }
}

/**
 * Subtracts in columns with a habit. Where lining up wrongly has made the bottom number the greater, nobody can lend: every
 * short column is taken the other way round.
 */
export function subtractWith(habit: SubtractionHabit, setOut: SetOut): WorkedColumn[] {
  if (habit.instead) return habit.instead(setOut)
  const columns = columnsOf(habit.lineUp?.(setOut) ?? setOut).map((column) => ({
    ...column,
    marks: [] as number[],
    written: '',
  }))
  const lenders = columns.map(({ top, marks }) => ({
    standing: () => marks.at(-1) ?? top ?? 0,
    mark: (value: number) => void marks.push(value),
  }))
  const unequal = columns.findLast(({ top, bottom }) => (top ?? 0) !== (bottom ?? 0))
  const canLend = !unequal || (unequal.top ?? 0) > (unequal.bottom ?? 0)
  const lend = canLend ? (habit.lend ?? lendAsTaught) : nobodyLends
  columns.forEach((column, index) => {
    const own = lenders[index]
    if (!own) return
    const met: Met = { printedTop: column.top, top: own.standing(), bottom: column.bottom }
    const written = habit.write?.(met)
    if (written === undefined && isShort(met) && lend(lenders.slice(index + 1))) own.mark(met.top + 10)
    column.written = String(written ?? Math.abs(own.standing() - (met.bottom ?? 0)))
  })
  return columns
}
