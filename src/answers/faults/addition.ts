import { columnsOf, linedUpLeft, linedUpRight, type SetOut, type WorkedColumn } from './working'

/** What is done with the total of a column: the figures written beneath it, and what is sent on to the next column. */
export interface Dealt {
  readonly write: number
  readonly send: number
}

/**
 * A way of adding that departs from the written method at one moment or more; what is left out is done as taught. `lineUp` sets
 * the numbers under each other; `deal` deals with the total of a column, `last` being the left-hand one. `instead` does another
 * calculation altogether.
 */
export interface AdditionHabit {
  readonly instead?: (setOut: SetOut) => WorkedColumn[]
  readonly lineUp?: (setOut: SetOut) => SetOut
  readonly deal?: (total: number, last: boolean) => Dealt
}

const ones = (total: number) => total % 10
const tens = (total: number) => Math.floor(total / 10)
const inFull = (total: number): Dealt => ({ write: total, send: 0 })
const carried = (total: number): Dealt => ({ write: ones(total), send: tens(total) })

const dealAsTaught = (total: number, last: boolean): Dealt => (last ? inFull(total) : carried(total))

/** The ones of each total, nothing sent. */
export const dropsCarried: AdditionHabit = { deal: (total) => ({ write: ones(total), send: 0 }) }

/** As taught, but the ten out of the last column is not written. */
export const losesLastTen: AdditionHabit = { deal: carried }

/** Each total in full, side by side. */
export const writesWholeTotal: AdditionHabit = { deal: inFull }

/** The ten is written and the ones are sent; the last column in full. */
export const carriesWrongDigit: AdditionHabit = {
  deal: (total, last) => (last || total < 10 ? inFull(total) : { write: tens(total), send: ones(total) }),
}

/** The numbers begin in the same column. */
export const addLinedUpLeft: AdditionHabit = { lineUp: linedUpLeft }

/** The numbers end in the same column. */
export const addLinedUpRight: AdditionHabit = { lineUp: linedUpRight }

/** Both habits at once. */
export function bothWhenAdding(first: AdditionHabit, second: AdditionHabit): AdditionHabit {
  return { ...second, ...first }
}

/** Adds in columns with a habit. */
export function addWith(habit: AdditionHabit, setOut: SetOut): WorkedColumn[] {
  if (habit.instead) return habit.instead(setOut)
  const columns = columnsOf(habit.lineUp?.(setOut) ?? setOut)
  const deal = habit.deal ?? dealAsTaught
  let sent = 0
  return columns.map((column, index) => {
    const into = sent === 0 ? {} : { carried: sent }
    const total = (column.top ?? 0) + (column.bottom ?? 0) + sent
    const { write, send } = deal(total, index === columns.length - 1)
    sent = send
    return { ...column, ...into, marks: [], written: String(write) }
  })
}
