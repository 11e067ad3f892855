import type { ExcelContext } from '../excelContext'
import type { TableFacts } from '../book'
import { itemNotFound } from '../errors'
import { HostCollection } from '../hostObject'
import { Table } from './table'

/** The tables that a range touches. */
export class TableScopedCollection extends HostCollection<Table> {
  static override readonly className = 'TableScopedCollection'
  readonly #tables: readonly TableFacts[]

  constructor(
    readonly context: ExcelContext,
    tables: readonly TableFacts[],
  ) {
    super()
    this.#tables = tables
  }
  override all() {
    return this.#tables.map((facts) => new Table(this.context, facts))
  }
  protected override find(key: unknown) {
    return this.all().find((table) => table.id === key || table.name === key)
  }
  getFirst() {
    const first = this.all()[0]
    if (!first) throw itemNotFound()
    return first
  }
}
