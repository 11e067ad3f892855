import { describe, expect, it } from 'vitest'
import ExcelJS from 'exceljs'
import * as XLSX from 'xlsx'
import { fillCells } from '../../src/files/fill'
import { arrivalsIn } from '../../src/home/collect/arrivals'
import { planOf } from '../../src/home/collect/plan'
import { targetsOn } from '../../src/home/collect/targets'
import { homeSetsOf } from '../../src/home/fromMarksheet'
import { PAPERS } from '../../src/home/choices'
import { homeWorkbook } from '../../src/home/workbook'
import { findMarksheets } from '../../src/marksheet/layout/find'
import { addressOf, type Matrix } from '../../src/marksheet/layout/matrix'
import { Chance } from '../fuzz/chance'
import { generatorFrom } from '../../src/items/seed'
import { matricesOf } from '../marksheets'
import { allConverted, LIBREOFFICE } from './libreoffice'

/** 30 invented pupils, some with one short name, and 12 questions. */
const NAMES = Array.from(
  { length: 30 },
  (_, at) =>
    `${['Ada', 'Ben', 'Cai', 'Dee', 'Eve'][at % 5]} ${'KLMNPR'[Math.floor(at / 5)]}${at % 2 ? 'ay' : 'o'}`,
)
const QUESTIONS = [
  '932 − 457',
  '7,214 − 86',
  '£8.60 − £3.25',
  '□ − 46 = 30',
  '789 + 642',
  '4003 − 1567',
  '305 − 128',
  '8.6 − 2.35',
  '503 − 46',
  '467 + 258',
  '5040 − 2308',
  '6105 − 2350',
]
const MARKSHEET: Matrix = { name: 'Heron', values: [['Name', ...QUESTIONS], ...NAMES.map((name) => [name])] }
/** What is typed, by program as a number where it can be one, else as text. */
const TYPED = [
  '475',
  '1,204',
  '£5.35',
  '5.35',
  '3-4',
  '12/15',
  '=1+1',
  "'475",
  '457 or 475',
  '0',
  '7128.',
  ' 86 ',
  '½',
  'I don’t know',
  '007',
]

interface Sent {
  readonly bytes: Uint8Array
  /** The answer cells with what was typed into them and where it must come back to; '' for nothing typed. */
  readonly typed: readonly { readonly at: string; readonly home: string; readonly text: string }[]
}

function sentHome(seed: string): Sent[] {
  const chance = new Chance(generatorFrom(seed))
  const [marksheet] = findMarksheets(MARKSHEET)
  if (!marksheet) throw new Error('A marksheet.')
  return homeSetsOf(marksheet).map((home) => {
    const { bytes, items } = homeWorkbook(home, { feedback: 'hints', when: 'each', paper: chance.of(PAPERS) })
    const typed = items.map(({ answerCell }, at) => ({
      home: answerCell,
      at: addressOf(home.pupil.answers[at] ?? { row: 0, column: 0 }),
      text: chance.onceIn(8) ? '' : chance.onceIn(3) ? chance.of(TYPED) : String(chance.whole(0, 9999)),
    }))
    return { bytes, typed }
  })
}

/** What a program keeps of a text that was typed: a number of plain digits is one. */
const asTyped = (text: string) => (/^(?:0|[1-9]\d*)$/.test(text) ? Number(text) : text)

async function filledByExceljs({ bytes, typed }: Sent): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook()
  await workbook.xlsx.load(bytes as unknown as ExcelJS.Buffer)
  for (const { home, text } of typed)
    if (text !== '') (workbook.worksheets[0] as ExcelJS.Worksheet).getCell(home).value = asTyped(text)
  return new Uint8Array(await workbook.xlsx.writeBuffer())
}

function filledBySheetjs({ bytes, typed }: Sent): Uint8Array {
  const workbook = XLSX.read(bytes, { cellStyles: true })
  const sheet = workbook.Sheets[workbook.SheetNames[0] ?? ''] ?? {}
  for (const { home, text } of typed) {
    const value = asTyped(text)
    if (text !== '') sheet[home] = { t: typeof value === 'number' ? 'n' : 's', v: value } as XLSX.CellObject
  }
  return new Uint8Array(XLSX.write(workbook, { type: 'array', bookType: 'xlsx' }) as ArrayBuffer)
}

/** What the marksheet's cells hold after collecting, by address, and what was left out. */
async function collected(files: readonly Uint8Array[]) {
  const targets = targetsOn([MARKSHEET])
  const arrivals = await Promise.all(
    files.map(async (bytes, at) => arrivalsIn(`${at}.xlsx`, await matricesOf(bytes), targets)),
  )
  const plan = planOf(arrivals.flat())
  return { cells: new Map(plan.writes.map(({ cell, typed }) => [addressOf(cell), typed])), plan }
}

const wanted = (sent: readonly Sent[]) =>
  new Map(
    sent.flatMap(({ typed }) => typed.flatMap(({ at, text }) => (text === '' ? [] : [[at, text] as const]))),
  )

describe('home workbooks filled in by other programs', () => {
  it('come back to the right cells, every one, as they were typed', async () => {
    const sent = sentHome('by libraries')
    const files = await Promise.all(
      sent.map((each, at) => (at % 2 ? filledByExceljs(each) : filledBySheetjs(each))),
    )
    const { cells, plan } = await collected(files)
    expect(plan.left).toEqual([])
    expect(cells).toEqual(wanted(sent))
    expect(cells.size).toBeGreaterThan(300)
  })

  it.skipIf(LIBREOFFICE === null)(
    'and saved by LibreOffice as well, by way of its own format too',
    async () => {
      const sent = sentHome('by LibreOffice')
      const filled = await Promise.all(sent.map(filledByExceljs))
      const xlsx = await allConverted(filled, 'xlsx', 'xlsx')
      const back = await allConverted(await allConverted(filled, 'xlsx', 'ods'), 'ods', 'xlsx')
      for (const files of [xlsx, back]) {
        const { cells, plan } = await collected(files)
        expect(plan.left).toEqual([])
        expect(cells).toEqual(wanted(sent))
      }
    },
  )

  it('leave a workbook that is read back with the same answers in it', async () => {
    const sent = sentHome('written')
    const workbook = new ExcelJS.Workbook()
    workbook.addWorksheet('Heron').addRows(MARKSHEET.values.map((row) => [...row]))
    const marksheet = new Uint8Array(await workbook.xlsx.writeBuffer())
    const { plan } = await collected(await Promise.all(sent.map(filledByExceljs)))
    const sheet = XLSX.read(await fillCells(marksheet, plan.writes)).Sheets.Heron ?? {}
    for (const [at, text] of wanted(sent)) expect(String((sheet[at] as XLSX.CellObject).v)).toBe(text)
  })
})
