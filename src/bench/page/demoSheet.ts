import type { DemoSheet } from '../demo'
import { cellArea } from '../grid/area'
import type { Grid } from '../grid/grid'

/** Puts a demo sheet into the first sheet of a grid, laid out as a teacher would. */
export function showDemo(grid: Grid, { name, cells }: DemoSheet): void {
  const id = grid.activeSheet()
  const cols = cells[0]?.length ?? 0
  const header = 2
  grid.renameSheet(id, name)
  grid.write(id, 0, 0, cells)
  grid.setFormat(id, cellArea(0, 0), { bold: true, fontSize: 14 })
  grid.setFormat(id, cellArea(1, 0), { italic: true, fontColour: '#555555' })
  grid.setFormat(
    id,
    { row: header, col: 0, rows: 1, cols },
    { bold: true, fill: '#E8EEF4', horizontal: 'Center' },
  )
  grid.setFormat(
    id,
    { row: header, col: 1, rows: cells.length - header, cols: cols - 1 },
    { horizontal: 'Center' },
  )
  grid.setColumnWidth(id, 0, 1, 110)
  grid.setColumnWidth(id, 1, cols - 1, 74)
  grid.freeze(id, header + 1, 1)
  grid.select(id, cellArea(header + 1, 1))
  grid.flush()
}
