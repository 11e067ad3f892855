import { DOMParser } from '@xmldom/xmldom'
import ExcelJS from 'exceljs'
import JSZip from 'jszip'
import { describe, expect, it } from 'vitest'
import * as XLSX from 'xlsx'
import { FEEDBACK, PAPERS, WHENS, type HomeChoices } from '../../src/home/choices'
import { namedSets } from '../../src/home/fromMarksheet'
import { homeWorkbook, isHomeAsMade } from '../../src/home/workbook'
import { askedAs } from '../support/asked'

const QUESTIONS = ['932 − 457', '7,214 − 86', '£8.60 − £3.25', '□ − 46 = 30', '5.2 kg + 1.35 kg', '3-1'].map(
  askedAs,
)
const NAMES = ['Ada King', 'Ada Knight', 'Bryn Tudor', 'tomos@example.org']
const CHOICES: HomeChoices[] = FEEDBACK.flatMap((feedback) =>
  WHENS.flatMap((when) => PAPERS.map((paper) => ({ feedback, when, paper }))),
)
const homes = namedSets(
  NAMES,
  NAMES.map(() => QUESTIONS),
)

async function partsOf(bytes: Uint8Array): Promise<Map<string, string>> {
  const zip = await JSZip.loadAsync(bytes, { checkCRC32: true })
  const names = Object.keys(zip.files)
  return new Map(
    await Promise.all(
      names.map(async (name) => [name, (await zip.file(name)?.async('string')) ?? ''] as const),
    ),
  )
}

describe.each(CHOICES)('a home workbook with $feedback, $when, on $paper', (choices) => {
  it('holds no full name, author, path, day or other child in any part', async () => {
    for (const [at, home] of homes.entries()) {
      const parts = await partsOf(homeWorkbook(home, choices).bytes)
      const all = [...parts].flat().join('\n')
      expect(all).not.toMatch(
        /King|Knight|Tudor|@|creator|lastModifiedBy|Application|[/\\](home|tmp|Users)[/\\]|20\d\d-/,
      )
      for (const other of homes.filter((_, index) => index !== at)) {
        expect(all).not.toContain(other.child.code)
        if (other.child.name !== '') expect(all).not.toContain(`for ${other.child.name}<`)
      }
    }
  })

  it('holds the answers in its feedback only, and none where there is none', async () => {
    const [home] = homes
    const parts = await partsOf(homeWorkbook(home ?? { child: null, questions: QUESTIONS }, choices).bytes)
    const all = [...parts.values()].join('\n')
    for (const answer of ['475', '7128', '5.35', '76', '6.55'])
      expect(new RegExp(`[^\\d.]${answer.replace('.', '\\.')}[^\\d.]`).test(all)).toBe(
        choices.feedback !== 'none',
      )
    expect(parts.get('xl/worksheets/sheet1.xml')).not.toContain('475')
  })

  it('is read by two libraries: a cell to type in for each question, all else locked without a password', async () => {
    const { bytes, sheet, items } = homeWorkbook({ child: null, questions: QUESTIONS }, choices)
    const book = new ExcelJS.Workbook()
    await book.xlsx.load(bytes as unknown as ExcelJS.Buffer)
    expect(book.worksheets.map(({ name, state }) => [name, state])).toEqual([
      ['Questions', 'visible'],
      ['Columnwise', 'hidden'],
    ])
    const page = book.getWorksheet(sheet)
    const free: string[] = []
    page?.eachRow((row) => {
      row.eachCell({ includeEmpty: true }, (cell) => {
        if (cell.protection?.locked === false) free.push(cell.address)
      })
    })
    const answers = items.map(({ answerCell }) => answerCell)
    if (choices.paper === 'lines') expect(free).toEqual(['C3', ...answers])
    else expect(free).toEqual(expect.arrayContaining(['C3', ...answers]))
    expect(answers.map((cell) => page?.getCell(cell).numFmt)).toEqual(answers.map(() => '@'))
    expect(items.map(({ answerCell }) => page?.getCell(answerCell.replace('C', 'B')).value)).toEqual(
      QUESTIONS.map(({ text }) => text),
    )
    const other = XLSX.read(bytes, { type: 'array', cellFormula: true, sheetStubs: true })
    expect(other.SheetNames).toEqual(['Questions', 'Columnwise'])
    for (const { feedbackCell } of items)
      expect(feedbackCell === null || other.Sheets[sheet]?.[feedbackCell] !== undefined).toBe(true)
    const protection = [...(await partsOf(bytes))]
      .filter(([name]) => name.startsWith('xl/worksheets/'))
      .map(([, xml]) => /<sheetProtection[^>]*>/.exec(xml)?.[0])
    expect(protection).toEqual(Array(2).fill('<sheetProtection sheet="1" objects="1" scenarios="1"/>'))
  })

  // The order of CT_Worksheet's children in ECMA-376, part 1, sml.xsd (from memory).
  it('has the elements of a worksheet in the order of the standard', async () => {
    const order =
      'sheetPr dimension sheetViews sheetFormatPr cols sheetData sheetProtection mergeCells conditionalFormatting ' +
      'dataValidations printOptions pageMargins pageSetup headerFooter ignoredErrors'
    for (const [name, xml] of await partsOf(
      homeWorkbook({ child: null, questions: QUESTIONS }, choices).bytes,
    )) {
      if (!name.startsWith('xl/worksheets/')) continue
      const root = [
        ...(new DOMParser().parseFromString(xml, 'text/xml').documentElement?.childNodes ?? []),
      ].map(({ nodeName }) => nodeName)
      const places = root.map((element) => order.split(' ').indexOf(element))
      expect(places).not.toContain(-1)
      expect(places).toEqual(places.toSorted((a, b) => a - b))
    }
  })
})

describe('a home workbook as it was made', () => {
  it('is told from one that another program has saved', async () => {
    const { bytes } = homeWorkbook({ child: null, questions: QUESTIONS })
    expect(isHomeAsMade(bytes)).toBe(true)
    const book = new ExcelJS.Workbook()
    await book.xlsx.load(bytes as unknown as ExcelJS.Buffer)
    expect(isHomeAsMade(new Uint8Array(await book.xlsx.writeBuffer()))).toBe(false)
  })
})
