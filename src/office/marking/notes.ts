import { viewOf, type CellRef, type Matrix } from '../../marksheet/layout/matrix'
import { isOwnNote, NOTES_TITLE } from '../../marksheet/marking/notes'

/** The cells of a sheet that hold notes of ours: what heads them, and those below it, or on its right where pupils run across. */
export function ownNotes(matrix: Matrix): CellRef[] {
  const found = new Map<string, CellRef>()
  for (const turned of [false, true]) {
    const view = viewOf(matrix, turned)
    for (let column = 0; column < view.columns; column++) {
      let isBelow = false
      for (let row = 0; row < view.rows; row++) {
        const text = view.text(row, column)
        isBelow ||= text === NOTES_TITLE
        const cell = view.ref(row, column)
        if (isBelow && isOwnNote(text)) found.set(`${cell.row},${cell.column}`, cell)
      }
    }
  }
  return [...found.values()]
}
