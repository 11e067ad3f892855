import type { Area } from '../../grid/area'
import type { BorderLine, Edge } from '../../grid/grid'
import { readColour } from '../colour'
import type { ExcelContext } from '../excelContext'
import { invalidArgument } from '../errors'
import { PlacedObject, common } from '../place'

/** The sides a range's border can be on. */
export const SIDES = [
  'EdgeTop',
  'EdgeBottom',
  'EdgeLeft',
  'EdgeRight',
  'InsideVertical',
  'InsideHorizontal',
] as const
export type Side = (typeof SIDES)[number]

const STYLES = new Set([
  'None',
  'Continuous',
  'Dash',
  'DashDot',
  'DashDotDot',
  'Dot',
  'Double',
  'SlantDashDot',
])
const WEIGHTS = new Set(['Hairline', 'Thin', 'Medium', 'Thick'])

/** A cell without a line on that side. */
const NO_LINE: BorderLine = { style: 'None', weight: 'Thin', colour: '#000000' }

/** Where a side of a range lies: which cells, and which edge of each. */
function cellsOfSide({ row, col, rows, cols }: Area, side: Side): { area: Area; edge: Edge } | null {
  switch (side) {
    case 'EdgeTop':
      return { area: { row, col, rows: 1, cols }, edge: 'top' }
    case 'EdgeBottom':
      return { area: { row: row + rows - 1, col, rows: 1, cols }, edge: 'bottom' }
    case 'EdgeLeft':
      return { area: { row, col, rows, cols: 1 }, edge: 'left' }
    case 'EdgeRight':
      return { area: { row, col: col + cols - 1, rows, cols: 1 }, edge: 'right' }
    case 'InsideHorizontal':
      return rows > 1 ? { area: { row, col, rows: rows - 1, cols }, edge: 'bottom' } : null
    case 'InsideVertical':
      return cols > 1 ? { area: { row, col, rows, cols: cols - 1 }, edge: 'right' } : null
  }
}

/** The lines on one side of a range; null where they differ. */
export class RangeBorder extends PlacedObject {
  static override readonly className = 'RangeBorder'
  static override readonly scalars = ['color', 'sideIndex', 'style', 'weight']
  readonly #side: Side

  constructor(context: ExcelContext, sheetId: string, area: Area, side: Side) {
    super(context, sheetId, area)
    this.#side = side
  }

  override get wireId() {
    return this.#side
  }
  get sideIndex() {
    return this.#side
  }
  get style(): string | null {
    return this.#common('style')
  }
  set style(style: string) {
    if (!STYLES.has(style)) throw invalidArgument()
    this.#set({ style })
  }
  get weight(): string | null {
    return this.#common('weight')
  }
  set weight(weight: string) {
    if (!WEIGHTS.has(weight)) throw invalidArgument()
    this.#set({ weight })
  }
  get color(): string | null {
    return this.#common('colour')
  }
  set color(colour: unknown) {
    this.#set({ colour: readColour(colour) })
  }

  #common(trait: keyof BorderLine): string | null {
    const cells = cellsOfSide(this.area, this.#side)
    if (!cells) return NO_LINE[trait]
    const place = { context: this.context, sheetId: this.sheetId, area: cells.area }
    return common(place, ({ borders }) => (borders[cells.edge] ?? NO_LINE)[trait])
  }

  /** A colour or weight given to a side without a line draws one, as in Excel. */
  #set(patch: Partial<BorderLine>) {
    this.context.requireOption(this.sheetId, 'allowFormatCells')
    const cells = cellsOfSide(this.area, this.#side)
    if (!cells) return
    const { row, col } = cells.area
    const before = this.context.grid.format(this.sheetId, row, col).borders[cells.edge] ?? NO_LINE
    const style = before.style === 'None' ? 'Continuous' : before.style
    const line = { ...before, style, ...patch }
    this.context.grid.setFormat(this.sheetId, cells.area, { borders: { [cells.edge]: line } })
  }
}
