import type { ExcelContext } from '../excelContext'
import type { TableFacts } from '../book'
import { HostCollection } from '../hostObject'
import { TableColumn } from './tableColumn'

/** The columns of a table. */
export class TableColumnCollection extends HostCollection<TableColumn> {
  static override readonly className = 'TableColumnCollection'
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
    return Array.from({ length: this.count }, (_, i) => new TableColumn(this.context, this.#table, i))
  }
  /** By name in any case, or by id. */
  protected override find(key: unknown) {
    const columns = this.all()
    const wanted = String(key).toLowerCase()
    return (
      columns.find((column) => column.name.toLowerCase() === wanted) ?? columns.find(({ id }) => id === key)
    )
  }
  get count() {
    return this.#table.area.cols
  }
}
