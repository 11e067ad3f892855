import { eachCell } from '../grid/area'
import { removeFromRules } from './conditionalRules'
import { invalidArgument } from './errors'
import type { PlaceView } from './place'
import { cellsOf } from './place'
import { settleSpills } from './spills'
import { nameHeaders } from './tables'

const WHAT = new Set(['All', 'Contents', 'Formats', 'Hyperlinks', 'RemoveHyperlinks'])

/** Clears a place: `Contents`, `Formats` (with merges and conditional formats) or `All`. */
export function clearPlace(place: PlaceView, applyTo: string): void {
  if (!WHAT.has(applyTo)) throw invalidArgument()
  const { context, sheetId, area } = place
  const { grid } = context
  if (applyTo === 'All' || applyTo === 'Contents') {
    const cells = cellsOf(place)
    context.requireUnlocked(sheetId, cells)
    const blanks = Array.from({ length: cells.rows }, () => new Array<string>(cells.cols).fill(''))
    grid.write(sheetId, cells.row, cells.col, blanks)
    settleSpills({ ...place, context, sheetId, area: cells }, blanks)
    nameHeaders(context, sheetId, cells)
    context.written.push({ sheetId, area: cells })
  }
  if (applyTo === 'All' || applyTo === 'Formats') {
    context.requireOption(sheetId, 'allowFormatCells')
    grid.unmerge(sheetId, area)
    grid.clearFormat(sheetId, area)
    grid.setConditionalFormats(sheetId, removeFromRules(grid.conditionalFormats(sheetId), area))
  }
  if (applyTo === 'All')
    eachCell(cellsOf(place), (row, col) => {
      if (grid.notes(sheetId).some((note) => note.row === row && note.col === col))
        grid.setNote(sheetId, row, col, null)
    })
}
