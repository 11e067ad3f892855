import { areaAddress } from '../../marksheet/layout/matrix'
import type { SheetRef } from '../edit/cells'
import type { Edit } from '../edit/edit'
import { TABLE_STYLE } from '../workbook/tables'
import type { Part } from '../edit/work'

/** The requirement set in which tables can be resized. */
const RESIZES = '1.13'

/**
 * Makes the table whose heads stand in row `head` (from 0) reach over so many rows below them; at least one. Columns that were added on its
 * right stay in it; where a teacher has turned it into plain cells, these stay plain. Taking back gives it the length that it had.
 */
export function recordTableEdit(sheet: SheetRef, head: number, rows: number): Edit {
  const table = new HeadedTable(sheet, head)
  return {
    what: `the table on ${sheet.name}`,
    keep: [() => [table.find()], () => [table.bounds('before')]],
    check: () => undefined,
    write: () => [table.reach(Math.max(1, rows))],
    look: [() => [table.find()], () => [table.bounds('now')]],
    putBack: () => table.putBack(),
    left: () => [],
  }
}

/** The table whose heads stand in a row of a sheet, if there is one. */
class HeadedTable {
  #found: Excel.TableScopedCollection | undefined
  readonly #bounds: { before?: Excel.Range; now?: Excel.Range } = {}

  constructor(
    private readonly sheet: SheetRef,
    private readonly head: number,
  ) {}

  find(): Part {
    const first = areaAddress({ top: this.head, left: 0, bottom: this.head, right: 0 })
    return this.#part((sheet) => {
      this.#found = sheet.getRange(first).getTables(false)
      this.#found.load('items/id')
    })
  }

  bounds(when: 'before' | 'now'): Part {
    return this.#part((sheet) => {
      for (const { id } of this.#found?.items ?? []) {
        const range = sheet.tables.getItem(id).getRange()
        range.load('address')
        this.#bounds[when] = range
      }
    })
  }

  reach(rows: number): Part {
    return this.#part((sheet) => {
      for (const { id } of this.#found?.items ?? []) {
        const table = sheet.tables.getItem(id)
        resize(sheet, table, table.getHeaderRowRange().getResizedRange(rows, 0))
      }
    })
  }

  /** Nothing to do where the table reaches as far as it did. */
  putBack(): Part[] {
    const [before, now] = [this.#bounds.before?.address, this.#bounds.now?.address]
    if (before === undefined || before === now) return []
    return [
      this.#part((sheet) => {
        const bounds = sheet.getRange(before.replace(/^.*!/, ''))
        for (const { id } of this.#found?.items ?? []) resize(sheet, sheet.tables.getItem(id), bounds)
      }),
    ]
  }

  #part(queue: (sheet: Excel.Worksheet) => void): Part {
    return {
      cells: 1,
      queue: ({ workbook }) => {
        queue(workbook.worksheets.getItem(this.sheet.id))
      },
    }
  }
}

/** Gives a table other bounds; where Excel is too old for that, by making it anew. */
function resize(sheet: Excel.Worksheet, table: Excel.Table, bounds: Excel.Range): void {
  if (Office.context.requirements.isSetSupported('ExcelApi', RESIZES)) {
    table.resize(bounds)
    return
  }
  table.convertToRange()
  sheet.tables.add(bounds, true).style = TABLE_STYLE
}
