import type { ExcelContext } from '../excelContext'
import type { TableFacts } from '../book'
import { HostObject } from '../hostObject'
import { bodyOf, removeTableRow } from '../tables'

/** One row of a table's body. */
export class TableRow extends HostObject {
  static override readonly className = 'TableRow'
  static override readonly scalars = ['index', 'values']
  readonly #table: TableFacts
  readonly #index: number

  constructor(
    readonly context: ExcelContext,
    table: TableFacts,
    index: number,
  ) {
    super()
    this.#table = table
    this.#index = index
  }
  get index() {
    return this.#index
  }
  get values(): unknown {
    return this.getRange().values
  }
  set values(values: unknown) {
    this.getRange().values = values
  }
  getRange() {
    return this.context.range(this.#table.sheetId, bodyOf(this.#table)).getRow(this.#index)
  }
  delete() {
    removeTableRow(this.context, this.#table, this.#index)
  }
}
