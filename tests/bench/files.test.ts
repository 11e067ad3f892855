import ExcelJS from 'exceljs'
import { describe, expect, test } from 'vitest'
import * as XLSX from 'xlsx'
import { Bench } from '../../src/bench/bench'
import { DEMO } from '../../src/bench/demo'
import { lostBySaving } from '../../src/bench/files/lost'
import { readXlsx, showWorkbook } from '../../src/bench/files/openXlsx'
import { saveXlsx } from '../../src/bench/files/saveXlsx'
import { cellArea } from '../../src/bench/grid/area'
import { parseAddress } from '../../src/bench/host/address'

const at = (address: string) => parseAddress(address).area

/** A bench with one of everything that a file can hold. */
function filledBench(): Bench {
  const bench = new Bench()
  const { grid, book } = bench
  const id = grid.activeSheet()
  grid.renameSheet(id, 'Marks')
  grid.write(id, 0, 0, [
    ['Name', '932 − 457', 'When'],
    ['Ada', 475, 45_720],
    ['Ben', '47 5', ''],
    ['Right', { formula: '=COUNTIF(B2:B3,475)', value: 1 }, true],
  ])
  grid.setFormat(id, at('C2'), { numberFormat: 'd-mmm' })
  grid.setFormat(id, at('A1:C1'), {
    bold: true,
    fill: '#DDEEFF',
    borders: { bottom: { style: 'Continuous', weight: 'Thick', colour: '#112233' } },
  })
  grid.setFormat(id, at('B2:B3'), { locked: false, horizontal: 'Right' })
  grid.setColumnWidth(id, 0, 1, 90)
  grid.hideRows(id, 2, 1, true)
  grid.merge(id, at('A6:C6'))
  grid.freeze(id, 1, 1)
  grid.setNote(id, 1, 1, 'Checked')
  grid.setConditionalFormats(id, [
    {
      id: 'a',
      areas: [at('B2:B3'), at('B5')],
      type: 'Custom',
      formula: '=B2=475',
      stopIfTrue: false,
      style: { fill: '#CCEECC', fontColour: '#003300', bold: true },
    },
    {
      id: 'b',
      areas: [at('B2:B3')],
      type: 'Custom',
      formula: '=B2=""',
      stopIfTrue: false,
      style: { fill: '#EEEEEE' },
    },
  ])
  book.sheet(id).protection = { options: { allowFormatCells: true, allowEditObjects: false } }
  const second = grid.addSheet('Record')
  grid.write(second, 0, 0, [
    ['Pupil', 'Week'],
    ['Ada', 3],
    ['Ben', 4],
  ])
  book.tables.push({
    id: 't',
    sheetId: second,
    name: 'RecordTable',
    area: at('A1:B3'),
    showHeaders: true,
    showTotals: false,
    style: 'TableStyleLight9',
    showFilterButton: true,
    showBandedRows: true,
  })
  book.names.push({ name: 'Pupils', formula: '=Marks!$A$2:$A$3', comment: '', visible: true, sheetId: null })
  return bench
}

describe('a workbook saved and opened again', () => {
  test('keeps cells, formats, layout, rules, tables, names and protection', async () => {
    const again = new Bench()
    showWorkbook(again, await readXlsx(await saveXlsx(filledBench())))
    const { grid, book } = again
    expect(grid.sheets().map(({ name }) => name)).toEqual(['Marks', 'Record'])
    const id = again.sheetId('Marks')
    expect(grid.values(id, at('A1:C4'))).toEqual([
      ['Name', '932 − 457', 'When'],
      ['Ada', 475, 45_720],
      ['Ben', '47 5', ''],
      ['Right', 1, true],
    ])
    expect(grid.formulas(id, at('B4'))).toEqual([['=COUNTIF(B2:B3,475)']])
    expect(grid.format(id, 1, 2).numberFormat).toBe('d-mmm')
    expect(grid.format(id, 0, 0)).toMatchObject({
      bold: true,
      fill: '#DDEEFF',
      borders: { bottom: { style: 'Continuous', weight: 'Thick', colour: '#112233' } },
    })
    expect(grid.format(id, 1, 1)).toMatchObject({ locked: false, horizontal: 'Right' })
    expect(grid.columnWidth(id, 0)).toBeCloseTo(90, 0)
    expect([grid.rowHidden(id, 1), grid.rowHidden(id, 2)]).toEqual([false, true])
    expect(grid.merges(id)).toEqual([at('A6:C6')])
    expect(grid.frozen(id)).toEqual({ rows: 1, cols: 1 })
    expect(grid.notes(id)).toEqual([{ row: 1, col: 1, text: 'Checked' }])
    expect(
      grid.conditionalFormats(id).map(({ areas, formula, style }) => ({ areas, formula, style })),
    ).toEqual([
      {
        areas: [at('B2:B3'), at('B5')],
        formula: '=B2=475',
        style: { fill: '#CCEECC', fontColour: '#003300', bold: true },
      },
      { areas: [at('B2:B3')], formula: '=B2=""', style: { fill: '#EEEEEE' } },
    ])
    expect(book.sheet(id).protection?.options).toMatchObject({
      allowFormatCells: true,
      allowEditObjects: false,
    })
    expect(
      book.tables.map(({ name, area, style, showFilterButton }) => ({ name, area, style, showFilterButton })),
    ).toEqual([{ name: 'RecordTable', area: at('A1:B3'), style: 'TableStyleLight9', showFilterButton: true }])
    expect(grid.values(again.sheetId('Record'), at('A1:B3'))).toEqual([
      ['Pupil', 'Week'],
      ['Ada', 3],
      ['Ben', 4],
    ])
    expect(book.names.map(({ name, formula }) => [name, formula])).toEqual([['Pupils', '=Marks!$A$2:$A$3']])
  })

  test('another reader finds the same cells', async () => {
    const workbook = XLSX.read(await saveXlsx(filledBench()), { cellNF: true })
    const sheet = workbook.Sheets.Marks
    expect(XLSX.utils.sheet_to_json(sheet ?? {}, { header: 1, raw: true }).slice(0, 3)).toEqual([
      ['Name', '932 − 457', 'When'],
      ['Ada', 475, 45_720],
      ['Ben', '47 5'],
    ])
    expect((sheet?.B4 as XLSX.CellObject).f).toBe('COUNTIF(B2:B3,475)')
    expect((sheet?.C2 as XLSX.CellObject).z).toBe('d-mmm')
  })
})

test('dates come as serial numbers, whatever the time zone', async () => {
  const workbook = new ExcelJS.Workbook()
  const cell = workbook.addWorksheet('Dates').getCell('A1')
  cell.value = new Date(Date.UTC(2025, 2, 4))
  cell.numFmt = 'd-mmm'
  const bench = new Bench()
  showWorkbook(bench, await readXlsx((await workbook.xlsx.writeBuffer()) as ArrayBuffer))
  expect(bench.grid.values(bench.sheetId('Dates'), cellArea(0, 0))).toEqual([[45_720]])
})

test('what is no workbook is refused with a sentence, and the bench keeps what it had', async () => {
  await expect(readXlsx(new TextEncoder().encode('not a workbook').buffer)).rejects.toThrow(
    'This file cannot be read.',
  )
})

test('what saving would lose is told', async () => {
  expect(await lostBySaving(await saveXlsx(filledBench()))).toEqual(
    expect.not.arrayContaining(['charts', 'pictures']),
  )
  const workbook = new ExcelJS.Workbook()
  const png =
    'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg=='
  const image = workbook.addImage({ base64: png, extension: 'png' })
  workbook.addWorksheet('Picture').addImage(image, 'A1:B2')
  expect(await lostBySaving((await workbook.xlsx.writeBuffer()) as ArrayBuffer)).toEqual([
    'pictures',
    'drawings',
  ])
})

test('the demo class is a whole sheet: 28 pupils, 12 questions, names that differ', () => {
  const [header = [], ...pupils] = DEMO.cells.slice(2)
  expect(header).toHaveLength(13)
  expect(pupils).toHaveLength(28)
  expect(pupils.every((line) => line.length === 13)).toBe(true)
  expect(new Set(pupils.map(([name]) => name)).size).toBe(28)
  expect(DEMO.cells.every((line) => line.length === 13)).toBe(true)
})
