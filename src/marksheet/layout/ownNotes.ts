import { isFlaggedSentence } from '../../mastery/need'
import type { Matrix } from './matrix'

/** What heads the notes that the add-in writes beside a marksheet, by which they are found again. */
export const NOTES_TITLE = 'Support with · Columnwise'

/** The sheet without notes of ours, so that it is read as it was before they were written. */
export function withoutNotes(matrix: Matrix): Matrix {
  const isNote = (value: unknown) =>
    typeof value === 'string' && (value === NOTES_TITLE || isFlaggedSentence(value))
  if (!matrix.values.some((row) => row.some(isNote))) return matrix
  const values = matrix.values.map((row) => {
    if (!row.some(isNote)) return row
    const cells = row.map((value) => (isNote(value) ? null : value))
    return cells.slice(0, cells.findLastIndex((value) => value !== null) + 1)
  })
  return { ...matrix, values: values.slice(0, values.findLastIndex((row) => row.length > 0) + 1) }
}
