import { afterEach, describe, expect, it, vi } from 'vitest'
import type { Bench } from '../../../src/bench/bench'
import { RECORD_COLUMNS, recordRows, type RecordRow } from '../../../src/marksheet/record/record'
import { review } from '../../../src/marksheet/marking/review'
import { takeBack } from '../../../src/office/edit/edit'
import { readSheet } from '../../../src/office/workbook/read'
import { addToRecordSheet, clearRecordBefore, readRecordSheet } from '../../../src/office/record/record'
import { benchOf, benchWith, countSyncs, everything, largeMarksheet, problemIn, shown } from '../host'

const DAY = '2026-11-06'

async function rowsInFront(date = DAY): Promise<RecordRow[]> {
  const { matrix } = await readSheet()
  return review(matrix).flatMap((each) => recordRows(each, { date, class: 'Kingfisher' }))
}

async function readRecordNow() {
  return readRecordSheet((await readSheet()).sheets)
}

const add = async (rows: readonly RecordRow[], instead: RecordRow | null = null) =>
  addToRecordSheet(await readRecordNow(), rows, instead)

const tableOf = (bench: Bench) => bench.book.tables.find(({ sheetId }) => sheetId === bench.sheetId('Record'))

afterEach(() => {
  vi.restoreAllMocks()
})

describe('the Record sheet', () => {
  it('is laid out as a table of every answer, which reads back the same', async () => {
    const bench = await benchOf('heron-notes')
    const rows = await rowsInFront()
    await add(rows)
    const { matrix } = await readSheet(bench.sheetId('Record'))
    expect(matrix.values[0]?.[0]).toBe('Columnwise · Record')
    expect(matrix.values[2]).toEqual([...RECORD_COLUMNS])
    expect(tableOf(bench)?.area).toEqual({ row: 2, col: 0, rows: rows.length + 1, cols: 8 })
    const read = await readRecordNow()
    expect(read.rows).toEqual(rows)
    expect(read.leftAside).toBe(0)
    expect(bench.host.unsupported).toEqual(new Map())
  })

  it('replaces the rows of a sheet that is marked again, and grows by those of another', async () => {
    const bench = await benchOf('kestrel-plain')
    const rows = await rowsInFront()
    await add(rows)
    const [first] = rows
    if (!first) throw new Error('a row')
    const again = rows.map((row) =>
      row === first ? { ...row, typed: '1', outcome: 'incorrect' as const } : row,
    )
    await add(again, first)
    expect((await readRecordNow()).rows).toEqual(again)
    const other = rows.map((row) => ({ ...row, sheet: 'Another week', date: '2026-11-13' }))
    await add(other)
    expect((await readRecordNow()).rows).toEqual([...again, ...other])
    expect(tableOf(bench)?.area.rows).toBe(2 * rows.length + 1)
  })

  it('is taken back by Undo, the first time and later', async () => {
    const bench = await benchOf('kestrel-plain')
    const untouched = shown(bench)
    const rows = await rowsInFront()
    const first = await add(rows)
    const before = everything(bench)
    const second = await add(rows.map((row) => ({ ...row, sheet: 'Another week' })))
    await takeBack(second)
    expect(everything(bench)).toEqual(before)
    expect(tableOf(bench)?.area.rows).toBe(rows.length + 1)
    await takeBack(first)
    expect(shown(bench)).toEqual(untouched)
    expect(tableOf(bench)).toBeUndefined()
    await add(rows)
    expect((await readRecordNow()).rows).toEqual(rows)
  })

  it('makes its table anew in an Excel that cannot resize one', async () => {
    const bench = await benchOf('kestrel-plain')
    const rows = await rowsInFront()
    await add(rows)
    vi.spyOn(Office.context.requirements, 'isSetSupported').mockReturnValue(false)
    const done = await add(rows.map((row) => ({ ...row, sheet: 'Another week' })))
    expect(tableOf(bench)?.area.rows).toBe(2 * rows.length + 1)
    await takeBack(done)
    expect(tableOf(bench)?.area.rows).toBe(rows.length + 1)
  })

  it('keeps rows that a teacher has spoiled, and leaves a table that was made plain as it is', async () => {
    const bench = await benchOf('kestrel-plain')
    const rows = await rowsInFront()
    await add(rows)
    bench.userEdit('Record', 'A4', [['some day']])
    bench.book.tables = []
    const reading = await readRecordNow()
    expect(reading.leftAside).toBe(1)
    await addToRecordSheet(reading, rows, rows[0])
    const now = await readRecordNow()
    expect(now.lines[0]?.cells[0]).toBe('some day')
    expect(now.rows.length).toBe(rows.length)
    expect(tableOf(bench)).toBeUndefined()
  })

  it('is cleared of what was before a day, and Undo brings it back', async () => {
    const bench = await benchOf('kestrel-plain')
    const old = (await rowsInFront('2026-07-10')).map((row) => ({ ...row, sheet: 'Last year' }))
    await add(old)
    await add(await rowsInFront())
    const before = everything(bench)
    const done = await clearRecordBefore(await readRecordNow(), '2026-09-01')
    const rows = (await readRecordNow()).rows
    expect(rows.every(({ date }) => date === DAY)).toBe(true)
    expect(tableOf(bench)?.area.rows).toBe(rows.length + 1)
    await takeBack(done)
    expect(everything(bench)).toEqual(before)
    await clearRecordBefore(await readRecordNow(), '2027-09-01')
    expect((await readRecordNow()).rows).toEqual([])
    await add(old)
    expect((await readRecordNow()).rows).toEqual(old)
  })

  it('says what to do where its headings were changed', async () => {
    const bench = await benchOf('kestrel-plain')
    await add(await rowsInFront())
    bench.userEdit('Record', 'C3', [['Where']])
    const { sentence, next } = await problemIn(readRecordNow())
    expect(sentence).toContain('headings of the sheet Record')
    expect(next).toContain('Date, Class, Sheet')
  })

  it('takes another name where the teacher has a sheet called Record', async () => {
    const bench = await benchOf('kestrel-plain')
    bench.grid.write(bench.grid.addSheet('Record'), 0, 0, [['my own']])
    await add(await rowsInFront())
    expect(bench.grid.sheets().map(({ name }) => name)).toContain('Record (2)')
    expect((await readSheet(bench.sheetId('Record'))).matrix.values).toEqual([['my own']])
  })

  it('writes a class of 180 pupils and 40 questions in pieces, and only what changes afterwards', async () => {
    const bench = await benchWith(largeMarksheet(180, 40))
    const rows = await rowsInFront()
    await add(rows)
    expect((await readRecordNow()).rows).toEqual(rows)
    const reading = await readRecordNow()
    const syncs = countSyncs(bench)
    await addToRecordSheet(
      reading,
      rows.map((row, index) => ({ ...row, typed: index % 1000 === 7 ? '1' : row.typed })),
      rows[0],
    )
    expect(syncs()).toBeLessThanOrEqual(3)
  })
})
