import type { AdditionHabit } from './addition'
import type { SubtractionHabit } from './subtraction'

/**
 * When in a calculation a fault acts, the particular before the general: where two faults would write in one column, the one
 * named first here does. Two faults that act at the same moment cannot be had together.
 */
export const MOMENTS = [
  'beneath',
  'zero on top',
  'short column',
  'lending',
  'column total',
  'lining up',
  'operation',
] as const
export type Moment = (typeof MOMENTS)[number]

/**
 * What the catalogue says about a fault. `sentence`: what the pupil does; `example`: a question, the answer that the fault gives
 * and how the pupil comes to it; `help`: one thing that helps. `hint`: what is said to the child who works alone, with "{column}" for the
 * first column from the right in which the answer is another.
 */
interface Described {
  readonly id: string
  readonly moment: Moment
  readonly sentence: string
  readonly example: { readonly question: string; readonly answer: string; readonly working: string }
  readonly help: string
  readonly hint: string
}

export interface SubtractionEntry extends Described {
  readonly operation: 'subtract'
  readonly habit: SubtractionHabit
}

export interface AdditionEntry extends Described {
  readonly operation: 'add'
  readonly habit: AdditionHabit
}
