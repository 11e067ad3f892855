import ExcelJS from 'exceljs'
import type { Bench } from '../bench'
import type { Area } from '../grid/area'
import { cellArea, contains, eachCell } from '../grid/area'
import type { CellFormat, CellValue, Grid } from '../grid/grid'
import { PLAIN } from '../grid/grid'
import { isErrorValue } from '../grid/cellText'
import { areaAddress, columnName } from '../host/address'
import type { PageFacts, TableFacts } from '../host/book'
import { toFileColour } from './colours'
import { toFileRuleStyle, toFileStyle } from './styles'
import { pointsToCharacters } from './units'

/** The bench's workbook as the bytes of an .xlsx file. */
export async function saveXlsx(bench: Bench): Promise<ArrayBuffer> {
  bench.grid.flush()
  await bench.grid.calculating()
  const workbook = new ExcelJS.Workbook()
  for (const { id, name } of bench.grid.sheets()) saveSheet(bench, workbook.addWorksheet(name), id)
  for (const { name, formula } of bench.book.names) workbook.definedNames.add(formula.slice(1), name)
  return workbook.xlsx.writeBuffer() as Promise<ArrayBuffer>
}

function saveSheet({ grid, book }: Bench, sheet: ExcelJS.Worksheet, id: string): void {
  const facts = book.sheet(id)
  const info = grid.sheets().find((one) => one.id === id)
  const used = grid.used(id, false)
  const tables = book.tables.filter((table) => table.sheetId === id)
  for (const table of tables) saveTable(grid, sheet, table)
  if (used) saveCells(grid, sheet, id, used, tables)
  for (const area of grid.merges(id)) sheet.mergeCells(areaAddress(area))
  grid.conditionalFormats(id).forEach((rule, priority) => {
    if (rule.type !== 'Custom' || rule.formula === '') return
    sheet.addConditionalFormatting({
      ref: rule.areas.map(areaAddress).join(' '),
      rules: [
        {
          type: 'expression',
          priority: priority + 1,
          formulae: [rule.formula.slice(1)],
          style: toFileRuleStyle(rule.style),
        },
      ],
    })
  })
  for (const { row, col, text } of grid.notes(id)) sheet.getCell(row + 1, col + 1).note = text
  const { rows, cols } = grid.frozen(id)
  const showGridLines = grid.gridlines(id)
  sheet.views =
    rows > 0 || cols > 0
      ? [{ state: 'frozen', ySplit: rows, xSplit: cols, showGridLines }]
      : [{ state: 'normal', showGridLines }]
  if (info && info.colour !== '') sheet.properties.tabColor = toFileColour(info.colour) as ExcelJS.Color
  if (info && !info.visible) sheet.state = facts.veryHidden ? 'veryHidden' : 'hidden'
  if (facts.filter) sheet.autoFilter = areaAddress(facts.filter.area)
  savePaper(sheet, facts.page)
  for (const row of facts.rowBreaks) sheet.getRow(row).addPageBreak()
  if (facts.protection) Object.assign(sheet, { sheetProtection: protectionOf(facts.protection.options) })
}

function saveCells(
  grid: Grid,
  sheet: ExcelJS.Worksheet,
  id: string,
  used: Area,
  tables: readonly TableFacts[],
): void {
  const values = grid.values(id, used)
  const formulas = grid.formulas(id, used)
  const isHeader = (row: number, col: number) =>
    tables.some(({ area, showHeaders }) => showHeaders && contains({ ...area, rows: 1 }, cellArea(row, col)))
  const styles = new Map<CellFormat, Partial<ExcelJS.Style>>()
  eachCell(used, (row, col) => {
    const cell = sheet.getCell(row + 1, col + 1)
    const format = grid.format(id, row, col)
    if (format !== PLAIN) {
      let style = styles.get(format)
      if (!style) styles.set(format, (style = toFileStyle(format)))
      cell.style = style
    }
    const value = values[row - used.row]?.[col - used.col] ?? ''
    if (!isHeader(row, col)) cell.value = fileValue(value, formulas[row - used.row]?.[col - used.col] ?? '')
  })
  for (let col = 0; col < used.col + used.cols; col++) {
    const column = sheet.getColumn(col + 1)
    column.width = pointsToCharacters(grid.columnWidth(id, col))
    column.hidden = grid.columnHidden(id, col)
  }
  for (let row = 0; row < used.row + used.rows; row++)
    if (grid.rowHidden(id, row)) sheet.getRow(row + 1).hidden = true
    else if (grid.rowHeight(id, row) !== STANDARD_HEIGHT)
      sheet.getRow(row + 1).height = grid.rowHeight(id, row)
}

/** Height of a row that nobody has set, in points. */
const STANDARD_HEIGHT = 15
/** A4 in files (ECMA-376, part 1, 18.3.1.63). */
const A4 = 9
const POINTS_PER_INCH = 72

/** The file library fixes the columns of a print area only. */
const fixedRow = (row: string): string => `$${row}`

/** How a sheet is printed; a paper other than A4 is left to the reader. */
function savePaper({ pageSetup }: ExcelJS.Worksheet, page: PageFacts): void {
  const { horizontalFitToPages: across, verticalFitToPages: down, scale } = page.zoom
  pageSetup.orientation = page.orientation === 'Landscape' ? 'landscape' : 'portrait'
  if (page.paperSize === 'A4') pageSetup.paperSize = A4
  if (page.printArea) pageSetup.printArea = areaAddress(page.printArea).replace(/\d+/g, fixedRow)
  pageSetup.horizontalCentered = page.centerHorizontally
  pageSetup.verticalCentered = page.centerVertically
  pageSetup.margins = {
    left: page.leftMargin / POINTS_PER_INCH,
    right: page.rightMargin / POINTS_PER_INCH,
    top: page.topMargin / POINTS_PER_INCH,
    bottom: page.bottomMargin / POINTS_PER_INCH,
    header: 0.3,
    footer: 0.3,
  }
  if (scale !== undefined) pageSetup.scale = scale
  if (across === undefined && down === undefined) return
  pageSetup.fitToPage = true
  pageSetup.fitToWidth = across ?? 0
  pageSetup.fitToHeight = down ?? 0
}

function fileValue(value: CellValue, formula: CellValue): ExcelJS.CellValue {
  const plain = isErrorValue(value)
    ? ({ error: value } as ExcelJS.CellErrorValue)
    : value === ''
      ? null
      : value
  if (typeof formula !== 'string' || !formula.startsWith('=') || formula === value) return plain
  return {
    formula: formula.slice(1),
    result: plain as NonNullable<ExcelJS.CellFormulaValue['result']>,
    date1904: false,
  }
}

function saveTable(grid: Grid, sheet: ExcelJS.Worksheet, table: TableFacts): void {
  const { area, name, showHeaders, showTotals, style, showFilterButton, showBandedRows } = table
  const [headers = []] = grid.values(table.sheetId, { ...area, rows: 1 })
  const body = { ...area, row: area.row + 1, rows: area.rows - 1 }
  sheet.addTable({
    name,
    ref: `${columnName(area.col)}${area.row + 1}`,
    headerRow: showHeaders,
    totalsRow: showTotals,
    style: { theme: (style || null) as 'TableStyleMedium2', showRowStripes: showBandedRows },
    columns: headers.map((header) => ({ name: String(header), filterButton: showFilterButton })),
    rows: body.rows > 0 ? grid.values(table.sheetId, body) : [],
  })
}

function protectionOf(options: Readonly<Record<string, unknown>>): Record<string, unknown> {
  const file: Record<string, unknown> = { sheet: true }
  for (const [name, allowed] of Object.entries(options)) {
    const key = /^allow(\w)(\w*)$/.exec(name)
    if (!key) continue
    const what = `${(key[1] ?? '').toLowerCase()}${key[2] ?? ''}`
    if (what === 'editObjects') file.objects = allowed !== true
    else if (what === 'editScenarios') file.scenarios = allowed !== true
    else file[what] = allowed === true
  }
  return file
}
