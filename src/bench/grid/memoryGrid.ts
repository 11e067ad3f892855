import type { Area } from './area'
import { cellArea, eachCell, intersect } from './area'
import { cellText } from './cellText'
import { constantFormula } from './constantFormula'
import { fittedWidth } from './fit'
import type { CellFormat, CellValue, ConditionalRule, Content, Grid, GridListener, SheetInfo } from './grid'
import { MemorySheet } from './memorySheet'

const DEFAULT_WIDTH = 48
const DEFAULT_HEIGHT = 15

/** Calls `visit` for `count` numbers from `start`. */
const forEachOf = (start: number, count: number, visit: (n: number) => void) => {
  for (let n = start; n < start + count; n++) visit(n)
}

/**
 * A grid without a screen, for fast tests in Node. Formulas are kept as text with the value that `calculate` gives
 * when they are written (by default formulas over constants only); nothing is calculated again later.
 */
export class MemoryGrid implements Grid {
  #sheets: MemorySheet[] = []
  #active = ''
  #made = 0
  #selected: Area = cellArea(0, 0)
  readonly #listeners: GridListener[] = []
  readonly #calculate: (formula: string) => CellValue

  constructor(options: { readonly calculate?: (formula: string) => CellValue } = {}) {
    this.#calculate = options.calculate ?? constantFormula
    this.#active = this.addSheet('Sheet1')
  }

  #sheet(id: string): MemorySheet {
    const sheet = this.#sheets.find((one) => one.id === id)
    if (!sheet) throw new Error(`No sheet ${id}`)
    return sheet
  }

  sheets(): readonly SheetInfo[] {
    return this.#sheets.map(({ id, name, visible, colour }) => ({ id, name, visible, colour }))
  }
  activeSheet(): string {
    return this.#active
  }
  addSheet(name: string): string {
    const id = `{00000000-0001-0000-0000-${String(++this.#made).padStart(12, '0')}}`
    this.#sheets.push(new MemorySheet(id, name))
    return id
  }
  removeSheet(id: string): void {
    const index = this.#sheets.findIndex((sheet) => sheet.id === id)
    this.#sheets.splice(index, 1)
    if (this.#active === id) this.#active = (this.#sheets[index] ?? this.#sheets[index - 1])?.id ?? ''
  }
  renameSheet(id: string, name: string): void {
    this.#sheet(id).name = name
  }
  moveSheet(id: string, position: number): void {
    const sheet = this.#sheet(id)
    this.#sheets = this.#sheets.filter((one) => one !== sheet)
    this.#sheets.splice(position, 0, sheet)
  }
  showSheet(id: string, visible: boolean): void {
    this.#sheet(id).visible = visible
  }
  colourTab(id: string, colour: string): void {
    this.#sheet(id).colour = colour
  }
  activateSheet(id: string): void {
    this.#active = id
    for (const listener of this.#listeners) listener.activated(id)
  }
  gridlines(id: string): boolean {
    return this.#sheet(id).gridlines
  }
  setGridlines(id: string, shown: boolean): void {
    this.#sheet(id).gridlines = shown
  }
  frozen(id: string): { rows: number; cols: number } {
    return this.#sheet(id).frozen
  }
  freeze(id: string, rows: number, cols: number): void {
    this.#sheet(id).frozen = { rows, cols }
  }

  used(id: string, valuesOnly: boolean): Area | null {
    return this.#sheet(id).used(valuesOnly)
  }
  values(id: string, area: Area): CellValue[][] {
    const sheet = this.#sheet(id)
    return matrix(area, (row, col) => sheet.value(row, col))
  }
  formulas(id: string, area: Area): CellValue[][] {
    const sheet = this.#sheet(id)
    return matrix(area, (row, col) => sheet.formula(row, col))
  }
  write(id: string, row: number, col: number, contents: readonly (readonly Content[])[]): void {
    const sheet = this.#sheet(id)
    contents.forEach((line, i) => {
      line.forEach((content, j) => {
        sheet.write(row + i, col + j, content, this.#calculate)
      })
    })
  }

  format(id: string, row: number, col: number): CellFormat {
    return this.#sheet(id).format(row, col)
  }
  setFormat(id: string, area: Area, patch: Partial<CellFormat>): void {
    this.#sheet(id).setFormat(area, patch)
  }
  clearFormat(id: string, area: Area): void {
    this.#sheet(id).clearFormat(area)
  }
  columnWidth(id: string, col: number): number {
    return this.#sheet(id).widths.get(col) ?? DEFAULT_WIDTH
  }
  setColumnWidth(id: string, col: number, count: number, width: number): void {
    forEachOf(col, count, (n) => this.#sheet(id).widths.set(n, width))
  }
  rowHeight(id: string, row: number): number {
    return this.#sheet(id).heights.get(row) ?? DEFAULT_HEIGHT
  }
  setRowHeight(id: string, row: number, count: number, height: number): void {
    forEachOf(row, count, (n) => this.#sheet(id).heights.set(n, height))
  }
  autofit(id: string, area: Area, what: 'columns' | 'rows'): void {
    const sheet = this.#sheet(id)
    const used = sheet.used(true)
    const cells = used && intersect(area, used)
    if (!cells) return
    if (what === 'rows') {
      forEachOf(cells.row, cells.rows, (row) => sheet.heights.delete(row))
      return
    }
    forEachOf(cells.col, cells.cols, (col) => {
      const texts: string[] = []
      forEachOf(cells.row, cells.rows, (row) => {
        texts.push(cellText(sheet.value(row, col), sheet.format(row, col).numberFormat))
      })
      const width = fittedWidth(texts)
      if (width !== null) sheet.widths.set(col, width)
    })
  }
  rowHidden(id: string, row: number): boolean {
    return this.#sheet(id).hiddenRows.has(row)
  }
  hideRows(id: string, row: number, count: number, hidden: boolean): void {
    const { hiddenRows } = this.#sheet(id)
    forEachOf(row, count, (n) => (hidden ? hiddenRows.add(n) : hiddenRows.delete(n)))
  }
  columnHidden(id: string, col: number): boolean {
    return this.#sheet(id).hiddenCols.has(col)
  }
  hideColumns(id: string, col: number, count: number, hidden: boolean): void {
    const { hiddenCols } = this.#sheet(id)
    forEachOf(col, count, (n) => (hidden ? hiddenCols.add(n) : hiddenCols.delete(n)))
  }

  merges(id: string): readonly Area[] {
    return this.#sheet(id).merges
  }
  merge(id: string, area: Area): void {
    this.unmerge(id, area)
    const sheet = this.#sheet(id)
    eachCell(area, (row, col) => {
      if (row !== area.row || col !== area.col) sheet.empty(cellArea(row, col))
    })
    sheet.merges = [...sheet.merges, area]
  }
  unmerge(id: string, area: Area): void {
    const sheet = this.#sheet(id)
    sheet.merges = sheet.merges.filter((merged) => !intersect(merged, area))
  }
  conditionalFormats(id: string): readonly ConditionalRule[] {
    return this.#sheet(id).rules
  }
  setConditionalFormats(id: string, rules: readonly ConditionalRule[]): void {
    this.#sheet(id).rules = rules
  }
  notes(id: string): { row: number; col: number; text: string }[] {
    return this.#sheet(id).notes
  }
  setNote(id: string, row: number, col: number, text: string | null): void {
    const sheet = this.#sheet(id)
    sheet.notes = sheet.notes.filter((note) => note.row !== row || note.col !== col)
    if (text !== null) sheet.notes.push({ row, col, text })
  }

  selection(): { sheetId: string; area: Area } {
    return { sheetId: this.#active, area: this.#selected }
  }
  select(id: string, area: Area): void {
    this.activateSheet(id)
    this.#selected = area
    for (const listener of this.#listeners) listener.selected(id, area)
  }
  listen(listener: GridListener): void {
    this.#listeners.push(listener)
  }
  flush(): void {
    // Nothing is held back: a write is visible at once.
  }
  calculating(): undefined {
    return undefined
  }
}

function matrix(area: Area, cell: (row: number, col: number) => CellValue): CellValue[][] {
  return Array.from({ length: area.rows }, (_, i) =>
    Array.from({ length: area.cols }, (_, j) => cell(area.row + i, area.col + j)),
  )
}
