import { describe, expect, it } from 'vitest'
import { recordRows } from '../../../src/marksheet/record/record'
import { review } from '../../../src/marksheet/marking/review'
import { SIGNATURE } from '../../../src/marksheet/marking/rules'
import type { Bench } from '../../../src/bench/bench'
import { takeBack } from '../../../src/office/edit/edit'
import { markSheet } from '../../../src/office/marking/markSheet'
import { readSheet } from '../../../src/office/workbook/read'
import { addToRecordSheet, readRecordSheet } from '../../../src/office/record/record'
import { writeComments } from '../../../src/office/marking/comments'
import { keepSettings, readSettings, DEFAULT_SETTINGS } from '../../../src/office/workbook/settings'
import { goesForGood, readTraces, removeTraces } from '../../../src/office/removal/traces'
import { benchOf, everything, problemIn } from '../host'

/** A workbook in which everything of ours has been written: marks, notes, comments, Mastery, Record, settings. */
async function usedWorkbook(): Promise<{ bench: Bench; before: ReturnType<typeof everything> }> {
  const bench = await benchOf('heron-notes')
  Office.context.document.settings.remove('columnwise')
  const before = everything(bench)
  const reading = await readSheet()
  const reviews = review(reading.matrix)
  await markSheet(reading, reviews, { flags: true, mastery: true })
  await writeComments(reading, [{ row: 6, column: 3, text: 'takes the smaller digit' }])
  const rows = reviews.flatMap((each) => recordRows(each, { date: '2026-11-06', class: '4H' }))
  await addToRecordSheet(await readRecordSheet((await readSheet()).sheets), rows)
  await keepSettings({ className: '4H' })
  return { bench, before }
}

const commentsOn = (bench: Bench) => bench.grid.sheets().flatMap(({ id }) => bench.book.sheet(id).comments)

describe('traces of ours in a workbook', () => {
  it('are found, and what goes for good is said before', async () => {
    await usedWorkbook()
    const traces = await readTraces()
    expect(traces.sheets.map(({ name }) => name)).toEqual(['Heron'])
    expect(traces.own.map(({ name }) => name)).toEqual(['Mastery', 'Record'])
    expect(traces.settings).toBe(true)
    expect(goesForGood(traces)).toEqual([
      'What the sheets Mastery, Record hold is deleted, and Undo does not bring it back.',
      'Excel forgets what could be undone before.',
      'The settings of Columnwise in this workbook go for good.',
    ])
  })

  it('are gone afterwards: the workbook is as it was before Columnwise', async () => {
    const { bench, before } = await usedWorkbook()
    expect(everything(bench)).not.toEqual(before)
    await removeTraces(await readTraces())
    expect(everything(bench)).toEqual(before)
    expect(commentsOn(bench)).toEqual([])
    expect(bench.book.tables).toEqual([])
    expect(bench.book.settings.size).toBe(0)
    expect(readSettings()).toEqual(DEFAULT_SETTINGS)
    expect(bench.host.unsupported).toEqual(new Map())
    const none = await readTraces()
    expect([none.sheets, none.own, none.settings, goesForGood(none)]).toEqual([[], [], false, []])
  })

  it('but for the colours, notes and comments, which Undo brings back', async () => {
    const { bench } = await usedWorkbook()
    const [marked] = everything(bench)
    const done = await removeTraces(await readTraces())
    expect(await takeBack(done)).toEqual([])
    expect(everything(bench)).toEqual([marked])
    expect(commentsOn(bench)).toHaveLength(1)
  })

  it('are taken off hidden sheets too, and what is the teacher’s stays everywhere', async () => {
    const { bench } = await usedWorkbook()
    const other = bench.grid.addSheet('Plans')
    bench.grid.write(other, 0, 0, [['my plans', '=COLUMNWISE.ANSWER("932 − 457")']])
    bench.grid.write(other, 1, 0, [[{ formula: '=COLUMNWISE.ANSWER("932 − 457")', value: 475 }]])
    const heron = bench.sheetId('Heron')
    const foreign = {
      id: 'own',
      areas: [{ row: 0, col: 0, rows: 1, cols: 1 }],
      type: 'Custom',
      formula: '=A1=1',
      stopIfTrue: false,
      style: {},
    } as const
    bench.grid.setConditionalFormats(heron, [
      ...bench.grid.conditionalFormats(heron),
      { ...foreign, areas: [...foreign.areas] },
    ])
    bench.grid.activateSheet(other)
    bench.grid.showSheet(heron, false)
    const traces = await readTraces()
    expect(traces.stays).toEqual([
      'One cell on Plans with formulas of Columnwise’s functions stay, and show #NAME? where the add-in is not there.',
    ])
    await removeTraces(traces)
    expect(bench.grid.conditionalFormats(heron).map(({ id }) => id)).toEqual(['own'])
    expect(JSON.stringify(everything(bench))).not.toContain(SIGNATURE.replaceAll('"', '\\"'))
    expect(bench.grid.values(other, { row: 0, col: 0, rows: 1, cols: 1 })).toEqual([['my plans']])
  })

  it('stay where a sheet is protected or none but ours is visible, and the sentence says what to do', async () => {
    const { bench } = await usedWorkbook()
    const hidden = everything(bench)
    await Excel.run(async (context) => {
      context.workbook.worksheets.getItem('Heron').protection.protect()
      await context.sync()
    })
    const { sentence, next } = await problemIn(removeTraces(await readTraces()))
    expect(sentence).toBe('Protected, so nothing can be taken off: Heron. Nothing was changed.')
    expect(next).toMatch(/Unprotect Sheet/)
    await Excel.run(async (context) => {
      context.workbook.worksheets.getItem('Heron').protection.unprotect()
      context.workbook.worksheets.getItem('Mastery').activate()
      await context.sync()
    })
    expect(everything(bench)).toEqual(hidden)
    bench.grid.showSheet(bench.sheetId('Heron'), false)
    expect((await problemIn(removeTraces(await readTraces()))).next).toMatch(/Add an empty sheet/)
  })

  it('are put back where our sheets cannot be deleted, whichever request fails', async () => {
    for (const sync of [1, 2, 3, 4]) {
      const { bench } = await usedWorkbook()
      const before = everything(bench)
      const traces = await readTraces()
      bench.host.failAt({ sync, code: 'AccessDenied' })
      const outcome = await removeTraces(traces).then(
        () => null,
        (error: unknown) => (error as Error).message,
      )
      if (outcome === null) expect(sync).toBeGreaterThan(3)
      else expect(everything(bench)).toEqual(before)
    }
  })

  it('says which sheets are gone where deleting stops half-way', async () => {
    const { bench } = await usedWorkbook()
    const traces = await readTraces()
    const [heron] = everything(bench)
    const gone = { ...traces, own: [...traces.own, { ...traces.own[0], id: 'nowhere' }] } as typeof traces
    const { sentence } = await problemIn(removeTraces(gone))
    expect(sentence).toMatch(/Already deleted: Mastery, Record/)
    expect(everything(bench)).toEqual([heron])
  })
})
