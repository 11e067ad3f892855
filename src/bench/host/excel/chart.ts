import type { ExcelContext } from '../excelContext'
import type { ChartFacts } from '../book'
import { HostObject } from '../hostObject'
import { placeOf } from '../place'
import { ChartTitle } from './chartTitle'

/** One chart; lengths in points. */
export class Chart extends HostObject {
  static override readonly className = 'Chart'
  static override readonly scalars = ['chartType', 'height', 'id', 'left', 'name', 'top', 'width']
  readonly #facts: ChartFacts

  constructor(
    readonly context: ExcelContext,
    readonly sheetId: string,
    facts: ChartFacts,
  ) {
    super()
    this.#facts = facts
  }
  override get wireId() {
    return this.#facts.id
  }
  get id() {
    return this.#facts.id
  }
  get name() {
    return this.#facts.name
  }
  set name(name: string) {
    this.#facts.name = name
  }
  get chartType() {
    return this.#facts.chartType
  }
  set chartType(chartType: string) {
    this.#facts.chartType = chartType
  }
  get left() {
    return this.#facts.left
  }
  set left(left: number) {
    this.#facts.left = left
  }
  get top() {
    return this.#facts.top
  }
  set top(top: number) {
    this.#facts.top = top
  }
  get width() {
    return this.#facts.width
  }
  set width(width: number) {
    this.#facts.width = width
  }
  get height() {
    return this.#facts.height
  }
  set height(height: number) {
    this.#facts.height = height
  }
  get title() {
    return new ChartTitle(this.#facts)
  }
  get worksheet() {
    return this.context.worksheet(this.sheetId)
  }
  /** Puts the chart over the cells from the one to the other. */
  setPosition(startCell: unknown, endCell: unknown = startCell) {
    const { grid } = this.context
    const from = placeOf(this.context, startCell, this.sheetId).area
    const to = placeOf(this.context, endCell, this.sheetId).area
    const widths = (first: number, last: number) =>
      sum(first, last, (col) => grid.columnWidth(this.sheetId, col))
    const heights = (first: number, last: number) =>
      sum(first, last, (row) => grid.rowHeight(this.sheetId, row))
    this.#facts.left = widths(0, from.col)
    this.#facts.top = heights(0, from.row)
    this.#facts.width = widths(from.col, to.col + to.cols)
    this.#facts.height = heights(from.row, to.row + to.rows)
  }
  delete() {
    const sheet = this.context.book.sheet(this.sheetId)
    sheet.charts = sheet.charts.filter((facts) => facts !== this.#facts)
  }
}

/** The sizes of the rows or columns from `first` to before `last`, together. */
function sum(first: number, last: number, size: (index: number) => number): number {
  return Array.from({ length: last - first }, (_, index) => size(first + index)).reduce((a, b) => a + b, 0)
}
