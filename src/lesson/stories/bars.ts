import type { Operation } from '../../arithmetic/question'
import type { StoryNumbers } from './story'
import type { Labels, Template } from './template'

/** A piece of a bar model: what it stands for, its amount as printed, its length in steps of the last place, whether it is to be found. */
export interface Piece {
  readonly label: string
  readonly amount: string
  readonly length: number
  readonly isAsked: boolean
}

/** The bar of one step: a whole above the two parts that make it up. Both bars of a story are on one scale. */
export interface Bar {
  readonly whole: Piece
  readonly parts: readonly [Piece, Piece]
}

/** The bars of both steps: in an addition the whole is to be found, in a subtraction the part that is left. */
export function barsOf(
  { operations, flow, labels }: Template,
  numbers: StoryNumbers,
  text: (value: number) => string,
): [Bar, Bar] {
  const piece = (name: keyof Labels, isAsked = false): Piece => ({
    label: labels[name],
    amount: text(numbers[name]),
    length: numbers[name],
    isAsked,
  })
  const bar = (operation: Operation, from: keyof Labels, by: keyof Labels, found: keyof Labels): Bar =>
    operation === 'add'
      ? { whole: piece(found, true), parts: [piece(from), piece(by)] }
      : { whole: piece(from), parts: [piece(by), piece(found, true)] }
  const [from, by]: [keyof Labels, keyof Labels] =
    flow === 'onwards'
      ? ['between', 'third']
      : flow === 'taken-from'
        ? ['third', 'between']
        : ['first', 'between']
  return [bar(operations[0], 'first', 'second', 'between'), bar(operations[1], from, by, 'answer')]
}
