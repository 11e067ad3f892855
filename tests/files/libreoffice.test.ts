import ExcelJS from 'exceljs'
import { describe, expect, it } from 'vitest'
import type { CellValue } from '../../src/answers/typed'
import { bytesOf, WORKBOOKS } from '../marksheets'
import { LIBREOFFICE, shownFills } from './libreoffice'
import { markedCopy, wantedFills } from './marked'

const TYPED: CellValue[] = [
  6544,
  7456,
  '6544',
  ' 6,544',
  '6544\u00a0',
  '7,456',
  '7 456',
  '6544.',
  '=6544',
  '£6544',
  '065',
  'abs',
  'A',
  'ill',
  'n/a',
  '/',
  '-',
  '6?44',
  '6544/6545',
  '6544 or 6545',
  '326, 426',
  'see me',
  true,
  45_000,
  99_999,
  -6544,
  6544.5,
  '6544.5',
  6.25,
  '3-4',
  '50%',
  '1e3',
  '6544p',
  '６５４４',
  null,
]

/** What is read otherwise where a comma is the decimal sign: as numbers, and as texts. */
const COMMA: CellValue[] = [
  6.25,
  6.544,
  6.54,
  '6,25',
  '6.25',
  '6,544',
  '6.544',
  '6.540',
  '2,9',
  ',000',
  '0,000',
  '6.544,0',
  '7.456',
  '1.234.567',
]

describe.skipIf(LIBREOFFICE === null)('colours in LibreOffice', () => {
  it.each(WORKBOOKS)('agree with the review on every answer of %s', async (name) => {
    const fills = await shownFills(await markedCopy(bytesOf(name)))
    const original = await shownFills(bytesOf(name))
    for (const { cell, typed, fill } of await wantedFills(bytesOf(name))) {
      const own = original[cell.row]?.[cell.column] ?? null
      expect([typed, fills[cell.row]?.[cell.column] ?? null]).toEqual([typed, fill ?? own])
    }
  })

  it('agree with it on every kind of answer, and after retyping never say other than it', async () => {
    const book = new ExcelJS.Workbook()
    const sheet = book.addWorksheet('Class')
    sheet.addRow(['Name', '9,000 − 2,456', '8.6 − 2.35', '45,500 − 500'])
    TYPED.forEach((value, index) => sheet.addRow([`Pupil ${index}`, value, value, value]))
    const made = new Uint8Array(await book.xlsx.writeBuffer())
    const copy = await markedCopy(made)
    const fills = await shownFills(copy)
    for (const { cell, typed, fill } of await wantedFills(made)) {
      expect([typed, fills[cell.row]?.[cell.column] ?? null]).toEqual([typed, fill])
    }

    const retyped = new ExcelJS.Workbook()
    await retyped.xlsx.load(copy as unknown as ExcelJS.Buffer)
    TYPED.toReversed().forEach((value, index) => {
      const row = retyped.getWorksheet('Class')?.getRow(index + 2)
      for (const column of [2, 3, 4]) Object.assign(row?.getCell(column) ?? {}, { value })
    })
    const again = new Uint8Array(await retyped.xlsx.writeBuffer())
    const now = await shownFills(again)
    const told = await wantedFills(again)
    const shown = told.map(({ cell }) => now[cell.row]?.[cell.column] ?? null)
    told.forEach(({ typed, fill }, index) => {
      expect([typed, shown[index] === null ? fill : shown[index]]).toEqual([typed, fill])
    })
    expect(shown.filter((fill) => fill !== null).length).toBeGreaterThan(told.length / 2)
  })

  it.each(['de-DE', 'fr-FR', 'de-CH'])(
    'never say other than it on a computer set to %s, nor after retyping',
    async (locale) => {
      const typed = [...TYPED, ...COMMA]
      const made = async (values: readonly CellValue[], from?: Uint8Array) => {
        const book = new ExcelJS.Workbook()
        if (from) await book.xlsx.load(from as unknown as ExcelJS.Buffer)
        const sheet = book.getWorksheet('Class') ?? book.addWorksheet('Class')
        sheet.getRow(1).values = ['Name', '9,000 − 2,456', '8.6 − 2.35', '7 − 0.46']
        values.forEach((value, index) => {
          sheet.getRow(index + 2).values = [`Pupil ${index}`, value, value, value]
        })
        return new Uint8Array(await book.xlsx.writeBuffer())
      }
      const bytes = await made(typed)
      const copy = await markedCopy(bytes)
      for (const workbook of [copy, await made(typed.toReversed(), copy)]) {
        const fills = await shownFills(workbook, locale)
        const told = await wantedFills(workbook)
        const shown = told.map(({ cell }) => fills[cell.row]?.[cell.column] ?? null)
        told.forEach(({ typed: text, fill }, index) => {
          expect([text, shown[index] ?? fill]).toEqual([text, fill])
        })
        expect(shown.filter((fill) => fill !== null).length).toBeGreaterThan(told.length / 3)
      }
    },
  )
})
