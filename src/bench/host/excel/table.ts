import type { ExcelContext } from '../excelContext'
import type { TableFacts } from '../book'
import { invalidArgument, invalidOperation, itemAlreadyExists } from '../errors'
import { HostObject } from '../hostObject'
import { placeOf } from '../place'
import { bodyOf, resizeTable } from '../tables'
import { TableColumnCollection } from './tableColumnCollection'
import { TableRowCollection } from './tableRowCollection'

/** A table of a sheet. */
export class Table extends HostObject {
  static override readonly className = 'Table'
  static override readonly scalars = [
    'id',
    'name',
    'showBandedRows',
    'showFilterButton',
    'showHeaders',
    'showTotals',
    'style',
  ]
  readonly #facts: TableFacts

  constructor(
    readonly context: ExcelContext,
    facts: TableFacts,
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
    if (!/^[A-Za-z_\\][\w.]{0,254}$/.test(name)) throw invalidArgument()
    const same = (other: TableFacts) => other.name.toLowerCase() === name.toLowerCase()
    if (this.context.book.tables.some((other) => other !== this.#facts && same(other)))
      throw itemAlreadyExists()
    this.#facts.name = name
  }
  get style() {
    return this.#facts.style
  }
  set style(style: string) {
    this.#facts.style = style
  }
  get showHeaders() {
    return this.#facts.showHeaders
  }
  get showTotals() {
    return this.#facts.showTotals
  }
  get showFilterButton() {
    return this.#facts.showFilterButton
  }
  set showFilterButton(shown: boolean) {
    this.#facts.showFilterButton = shown
  }
  get showBandedRows() {
    return this.#facts.showBandedRows
  }
  set showBandedRows(shown: boolean) {
    this.#facts.showBandedRows = shown
  }
  get rows() {
    return new TableRowCollection(this.context, this.#facts)
  }
  get columns() {
    return new TableColumnCollection(this.context, this.#facts)
  }
  get worksheet() {
    return this.context.worksheet(this.#facts.sheetId)
  }
  getRange() {
    return this.context.range(this.#facts.sheetId, this.#facts.area)
  }
  getHeaderRowRange() {
    if (!this.#facts.showHeaders) throw invalidOperation()
    return this.getRange().getRow(0)
  }
  getDataBodyRange() {
    return this.context.range(this.#facts.sheetId, bodyOf(this.#facts))
  }
  resize(range: unknown) {
    resizeTable(this.context, this.#facts, placeOf(this.context, range, this.#facts.sheetId).area)
  }
  /** The cells stay, the table goes. */
  convertToRange() {
    const range = this.getRange()
    this.#remove()
    return range
  }
  delete() {
    this.getRange().clear()
    this.#remove()
  }

  #remove() {
    this.context.book.tables = this.context.book.tables.filter((table) => table !== this.#facts)
  }
}
