import type { Area } from '../grid/area'
import { cellArea, contains, eachCell, sameArea } from '../grid/area'
import type { CellValue } from '../grid/grid'
import { notOnBench } from './errors'
import type { PlaceView } from './place'
import { cellsOf } from './place'
import { valueType } from './values'

/** Which value types each word of getSpecialCells lets through. */
const VALUE_WORDS: Readonly<Record<string, string>> = {
  Double: 'Numbers',
  String: 'Text',
  Boolean: 'Logical',
  Error: 'Errors',
}

/** Joins cells into blocks: along rows first, then equal rows downwards. */
function blocks(cells: readonly Area[]): Area[] {
  const lines: Area[] = []
  for (const cell of cells) {
    const last = lines.at(-1)
    if (last?.row === cell.row && last.col + last.cols === cell.col)
      lines[lines.length - 1] = { ...last, cols: last.cols + 1 }
    else lines.push(cell)
  }
  const joined: Area[] = []
  for (const line of lines) {
    const above = joined.findIndex(
      (block) => sameArea({ ...block, row: line.row, rows: 1 }, line) && block.row + block.rows === line.row,
    )
    const block = joined[above]
    if (block) joined[above] = { ...block, rows: block.rows + 1 }
    else joined.push(line)
  }
  return joined
}

/** The blocks of a place that getSpecialCells means: constants, formulas, blanks or visible cells. */
export function specialAreas(place: PlaceView, type: string, valueTypes = 'All'): readonly Area[] {
  const { context, sheetId } = place
  const { grid } = context
  const cells = cellsOf(place)
  const values = grid.values(sheetId, cells)
  const formulas = grid.formulas(sheetId, cells)
  const letsThrough = (value: CellValue) =>
    valueTypes === 'All' || valueTypes.includes(VALUE_WORDS[valueType(value)] ?? '-')
  const tests: Readonly<
    Record<string, (value: CellValue, isFormula: boolean, row: number, col: number) => boolean>
  > = {
    Blanks: (value, isFormula) => value === '' && !isFormula,
    Constants: (value, isFormula) => value !== '' && !isFormula && letsThrough(value),
    Formulas: (value, isFormula) => isFormula && letsThrough(value),
    Visible: (_value, _isFormula, row, col) =>
      !grid.rowHidden(sheetId, row) && !grid.columnHidden(sheetId, col),
    ConditionalFormats: (_value, _isFormula, row, col) =>
      grid
        .conditionalFormats(sheetId)
        .some((rule) => rule.areas.some((area) => contains(area, cellArea(row, col)))),
  }
  const test = tests[type]
  if (!test) throw notOnBench(`Range.getSpecialCells('${type}')`)
  const found: Area[] = []
  eachCell(cells, (row, col) => {
    const value = values[row - cells.row]?.[col - cells.col] ?? ''
    const formula = formulas[row - cells.row]?.[col - cells.col]
    const isFormula = typeof formula === 'string' && formula.startsWith('=') && formula !== value
    if (test(value, isFormula, row, col)) found.push(cellArea(row, col))
  })
  return blocks(found)
}
