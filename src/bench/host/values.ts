import type { Area } from '../grid/area'
import { contains, cellArea, eachCell, intersect, isUnbounded } from '../grid/area'
import { isErrorValue } from '../grid/cellText'
import type { CellValue, Content } from '../grid/grid'
import { readEntry } from './entry'
import { invalidArgument, wrongSize } from './errors'
import type { PlaceView } from './place'
import { settleSpills } from './spills'
import { nameHeaders } from './tables'

/** What Excel's `valueTypes` says of a value. */
export function valueType(value: CellValue): string {
  if (value === '') return 'Empty'
  if (isErrorValue(value)) return 'Error'
  return typeof value === 'number' ? 'Double' : typeof value === 'boolean' ? 'Boolean' : 'String'
}

/** What was given for an area as a function of the cell: one value for all, or a matrix of the area's own size. */
function given(area: Area, values: unknown): (i: number, j: number) => unknown {
  if (isUnbounded(area)) throw invalidArgument()
  if (!Array.isArray(values)) return () => values
  const lines: unknown[] = values
  if (lines.length !== area.rows || lines.some((line) => !Array.isArray(line) || line.length !== area.cols))
    throw wrongSize()
  return (i, j) => (lines as unknown[][])[i]?.[j]
}

/** The cells that a merged block swallows: all but its first. */
function swallowed(place: PlaceView): (row: number, col: number) => boolean {
  const merges = place.context.grid.merges(place.sheetId).filter((merged) => intersect(merged, place.area))
  return (row, col) =>
    merges.some(
      (merged) => contains(merged, cellArea(row, col)) && (merged.row !== row || merged.col !== col),
    )
}

/**
 * Writes values or formulas to a place as Excel does: read as if typed, null leaving a cell alone, locked cells of a
 * protected sheet refused, and cells inside a merged block (other than its first) silently left empty.
 */
export function writeContents(place: PlaceView, values: unknown): void {
  const { context, sheetId, area } = place
  const at = given(area, values)
  context.requireUnlocked(sheetId, area)
  const isSwallowed = swallowed(place)
  const today = context.today()
  const brought: { readonly area: Area; readonly numberFormat: string }[] = []
  const contents = Array.from({ length: area.rows }, (_, i) =>
    Array.from({ length: area.cols }, (_, j): Content => {
      const row = area.row + i
      const col = area.col + j
      const written = at(i, j)
      const before = context.grid.format(sheetId, row, col).numberFormat
      const { content, numberFormat } = readEntry(written, before, today)
      if (isSwallowed(row, col)) return null
      if (numberFormat !== undefined && before === 'General')
        brought.push({ area: cellArea(row, col), numberFormat })
      return content
    }),
  )
  context.grid.write(sheetId, area.row, area.col, contents)
  for (const { area: cell, numberFormat } of brought) context.grid.setFormat(sheetId, cell, { numberFormat })
  settleSpills(place, contents)
  nameHeaders(context, sheetId, area)
  context.written.push({ sheetId, area })
}

/** Gives cells number formats: one for all, or a matrix in which null leaves a cell alone. */
export function writeNumberFormats(place: PlaceView, formats: unknown): void {
  const { context, sheetId, area } = place
  context.requireOption(sheetId, 'allowFormatCells')
  if (typeof formats === 'string') {
    context.grid.setFormat(sheetId, area, { numberFormat: formats })
    return
  }
  const at = given(area, formats)
  const first = at(0, 0)
  let uniform = typeof first === 'string'
  eachCell(area, (row, col) => {
    const format = at(row - area.row, col - area.col)
    if (format !== null && typeof format !== 'string') throw invalidArgument()
    if (format !== first) uniform = false
  })
  if (uniform) {
    context.grid.setFormat(sheetId, area, { numberFormat: String(first) })
    return
  }
  eachCell(area, (row, col) => {
    const numberFormat = at(row - area.row, col - area.col)
    if (typeof numberFormat === 'string')
      context.grid.setFormat(sheetId, cellArea(row, col), { numberFormat })
  })
}
