import type { Area } from '../grid/area'
import { cellArea, contains, eachCell, intersect } from '../grid/area'
import type { CellValue, Content, Grid } from '../grid/grid'
import type { Book } from './book'
import type { PlaceView } from './place'

/** A formula in the first cell of `area` that fills the others with its values. `blockers` are cells of it that hold something of their own. */
export interface SpillFacts {
  readonly area: Area
  readonly formula: string
  readonly values: readonly (readonly CellValue[])[]
  readonly blockers: ReadonlySet<string>
}

const keyOf = (row: number, col: number) => `${row},${col}`
const isFirst = ({ row, col }: Area, atRow: number, atCol: number) => row === atRow && col === atCol

/** Enters a formula that spills these values; the in-memory grid calculates none by itself. */
export function spillInto(
  { grid, book }: { readonly grid: Grid; readonly book: Book },
  sheetId: string,
  first: { readonly row: number; readonly col: number },
  formula: string,
  values: SpillFacts['values'],
): void {
  const area = { ...first, rows: values.length, cols: values[0]?.length ?? 1 }
  const facts = { area, formula, values, blockers: new Set<string>() }
  book.sheet(sheetId).spills.push(facts)
  show(grid, sheetId, facts)
}

/**
 * Lets the spilled formulas of a sheet follow what has been written to a place: something in their way makes them #SPILL! and empties
 * the rest, emptying it lets them spill again, and writing over the formula itself takes its values away.
 */
export function settleSpills(
  { context: { grid, book }, sheetId, area }: PlaceView,
  written: readonly (readonly Content[])[],
): void {
  const facts = book.sheet(sheetId)
  if (facts.spills.length === 0) return
  const contentAt = (row: number, col: number) => written[row - area.row]?.[col - area.col] ?? null
  facts.spills = facts.spills.flatMap((spill) => {
    const shared = intersect(spill.area, area)
    if (!shared) return [spill]
    const { row, col } = spill.area
    const first = contains(shared, cellArea(row, col)) ? contentAt(row, col) : null
    const blockers = new Set(spill.blockers)
    eachCell(shared, (atRow, atCol) => {
      const content = contentAt(atRow, atCol)
      if (content === null || isFirst(spill.area, atRow, atCol)) return
      if (content === '') blockers.delete(keyOf(atRow, atCol))
      else blockers.add(keyOf(atRow, atCol))
    })
    const now = { ...spill, blockers }
    const isGone = first !== null && formulaOf(first) !== spill.formula
    show(grid, sheetId, now, isGone)
    return isGone ? [] : [now]
  })
}

function formulaOf(content: Exclude<Content, null>): string {
  return typeof content === 'object' ? content.formula : String(content)
}

function show(grid: Grid, sheetId: string, spill: SpillFacts, isGone = false): void {
  const { area, formula, values, blockers } = spill
  const isBlocked = blockers.size > 0
  eachCell(area, (row, col) => {
    if (blockers.has(keyOf(row, col))) return
    const value = values[row - area.row]?.[col - area.col] ?? ''
    if (!isFirst(area, row, col)) grid.write(sheetId, row, col, [[isGone || isBlocked ? '' : value]])
    else if (!isGone) grid.write(sheetId, row, col, [[{ formula, value: isBlocked ? '#SPILL!' : value }]])
  })
}

/** Whether the cells of a place show spilled values: true for all, null for some (Range.hasSpill). */
export function hasSpill({ context: { book }, sheetId, area }: PlaceView): boolean | null {
  const cells = book
    .sheet(sheetId)
    .spills.filter(({ blockers }) => blockers.size === 0)
    .reduce((sum, spill) => {
      const shared = intersect(spill.area, area)
      return sum + (shared ? shared.rows * shared.cols : 0)
    }, 0)
  return cells === 0 ? false : cells === area.rows * area.cols ? true : null
}
