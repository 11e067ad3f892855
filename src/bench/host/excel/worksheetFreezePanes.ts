import type { ExcelContext } from '../excelContext'
import { MAX_COLS, MAX_ROWS } from '../../grid/area'
import { itemNotFound } from '../errors'
import { HostObject } from '../hostObject'
import { placeOf } from '../place'

/** The rows and columns of a sheet that stay in sight. */
export class WorksheetFreezePanes extends HostObject {
  static override readonly className = 'WorksheetFreezePanes'

  constructor(
    readonly context: ExcelContext,
    readonly sheetId: string,
  ) {
    super()
  }
  freezeRows(count = 1) {
    this.context.grid.freeze(this.sheetId, count, 0)
  }
  freezeColumns(count = 1) {
    this.context.grid.freeze(this.sheetId, 0, count)
  }
  /** Freezes everything down and across to the end of a range. */
  freezeAt(range: unknown) {
    const { area } = placeOf(this.context, range, this.sheetId)
    const rows = area.rows === MAX_ROWS ? 0 : area.row + area.rows
    const cols = area.cols === MAX_COLS ? 0 : area.col + area.cols
    this.context.grid.freeze(this.sheetId, rows, cols)
  }
  unfreeze() {
    this.context.grid.freeze(this.sheetId, 0, 0)
  }
  getLocation() {
    const location = this.getLocationOrNullObject()
    if (!location) throw itemNotFound()
    return location
  }
  getLocationOrNullObject() {
    const { rows, cols } = this.context.grid.frozen(this.sheetId)
    if (rows === 0 && cols === 0) return null
    return this.context.range(this.sheetId, {
      row: 0,
      col: 0,
      rows: rows || MAX_ROWS,
      cols: cols || MAX_COLS,
    })
  }
}
