import type { ExcelContext } from '../excelContext'
import type { TableFacts } from '../book'
import { invalidArgument } from '../errors'
import { HostCollection } from '../hostObject'
import { bodyOf, insertTableRows } from '../tables'
import { TableRow } from './tableRow'

/** The rows of a table's body. */
export class TableRowCollection extends HostCollection<TableRow> {
  static override readonly className = 'TableRowCollection'
  static override readonly scalars = ['count']
  readonly #table: TableFacts

  constructor(
    readonly context: ExcelContext,
    table: TableFacts,
  ) {
    super()
    this.#table = table
  }
  override all() {
    return Array.from({ length: this.count }, (_, i) => new TableRow(this.context, this.#table, i))
  }
  protected override find(index: unknown) {
    return typeof index === 'number' ? this.all()[index] : undefined
  }
  get count() {
    return bodyOf(this.#table).rows
  }
  /** Adds rows before an index, or at the end; without values one empty row. */
  add(index = -1, values?: unknown) {
    const lines = values ?? [new Array<string>(this.#table.area.cols).fill('')]
    if (!Array.isArray(lines)) throw invalidArgument()
    const rows = (Array.isArray(lines[0]) ? lines : [lines]) as (string | number | boolean)[][]
    const place = insertTableRows(this.context, this.#table, index, rows)
    const body = bodyOf(this.#table)
    const added = this.context.range(this.#table.sheetId, {
      ...body,
      row: body.row + place,
      rows: rows.length,
    })
    added.values = rows
    return new TableRow(this.context, this.#table, place)
  }
}
