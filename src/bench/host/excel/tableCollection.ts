import type { ExcelContext } from '../excelContext'
import { HostCollection } from '../hostObject'
import { placeOf } from '../place'
import { makeTable } from '../tables'
import { Table } from './table'

/** The tables of a sheet, or of the whole workbook (`sheetId` null). */
export class TableCollection extends HostCollection<Table> {
  static override readonly className = 'TableCollection'
  static override readonly scalars = ['count']

  constructor(
    readonly context: ExcelContext,
    readonly sheetId: string | null,
  ) {
    super()
  }
  override all() {
    return this.context.book.tables
      .filter((table) => this.sheetId === null || table.sheetId === this.sheetId)
      .map((facts) => new Table(this.context, facts))
  }
  protected override find(key: unknown) {
    const wanted = String(key).toLowerCase()
    return this.all().find((table) => table.id === key || table.name.toLowerCase() === wanted)
  }
  get count() {
    return this.getCount()
  }
  add(address: unknown, hasHeaders: boolean) {
    const { sheetId, area } = placeOf(this.context, address, this.sheetId)
    return new Table(this.context, makeTable(this.context, sheetId, area, hasHeaders))
  }
}
