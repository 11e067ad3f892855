import { OWN_SHEET } from '../../marksheet/layout/find'
import { addressArea } from '../edit/address'
import { ROWS_AT_ONCE, rowsAddress, type HeldCells } from './cells'
import { SheetPresence } from '../edit/sheetPresence'
import { pieces, type Part } from '../edit/work'

/** What a sheet holds from row and column 0 on, and whether it is in sight. */
export interface Content extends HeldCells {
  readonly isVisible: boolean
}

/**
 * A sheet that may be one of ours to print, and what it holds: its first rows at once, the others where there are more. It can be looked at
 * again.
 */
export class HeldSheet extends SheetPresence {
  #first: Excel.Range | undefined
  #used: Excel.Range | undefined
  #rest: Excel.Range[] = []

  /** Asks for the first rows and how far the sheet is filled. */
  look(): Part {
    return {
      cells: ROWS_AT_ONCE,
      queue: (context) => {
        const sheet = context.workbook.worksheets.getItem(this.key())
        this.#first = sheet.getRange(rowsAddress(0, ROWS_AT_ONCE - 1)).getUsedRangeOrNullObject(true)
        this.#used = sheet.getUsedRangeOrNullObject(true)
        this.#rest = []
        this.#first.load('values, formulas, address')
        this.#used.load('address')
      },
    }
  }

  /** Asks for the rows that the first look did not bring. */
  rest(): Part[] {
    const rows = !this.#used || this.#used.isNullObject ? 0 : addressArea(this.#used.address).bottom + 1
    return pieces(ROWS_AT_ONCE, rows - 1, ROWS_AT_ONCE).map(({ first, last }) => ({
      cells: ROWS_AT_ONCE,
      queue: (context) => {
        const range = context.workbook.worksheets.getItem(this.key()).getRange(rowsAddress(first, last))
        range.load('values, formulas')
        this.#rest.push(range)
      },
    }))
  }

  isOurs(): boolean {
    return String(this.content().values[0]?.[0] ?? '').startsWith(OWN_SHEET)
  }

  content(): Content {
    return { isVisible: this.isVisible(), values: this.#cells('values'), formulas: this.#cells('formulas') }
  }

  #cells(which: 'values' | 'formulas'): unknown[][] {
    if (!this.#first || this.#first.isNullObject) return []
    const { top, left } = addressArea(this.#first.address)
    const first = (this.#first[which] as unknown[][]).map((row) => [...Array<unknown>(left).fill(''), ...row])
    const all = [...Array.from({ length: top }, () => []), ...first]
    if (this.#rest.length === 0) return all
    const empty = Array.from({ length: ROWS_AT_ONCE - all.length }, () => [])
    return [...all, ...empty, ...this.#rest.flatMap((range) => range[which] as unknown[][])]
  }
}
