import type { ExcelContext } from '../excelContext'
import { cellArea } from '../../grid/area'
import { HostObject } from '../hostObject'

/** One page break. */
export class PageBreak extends HostObject {
  static override readonly className = 'PageBreak'
  readonly #at: number

  constructor(
    readonly context: ExcelContext,
    readonly sheetId: string,
    readonly kind: 'rowBreaks' | 'columnBreaks',
    at: number,
  ) {
    super()
    this.#at = at
  }
  getCellAfterBreak() {
    const cell = this.kind === 'rowBreaks' ? cellArea(this.#at, 0) : cellArea(0, this.#at)
    return this.context.range(this.sheetId, cell)
  }
  delete() {
    const facts = this.context.book.sheet(this.sheetId)
    facts[this.kind] = facts[this.kind].filter((at) => at !== this.#at)
  }
}
