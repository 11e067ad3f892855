import type { Area } from '../grid/area'
import { contains, intersect } from '../grid/area'
import { cellText } from '../grid/cellText'
import type { TableFacts } from './book'
import type { ExcelContext } from './excelContext'
import { invalidArgument, notOnBench } from './errors'

/** The rows of a table between its headers and its totals. */
export function bodyOf({ area, showHeaders, showTotals }: TableFacts): Area {
  const head = showHeaders ? 1 : 0
  return { ...area, row: area.row + head, rows: area.rows - head - (showTotals ? 1 : 0) }
}

/** The texts that Excel makes of a row of headers: blanks named, doubles numbered. */
export function headerTexts(texts: readonly string[]): string[] {
  const taken = new Set<string>()
  const free = (text: string): string => {
    for (let n = 1; ; n++) {
      const name = n === 1 ? text : `${text}${n}`
      if (!taken.has(name.toLowerCase())) return name
    }
  }
  return texts.map((text, i) => {
    const name = free(text.trim() === '' ? `Column${i + 1}` : text)
    taken.add(name.toLowerCase())
    return name
  })
}

/** Gives the tables whose headers lie in an area that was written to headers that Excel takes: texts, none blank, none twice. */
export function nameHeaders(context: ExcelContext, sheetId: string, written: Area): void {
  for (const { area, showHeaders } of context.tablesIn(sheetId, written)) {
    const header = { ...area, rows: 1 }
    if (!showHeaders || !intersect(header, written)) continue
    context.grid.write(sheetId, area.row, area.col, [headerTexts(textsOf(context, sheetId, header))])
  }
}

function textsOf({ grid }: ExcelContext, sheetId: string, row: Area): string[] {
  return (grid.values(sheetId, row)[0] ?? []).map((value, j) =>
    cellText(value, grid.format(sheetId, row.row, row.col + j).numberFormat),
  )
}

/** Makes a table of a block whose first row are its headers; these become text. */
export function makeTable(
  context: ExcelContext,
  sheetId: string,
  area: Area,
  hasHeaders: boolean,
): TableFacts {
  const { grid, book } = context
  if (!hasHeaders) throw notOnBench('TableCollection.add without headers')
  if (context.book.sheet(sheetId).protection) context.requireUnlocked(sheetId, area)
  if (context.tablesIn(sheetId, area).length > 0 || area.rows < 2) throw invalidArgument()
  if (grid.merges(sheetId).some((merged) => intersect(merged, area))) throw invalidArgument()
  const header = { ...area, rows: 1 }
  grid.write(sheetId, area.row, area.col, [headerTexts(textsOf(context, sheetId, header))])
  const number = book.nextId()
  const table: TableFacts = {
    id: `{table-${number}}`,
    sheetId,
    name: `Table${number}`,
    area,
    showHeaders: true,
    showTotals: false,
    style: 'TableStyleMedium2',
    showFilterButton: true,
    showBandedRows: true,
  }
  book.tables.push(table)
  return table
}

/** Puts rows of values into a table's body before row `index` (at its end when that is -1). */
export function insertTableRows(
  context: ExcelContext,
  table: TableFacts,
  index: number,
  values: readonly (readonly (string | number | boolean)[])[],
): number {
  const { grid } = context
  const body = bodyOf(table)
  const place = index < 0 ? body.rows : index
  if (place > body.rows || values.some((line) => line.length !== table.area.cols)) throw invalidArgument()
  const added = values.length
  const grown = { ...table.area, rows: table.area.rows + added }
  const others = context.tablesIn(table.sheetId, grown).filter((other) => other !== table)
  if (others.length > 0 || table.showTotals) throw invalidArgument()
  context.requireUnlocked(table.sheetId, grown)
  const moved = { ...body, row: body.row + place, rows: body.rows - place }
  if (moved.rows > 0) {
    const lines = grid.formulas(table.sheetId, moved)
    grid.write(table.sheetId, moved.row + added, moved.col, lines)
  }
  table.area = grown
  return place
}

/** Takes a row out of a table's body; what is below moves up. */
export function removeTableRow(context: ExcelContext, table: TableFacts, index: number): void {
  const { grid } = context
  const body = bodyOf(table)
  if (index < 0 || index >= body.rows) throw invalidArgument()
  context.requireUnlocked(table.sheetId, body)
  const below = { ...body, row: body.row + index + 1, rows: body.rows - index - 1 }
  const lines = below.rows > 0 ? grid.formulas(table.sheetId, below) : []
  const blank = new Array<string>(body.cols).fill('')
  grid.write(table.sheetId, body.row + index, body.col, [...lines, blank])
  table.area = { ...table.area, rows: table.area.rows - 1 }
}

/** Gives a table other bounds; the headers must stay in their row. */
export function resizeTable(context: ExcelContext, table: TableFacts, area: Area): void {
  const others = context.tablesIn(table.sheetId, area).filter((other) => other !== table)
  if (others.length > 0 || area.row !== table.area.row || !intersect(area, table.area))
    throw invalidArgument()
  if (contains(area, table.area) || contains(table.area, area)) table.area = area
  else throw invalidArgument()
}
