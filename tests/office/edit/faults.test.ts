import { describe, expect, it } from 'vitest'
import { review } from '../../../src/marksheet/marking/review'
import { cellsEdit } from '../../../src/office/edit/cells'
import { perform } from '../../../src/office/edit/edit'
import { Problem, WORDS } from '../../../src/office/edit/errors'
import { clearSheet, hideFlags, markSheet } from '../../../src/office/marking/markSheet'
import { goTo, readSelection, readSheet } from '../../../src/office/workbook/read'
import { benchOf, benchWith, countSyncs, everything, problemIn, shown } from '../host'

const CODES = [
  'GeneralException',
  'ItemNotFound',
  'InvalidArgument',
  'AccessDenied',
  'RequestAborted',
] as const

const mark = async () => {
  const reading = await readSheet()
  return markSheet(reading, review(reading.matrix), { flags: true, mastery: true })
}

const ACTIONS = {
  'marking anew': { before: () => Promise.resolve(), act: mark },
  'marking again': { before: mark, act: mark },
  clearing: { before: mark, act: async () => clearSheet(await readSheet()) },
  'hiding flags': { before: mark, act: async () => hideFlags(await readSheet()) },
} as const

/** Each request failing at its start, and the last one, which writes, after some of its steps too (where it has so many). */
function faultsIn(requests: number) {
  const starts = Array.from({ length: requests }, (_, index) => ({ sync: index + 1, after: 0 }))
  return [...starts, ...[1, 7, 40, 200].map((after) => ({ sync: requests, after }))]
}

describe.each(Object.entries(ACTIONS))('%s', (_, { before, act }) => {
  it.each(CODES)(
    'puts everything back, or does all of it after asking again, whichever request fails with %s, however far it came',
    async (code) => {
      const bench = await benchOf('heron-notes')
      await before()
      const syncs = countSyncs(bench)
      await act()
      const requests = syncs()
      const done = shown(bench)
      let writing = 0
      for (const { sync, after } of faultsIn(requests)) {
        const again = await benchOf('heron-notes')
        await before()
        const then = shown(again)
        again.host.failAt({ sync, code, after })
        const outcome = await act().catch((error: unknown) => error)
        if (!(outcome instanceof Problem)) {
          expect(shown(again)).toEqual(done)
          continue
        }
        expect(shown(again)).toEqual(then)
        if (/Nothing was changed/.test(outcome.sentence)) writing++
        else expect(outcome.sentence).toBe(WORDS[code]?.[0])
      }
      expect(writing).toBeGreaterThan(0)
    },
  )

  it('says what stayed where putting back fails too', async () => {
    const bench = await benchOf('heron-notes')
    await before()
    const syncs = countSyncs(bench)
    await act()
    const requests = syncs()
    const again = await benchOf('heron-notes')
    await before()
    again.host.failAt({ sync: requests, code: 'GeneralException', after: 3 })
    for (let later = 1; later <= 12; later++)
      again.host.failAt({ sync: requests + later, code: 'RequestAborted' })
    const { sentence, next } = await problemIn(act())
    expect(sentence).toMatch(/could not be put back: the (?:colours|flags) on Heron/)
    expect(next).not.toMatch(/Ctrl\+Z/)
  })
})

describe('errors of the host', () => {
  it('are told as the cell still being typed in, for every action', async () => {
    const bench = await benchOf('kestrel-plain')
    const before = everything(bench)
    bench.host.editing = true
    for (const action of [
      mark,
      readSelection,
      () => readSheet(),
      () => goTo('nowhere', { top: 0, left: 0, bottom: 0, right: 0 }),
    ]) {
      const { sentence, next } = await problemIn(action())
      expect(sentence).toBe('Excel is waiting for a cell that is still being typed in.')
      expect(next).toMatch(/Enter or Esc/)
    }
    expect(everything(bench)).toEqual(before)
  })

  it('are told where the sheet is deleted between reading and writing', async () => {
    const bench = await benchOf('kestrel-plain')
    const reading = await readSheet()
    bench.grid.addSheet('Other')
    bench.grid.removeSheet(reading.id)
    const { next } = await problemIn(
      markSheet(reading, review(reading.matrix), { flags: true, mastery: true }),
    )
    expect(next).toMatch(/Look again/)
    expect(bench.grid.sheets().map(({ name }) => name)).toEqual(['Other'])
  })

  it('do not matter where the sheet is renamed between reading and writing', async () => {
    const bench = await benchOf('kestrel-plain')
    const reading = await readSheet()
    bench.grid.renameSheet(reading.id, 'Kestrel 2')
    await markSheet(reading, review(reading.matrix), { flags: true, mastery: false })
    expect(bench.grid.conditionalFormats(reading.id).length).toBeGreaterThan(0)
  })
})

describe('work that is stopped', () => {
  it('puts back what it has written so far', async () => {
    const bench = await benchWith({ name: 'Long', values: [['kept', 'kept']] })
    const before = everything(bench)
    const stop = new AbortController()
    const rows = Array.from({ length: 30_000 }, (_, row) => [`text ${row}`, row])
    const seen: number[] = []
    const work = {
      signal: stop.signal,
      progress: (part: number, words: string) => {
        if (words !== 'Writing') return
        seen.push(part)
        if (part > 0.3) stop.abort()
      },
    }
    const sheet = { id: bench.grid.activeSheet(), name: 'Long' }
    const { sentence } = await problemIn(
      perform('long work', [cellsEdit(sheet, [{ top: 0, left: 0, rows }])], work),
    )
    expect(sentence).toBe('Stopped, and nothing was changed.')
    expect(seen.length).toBeGreaterThan(1)
    expect(everything(bench)).toEqual(before)
  })
})
