import { afterEach, describe, expect, it, vi } from 'vitest'
import type { Bench } from '../../../src/bench/bench'
import { lessonWorksheets } from '../../../src/lesson/cells/worksheet'
import { makeLesson } from '../../../src/lesson/lessonSet'
import { RECIPES } from '../../../src/items/recipes'
import { review } from '../../../src/marksheet/marking/review'
import { takeBack } from '../../../src/office/edit/edit'
import { writeHandout } from '../../../src/office/handouts/sheets'
import { markSheet } from '../../../src/office/marking/markSheet'
import { readSheet } from '../../../src/office/workbook/read'
import { MAKING } from '../../lesson/making'
import { benchOf, benchWith, shown } from '../host'

// What Excel's own list of what Ctrl+Z takes back keeps (Microsoft Learn, "Undo capabilities with the Excel JavaScript API").

const stepsOf = (bench: Bench) => [...bench.book.undo.steps]
const type = (bench: Bench) => {
  bench.userEdit(bench.grid.sheets()[0]?.name ?? '', 'ZZ1', [['a word of the teacher']])
}
const mark = async () => {
  const reading = await readSheet()
  return markSheet(reading, review(reading.matrix), { flags: true, mastery: true })
}
const handout = () => {
  const [recipe] = RECIPES
  const made = recipe && makeLesson({ recipe, seed: 1 })
  if (!made || 'problem' in made) throw new Error('There is no lesson.')
  return writeHandout(lessonWorksheets(made.lesson, MAKING))
}

const BLANK = { name: 'Blank', values: [] }
/** Writes so much that it takes several requests, in a pane that has just been opened. */
const fill = async ({ grid }: Bench) => {
  vi.resetModules()
  const { cellsEdit } = await import('../../../src/office/edit/cells')
  const { perform } = await import('../../../src/office/edit/edit')
  const rows = Array.from({ length: 900 }, (_, i) => Array.from({ length: 40 }, (__, j) => i * j))
  const edit = cellsEdit({ id: grid.activeSheet(), name: 'Blank' }, [{ top: 0, left: 0, rows }])
  return perform('numbers', [edit])
}

/** An Excel that has every requirement set, merging into one step of its undo included. */
const newestExcel = () => vi.spyOn(Office.context.requirements, 'isSetSupported').mockReturnValue(true)

afterEach(() => {
  vi.restoreAllMocks()
})

describe('Excel’s own undo', () => {
  it('keeps what was typed before marking, with a sheet added or laid out anew', async () => {
    const bench = await benchOf('heron-notes')
    type(bench)
    await mark()
    await mark()
    expect(stepsOf(bench)[0]).toBe('typed')
  })

  it('keeps what was typed before sheets to print were written, and written anew', async () => {
    const bench = await benchWith({ name: 'Class', values: [['Name']] })
    type(bench)
    await handout()
    await handout()
    expect(stepsOf(bench)[0]).toBe('typed')
  })

  it('takes an action of several requests back in one step, where Excel can merge them', async () => {
    const several = await benchWith(BLANK)
    await fill(several)
    expect(stepsOf(several).length).toBeGreaterThan(1)
    const one = await benchWith(BLANK)
    newestExcel()
    const done = await fill(one)
    expect(stepsOf(one)).toEqual(['add-in'])
    expect(shown(one)).toEqual(shown(several))
    await takeBack(done)
    expect(stepsOf(one)).toEqual(['add-in', 'add-in'])
    expect(shown(one)).toEqual(shown(await benchWith(BLANK)))
  })

  it('takes a marking back in one step, where Excel can merge requests', async () => {
    const bench = await benchOf('heron-notes')
    newestExcel()
    type(bench)
    await mark()
    expect(stepsOf(bench)).toEqual(['typed', 'add-in'])
  })

  it('is gone after a sheet of ours is hidden, which is never merged with anything', async () => {
    const bench = await benchOf('heron-notes')
    const before = shown(bench)
    newestExcel()
    const done = await mark()
    type(bench)
    expect(await takeBack(done)).toEqual([])
    expect(stepsOf(bench)).not.toContain('typed')
    bench.userEdit('Heron', 'ZZ1', [['']])
    expect(shown(bench)).toEqual(before)
  })

  it('hinders nothing where Excel refuses to merge: the action is done step by step', async () => {
    const wanted = await benchWith(BLANK)
    await fill(wanted)
    const refusing = await benchWith(BLANK)
    newestExcel()
    refusing.book.undo.refusesMerging = true
    await fill(refusing)
    expect(shown(refusing)).toEqual(shown(wanted))
    expect(stepsOf(refusing)).toEqual(stepsOf(wanted))
  })
  it('hinders nothing where merging fails in any other way, however far it came', async () => {
    const wanted = await benchWith(BLANK)
    await fill(wanted)
    for (const after of [0, 1]) {
      const failing = await benchWith(BLANK)
      newestExcel()
      failing.host.failAt({ sync: 3, code: 'GeneralException', after })
      await fill(failing)
      expect(shown(failing)).toEqual(shown(wanted))
    }
  })
})
