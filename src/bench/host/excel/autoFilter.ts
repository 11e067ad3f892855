import type { ExcelContext } from '../excelContext'
import { cellText } from '../../grid/cellText'
import type { FilterFacts } from '../book'
import { invalidArgument, itemNotFound, notOnBench } from '../errors'
import { HostObject } from '../hostObject'
import { placeOf } from '../place'

/** A sheet's filter. The bench filters by lists of texts (`filterOn: 'Values'`) and hides the rows left out. */
export class AutoFilter extends HostObject {
  static override readonly className = 'AutoFilter'
  static override readonly scalars = ['enabled', 'isDataFiltered', 'criteria']

  constructor(
    readonly context: ExcelContext,
    readonly sheetId: string,
  ) {
    super()
  }
  get enabled() {
    return this.#filter !== null
  }
  get isDataFiltered() {
    return (this.#filter?.columns.size ?? 0) > 0
  }
  get criteria() {
    const filter = this.#filter
    if (!filter) return []
    return Array.from({ length: filter.area.cols }, (_, i) => {
      const values = filter.columns.get(i)
      return values ? { filterOn: 'Values', values } : { filterOn: '' }
    })
  }
  apply(range: unknown, columnIndex?: number, criteria?: { filterOn?: string; values?: string[] }) {
    this.context.requireOption(this.sheetId, 'allowAutoFilter')
    const { area } = placeOf(this.context, range, this.sheetId)
    const columns = new Map(this.#filter?.columns)
    if (columnIndex !== undefined && criteria) {
      if (criteria.filterOn !== 'Values')
        throw notOnBench(`AutoFilter.apply(filterOn ${String(criteria.filterOn)})`)
      if (columnIndex < 0 || columnIndex >= area.cols) throw invalidArgument()
      columns.set(columnIndex, criteria.values ?? [])
    }
    this.#set({ area, columns })
  }
  clearColumnCriteria(columnIndex: number) {
    const filter = this.#filter
    if (!filter) return
    const columns = new Map(filter.columns)
    columns.delete(columnIndex)
    this.#set({ ...filter, columns })
  }
  clearCriteria() {
    const filter = this.#filter
    if (filter) this.#set({ ...filter, columns: new Map() })
  }
  reapply() {
    this.#set(this.#filter)
  }
  remove() {
    this.clearCriteria()
    this.#set(null)
  }
  getRange() {
    const range = this.getRangeOrNullObject()
    if (!range) throw itemNotFound()
    return range
  }
  getRangeOrNullObject() {
    const filter = this.#filter
    return filter && this.context.range(this.sheetId, filter.area)
  }

  get #filter() {
    return this.context.book.sheet(this.sheetId).filter
  }
  #set(filter: FilterFacts | null) {
    this.context.book.sheet(this.sheetId).filter = filter
    if (!filter) return
    const { grid } = this.context
    const { row, col, rows } = filter.area
    for (let n = row + 1; n < row + rows; n++) {
      const passes = [...filter.columns].every(([column, texts]) => {
        const cell = { row: n, col: col + column, rows: 1, cols: 1 }
        const value = grid.values(this.sheetId, cell)[0]?.[0] ?? ''
        return texts.includes(cellText(value, grid.format(this.sheetId, n, col + column).numberFormat))
      })
      if (grid.rowHidden(this.sheetId, n) === passes) grid.hideRows(this.sheetId, n, 1, !passes)
    }
  }
}
