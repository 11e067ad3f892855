import type { Area, CellRef } from '../../marksheet/layout/matrix'

/** A sheet's rows and columns (Excel specifications and limits, Microsoft). */
const [ROWS, COLUMNS] = [1_048_576, 16_384]

/** The cell with an address ("B5"); null where a sheet has none such. */
export function cellAt(address: string): CellRef | null {
  const [, letters = '', digits = ''] = /^([A-Z]{1,3})([1-9]\d{0,6})$/.exec(address) ?? []
  let column = -1
  for (const letter of letters) column = (column + 1) * 26 + letter.charCodeAt(0) - 65
  const row = Number(digits) - 1
  return row < 0 || row >= ROWS || column >= COLUMNS ? null : { row, column }
}

/** The area with an address ("B5:N33", "B5"); null where a sheet has none such. */
export function areaAt(address: string): Area | null {
  const [first = '', last = first] = address.split(':')
  const [start, end] = [cellAt(first), cellAt(last)]
  if (!start || !end) return null
  return {
    top: Math.min(start.row, end.row),
    left: Math.min(start.column, end.column),
    bottom: Math.max(start.row, end.row),
    right: Math.max(start.column, end.column),
  }
}
