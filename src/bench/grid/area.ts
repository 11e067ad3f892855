/** A block of cells: zero-based first row and column, and how many of each. */
export interface Area {
  readonly row: number
  readonly col: number
  readonly rows: number
  readonly cols: number
}

/** Rows of an Excel sheet. */
export const MAX_ROWS = 1_048_576
/** Columns of an Excel sheet. */
export const MAX_COLS = 16_384

/** The whole sheet. */
export const WHOLE_SHEET: Area = { row: 0, col: 0, rows: MAX_ROWS, cols: MAX_COLS }

/** One cell as an area. */
export const cellArea = (row: number, col: number): Area => ({ row, col, rows: 1, cols: 1 })

/** The area between two bounds, the second one exclusive; null when nothing lies between. */
const between = (row: number, col: number, endRow: number, endCol: number): Area | null =>
  endRow > row && endCol > col ? { row, col, rows: endRow - row, cols: endCol - col } : null

/** The cells that two areas share, or null. */
export const intersect = (a: Area, b: Area): Area | null =>
  between(
    Math.max(a.row, b.row),
    Math.max(a.col, b.col),
    Math.min(a.row + a.rows, b.row + b.rows),
    Math.min(a.col + a.cols, b.col + b.cols),
  )

/** The smallest area that holds both. */
export function bounding(a: Area, b: Area): Area {
  const row = Math.min(a.row, b.row)
  const col = Math.min(a.col, b.col)
  const rows = Math.max(a.row + a.rows, b.row + b.rows) - row
  const cols = Math.max(a.col + a.cols, b.col + b.cols) - col
  return { row, col, rows, cols }
}

/** Whether `inner` lies wholly in `outer`. */
export const contains = (outer: Area, inner: Area): boolean =>
  inner.row >= outer.row &&
  inner.col >= outer.col &&
  inner.row + inner.rows <= outer.row + outer.rows &&
  inner.col + inner.cols <= outer.col + outer.cols

/** Whether two areas are the same block. */
export const sameArea = (a: Area, b: Area): boolean => contains(a, b) && contains(b, a)

/** What is left of `area` when `hole` is cut out of it: up to four blocks. */
export function subtract(area: Area, hole: Area): readonly Area[] {
  const cut = intersect(area, hole)
  if (!cut) return [area]
  const endRow = area.row + area.rows
  const endCol = area.col + area.cols
  const cutEndRow = cut.row + cut.rows
  return [
    between(area.row, area.col, cut.row, endCol),
    between(cut.row, area.col, cutEndRow, cut.col),
    between(cut.row, cut.col + cut.cols, cutEndRow, endCol),
    between(cutEndRow, area.col, endRow, endCol),
  ].filter((part) => part !== null)
}

/** Whole rows or columns: Excel gives no cell values for these. */
export const isUnbounded = (area: Area): boolean => area.rows === MAX_ROWS || area.cols === MAX_COLS

/** Calls `visit` for each cell of a bounded area, row by row. */
export function eachCell(area: Area, visit: (row: number, col: number) => void): void {
  for (let row = area.row; row < area.row + area.rows; row++)
    for (let col = area.col; col < area.col + area.cols; col++) visit(row, col)
}
