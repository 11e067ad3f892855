import type { Area, CellRef } from '../layout/matrix'
import { atOnce, type Steps } from '../layout/steps'

/** Rectangles that cover the cells: runs down a column, and columns put together where these match. */
export function areasOf(cells: readonly CellRef[]): Area[] {
  return atOnce(findingAreas([cells]))
}

/** The same for lists of cells, list by list. */
export function* findingAreas(lists: readonly (readonly CellRef[])[]): Steps<Area[]> {
  const columns = new Map<number, CellRef[]>()
  for (const cells of lists) {
    yield
    for (const cell of cells) {
      const column = columns.get(cell.column)
      if (column) column.push(cell)
      else columns.set(cell.column, [cell])
    }
  }
  const down: Area[] = []
  for (const [column, own] of [...columns].sort(([one], [other]) => one - other)) {
    yield
    for (const area of runsIn(column, own)) down.push(area)
  }
  down.sort((a, b) => a.top - b.top || a.bottom - b.bottom || a.left - b.left)
  const across: Area[] = []
  for (const area of down) {
    const last = across.at(-1)
    if (last && last.top === area.top && last.bottom === area.bottom && last.right + 1 === area.left)
      across[across.length - 1] = { ...last, right: area.right }
    else across.push(area)
  }
  return across.sort((a, b) => a.top - b.top || a.left - b.left)
}

function runsIn(column: number, cells: readonly CellRef[]): Area[] {
  const rows = cells.map(({ row }) => row).sort((a, b) => a - b)
  const found: Area[] = []
  let top = 0
  rows.forEach((row, index) => {
    if (index === 0 || row !== (rows[index - 1] ?? 0) + 1) top = row
    if (rows[index + 1] !== row + 1) found.push({ top, left: column, bottom: row, right: column })
  })
  return found
}
