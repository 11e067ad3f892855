import type { ExcelContext } from '../excelContext'
import type { TableFacts } from '../book'
import { HostObject } from '../hostObject'
import { bodyOf } from '../tables'

/** One column of a table. */
export class TableColumn extends HostObject {
  static override readonly className = 'TableColumn'
  static override readonly scalars = ['id', 'index', 'name', 'values']
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
  override get wireId() {
    return String(this.id)
  }
  get id() {
    return this.#index + 1
  }
  get index() {
    return this.#index
  }
  get name(): string {
    return String(this.getHeaderRowRange().values?.[0]?.[0] ?? '')
  }
  set name(name: string) {
    this.getHeaderRowRange().values = `'${name}`
  }
  get values(): unknown {
    return this.getRange().values
  }
  set values(values: unknown) {
    this.getRange().values = values
  }
  getRange() {
    return this.context.range(this.#table.sheetId, this.#table.area).getColumn(this.#index)
  }
  getHeaderRowRange() {
    return this.getRange().getRow(0)
  }
  getDataBodyRange() {
    return this.context.range(this.#table.sheetId, bodyOf(this.#table)).getColumn(this.#index)
  }
}
