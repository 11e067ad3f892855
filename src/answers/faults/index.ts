import type { Calculation } from '../../arithmetic/question'
import { addWith, bothWhenAdding, type AdditionHabit } from './addition'
import { ADDITION_FAULTS } from './addition-catalogue'
import { MOMENTS, type AdditionEntry, type SubtractionEntry } from './entry'
import { bothWhenSubtracting, subtractWith, type SubtractionHabit } from './subtraction'
import { SUBTRACTION_FAULTS } from './subtraction-catalogue'
import { answerRow, type WorkedColumn } from './working'

export type { WorkedColumn } from './working'

/** The names of the faults. Lining up wrongly and doing the wrong operation occur in both operations under one name. */
export type FaultId = (typeof SUBTRACTION_FAULTS)[number]['id'] | (typeof ADDITION_FAULTS)[number]['id']

/**
 * A systematic fault in one operation. `apply` gives the answer that it leads to, as valueText writes it, whether or not that
 * is the right one; null for a calculation of the other operation.
 */
export type Fault = (SubtractionEntry | AdditionEntry) & {
  readonly id: FaultId
  readonly apply: (calculation: Calculation) => string | null
}

function withApply<Entry extends (SubtractionEntry | AdditionEntry) & { id: FaultId }>(entry: Entry): Fault {
  const fault: Fault = {
    ...entry,
    apply: (calculation) =>
      calculation.operation === fault.operation ? answerWith([fault], calculation) : null,
  }
  return fault
}

/** Every systematic fault, subtraction first. */
export const FAULTS: readonly Fault[] = [
  ...SUBTRACTION_FAULTS.map(withApply),
  ...ADDITION_FAULTS.map(withApply),
]

/** Whether a pupil can have both faults at once: not two habits for the same moment of one operation. */
export function areCompatible(one: Fault, other: Fault): boolean {
  if (one.operation !== other.operation) return true
  return one.moment !== other.moment && one.moment !== 'operation' && other.moment !== 'operation'
}

/**
 * The working, columns from the right, of a pupil with these faults at once; faults of the other operation do not matter, and
 * without any it is the method as taught.
 */
export function workWith(faults: readonly Fault[], calculation: Calculation): WorkedColumn[] {
  const inOrder = [...faults].sort((a, b) => MOMENTS.indexOf(a.moment) - MOMENTS.indexOf(b.moment))
  if (calculation.operation === 'subtract') {
    const habits = inOrder.flatMap((fault) => (fault.operation === 'subtract' ? [fault.habit] : []))
    return subtractWith(habits.reduce<SubtractionHabit>(bothWhenSubtracting, {}), calculation)
  }
  const habits = inOrder.flatMap((fault) => (fault.operation === 'add' ? [fault.habit] : []))
  return addWith(habits.reduce<AdditionHabit>(bothWhenAdding, {}), calculation)
}

/** The answer of a pupil with these faults at once, as valueText writes it. */
export function answerWith(faults: readonly Fault[], calculation: Calculation): string {
  return answerRow(workWith(faults, calculation))
}
