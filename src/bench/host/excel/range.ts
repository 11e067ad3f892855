import type { Area } from '../../grid/area'
import { MAX_COLS, MAX_ROWS, bounding, cellArea, contains, intersect, isUnbounded } from '../../grid/area'
import { cellText } from '../../grid/cellText'
import type { CellValue } from '../../grid/grid'
import { fullAddress } from '../address'
import { clearPlace } from '../clear'
import { getCellProperties, setCellProperties } from '../cellProperties'
import { invalidArgument, itemNotFound, wrongSize } from '../errors'
import { hiddenState } from '../hidden'
import { PlacedObject, placeOf } from '../place'
import { specialAreas } from '../specialCells'
import { hasSpill } from '../spills'
import { valueType, writeContents, writeNumberFormats } from '../values'
import { ConditionalFormatCollection } from './conditionalFormatCollection'
import { RangeAreas } from './rangeAreas'
import { RangeFormat } from './rangeFormat'
import { TableScopedCollection } from './tableScopedCollection'

/** Most cells that Excel counts. */
const MAX_COUNT = 2 ** 31 - 1

/** The lengths of so many columns or rows together. */
function sum(count: number, length: (index: number) => number): number {
  return Array.from({ length: count }, (_, index) => length(index)).reduce((a, b) => a + b, 0)
}

/** A block of cells. */
export class Range extends PlacedObject {
  static override readonly className = 'Range'
  static override readonly scalars = [
    'address',
    'cellCount',
    'columnCount',
    'columnHidden',
    'columnIndex',
    'formulas',
    'hasSpill',
    'hidden',
    'left',
    'numberFormat',
    'rowCount',
    'rowHidden',
    'rowIndex',
    'text',
    'top',
    'valueTypes',
    'values',
  ]

  get rowIndex() {
    return this.area.row
  }
  get columnIndex() {
    return this.area.col
  }
  get rowCount() {
    return this.area.rows
  }
  get columnCount() {
    return this.area.cols
  }
  get cellCount() {
    const count = this.area.rows * this.area.cols
    return count > MAX_COUNT ? -1 : count
  }
  get address() {
    return fullAddress(this.context.sheetInfo(this.sheetId).name, this.area)
  }
  get addressLocal() {
    return this.address
  }
  get worksheet() {
    return this.context.worksheet(this.sheetId)
  }
  /** Points from the left edge of the sheet. */
  get left() {
    const { grid } = this.context
    return sum(this.area.col, (col) => grid.columnWidth(this.sheetId, col))
  }
  /** Points from the upper edge of the sheet. */
  get top() {
    const { grid } = this.context
    return sum(this.area.row, (row) => grid.rowHeight(this.sheetId, row))
  }
  get format() {
    return new RangeFormat(this.context, this.sheetId, this.area)
  }
  get conditionalFormats() {
    return new ConditionalFormatCollection(this.context, this.sheetId, this.area)
  }

  get values(): CellValue[][] | null {
    return isUnbounded(this.area) ? null : this.context.grid.values(this.sheetId, this.area)
  }
  set values(values: unknown) {
    writeContents(this, values)
  }
  get formulas(): CellValue[][] | null {
    return isUnbounded(this.area) ? null : this.context.grid.formulas(this.sheetId, this.area)
  }
  set formulas(formulas: unknown) {
    writeContents(this, formulas)
  }
  get text(): string[][] | null {
    return this.#map((value, format) => cellText(value, format))
  }
  get valueTypes(): string[][] | null {
    return this.#map(valueType)
  }
  get numberFormat(): string[][] | null {
    return this.#map((_, format) => format)
  }
  set numberFormat(formats: unknown) {
    writeNumberFormats(this, formats)
  }

  get hasSpill(): boolean | null {
    return hasSpill(this)
  }
  get rowHidden(): boolean | null {
    return hiddenState(this, 'rows')
  }
  set rowHidden(hidden: boolean) {
    this.context.requireOption(this.sheetId, 'allowFormatRows')
    this.context.grid.hideRows(this.sheetId, this.area.row, this.area.rows, hidden)
  }
  get columnHidden(): boolean | null {
    return hiddenState(this, 'columns')
  }
  set columnHidden(hidden: boolean) {
    this.context.requireOption(this.sheetId, 'allowFormatColumns')
    this.context.grid.hideColumns(this.sheetId, this.area.col, this.area.cols, hidden)
  }
  get hidden(): boolean | null {
    const rows = this.rowHidden
    const columns = this.columnHidden
    return rows === true || columns === true ? true : rows === null || columns === null ? null : false
  }

  getCell(row: number, column: number) {
    return this.#at(cellArea(this.area.row + row, this.area.col + column))
  }
  getRow(index: number) {
    return this.#at({ ...this.area, row: this.area.row + index, rows: 1 })
  }
  getColumn(index: number) {
    return this.#at({ ...this.area, col: this.area.col + index, cols: 1 })
  }
  getLastCell() {
    return this.getCell(this.area.rows - 1, this.area.cols - 1)
  }
  getLastRow() {
    return this.getRow(this.area.rows - 1)
  }
  getLastColumn() {
    return this.getColumn(this.area.cols - 1)
  }
  getRowsBelow(count = 1) {
    return this.#at({ ...this.area, row: this.area.row + this.area.rows, rows: count })
  }
  getRowsAbove(count = 1) {
    return this.#at({ ...this.area, row: this.area.row - count, rows: count })
  }
  getColumnsAfter(count = 1) {
    return this.#at({ ...this.area, col: this.area.col + this.area.cols, cols: count })
  }
  getColumnsBefore(count = 1) {
    return this.#at({ ...this.area, col: this.area.col - count, cols: count })
  }
  getEntireRow() {
    return this.#at({ ...this.area, col: 0, cols: MAX_COLS })
  }
  getEntireColumn() {
    return this.#at({ ...this.area, row: 0, rows: MAX_ROWS })
  }
  getOffsetRange(rows: number, columns: number) {
    return this.#at({ ...this.area, row: this.area.row + rows, col: this.area.col + columns })
  }
  getResizedRange(rows: number, columns: number) {
    return this.#at({ ...this.area, rows: this.area.rows + rows, cols: this.area.cols + columns })
  }
  getAbsoluteResizedRange(rows: number, columns: number) {
    return this.#at({ ...this.area, rows, cols: columns })
  }
  getBoundingRect(other: unknown) {
    return this.#at(bounding(this.area, this.#other(other)))
  }
  getIntersection(other: unknown) {
    const shared = this.getIntersectionOrNullObject(other)
    if (!shared) throw itemNotFound()
    return shared
  }
  getIntersectionOrNullObject(other: unknown) {
    const shared = intersect(this.area, this.#other(other))
    return shared && this.#at(shared)
  }
  getUsedRange(valuesOnly = false) {
    return this.getUsedRangeOrNullObject(valuesOnly) ?? this.getCell(0, 0)
  }
  getUsedRangeOrNullObject(valuesOnly = false) {
    const used = this.context.grid.used(this.sheetId, valuesOnly)
    const shared = used && intersect(used, this.area)
    return shared && this.#at(shared)
  }
  getSpecialCells(type: string, valueTypes?: string) {
    const found = this.getSpecialCellsOrNullObject(type, valueTypes)
    if (!found) throw itemNotFound()
    return found
  }
  getSpecialCellsOrNullObject(type: string, valueTypes?: string) {
    return this.#areas(specialAreas(this, type, valueTypes))
  }
  getMergedAreasOrNullObject() {
    return this.#areas(this.#merged())
  }
  getTables(fullyContained = false) {
    const tables = this.context
      .tablesIn(this.sheetId, this.area)
      .filter((table) => !fullyContained || contains(this.area, table.area))
    return new TableScopedCollection(this.context, tables)
  }

  merge(across = false) {
    this.context.requireOption(this.sheetId, 'allowFormatCells')
    if (this.context.tablesIn(this.sheetId, this.area).length > 0) throw invalidArgument()
    const rows = across ? Array.from({ length: this.area.rows }, (_, i) => this.getRow(i).area) : [this.area]
    for (const area of rows) if (area.rows * area.cols > 1) this.context.grid.merge(this.sheetId, area)
  }
  unmerge() {
    this.context.requireOption(this.sheetId, 'allowFormatCells')
    this.context.grid.unmerge(this.sheetId, this.area)
  }
  clear(applyTo = 'All') {
    clearPlace(this, applyTo)
  }
  select() {
    this.context.grid.activateSheet(this.sheetId)
    this.context.grid.select(this.sheetId, this.area)
  }
  getCellProperties(wanted: Readonly<Record<string, unknown>>) {
    return getCellProperties(this, wanted, (row, col) => this.getCell(row, col))
  }
  setCellProperties(properties: unknown) {
    setCellProperties(this, properties, (row, col) => this.getCell(row, col))
  }
  /** The client checks a matrix's size so before it splits a large one. */
  _validateArraySize(rows: number, columns: number) {
    if (rows !== this.area.rows || columns !== this.area.cols) throw wrongSize()
  }

  #at(area: Area): Range {
    const fits =
      area.row >= 0 &&
      area.col >= 0 &&
      area.rows > 0 &&
      area.cols > 0 &&
      area.row + area.rows <= MAX_ROWS &&
      area.col + area.cols <= MAX_COLS
    if (!fits) throw invalidArgument()
    return new Range(this.context, this.sheetId, area)
  }
  #other(other: unknown): Area {
    const place = placeOf(this.context, other, this.sheetId)
    if (place.sheetId !== this.sheetId) throw invalidArgument()
    return place.area
  }
  #areas(areas: readonly Area[]): RangeAreas | null {
    return areas.length > 0 ? new RangeAreas(this.context, this.sheetId, areas) : null
  }
  #merged(): Area[] {
    return this.context.grid.merges(this.sheetId).filter((merged) => intersect(merged, this.area))
  }
  #map<T>(make: (value: CellValue, numberFormat: string) => T): T[][] | null {
    const { row, col } = this.area
    const formatAt = (i: number, j: number) =>
      this.context.grid.format(this.sheetId, row + i, col + j).numberFormat
    return this.values?.map((line, i) => line.map((value, j) => make(value, formatAt(i, j)))) ?? null
  }
}
