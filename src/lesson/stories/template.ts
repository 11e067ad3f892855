import type { Operation, Unit } from '../../arithmetic/question'

/**
 * How the second step goes on from what the first step found, the number between. `onwards`: between ± third; `taken-from`:
 * third − between; `with-first`: first + between, so that two numbers are told.
 */
export type Flow = 'onwards' | 'taken-from' | 'with-first'

/** The least and the most that is sensible, in steps of the last place (pence, where pounds have two places). */
export type Limits = readonly [least: number, most: number]

/** A story's numbers, in steps of the last place. `between` is what the first step finds. */
export interface StoryNumbers {
  readonly first: number
  readonly second: number
  readonly between: number
  readonly third: number
  readonly answer: number
}

/** The two numbers that the second step works with, in the order of its calculation. */
export function secondOperands(flow: Flow): ['between' | 'third' | 'first', 'between' | 'third'] {
  if (flow === 'onwards') return ['between', 'third']
  return flow === 'taken-from' ? ['third', 'between'] : ['first', 'between']
}

/** The numbers of a story as printed for pupils ("1,245", "£3.60"), and the name of a child. */
export interface Told {
  readonly first: string
  readonly second: string
  readonly third: string
  readonly child: string
}

/** A short label for every number of a story, for its bar model. `third` is '' where only two numbers are told. */
export interface Labels {
  readonly first: string
  readonly second: string
  readonly between: string
  readonly third: string
  readonly answer: string
}

/**
 * A context for two steps: the operations of the steps in order, what is sensible there, the words, and the answer in a
 * sentence. `isLikely` says what the numbers must be to each other, where limits are not enough. Every number told is 2 or more, so its noun is in the plural; `answer` is also told whether the answer is 1.
 */
export interface Template {
  readonly id: string
  readonly operations: readonly [Operation, Operation]
  readonly flow: Flow
  readonly unit: Unit
  readonly places: number
  readonly limits: {
    readonly first: Limits
    readonly second: Limits
    readonly third: Limits
    readonly answer: Limits
  }
  readonly isLikely?: (numbers: StoryNumbers) => boolean
  readonly labels: Labels
  readonly tell: (told: Told) => string
  readonly answer: (amount: string, isOne: boolean) => string
}

/** What a template leaves out: plain whole numbers. */
export const WHOLE = { unit: '', places: 0 } as const

/** Pounds and pence, two places. */
export const MONEY = { unit: '£', places: 2 } as const

/** "1 egg is", "24 eggs are": a count with its noun and what else changes with it. */
export function counted(amount: string, isOne: boolean, one: string, many: string): string {
  return `${amount} ${isOne ? one : many}`
}
