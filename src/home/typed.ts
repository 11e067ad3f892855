import { readTyped, type CellValue } from '../answers/typed'
import { isDateFormat, isEmpty, type CellRef, type Matrix } from '../marksheet/layout/matrix'

/** What a pupil typed into a cell, as text; nothing typed; or why it cannot be told, the end of a sentence: "the answer became a date". */
export type TypedText =
  | { readonly kind: 'typed'; readonly typed: string }
  | { readonly kind: 'nothing' }
  | { readonly kind: 'lost'; readonly why: string }

const NOTHING: TypedText = { kind: 'nothing' }

/**
 * Reads what was typed into a cell that a program may have made something else of. A formula is what was typed; a number that shows as a
 * date, a time or a percentage was typed otherwise, nobody knows how.
 */
export function typedIn({ values, formats, formulas }: Matrix, { row, column }: CellRef): TypedText {
  const value = values[row]?.[column] ?? null
  const formula = formulas?.[row]?.[column] ?? ''
  if (formula !== '') return { kind: 'typed', typed: formula }
  if (isEmpty(value)) return NOTHING
  if (typeof value === 'boolean') return { kind: 'typed', typed: value ? 'TRUE' : 'FALSE' }
  if (typeof value === 'string') return { kind: 'typed', typed: value }
  const format = formats?.[row]?.[column] ?? 'General'
  if (isDateFormat(format)) return { kind: 'lost', why: 'the answer became a date' }
  if (format.includes('%')) return { kind: 'lost', why: 'the answer became a percentage' }
  return { kind: 'typed', typed: String(value) }
}

/** What is written into a marksheet: a plain number as a number, all else as the text it is, so that 3-4 never becomes a date. */
export function contentOf(typed: string): string | number {
  const number = Number(typed)
  return Number.isFinite(number) && String(number) === typed ? number : typed
}

/** Whether two texts are the same answer: the same number however it is written, or the same text. */
export function isSameAnswer(one: string, other: string): boolean {
  return one.trim() === other.trim() || keyOf(one) === keyOf(other)
}

function keyOf(typed: CellValue): string {
  const read = readTyped(typed)
  return read.kind === 'number' ? read.value : `“${String(typed).trim()}”`
}
