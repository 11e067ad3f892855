import type { ICellData, IStyleData, Nullable } from '@univerjs/core'
import type { FWorkbook } from '@univerjs/sheets/facade'
import type { Area } from './area'
import { eachCell } from './area'
import type { CellFormat } from './grid'
import { PLAIN } from './grid'
import type { UniverBuffer } from './univerBuffer'
import { fromUniverStyle, toUniverStyle } from './univerStyle'

/** Traits of a format that Univer's style lacks; they are kept in the cell's custom data. */
const EXTRA = ['locked', 'formulaHidden', 'indent'] as const

/** Reads and writes the formats of Univer's cells, what waits in the buffer included. */
export class UniverFormats {
  /** Formats by the id of Univer's style, which never changes its meaning. */
  readonly #byStyle = new Map<string, CellFormat>()

  constructor(
    readonly workbook: FWorkbook,
    readonly buffer: UniverBuffer,
  ) {}

  read(id: string, row: number, col: number): CellFormat {
    const cell = this.#cell(id, row, col)
    const pending = this.buffer.peek(id, row, col)
    const format = pending?.s
      ? fromUniverStyle({ ...this.#style(id, row, col, cell), ...(pending.s as IStyleData) })
      : this.#told(id, row, col, cell)
    const custom = pending?.custom ?? cell?.custom
    if (!custom) return format
    const extra = Object.fromEntries(
      EXTRA.filter((key) => key in custom).map((key) => [key, custom[key] as unknown]),
    )
    return { ...format, ...extra }
  }

  write(id: string, area: Area, patch: Partial<CellFormat>): void {
    const style = toUniverStyle(patch)
    const extra = Object.fromEntries(EXTRA.filter((key) => key in patch).map((key) => [key, patch[key]]))
    const hasStyle = Object.keys(style).length > 0
    const hasExtra = Object.keys(extra).length > 0
    eachCell(area, (row, col) => {
      if (hasStyle) this.buffer.style(id, row, col, style)
      if (!hasExtra) return
      const custom = this.buffer.peek(id, row, col)?.custom ?? this.#cell(id, row, col)?.custom
      this.buffer.custom(id, row, col, { ...custom, ...extra })
    })
  }

  #sheet(id: string) {
    return this.workbook.getWorkbook().getSheetBySheetId(id)
  }
  #cell(id: string, row: number, col: number): Nullable<ICellData> {
    return this.#sheet(id)?.getCellRaw(row, col)
  }
  /** The format that Univer knows of. */
  #told(id: string, row: number, col: number, cell: Nullable<ICellData>): CellFormat {
    if (typeof cell?.s !== 'string') {
      const style = this.#style(id, row, col, cell)
      return style ? fromUniverStyle(style) : PLAIN
    }
    let format = this.#byStyle.get(cell.s)
    if (!format) this.#byStyle.set(cell.s, (format = fromUniverStyle(this.#style(id, row, col, cell) ?? {})))
    return format
  }
  #style(id: string, row: number, col: number, cell: Nullable<ICellData>): IStyleData | null {
    if (cell?.s) return this.workbook.getWorkbook().getStyles().getStyleByCell(cell) ?? null
    const sheet = this.#sheet(id)
    const rowStyle = sheet?.getRowStyle(row)
    const columnStyle = sheet?.getColumnStyle(col)
    return rowStyle || columnStyle ? { ...columnStyle, ...rowStyle } : null
  }
}
