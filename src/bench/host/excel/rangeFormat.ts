import { MAX_COLS, MAX_ROWS } from '../../grid/area'
import type { CellFormat } from '../../grid/grid'
import { invalidArgument } from '../errors'
import { PlacedObject, common } from '../place'
import { FormatProtection } from './formatProtection'
import { RangeBorderCollection } from './rangeBorderCollection'
import { RangeFill } from './rangeFill'
import { RangeFont } from './rangeFont'

/** Greatest indent Excel takes. */
const MAX_INDENT = 250

/** How a range looks. */
export class RangeFormat extends PlacedObject {
  static override readonly className = 'RangeFormat'
  static override readonly scalars = [
    'columnWidth',
    'horizontalAlignment',
    'indentLevel',
    'rowHeight',
    'verticalAlignment',
    'wrapText',
  ]

  get fill() {
    return new RangeFill(this.context, this.sheetId, this.area)
  }
  get font() {
    return new RangeFont(this.context, this.sheetId, this.area)
  }
  get borders() {
    return new RangeBorderCollection(this.context, this.sheetId, this.area)
  }
  get protection() {
    return new FormatProtection(this.context, this.sheetId, this.area)
  }

  get columnWidth(): number | null {
    const { col, cols } = this.area
    const width = this.context.grid.columnWidth(this.sheetId, col)
    for (let n = col + 1; n < col + Math.min(cols, MAX_COLS); n++)
      if (this.context.grid.columnWidth(this.sheetId, n) !== width) return null
    return width
  }
  set columnWidth(width: number) {
    if (!(width >= 0)) throw invalidArgument()
    this.context.requireOption(this.sheetId, 'allowFormatColumns')
    this.context.grid.setColumnWidth(this.sheetId, this.area.col, this.area.cols, width)
  }
  get rowHeight(): number | null {
    const { row, rows } = this.area
    const height = this.context.grid.rowHeight(this.sheetId, row)
    if (rows === MAX_ROWS) return height
    for (let n = row + 1; n < row + rows; n++)
      if (this.context.grid.rowHeight(this.sheetId, n) !== height) return null
    return height
  }
  set rowHeight(height: number) {
    if (!(height >= 0)) throw invalidArgument()
    this.context.requireOption(this.sheetId, 'allowFormatRows')
    this.context.grid.setRowHeight(this.sheetId, this.area.row, this.area.rows, height)
  }
  get horizontalAlignment(): string | null {
    return common(this, (format) => format.horizontal)
  }
  set horizontalAlignment(horizontal: string) {
    this.#set({ horizontal })
  }
  get verticalAlignment(): string | null {
    return common(this, (format) => format.vertical)
  }
  set verticalAlignment(vertical: string) {
    this.#set({ vertical })
  }
  get wrapText(): boolean | null {
    return common(this, (format) => format.wrap)
  }
  set wrapText(wrap: boolean) {
    this.#set({ wrap })
  }
  get indentLevel(): number | null {
    return common(this, (format) => format.indent)
  }
  set indentLevel(indent: number) {
    if (!(indent >= 0 && indent <= MAX_INDENT)) throw invalidArgument()
    this.#set({ indent })
  }
  autofitColumns() {
    this.context.requireOption(this.sheetId, 'allowFormatColumns')
    this.context.grid.autofit(this.sheetId, this.area, 'columns')
  }
  autofitRows() {
    this.context.requireOption(this.sheetId, 'allowFormatRows')
    this.context.grid.autofit(this.sheetId, this.area, 'rows')
  }

  #set(patch: Partial<CellFormat>) {
    this.context.requireOption(this.sheetId, 'allowFormatCells')
    this.context.grid.setFormat(this.sheetId, this.area, patch)
  }
}
