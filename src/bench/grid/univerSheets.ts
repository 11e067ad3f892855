import type { Worksheet } from '@univerjs/core'
import type { FWorkbook, FWorksheet } from '@univerjs/sheets/facade'
import type { Area } from './area'
import type { SheetInfo } from './grid'

/** A new sheet's size; it grows when something is written beyond. */
const ROWS = 1000
const COLS = 26
/** By how much a sheet grows at least. */
const ROW_STEP = 5000
const COL_STEP = 20
const PIXELS_PER_POINT = 96 / 72

/** The sheets of a Univer workbook, their rows and columns. */
export abstract class UniverSheets {
  constructor(readonly workbook: FWorkbook) {}

  /** Tells Univer everything written so far. */
  abstract flush(): void

  protected sheet(id: string): FWorksheet {
    const sheet = this.workbook.getSheetBySheetId(id)
    if (!sheet) throw new Error(`No sheet ${id}`)
    return sheet
  }
  /** The sheet's own data, with everything written. */
  protected data(id: string): Worksheet {
    this.flush()
    return this.sheet(id).getSheet()
  }
  /** Makes the sheet large enough for an area, and gives what of the area lies within. */
  protected fit(id: string, area: Area): Area {
    const sheet = this.sheet(id)
    const rows = Math.min(
      area.row + area.rows,
      Math.max(sheet.getMaxRows(), area.row + 1, bounded(area.rows, area.row)),
    )
    const cols = Math.min(
      area.col + area.cols,
      Math.max(sheet.getMaxColumns(), area.col + 1, bounded(area.cols, area.col)),
    )
    if (sheet.getMaxRows() < rows) sheet.setRowCount(roundUp(rows, ROW_STEP))
    if (sheet.getMaxColumns() < cols) sheet.setColumnCount(roundUp(cols, COL_STEP))
    return { row: area.row, col: area.col, rows: rows - area.row, cols: cols - area.col }
  }

  sheets(): readonly SheetInfo[] {
    return this.workbook.getSheets().map((sheet) => ({
      id: sheet.getSheetId(),
      name: sheet.getSheetName(),
      visible: !sheet.isSheetHidden(),
      colour: (sheet.getTabColor() ?? '').toUpperCase(),
    }))
  }
  activeSheet(): string {
    return this.workbook.getActiveSheet().getSheetId()
  }
  addSheet(name: string): string {
    const active = this.activeSheet()
    const id = this.workbook.create(name, ROWS, COLS).getSheetId()
    this.activateSheet(active)
    return id
  }
  removeSheet(id: string): void {
    this.flush()
    // Univer goes on drawing a sheet that was in front when it went: another one comes to the front first.
    const sheets = this.sheets()
    const at = sheets.findIndex((sheet) => sheet.id === id)
    const next = [...sheets.slice(at + 1), ...sheets.slice(0, at).reverse()].find(({ visible }) => visible)
    if (next && this.activeSheet() === id) this.activateSheet(next.id)
    this.workbook.deleteSheet(this.sheet(id))
  }
  renameSheet(id: string, name: string): void {
    this.sheet(id).setName(name)
  }
  moveSheet(id: string, position: number): void {
    this.workbook.moveSheet(this.sheet(id), position)
  }
  showSheet(id: string, visible: boolean): void {
    if (visible) this.sheet(id).showSheet()
    else this.sheet(id).hideSheet()
  }
  colourTab(id: string, colour: string): void {
    this.sheet(id).setTabColor(colour)
  }
  activateSheet(id: string): void {
    this.workbook.setActiveSheet(this.sheet(id))
  }
  gridlines(id: string): boolean {
    return !this.sheet(id).hasHiddenGridLines()
  }
  setGridlines(id: string, shown: boolean): void {
    this.sheet(id).setHiddenGridlines(!shown)
  }
  frozen(id: string): { rows: number; cols: number } {
    const { xSplit, ySplit } = this.sheet(id).getFreeze()
    return { rows: ySplit, cols: xSplit }
  }
  freeze(id: string, rows: number, cols: number): void {
    const none = -1
    this.sheet(id).setFreeze({
      ySplit: rows,
      xSplit: cols,
      startRow: rows || none,
      startColumn: cols || none,
    })
  }

  columnWidth(id: string, col: number): number {
    return this.sheet(id).getColumnWidth(col) / PIXELS_PER_POINT
  }
  setColumnWidth(id: string, col: number, count: number, width: number): void {
    const { cols } = this.fit(id, { row: 0, rows: 1, col, cols: count })
    this.sheet(id).setColumnWidths(col, cols, Math.round(width * PIXELS_PER_POINT))
  }
  rowHeight(id: string, row: number): number {
    return this.sheet(id).getRowHeight(row) / PIXELS_PER_POINT
  }
  setRowHeight(id: string, row: number, count: number, height: number): void {
    const { rows } = this.fit(id, { row, rows: count, col: 0, cols: 1 })
    this.sheet(id).setRowHeightsForced(row, rows, Math.round(height * PIXELS_PER_POINT))
  }
  rowHidden(id: string, row: number): boolean {
    return !this.data(id).getRowVisible(row)
  }
  hideRows(id: string, row: number, count: number, hidden: boolean): void {
    const { rows } = this.fit(id, { row, rows: count, col: 0, cols: 1 })
    if (hidden) this.sheet(id).hideRows(row, rows)
    else this.sheet(id).showRows(row, rows)
  }
  columnHidden(id: string, col: number): boolean {
    return !this.data(id).getColVisible(col)
  }
  hideColumns(id: string, col: number, count: number, hidden: boolean): void {
    const { cols } = this.fit(id, { row: 0, rows: 1, col, cols: count })
    if (hidden) this.sheet(id).hideColumns(col, cols)
    else this.sheet(id).showColumns(col, cols)
  }
}

/** How far a bounded stretch reaches; whole rows and columns do not make a sheet grow. */
const bounded = (count: number, start: number): number => (start === 0 && count > 100_000 ? 0 : start + count)

const roundUp = (count: number, step: number): number => Math.ceil(count / step) * step
