import ExcelJS from 'exceljs'
import JSZip from 'jszip'
import { describe, expect, it } from 'vitest'
import * as XLSX from 'xlsx'
import { keptBesideCells } from '../../src/files/apply'
import { readWorkbook } from '../../src/files/xlsx/workbook'
import { NOTES_TITLE } from '../../src/marksheet/marking/notes'
import { SIGNATURE } from '../../src/marksheet/marking/rules'
import { bytesOf, WORKBOOKS } from '../marksheets'
import { markedCopy } from './marked'

/** A workbook made for a test. */
async function workbook(build: (book: ExcelJS.Workbook) => void): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook()
  build(book)
  return new Uint8Array(await book.xlsx.writeBuffer())
}
const CLASS = [
  ['Name', '932 − 457', '305 − 128', '604 − 37'],
  ['Amina K', 475, 177, 567],
  ['=HYPERLINK("x")', 525, 223, 667],
]
const addClass = (book: ExcelJS.Workbook, name = 'Sheet1') => book.addWorksheet(name).addRows(CLASS)
const formulasOf = async (bytes: Uint8Array, part = 'xl/worksheets/sheet1.xml') =>
  [
    ...((await (await JSZip.loadAsync(bytes)).file(part)?.async('string')) ?? '').matchAll(
      /<(?:\w+:)?formula>([^<]*)</g,
    ),
  ].map(([, formula = '']) =>
    formula
      .replaceAll('&quot;', '"')
      .replaceAll('&lt;', '<')
      .replaceAll('&gt;', '>')
      .replaceAll('&amp;', '&'),
  )

describe.each(WORKBOOKS)('the marked copy of %s', (name) => {
  it('keeps every cell of the teacher’s, its formula and its format, and every merged cell (read by an independent library)', async () => {
    const options = { cellStyles: true, cellNF: true, cellFormula: true } as const
    const before = XLSX.read(bytesOf(name), options)
    const after = XLSX.read(await markedCopy(bytesOf(name)), options)
    expect(after.SheetNames).toEqual([...before.SheetNames, 'Mastery'])
    for (const sheet of before.SheetNames) {
      const [old, now] = [before.Sheets[sheet] ?? {}, after.Sheets[sheet] ?? {}]
      expect(now['!merges']).toEqual(old['!merges'])
      expect(now['!cols']?.slice(0, old['!cols']?.length)).toEqual(old['!cols'])
      const cells = Object.keys(old).filter((key) => !key.startsWith('!'))
      expect(Object.fromEntries(cells.map((cell) => [cell, now[cell] as unknown]))).toEqual(
        Object.fromEntries(cells.map((cell) => [cell, old[cell] as unknown])),
      )
      const added = Object.keys(now).filter((key) => !key.startsWith('!') && !(key in old))
      expect(
        added.length === 0 || added.some((cell) => (now[cell] as XLSX.CellObject).v === NOTES_TITLE),
      ).toBe(true)
    }
  })

  it('keeps the bytes of every part but the sheets, the styles and the list of sheets', async () => {
    const before = await JSZip.loadAsync(bytesOf(name))
    const after = await JSZip.loadAsync(await markedCopy(bytesOf(name)))
    const rewritten =
      /^\[Content_Types\]\.xml$|^xl\/(?:workbook\.xml|styles\.xml|_rels\/workbook\.xml\.rels|sharedStrings\.xml|worksheets\/sheet\d+\.xml)$/
    for (const part of Object.keys(before.files).filter(
      (each) => !each.endsWith('/') && !rewritten.test(each),
    )) {
      expect(await after.file(part)?.async('string'), part).toBe(await before.file(part)?.async('string'))
    }
  })

  it('marked again, is the same', async () => {
    const once = await markedCopy(bytesOf(name))
    const twice = await markedCopy(once)
    expect((await readWorkbook(twice)).map((sheet) => sheet.name)).toEqual(
      (await readWorkbook(once)).map((sheet) => sheet.name),
    )
    expect(await formulasOf(twice)).toEqual(await formulasOf(once))
  })
})

describe('a marked copy', () => {
  it('puts the teacher’s own conditional formats behind ours, in their order', async () => {
    const bytes = await workbook((book) => {
      addClass(book)
      const rule = (formula: string, priority: number): ExcelJS.ExpressionRuleType => ({
        type: 'expression',
        formulae: [formula],
        priority,
        style: {},
      })
      book.worksheets[0]?.addConditionalFormatting({
        ref: 'B2:D3',
        rules: [rule('B2>900', 1), rule('B2<3', 2)],
      })
    })
    const formulas = await formulasOf(await markedCopy(bytes))
    expect(formulas.slice(-2)).toEqual(['B2>900', 'B2<3'])
    expect(formulas.slice(0, -2).every((formula) => formula.includes(SIGNATURE))).toBe(true)
    const xml = await (
      await JSZip.loadAsync(await markedCopy(bytes))
    )
      .file('xl/worksheets/sheet1.xml')
      ?.async('string')
    const priorities = [...(xml?.matchAll(/priority="(\d+)"/g) ?? [])].map(([, priority]) => Number(priority))
    expect(priorities).toEqual(priorities.map((_, index) => index + 1))
  })

  it('writes names and notes as text, never as formulas', async () => {
    const after = XLSX.read(await markedCopy(await workbook((book) => addClass(book))), { cellFormula: true })
    const cells = Object.values(after.Sheets.Mastery ?? {}) as XLSX.CellObject[]
    expect(cells.some(({ t, v }) => t === 's' && v === '=HYPERLINK("x")')).toBe(true)
    expect(cells.filter(({ f }) => f !== undefined)).toEqual([])
  })

  it('leaves a sheet called Mastery that is not ours as it is, and fills its own again', async () => {
    const bytes = await workbook((book) => {
      addClass(book)
      book.addWorksheet('mastery').addRow(['The teacher’s own'])
    })
    const once = XLSX.read(await markedCopy(bytes))
    expect(once.SheetNames).toEqual(['Sheet1', 'mastery', 'Mastery (2)'])
    expect(once.Sheets.mastery?.A1?.v).toBe('The teacher’s own')
    expect(XLSX.read(await markedCopy(await markedCopy(bytes))).SheetNames).toEqual(once.SheetNames)
  })

  it('keeps charts and pictures, and says so', async () => {
    const zip = await JSZip.loadAsync(await workbook((book) => addClass(book)))
    zip.file('xl/charts/chart1.xml', '<c:chartSpace xmlns:c="x"/>')
    zip.file('xl/media/image1.png', new Uint8Array([137, 80, 78, 71]))
    const bytes = await zip.generateAsync({ type: 'uint8array' })
    expect(await keptBesideCells(bytes)).toEqual(['1 chart', '1 picture'])
    const copy = await JSZip.loadAsync(await markedCopy(bytes))
    expect(await copy.file('xl/charts/chart1.xml')?.async('string')).toBe('<c:chartSpace xmlns:c="x"/>')
    expect(await copy.file('xl/media/image1.png')?.async('uint8array')).toEqual(
      new Uint8Array([137, 80, 78, 71]),
    )
  })

  it('puts each child of a sheet where the schema wants it (ECMA-376, CT_Worksheet)', async () => {
    const bytes = await workbook((book) => {
      const sheet = addClass(book)[0] && book.worksheets[0]
      sheet?.mergeCells('F1:G1')
      if (sheet) sheet.autoFilter = 'A1:D1'
    })
    const xml =
      (await (
        await JSZip.loadAsync(await markedCopy(bytes))
      )
        .file('xl/worksheets/sheet1.xml')
        ?.async('string')) ?? ''
    const order = [
      '<cols',
      '<sheetData',
      '<autoFilter',
      '<mergeCells',
      '<conditionalFormatting',
      '<pageMargins',
    ]
    const places = order.map((tag) => xml.indexOf(tag))
    expect(places.every((place) => place > 0)).toBe(true)
    expect(places).toEqual([...places].sort((a, b) => a - b))
  })
})
