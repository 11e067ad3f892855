import { OWN_SHEET } from '../../marksheet/layout/find'
import { addressArea } from '../edit/address'
import { ROWS_AT_ONCE, rowsAddress, type HeldCells } from './cells'
import { pieces, type Part } from '../edit/work'

/** What a sheet holds from row and column 0 on, and whether it is in sight. */
export interface Content extends HeldCells {
  readonly isVisible: boolean
}

/**
 * A sheet that may be one of ours to print, by its id, or by its name where it is yet to be added: whether it is there, and what it holds;
 * its first rows at once, the others where there are more. It can be looked at again.
 */
export class HeldSheet {
  #sheet: Excel.Worksheet | undefined
  #added: Excel.Worksheet | undefined
  #first: Excel.Range | undefined
  #used: Excel.Range | undefined
  #rest: Excel.Range[] = []

  constructor(private readonly from: string) {}

  /** The id once it is known. */
  key(): string {
    try {
      return this.#added?.id ?? this.from
    } catch {
      return this.from
    }
  }

  /** Notes the id of the sheet, once it is written. */
  added(): Part {
    return {
      cells: 1,
      queue: (context) => {
        this.#added = context.workbook.worksheets.getItem(this.from)
        this.#added.load('id')
      },
    }
  }

  /** Asks whether the sheet is there, in sight, protected. */
  presence(): Part {
    return {
      cells: 1,
      queue: (context) => {
        const sheet = context.workbook.worksheets.getItemOrNullObject(this.key())
        sheet.load('visibility')
        sheet.protection.load('protected')
        this.#sheet = sheet
      },
    }
  }

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

  isThere(): boolean {
    return this.#sheet?.isNullObject === false
  }

  isProtected(): boolean {
    return this.isThere() && this.#sheet?.protection.protected === true
  }

  isOurs(): boolean {
    return String(this.content().values[0]?.[0] ?? '').startsWith(OWN_SHEET)
  }

  content(): Content {
    const isVisible = this.isThere() && this.#sheet?.visibility === 'Visible'
    return { isVisible, values: this.#cells('values'), formulas: this.#cells('formulas') }
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
