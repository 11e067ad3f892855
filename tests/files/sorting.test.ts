import ExcelJS from 'exceljs'
import { describe, expect, it } from 'vitest'
import type { CellValue } from '../../src/answers/typed'
import { LOOKS } from '../../src/marksheet/marking/looks'
import { review } from '../../src/marksheet/marking/review'
import { matricesOf } from '../marksheets'
import { LIBREOFFICE, shownFills } from './libreoffice'
import { markedCopy, wantedFills } from './marked'

type Rows = readonly (readonly CellValue[])[]

const ASKED = ['932 − 457', '764 − 239', '681 − 357', '305 − 128', '958 − 216', '503 − 246']
const RIGHT = [475, 525, 324, 177, 742, 257]
const SMALLER = [525, 535, 336, 223, 742, 343]
const UNTIDY: CellValue[] = ['=475', '525.', '6?4', 'abs', '', '3-4']

const CLASS: Rows = [
  ['Name', ...ASKED],
  ['Ada B', ...RIGHT],
  ['Ben "Bo" C', ...SMALLER],
  ['Cai D', ...UNTIDY],
  ['Dee E', 474, ...RIGHT.slice(1)],
  ['Eve F', ...SMALLER],
  ['Flo G', ...RIGHT],
  ['Gil H', ...UNTIDY.toReversed()],
]

/** Each pupil with questions of their own, beside their answers. */
const PAIRS: Rows = [
  ['Name', 'Question 1', 'Answer 1', 'Question 2', 'Answer 2', 'Question 3', 'Answer 3'],
  ['Ada B', '932 − 457', 475, '764 − 239', 525, '681 − 357', 324],
  ['Ben C', '305 − 128', 223, '612 − 345', 333, '503 − 246', 343],
  ['Cai D', '420 − 133', '=287', '751 − 268', 'abs', '640 − 255', 385],
  ['Dee E', '831 − 476', 355, '724 − 159', 565, '913 − 647', 366],
]

async function workbookOf(rows: Rows): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook()
  const sheet = book.addWorksheet('Class')
  rows.forEach((row) => sheet.addRow([...row]))
  return new Uint8Array(await book.xlsx.writeBuffer())
}

/** The workbook with other values in the same cells, formats left where they are, as sorting leaves them. */
async function sorted(bytes: Uint8Array, rows: Rows): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook()
  await book.xlsx.load(bytes as unknown as ExcelJS.Buffer)
  const sheet = book.getWorksheet('Class')
  rows.forEach((row, r) => {
    row.forEach((value, c) => {
      Object.assign(sheet?.getCell(r + 1, c + 1) ?? {}, { value })
    })
  })
  return new Uint8Array(await book.xlsx.writeBuffer())
}

const body = (rows: Rows, order: (rows: Rows) => Rows): Rows => [...rows.slice(0, 1), ...order(rows.slice(1))]
const reversed = (rows: Rows) => rows.toReversed()
const namesAlone = (rows: Rows) =>
  rows.map((row, index) => [rows.at(-1 - index)?.[0] ?? null, ...row.slice(1)])
const shifted = (rows: Rows) => [...rows.slice(3), ...rows.slice(0, 3)]

/** Who is flagged in the marked copy before anything is moved. */
async function flaggedIn(bytes: Uint8Array): Promise<string[]> {
  const [matrix] = await matricesOf(bytes)
  return review(matrix ?? { name: '', values: [] }).flatMap(({ pupils }) =>
    pupils.filter(({ judgement }) => judgement.needsSupport).map(({ name }) => name),
  )
}

describe.skipIf(LIBREOFFICE === null)('colours after a sort', () => {
  it.each([
    ['whole rows, a class', CLASS, reversed],
    ['whole rows, another order', CLASS, shifted],
    ['names alone', CLASS, namesAlone],
    ['whole rows, each pupil’s own questions', PAIRS, reversed],
    ['whole rows of pairs, another order', PAIRS, shifted],
  ] as const)('of %s go with the child, and contradict no fresh review', async (_, rows, order) => {
    const marked = await markedCopy(await workbookOf(rows))
    const flagged = await flaggedIn(marked)
    expect(flagged.length).toBeGreaterThan(0)
    const moved = body(rows, order)
    const after = await sorted(marked, moved)
    const fills = await shownFills(after)
    moved.slice(1).forEach(([name], index) => {
      const isFlagged = fills[index + 1]?.[0] === LOOKS.flag.fill
      expect([name, isFlagged]).toEqual([name, flagged.includes(String(name))])
    })
    for (const { cell, typed, fill } of await wantedFills(after)) {
      const shown = fills[cell.row]?.[cell.column] ?? null
      expect([typed, shown === null ? fill : shown]).toEqual([typed, fill])
    }
  })

  it('never flag a name that two children share, and say so', async () => {
    const rows = CLASS.map((row) => (row[0] === 'Flo G' ? ['Eve F', ...row.slice(1)] : row))
    const fills = await shownFills(await markedCopy(await workbookOf(rows)))
    rows.forEach(([name], index) => {
      if (name === 'Eve F') expect(fills[index]?.[0] ?? null).toBeNull()
      if (name === 'Ben "Bo" C') expect(fills[index]?.[0]).toBe(LOOKS.flag.fill)
    })
  })

  it('flag a name in two cells by both of them', async () => {
    const split = (name: CellValue) => {
      const [first = '', ...others] = String(name).split(' ')
      return [others.join(' '), first]
    }
    const rows = CLASS.map((row, index) => [
      ...(index === 0 ? ['Surname', 'First name'] : split(row[0] ?? '')),
      ...row.slice(1),
    ])
    const marked = await markedCopy(await workbookOf(rows))
    const fills = await shownFills(await sorted(marked, body(rows, reversed)))
    body(rows, reversed).forEach(([, first], index) => {
      const flagged = first === 'Ben' || first === 'Eve' ? LOOKS.flag.fill : null
      if (index > 0) expect(fills[index]?.slice(0, 2)).toEqual([flagged, flagged])
    })
  })
})
