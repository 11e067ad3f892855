import ExcelJS from 'exceljs'
import { describe, expect, it } from 'vitest'
import * as XLSX from 'xlsx'
import { applyPlans } from '../../src/files/apply'
import { planMarking, planMastery, type TableSheet } from '../../src/marksheet/marking/plan'
import { matricesOf } from '../marksheets'
import { review } from '../../src/marksheet/marking/review'

/** Names that a spreadsheet would take for formulas, dates or numbers if they were typed. */
const LIKE_FORMULAS = [
  '=HYPERLINK("http://example.invalid","x")',
  '=1+1',
  '+44 7700 900123',
  '-Max',
  '@SAM(A1)',
  '\t=1+1',
  '\n=2+2',
  "'=3+3",
  '＝4+4',
  '1-2',
  '=cmd|x!A1',
  '"; DROP',
  '<b>&amp;</b>]]>',
  '_x0041_da',
  'bell\u0007',
  'Hal \ud83d',
  'return\r\n',
] as const

/** Names of children as they are written: right to left, with joined and combining signs, without capitals, outside the first plane. */
const IN_ANY_SCRIPT = [
  'محمد علي',
  'שרה כהן',
  '李小龙',
  'นภา ใจดี',
  'அனன்யா',
  'Ananya अनन्या',
  'Ṣọlá Adé',
  'Nguye\u0302\u0303n An',
  'İpek Şahin',
  'Łukasz',
  '김민준',
  'Æthel 𐌰𐌽',
  '\u200fעברית\u200f',
  'Zoë O’Neill',
] as const

const QUESTIONS = ['932 − 457', '305 − 128', '604 − 37', '81 + 9', '710 − 356']

/** A class with the given names, most answers wrong, and some typed answers that look like formulas. */
async function workbookOf(names: readonly string[]): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook()
  const sheet = book.addWorksheet('Class')
  sheet.addRow(['Name', ...QUESTIONS])
  names.forEach((name, index) => {
    // The library does not escape what looks like an escape (ECMA-376, ST_Xstring).
    sheet.addRow([
      name.replace(/_(?=x)/, '_x005F_'),
      525,
      223,
      LIKE_FORMULAS[index % LIKE_FORMULAS.length] ?? '',
      90,
      446,
    ])
  })
  return new Uint8Array(await book.xlsx.writeBuffer())
}

async function markedCopy(bytes: Uint8Array): Promise<Uint8Array> {
  const [matrix = { name: 'none', values: [] }] = await matricesOf(bytes)
  const reviews = review(matrix)
  return applyPlans(bytes, [planMarking(matrix, reviews)], [planMastery(reviews)])
}

/** The cells of a sheet, read by an independent library. */
function cellsOf(book: XLSX.WorkBook, sheet: string): XLSX.CellObject[] {
  return Object.entries(book.Sheets[sheet] ?? {}).flatMap(([key, cell]) =>
    key.startsWith('!') ? [] : [cell as XLSX.CellObject],
  )
}

/** A text without what the library that makes the workbook, or the reader, takes out of it. */
const plain = (text: unknown) =>
  String(text)
    .replaceAll('\u0007', '')
    .replace(/[\ud83d\ufffd]/, '')
    .replaceAll('\r\n', '\n')
    .trim()

describe.each([
  ['like formulas', LIKE_FORMULAS],
  ['in any script', IN_ANY_SCRIPT],
])('names %s', (_, names) => {
  it('are pupils, and stand in a marked copy as they are, each a text', async () => {
    const copy = XLSX.read(await markedCopy(await workbookOf(names)), { cellFormula: true })
    const mastery = cellsOf(copy, 'Mastery')
    const texts = mastery.filter(({ t }) => t === 's').map(({ v }) => v)
    for (const name of names) expect(texts.map(plain), JSON.stringify(name)).toContain(plain(name))
    expect(mastery.filter(({ t }) => t !== 's' && t !== 'z')).toEqual([])
    for (const sheet of copy.SheetNames)
      expect(cellsOf(copy, sheet).filter(({ f }) => f !== undefined)).toEqual([])
  })

  it('and what the pupils typed are left in the marked copy as they were', async () => {
    const bytes = await workbookOf(names)
    const [before, after] = [XLSX.read(bytes), XLSX.read(await markedCopy(bytes))]
    const held = ({ t, v }: XLSX.CellObject) => ({ t, v })
    const old = cellsOf(before, 'Class').map(held)
    expect(cellsOf(after, 'Class').map(held)).toEqual(expect.arrayContaining(old))
  })
})

describe('any sheet of our own', () => {
  it('holds texts alone, whatever they look like', async () => {
    const texts = [...LIKE_FORMULAS, ...IN_ANY_SCRIPT, 'TRUE', '#N/A', '1e3', '007', ' kept ', 'two\nlines']
    const table: TableSheet = {
      name: 'Reports',
      rows: [
        [{ text: 'Columnwise · Reports', bold: true, fill: null }],
        ...texts.map((text) => [text, text].map((each) => ({ text: each, bold: false, fill: null }))),
      ],
      widths: [20, 20],
    }
    const bytes = await applyPlans(await workbookOf(['Ada B']), [], [table])
    const copy = XLSX.read(bytes, { cellFormula: true })
    const cells = cellsOf(copy, 'Reports')
    expect(cells.every(({ t, f }) => t === 's' && f === undefined)).toBe(true)
    const wanted = ['Columnwise · Reports', ...texts]
    expect(new Set(cells.map(({ v }) => v))).toEqual(new Set(wanted))
  })
})
