import ExcelJS from 'exceljs'
import type { CellValue } from '../answers/typed'
import type { Area, Matrix } from '../marksheet/layout/matrix'
import { cellAt } from './sheet'

/** Opens an .xlsx file from its bytes. Throws where they are no such file. */
export async function openWorkbook(bytes: Uint8Array): Promise<ExcelJS.Workbook> {
  const workbook = new ExcelJS.Workbook()
  // The declared type is an older Node's Buffer; the library takes any bytes that JSZip can read.
  await workbook.xlsx.load(bytes as unknown as ExcelJS.Buffer)
  return workbook
}

/** A worksheet's values, number formats and formulas, from A1. Formulas stand for the value they had when the file was saved. */
export function matrixOf(sheet: ExcelJS.Worksheet): Matrix {
  const values: CellValue[][] = []
  const formats: string[][] = []
  const formulas: string[][] = []
  for (let row = 1; row <= sheet.rowCount; row++) {
    const cells = { values: [] as CellValue[], formats: [] as string[], formulas: [] as string[] }
    sheet.findRow(row)?.eachCell({ includeEmpty: true }, (cell) => {
      const covered = cell.isMerged && cell.master !== cell
      // The library drops a formula's result where it is 0 or FALSE from `value`, not from `result`.
      cells.values.push(covered ? null : plainValue(cell.formula ? cell.result : cell.value))
      cells.formats.push(cell.numFmt || 'General')
      cells.formulas.push(cell.formula ? `=${cell.formula}` : '')
    })
    values.push(cells.values)
    formats.push(cells.formats)
    formulas.push(cells.formulas)
  }
  return { name: sheet.name, values, formats, formulas, merges: sheet.model.merges.map(areaIn) }
}

/** An area by its address ("B5:N33", "B5"). */
function areaIn(address: string): Area {
  const [first = '', last = first] = address.split(':')
  const [{ row: top, column: left }, { row: bottom, column: right }] = [cellAt(first), cellAt(last)]
  return { top, left, bottom, right }
}

function plainValue(value: ExcelJS.CellValue | undefined): CellValue {
  if (value === null || value === undefined) return null
  if (value instanceof Date) return dateSerial(value)
  if (typeof value !== 'object') return value
  if ('richText' in value) return value.richText.map(({ text }) => text).join('')
  if ('error' in value) return value.error
  if ('hyperlink' in value) return plainValue(value.text as ExcelJS.CellValue)
  return plainValue(value.result)
}

/** The day number that a spreadsheet keeps for a date (1 January 1900 is 1, by its own count). */
function dateSerial(date: Date): number {
  return (date.getTime() - Date.UTC(1899, 11, 30)) / 86_400_000
}
