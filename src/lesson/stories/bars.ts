import type { Operation } from '../../arithmetic/question'
import { secondOperands, type Labels, type StoryNumbers, type Template } from './template'

/**
 * A piece of a bar model: what it stands for, its amount as printed, its length in steps of the last place, and where its amount
 * comes from: told in the story, asked in this step, or found by the step before.
 */
export interface Piece {
  readonly label: string
  readonly amount: string
  readonly length: number
  readonly role: 'told' | 'asked' | 'found'
}

/** The bar of one step: a whole above the two parts that make it up. */
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
  const piece = (name: keyof Labels, role: Piece['role'] = name === 'between' ? 'found' : 'told'): Piece => ({
    label: labels[name],
    amount: text(numbers[name]),
    length: numbers[name],
    role,
  })
  const bar = (operation: Operation, from: keyof Labels, by: keyof Labels, found: keyof Labels): Bar =>
    operation === 'add'
      ? { whole: piece(found, 'asked'), parts: [piece(from), piece(by)] }
      : { whole: piece(from), parts: [piece(by), piece(found, 'asked')] }
  const [from, by] = secondOperands(flow)
  return [bar(operations[0], 'first', 'second', 'between'), bar(operations[1], from, by, 'answer')]
}
