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

/**
 * The bars of one step: a whole above the two parts that make it up; where two amounts are compared, the larger one above the smaller
 * one and the difference, which is no amount of its own.
 */
export interface Bar {
  readonly compares: boolean
  readonly whole: Piece
  readonly parts: readonly [Piece, Piece]
}

/** What stands in the bars: every amount; what the story tells, with a question mark for what is asked; nothing, for the pupil to fill. */
export type Shown = 'all' | 'told' | 'nothing'

/** The amount of a piece where it is shown, '' where the pupil writes it. */
export function amountShown({ amount, role }: Piece, shown: Shown): string {
  if (shown === 'nothing') return ''
  if (shown === 'all' || role === 'told') return amount
  return role === 'asked' ? '?' : ''
}

/**
 * The bars of both steps: in an addition the whole is to be found, in a subtraction the part that is left. A story that tells two numbers
 * compares in its first step: the second number says by how much one amount is more or less than the other.
 */
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
      ? { compares: false, whole: piece(found, 'asked'), parts: [piece(from), piece(by)] }
      : { compares: false, whole: piece(from), parts: [piece(by), piece(found, 'asked')] }
  const first = bar(operations[0], 'first', 'second', 'between')
  const [one, other] = first.parts
  const compared: Bar = {
    ...first,
    compares: true,
    parts: operations[0] === 'add' ? [one, other] : [other, one],
  }
  const [from, by] = secondOperands(flow)
  return [flow === 'with-first' ? compared : first, bar(operations[1], from, by, 'answer')]
}
