import { describe, expect, it } from 'vitest'
import type { Bench } from '../../../src/bench/bench'
import { rangesOf } from '../../../src/marksheet/layout/correct'
import { addressOf, type CellRef } from '../../../src/marksheet/layout/matrix'
import { NOTES_TITLE } from '../../../src/marksheet/marking/notes'
import { Marker } from '../../../taskpane/mark/marker'
import { Front } from '../../../taskpane/common/front'
import { Runner } from '../../../taskpane/common/runner'
import { benchOf, benchWith, everything } from '../../office/host'

const cellAreaOf = ({ row, column }: CellRef) => ({ row, col: column, rows: 1, cols: 1 })

/** The Mark area's state over a bench, once it has looked at the sheet. */
async function looking(bench: Bench) {
  Office.context.document.settings.remove('columnwise')
  const runner = new Runner()
  const marker = new Marker(runner, new Front())
  await marker.look()
  return { bench, runner, marker, state: marker.state, notice: () => runner.state().notice?.sentence }
}

describe('Mark', () => {
  it('shows what it found before it writes anything', async () => {
    const bench = await benchOf('heron-notes')
    const before = everything(bench)
    const { state } = await looking(bench)
    expect(
      state().seen?.marksheets.map(({ pupils, questions }) => [pupils.length, questions.length]),
    ).toEqual([[26, 10]])
    expect(everything(bench)).toEqual(before)
  })

  it('finds nothing on a sheet without a marksheet, and says nothing is wrong', async () => {
    const { state, notice } = await looking(
      await benchWith({ name: 'Diary', values: [['Monday', 'Assembly']] }),
    )
    expect(state().seen?.marksheets).toEqual([])
    expect(notice()).toBeUndefined()
  })

  it('marks, sums up, and forgets the result when it is taken back', async () => {
    const { bench, marker, runner, state, notice } = await looking(await benchOf('heron-notes'))
    await marker.mark()
    const { counts, toLookAt, support } = state().summary ?? { counts: {}, toLookAt: [], support: [] }
    expect(Object.values(counts).reduce((sum, count) => sum + count, 0)).toBe(260)
    expect(counts).toMatchObject({ unreadable: toLookAt.length })
    expect(support[0]?.pupils.length).toBeGreaterThanOrEqual(support.at(-1)?.pupils.length ?? 0)
    expect(notice()).toBe('Heron is marked.')
    expect(bench.grid.conditionalFormats(bench.sheetId('Heron')).length).toBeGreaterThan(0)
    await runner.undo()
    expect(state().summary).toBeNull()
    expect(bench.grid.conditionalFormats(bench.sheetId('Heron'))).toEqual([])
  })

  it('says how many answers have changed since the marking, until it marks again', async () => {
    const { bench, marker, state } = await looking(await benchOf('heron-notes'))
    const end = await marker.watchTyping()
    await marker.mark()
    const [cell] = state().seen?.marksheets[0]?.pupils[0]?.answers ?? []
    if (!cell) throw new Error('a marksheet')
    const address = addressOf(cell)
    const before = bench.grid.values(bench.sheetId('Heron'), cellAreaOf(cell))[0]?.[0] ?? ''
    bench.userEdit('Heron', address, [['77']])
    await expect.poll(() => state().changed, { timeout: 5000 }).toBe(1)
    expect(state().summary).not.toBeNull()
    bench.userEdit('Heron', address, [[before]])
    await expect.poll(() => state().changed, { timeout: 5000 }).toBe(0)
    bench.userEdit('Heron', address, [['77']])
    await expect.poll(() => state().changed, { timeout: 5000 }).toBe(1)
    await marker.mark()
    expect(state().changed).toBe(0)
    await end()
  })

  it('counts what is typed into a sheet that is not marked yet', async () => {
    const { bench, marker, state } = await looking(
      await benchWith({
        name: 'S',
        values: [
          ['', '932 − 457'],
          ['Ada', ''],
          ['Ben', ''],
        ],
      }),
    )
    const end = await marker.watchTyping()
    const first = state().seen
    bench.userEdit('S', 'B2', [['475']])
    await expect.poll(() => state().seen?.reading.matrix.values[1]?.[1], { timeout: 5000 }).toBe(475)
    expect(state().seen).not.toBe(first)
    expect(state().changed).toBe(0)
    await end()
  })

  it('reads the sheet anew when it marks, so that a pupil added since is marked too', async () => {
    const { bench, marker, state } = await looking(
      await benchWith({
        name: 'S',
        values: [
          ['', '932 − 457'],
          ['Ada', 475],
          ['Ben', 525],
        ],
      }),
    )
    bench.userEdit('S', 'A4:B4', [['Cy', '475']])
    await marker.mark()
    expect(state().summary?.counts.correct).toBe(2)
  })

  it('hides flags and notes, keeps them hidden in the workbook, and shows them by marking again', async () => {
    const { bench, marker } = await looking(await benchOf('heron-notes'))
    const held = () => JSON.stringify(everything(bench)[0])
    await marker.mark()
    expect(held()).toContain(NOTES_TITLE)
    await marker.showFlags(false)
    expect(held()).not.toContain(NOTES_TITLE)
    const again = new Marker(new Runner(), new Front())
    expect(again.state().settings.flags).toBe(false)
    await again.look()
    await again.mark()
    expect(held()).not.toContain(NOTES_TITLE)
    await again.showFlags(true)
    expect(held()).toContain(NOTES_TITLE)
  })

  it('changes the choice back where hiding fails, and where it is undone', async () => {
    const { bench, marker, runner, state } = await looking(await benchOf('heron-notes'))
    const held = () => JSON.stringify(everything(bench)[0])
    await marker.mark()
    bench.host.editing = true
    await marker.showFlags(false)
    bench.host.editing = false
    expect(state().settings.flags).toBe(true)
    await marker.showFlags(false)
    expect([state().settings.flags, held().includes(NOTES_TITLE)]).toEqual([false, false])
    await runner.undo()
    expect([state().settings.flags, held().includes(NOTES_TITLE)]).toEqual([true, true])
  })

  it('only remembers the choice on a sheet that is not marked', async () => {
    const bench = await benchOf('heron-notes')
    const before = everything(bench)
    const { marker, runner, state } = await looking(bench)
    await marker.showFlags(false)
    await marker.showFlags(true)
    await marker.showFlags(false)
    expect(everything(bench)).toEqual(before)
    expect(state().settings.flags).toBe(false)
    expect(runner.state().undo).toBeNull()
  })

  it('clears all its marks', async () => {
    const bench = await benchOf('heron-notes')
    const [before] = everything(bench)
    const { marker, state } = await looking(bench)
    await marker.mark()
    await marker.clear()
    expect(everything(bench)[0]).toEqual(before)
    expect(state().summary).toBeNull()
  })

  it('leaves the Mastery sheet out where that is chosen', async () => {
    const { bench, marker } = await looking(await benchOf('kestrel-plain'))
    await marker.chooseMasterySheet(false)
    await marker.mark()
    expect(bench.grid.sheets()).toHaveLength(1)
  })

  it('marks by the teacher’s own ranges, keeps them while she looks at another sheet, and drops them when they fit no more', async () => {
    const values = [
      ['', '932 − 457', '305 − 128'],
      ['Ada', 475, 177],
      ['Ben', 525, 187],
      ['Cy', 475, 177],
    ]
    const { bench, marker, state } = await looking(await benchWith({ name: 'S', values }))
    const found = state().seen?.marksheets[0]
    if (!found) throw new Error('Nothing was found.')
    marker.correct(found, { ...rangesOf(found), answers: { top: 1, left: 1, bottom: 2, right: 1 } })
    const other = bench.grid.addSheet('Other')
    const [sheet = ''] = bench.grid.sheets().map(({ id }) => id)
    bench.grid.activateSheet(other)
    await marker.look()
    expect(state().seen?.marksheets).toEqual([])
    bench.grid.activateSheet(sheet)
    await marker.look()
    await marker.mark()
    expect(state().summary?.counts).toMatchObject({ correct: 1, incorrect: 1 })
    bench.userEdit('S', 'B1', [['Total']])
    await marker.look()
    expect(state().seen?.corrections).toEqual([])
    expect(state().seen?.marksheets[0]?.questions.map(({ text }) => text)).toEqual(['305 − 128'])
  })

  it('says so where the marksheet has gone in the meantime', async () => {
    const { bench, marker, runner } = await looking(
      await benchWith({
        name: 'S',
        values: [
          ['', '932 − 457'],
          ['Ada', 475],
        ],
      }),
    )
    bench.userEdit('S', 'B1', [['']])
    await marker.mark()
    expect(runner.state().notice).toMatchObject({
      kind: 'problem',
      sentence: 'There is no marksheet on S any more.',
    })
  })

  it('shows cells of the sheet that it looked at', async () => {
    const { bench, marker } = await looking(await benchOf('heron-notes'))
    await marker.show({ top: 11, left: 3, bottom: 11, right: 3 })
    expect(bench.grid.selection().area).toEqual({ row: 11, col: 3, rows: 1, cols: 1 })
  })
})
