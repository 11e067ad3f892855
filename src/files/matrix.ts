import type { CellValue } from '../answers/typed'
import { addressOf, areaAddress, areaOf, type Area, type Matrix } from '../marksheet/layout/matrix'
import type { Cell, Sheet } from './xlsx/cells'

/** As many cells as a sheet may span from A1, filled or not: 100,000 rows of 40. */
const MOST_SPANNED = 4_000_000
/** On a sheet that spans more, what stands further from the rest than so many empty rows or columns is not read. */
const FAR = { row: 1_000, column: 200 } as const

/** A worksheet as it is reviewed, and, in sentences, what of it was left out. */
export interface SheetRead {
  readonly matrix: Matrix
  readonly told: readonly string[]
}

/** A worksheet's values, number formats and formulas, from A1. What a merged cell covers counts as empty. */
export function matrixOf({ name, cells, merges, is1904 }: Sheet): SheetRead {
  const near = spanned(cells) <= MOST_SPANNED ? cells : nearTheRest(nearTheRest(cells, 'row'), 'column')
  if (spanned(near) > MOST_SPANNED) {
    const told = `${name} was left out: its cells reach over ${areaAddress(areaOf([near]))}, more than can be reviewed.`
    return { matrix: { name, values: [] }, told: [told] }
  }
  const kept = new Set(near)
  const far = cells.filter((cell) => !kept.has(cell))
  // Nothing is written where they stand.
  const taken = far.map(({ row, column }) => ({ top: row, left: column, bottom: row, right: column }))
  const told = far
    .slice(0, 1)
    .map((cell) => `On ${name}, cells far from all others were not read, ${addressOf(cell)} for one.`)
  return { matrix: { name, ...rowsOf(near, merges), merges: [...merges, ...taken], is1904 }, told }
}

function spanned(cells: readonly Cell[]): number {
  if (cells.length === 0) return 0
  const { bottom, right } = areaOf([cells])
  return (bottom + 1) * (right + 1)
}

/** The cells before the first wide gap, from the top or from the left. */
function nearTheRest(cells: readonly Cell[], along: 'row' | 'column'): readonly Cell[] {
  const filled = [...new Set(cells.map((cell) => cell[along]))].sort((a, b) => a - b)
  const behind = filled.find((place, index) => place - (filled[index - 1] ?? place) > FAR[along])
  return behind === undefined ? cells : cells.filter((cell) => cell[along] < behind)
}

/** Cells laid out row by row; the rows are as long as they are filled. */
function rowsOf(cells: readonly Cell[], merges: readonly Area[]) {
  const values: CellValue[][] = []
  const formats: string[][] = []
  const formulas: string[][] = []
  const isCovered = coverBy(merges)
  for (const { row, column, value, format, formula } of [...cells].sort((a, b) => a.row - b.row)) {
    put(values, row, column, isCovered(row, column) ? null : value, null)
    if (format !== 'General') put(formats, row, column, format, 'General')
    if (formula !== '') put(formulas, row, column, formula, '')
  }
  return { values, formats, formulas }
}

function put<T>(rows: T[][], row: number, column: number, item: T, nothing: T): void {
  while (rows.length <= row) rows.push([])
  const cells = rows[row] ?? []
  while (cells.length < column) cells.push(nothing)
  cells[column] = item
}

/** Whether a cell is hidden by a merged area, of which only the first cell shows; asked row by row from the top. */
function coverBy(merges: readonly Area[]): (row: number, column: number) => boolean {
  const below = [...merges].sort((a, b) => b.top - a.top)
  const open: Area[] = []
  const before = (column: number) => {
    let [low, high] = [0, open.length]
    while (low < high) {
      const middle = (low + high) >> 1
      if ((open[middle]?.left ?? 0) <= column) low = middle + 1
      else high = middle
    }
    return low
  }
  return (row, column) => {
    for (let area; (area = below.at(-1)) && area.top <= row; below.pop())
      open.splice(before(area.left), 0, area)
    for (;;) {
      const place = before(column) - 1
      const area = open[place]
      if (!area || area.right < column) return false
      if (area.bottom >= row) return row > area.top || column > area.left
      open.splice(place, 1)
    }
  }
}
