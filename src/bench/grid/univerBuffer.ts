import { CellValueType } from '@univerjs/core'
import type { ICellData, IStyleData } from '@univerjs/core'
import type { Content } from './grid'

type Cells = Record<number, Record<number, ICellData>>

/** What Univer is to be told of one sheet at the next flush. */
export interface PendingSheet {
  /** Whether contents changed, so that formulas must be calculated. */
  contents: boolean
  readonly cells: Cells
}

/** Text that looks like a number must be marked, or Univer takes it for one. */
const LOOKS_NUMERIC = /^\s*[-+.\d]/

function cellData(content: Exclude<Content, null>): ICellData {
  const cleared = { f: null, si: null, p: null }
  if (typeof content === 'object') return { ...cleared, f: content.formula, v: content.value ?? null }
  if (content === '') return { ...cleared, v: null, t: null }
  if (typeof content === 'number') return { ...cleared, v: content, t: CellValueType.NUMBER }
  if (typeof content === 'boolean') return { ...cleared, v: content ? 1 : 0, t: CellValueType.BOOLEAN }
  const t =
    LOOKS_NUMERIC.test(content) || content.startsWith('=') ? CellValueType.FORCE_STRING : CellValueType.STRING
  return { ...cleared, v: content, t }
}

/** Gathers cell contents and styles, so that Univer gets one change for each sheet and request. */
export class UniverBuffer {
  readonly #sheets = new Map<string, PendingSheet>()

  get isEmpty(): boolean {
    return this.#sheets.size === 0
  }

  write(id: string, row: number, col: number, contents: readonly (readonly Content[])[]): void {
    const sheet = this.#sheet(id)
    sheet.contents = true
    contents.forEach((line, i) => {
      const cells = (sheet.cells[row + i] ??= {})
      line.forEach((content, j) => {
        if (content === null) return
        const before = cells[col + j]
        const data = cellData(content)
        if (before?.s !== undefined) data.s = before.s
        if (before?.custom !== undefined) data.custom = before.custom
        cells[col + j] = data
      })
    })
  }

  style(id: string, row: number, col: number, style: IStyleData): void {
    const cell = this.#cell(id, row, col)
    cell.s = typeof cell.s === 'object' ? { ...cell.s, ...style } : style
  }

  custom(id: string, row: number, col: number, custom: ICellData['custom']): void {
    this.#cell(id, row, col).custom = custom
  }

  /** What waits for a cell. */
  peek(id: string, row: number, col: number): ICellData | undefined {
    return this.#sheets.get(id)?.cells[row]?.[col]
  }

  /** Hands out everything gathered, and starts afresh. */
  take(): ReadonlyMap<string, PendingSheet> {
    const taken = new Map(this.#sheets)
    this.#sheets.clear()
    return taken
  }

  #cell(id: string, row: number, col: number): ICellData {
    return ((this.#sheet(id).cells[row] ??= {})[col] ??= {})
  }

  #sheet(id: string): PendingSheet {
    let sheet = this.#sheets.get(id)
    if (!sheet) this.#sheets.set(id, (sheet = { contents: false, cells: {} }))
    return sheet
  }
}
