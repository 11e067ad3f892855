import ExcelJS from 'exceljs'
import JSZip from 'jszip'
import { describe, expect, it } from 'vitest'
import { addressOf, type Matrix } from '../../src/marksheet/layout/matrix'
import { planMarking } from '../../src/marksheet/marking/plan'
import { NOTES_TITLE } from '../../src/marksheet/marking/notes'
import { review } from '../../src/marksheet/marking/review'
import { matricesOf } from '../marksheets'
import { markedCopy } from './marked'

// Orla B takes the smaller digit from the larger throughout, so that there is a note to write.
const ROWS = [
  ['Name', '932 − 457', '305 − 128', '604 − 37', '721 − 356'],
  ['Amina K', 475, 177, 567, 365],
  ['Orla B', 525, 223, 633, 435],
]

async function workbook(build: (sheet: ExcelJS.Worksheet) => void, rows = ROWS): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook()
  const sheet = book.addWorksheet('Owls')
  sheet.addRows(rows)
  build(sheet)
  return new Uint8Array(await book.xlsx.writeBuffer())
}

async function planOf(bytes: Uint8Array) {
  const [matrix] = await matricesOf(bytes)
  if (!matrix) throw new Error('no sheet')
  return planOfMatrix(matrix)
}

function planOfMatrix(matrix: Matrix) {
  return planMarking(matrix, review(matrix))
}

async function notesOf(bytes: Uint8Array): Promise<string[]> {
  return (await planOf(bytes)).notes.map(addressOf)
}

async function formulasIn(bytes: Uint8Array): Promise<string[]> {
  const xml = (await (await JSZip.loadAsync(bytes)).file('xl/worksheets/sheet1.xml')?.async('string')) ?? ''
  return [...xml.matchAll(/<f[^>]*>([^<]*)<\/f>/g)].map(([, formula = '']) =>
    formula.replaceAll('&quot;', '"'),
  )
}

describe('notes go only into cells that hold no value, no formula and no merge', () => {
  it('one column is left free behind the marksheet', async () => {
    expect(await notesOf(await workbook(() => undefined))).toEqual(['G1', 'G3'])
  })

  it('formulas that show nothing, or were never worked out, stay', async () => {
    const bytes = await workbook((sheet) => {
      sheet.getCell('G2').value = { formula: 'IF(B2>0,"","")', result: '' }
      sheet.getCell('G3').value = { formula: 'IF(B3>0,"","")', result: '' }
      sheet.getCell('H3').value = { formula: 'SUM(B3:E3)' } as ExcelJS.CellFormulaValue
    })
    const before = await formulasIn(bytes)
    expect(before).toHaveLength(3)
    expect(await notesOf(bytes)).toEqual(['J1', 'J3'])
    expect(await formulasIn(await markedCopy(bytes))).toEqual(before)
  })

  it('empty merged cells stay', async () => {
    expect(await notesOf(await workbook((sheet) => sheet.mergeCells('G2:I3')))).toEqual(['K1', 'K3'])
  })

  it('a merge above or below the marksheet is not in the way', async () => {
    expect(await notesOf(await workbook((sheet) => sheet.mergeCells('G9:I12')))).toEqual(['G1', 'G3'])
  })

  it('in a column of notes of an earlier marking, what the teacher wrote since stays', async () => {
    const bytes = await workbook((sheet) => {
      sheet.getCell('G1').value = NOTES_TITLE
      sheet.getCell('G2').value = 'new here'
      sheet.getCell('G3').value = { formula: 'SUM(B3:E3)', result: 0 }
    })
    expect(await notesOf(bytes)).toEqual(['G1'])
  })

  it('beside the last column of a sheet there is none, and the plan says so', async () => {
    const merges = [{ top: 1, left: 6, bottom: 1, right: 16_383 }]
    expect(planOfMatrix({ name: 'Owls', values: ROWS, merges })).toMatchObject({
      notes: [],
      told: ['The notes beside A1:E3 on Owls were left out, since no column on its right is free.'],
    })
  })

  it('the same where pupils run across: no row below is free', async () => {
    const across = ROWS[0]?.map((_, column) => ROWS.map((row) => row[column] ?? '')) ?? []
    const view = await planOf(await workbook((sheet) => sheet.mergeCells('C7:C8'), across))
    expect(view.notes.map(addressOf)).toEqual(['A10', 'C10'])
    const merges = [{ top: 6, left: 1, bottom: 1_048_575, right: 1 }]
    expect(planOfMatrix({ name: 'Owls', values: across, merges })).toMatchObject({
      notes: [],
      told: ['The notes below A1:C5 on Owls were left out, since no row below it is free.'],
    })
  })
})
