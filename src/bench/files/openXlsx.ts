import { numfmt } from '@univerjs/core'
import ExcelJS from 'exceljs'
import type { Bench } from '../bench'
import type { ConditionalRule, Content } from '../grid/grid'
import { PLAIN } from '../grid/grid'
import type { CellFormat, CellValue, Grid } from '../grid/grid'
import { cellArea } from '../grid/area'
import { parseAddress } from '../host/address'
import { fromFileColour } from './colours'
import { fromFileRuleStyle, fromFileStyle } from './styles'
import { charactersToPoints } from './units'

/** What exceljs keeps of a sheet beyond its declared types. */
interface SheetExtras {
  readonly conditionalFormattings?: readonly {
    readonly ref: string
    readonly rules: readonly ExcelJS.ConditionalFormattingRule[]
  }[]
  readonly sheetProtection?: Readonly<Record<string, unknown>> | null
  readonly autoFilter?: unknown
}

/** As much of a file's table as exceljs gives when it has read one. */
interface FileTable {
  readonly name: string
  readonly tableRef: string
  readonly headerRow?: boolean
  readonly totalsRow?: boolean
  readonly style?: { readonly theme?: string; readonly showRowStripes?: boolean }
  readonly columns?: readonly { readonly filterButton?: boolean }[]
}

/** Reads an .xlsx file. Rejects with a sentence where it is none. */
export async function readXlsx(bytes: ArrayBuffer): Promise<ExcelJS.Workbook> {
  const workbook = new ExcelJS.Workbook()
  try {
    await workbook.xlsx.load(bytes)
  } catch (error) {
    throw new Error('This file cannot be read. Is it an .xlsx workbook without a password?', { cause: error })
  }
  if (workbook.worksheets.length === 0) throw new Error('There is no sheet in this file.')
  return workbook
}

/** Puts a file's workbook in the place of the bench's: sheets, tables, names and all that the grid shows. */
export function showWorkbook(bench: Bench, workbook: ExcelJS.Workbook): void {
  const { grid, book } = bench
  const old = grid.sheets().map(({ id }) => id)
  old.forEach((id, i) => {
    grid.renameSheet(id, `~old ${i + 1}`)
  })
  const shown = workbook.worksheets.map((sheet) => ({ sheet, id: grid.addSheet(sheet.name) }))
  const front = shown.find(({ sheet }) => sheet.state === 'visible') ?? shown[0]
  if (front) grid.activateSheet(front.id)
  for (const id of old) grid.removeSheet(id)
  book.clear()
  for (const { sheet, id } of shown) showSheet(bench, sheet, id)
  for (const { name, ranges } of workbook.definedNames.model as unknown as {
    name: string
    ranges: string[]
  }[])
    if (ranges[0] !== undefined)
      book.names.push({ name, formula: `=${ranges[0]}`, comment: '', visible: true, sheetId: null })
  if (front) grid.select(front.id, cellArea(0, 0))
  grid.flush()
}

function showSheet({ grid, book }: Bench, sheet: ExcelJS.Worksheet, id: string): void {
  const extras = sheet as SheetExtras
  showCells(grid, sheet, id)
  sheet.columns?.forEach((column, col) => {
    if (column.width !== undefined) grid.setColumnWidth(id, col, 1, charactersToPoints(column.width))
    if (column.hidden) grid.hideColumns(id, col, 1, true)
  })
  for (const address of sheet.model.merges) grid.merge(id, parseAddress(address).area)
  grid.setConditionalFormats(id, rulesOf(extras, id))
  const [view] = (sheet.views as ExcelJS.Worksheet['views'] | null) ?? []
  if (view?.state === 'frozen') grid.freeze(id, view.ySplit ?? 0, view.xSplit ?? 0)
  if (view?.showGridLines === false) grid.setGridlines(id, false)
  const tab = fromFileColour(sheet.properties.tabColor)
  if (tab !== undefined) grid.colourTab(id, tab)
  if (sheet.state !== 'visible') grid.showSheet(id, false)
  const facts = book.sheet(id)
  facts.veryHidden = sheet.state === 'veryHidden'
  if (extras.sheetProtection?.sheet === true)
    facts.protection = { options: protectionOptions(extras.sheetProtection) }
  if (typeof extras.autoFilter === 'string')
    facts.filter = { area: parseAddress(extras.autoFilter).area, columns: new Map() }
  for (const [i, table] of tablesOf(sheet).entries())
    book.tables.push({
      id: `{file-${id}-${i}}`,
      sheetId: id,
      name: table.name,
      area: parseAddress(table.tableRef).area,
      showHeaders: table.headerRow !== false,
      showTotals: table.totalsRow === true,
      style: table.style?.theme ?? '',
      showFilterButton: table.columns?.some(({ filterButton }) => filterButton) ?? false,
      showBandedRows: table.style?.showRowStripes === true,
    })
}

const tablesOf = (sheet: ExcelJS.Worksheet): readonly FileTable[] =>
  (sheet.getTables() as unknown as { table?: FileTable; model?: FileTable }[]).flatMap(
    (entry) => entry.table ?? entry.model ?? [],
  )

function showCells(grid: Grid, sheet: ExcelJS.Worksheet, id: string): void {
  sheet.eachRow({ includeEmpty: true }, (line, rowNumber) => {
    const row = rowNumber - 1
    const contents: Content[] = []
    line.eachCell({ includeEmpty: true }, (cell, colNumber) => {
      const col = colNumber - 1
      contents[col] = cell.isMerged && cell.master !== cell ? null : contentOf(cell)
      const format = fromFileStyle(cell.style)
      const patch = changed(format)
      if (patch) grid.setFormat(id, cellArea(row, col), patch)
      if (cell.note as unknown) grid.setNote(id, row, col, noteText(cell.note))
    })
    if (contents.length > 0) grid.write(id, row, 0, [Array.from(contents, (content) => content ?? null)])
    if (line.height) grid.setRowHeight(id, row, 1, line.height)
    if (line.hidden) grid.hideRows(id, row, 1, true)
  })
}

/** The traits in which a format differs from a plain cell's, or null. */
function changed(format: CellFormat): Partial<CellFormat> | null {
  const entries = Object.entries(format).filter(([key, value]) => {
    const plain: unknown = PLAIN[key as keyof CellFormat]
    return key === 'borders' ? Object.keys(format.borders).length > 0 : value !== plain
  })
  return entries.length > 0 ? (Object.fromEntries(entries) as Partial<CellFormat>) : null
}

function contentOf(cell: ExcelJS.Cell): Content {
  if (cell.formula) return { formula: `=${cell.formula}`, value: plainValue(cell.result) }
  return plainValue(cell.value)
}

function plainValue(value: ExcelJS.CellValue | undefined): CellValue {
  if (value === null || value === undefined) return ''
  if (value instanceof Date)
    return (
      numfmt.dateToSerial(
        [
          value.getUTCFullYear(),
          value.getUTCMonth() + 1,
          value.getUTCDate(),
          value.getUTCHours(),
          value.getUTCMinutes(),
          value.getUTCSeconds(),
        ],
        { ignoreTimezone: true },
      ) ?? ''
    )
  if (typeof value !== 'object') return value
  if ('richText' in value) return value.richText.map(({ text }) => text).join('')
  if ('error' in value) return value.error
  if ('hyperlink' in value) return plainValue(value.text as ExcelJS.CellValue)
  return plainValue(value.result)
}

const noteText = (note: string | ExcelJS.Comment): string =>
  typeof note === 'string' ? note : (note.texts ?? []).map(({ text }) => text).join('')

/** Conditional formats by formula; kinds that the bench does not draw are left out. */
function rulesOf({ conditionalFormattings = [] }: SheetExtras, id: string): ConditionalRule[] {
  const rules = conditionalFormattings.flatMap(({ ref, rules: ofRef }) =>
    ofRef.flatMap((rule) => (rule.type === 'expression' ? { ref, rule } : [])),
  )
  return rules
    .sort((a, b) => a.rule.priority - b.rule.priority)
    .map(({ ref, rule }, i) => ({
      id: `{file-${id}-rule-${i}}`,
      areas: ref.split(' ').map((address) => parseAddress(address).area),
      type: 'Custom',
      formula: `=${String(rule.formulae?.[0] ?? '')}`,
      stopIfTrue: false,
      style: fromFileRuleStyle(rule.style),
    }))
}

/** A file says what is locked, Excel's API what is allowed. */
const protectionOptions = (file: Readonly<Record<string, unknown>>): Record<string, unknown> => ({
  allowAutoFilter: file.autoFilter === true,
  allowDeleteColumns: file.deleteColumns === true,
  allowDeleteRows: file.deleteRows === true,
  allowEditObjects: file.objects === false,
  allowEditScenarios: file.scenarios === false,
  allowFormatCells: file.formatCells === true,
  allowFormatColumns: file.formatColumns === true,
  allowFormatRows: file.formatRows === true,
  allowInsertColumns: file.insertColumns === true,
  allowInsertHyperlinks: file.insertHyperlinks === true,
  allowInsertRows: file.insertRows === true,
  allowPivotTables: file.pivotTables === true,
  allowSort: file.sort === true,
  selectionMode: 'Normal',
})
