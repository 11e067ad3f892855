import type { ExcelContext } from '../excelContext'
import { HostCollection } from '../hostObject'
import { placeOf } from '../place'
import { PageBreak } from './pageBreak'

/** The page breaks a sheet was given: before rows (`rowBreaks`) or columns (`columnBreaks`). */
export class PageBreakCollection extends HostCollection<PageBreak> {
  static override readonly className = 'PageBreakCollection'

  constructor(
    readonly context: ExcelContext,
    readonly sheetId: string,
    readonly kind: 'rowBreaks' | 'columnBreaks',
  ) {
    super()
  }
  override all() {
    return this.#facts()[this.kind].map((at) => new PageBreak(this.context, this.sheetId, this.kind, at))
  }
  protected override find(index: unknown) {
    return typeof index === 'number' ? this.all()[index] : undefined
  }
  /** Adds a break before the first cell of a range. */
  add(range: unknown) {
    const { area } = placeOf(this.context, range, this.sheetId)
    const at = this.kind === 'rowBreaks' ? area.row : area.col
    this.#facts()[this.kind] = [...new Set([...this.#facts()[this.kind], at])].sort((a, b) => a - b)
    return new PageBreak(this.context, this.sheetId, this.kind, at)
  }
  removePageBreaks() {
    this.#facts()[this.kind] = []
  }

  #facts() {
    return this.context.book.sheet(this.sheetId)
  }
}
