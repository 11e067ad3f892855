import type { PlaceView } from './place'
import { cellsOf } from './place'

/** Whether all rows (or columns) of a place are hidden; null when some are. */
export function hiddenState(place: PlaceView, what: 'rows' | 'columns'): boolean | null {
  const { grid } = place.context
  const cells = cellsOf(place)
  const [start, count] = what === 'rows' ? [cells.row, cells.rows] : [cells.col, cells.cols]
  const isHidden = (n: number) =>
    what === 'rows' ? grid.rowHidden(place.sheetId, n) : grid.columnHidden(place.sheetId, n)
  const first = isHidden(start)
  for (let n = start + 1; n < start + count; n++) if (isHidden(n) !== first) return null
  return first
}
