import type { Area } from './area'
import { MAX_COLS, MAX_ROWS, WHOLE_SHEET, bounding, cellArea, contains, eachCell, intersect } from './area'
import type { CellFormat, CellNote, CellValue, ConditionalRule, Content } from './grid'
import { PLAIN, overlay } from './grid'
import { Sparse } from './sparse'

/** What a cell is filled with: a value, or a formula and its value. */
type Filled = CellValue | { readonly formula: string; readonly value: CellValue }

/** A patch over whole rows or columns, kept apart from the cells. */
interface Layer {
  readonly area: Area
  readonly patch: Partial<CellFormat>
}

/** One sheet of the in-memory grid. */
export class MemorySheet {
  visible = true
  colour = ''
  gridlines = true
  frozen = { rows: 0, cols: 0 }
  merges: Area[] = []
  rules: readonly ConditionalRule[] = []
  notes: CellNote[] = []
  readonly widths = new Map<number, number>()
  readonly heights = new Map<number, number>()
  readonly hiddenRows = new Set<number>()
  readonly hiddenCols = new Set<number>()
  readonly #cells = new Sparse<Filled>()
  readonly #formats = new Sparse<CellFormat>()
  #layers: Layer[] = []

  constructor(
    readonly id: string,
    public name: string,
  ) {}

  used(valuesOnly: boolean): Area | null {
    let area: Area | null = null
    const widen = (_: unknown, row: number, col: number) => {
      area = area ? bounding(area, cellArea(row, col)) : cellArea(row, col)
    }
    this.#cells.each(WHOLE_SHEET, widen)
    if (!valuesOnly) this.#formats.each(WHOLE_SHEET, widen)
    return area
  }

  value(row: number, col: number): CellValue {
    const filled = this.#cells.get(row, col)
    return filled === undefined ? '' : typeof filled === 'object' ? filled.value : filled
  }

  formula(row: number, col: number): CellValue {
    const filled = this.#cells.get(row, col)
    return filled === undefined ? '' : typeof filled === 'object' ? filled.formula : filled
  }

  write(row: number, col: number, content: Content, calculate: (formula: string) => CellValue): void {
    if (content === null) return
    if (content === '') this.#cells.delete(row, col)
    else if (typeof content === 'object')
      this.#cells.set(row, col, {
        formula: content.formula,
        value: content.value ?? calculate(content.formula),
      })
    else this.#cells.set(row, col, content)
  }

  /** Empties the cells of an area. */
  empty(area: Area): void {
    this.#cells.each(area, (_, row, col) => {
      this.#cells.delete(row, col)
    })
  }

  format(row: number, col: number): CellFormat {
    return this.#formats.get(row, col) ?? this.#layered(row, col)
  }

  setFormat(area: Area, patch: Partial<CellFormat>): void {
    const overlaid = new Map<CellFormat, CellFormat>()
    const set = (row: number, col: number) => {
      const before = this.format(row, col)
      let after = overlaid.get(before)
      if (!after) overlaid.set(before, (after = overlay(before, patch)))
      this.#formats.set(row, col, after)
    }
    if (area.rows === MAX_ROWS || area.cols === MAX_COLS) {
      this.#formats.each(area, (_, row, col) => {
        set(row, col)
      })
      this.#layers = [
        ...this.#layers.filter((layer) => !contains(area, layer.area) || !covers(patch, layer.patch)),
      ]
      this.#layers.push({ area, patch })
    } else eachCell(area, set)
  }

  clearFormat(area: Area): void {
    if (area.rows === MAX_ROWS || area.cols === MAX_COLS)
      this.#layers = this.#layers.filter((layer) => !contains(area, layer.area))
    this.#formats.each(area, (_, row, col) => {
      this.#formats.delete(row, col)
    })
    if (this.#layers.some((layer) => intersect(layer.area, area))) this.setFormat(area, PLAIN)
  }

  #layered(row: number, col: number): CellFormat {
    let format = PLAIN
    for (const { area, patch } of this.#layers)
      if (contains(area, cellArea(row, col))) format = overlay(format, patch)
    return format
  }
}

const covers = (patch: Partial<CellFormat>, other: Partial<CellFormat>): boolean =>
  Object.keys(other).every((key) => key !== 'borders' && key in patch)
