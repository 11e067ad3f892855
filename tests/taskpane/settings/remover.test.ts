import { describe, expect, it } from 'vitest'
import { recordRows } from '../../../src/marksheet/record/record'
import { review } from '../../../src/marksheet/marking/review'
import { markSheet } from '../../../src/office/marking/markSheet'
import { readSheet } from '../../../src/office/workbook/read'
import { addToRecordSheet, readRecordSheet } from '../../../src/office/record/record'
import { keepSettings } from '../../../src/office/workbook/settings'
import { goes, Remover } from '../../../taskpane/settings/remover'
import { Runner } from '../../../taskpane/common/runner'
import { benchOf, everything } from '../../office/host'

/** A workbook that has been marked, recorded and given settings, all of it to be undone through the runner. */
async function used() {
  const bench = await benchOf('heron-notes')
  Office.context.document.settings.remove('columnwise')
  const runner = new Runner()
  const before = everything(bench)
  const reading = await readSheet()
  const reviews = review(reading.matrix)
  runner.wrote(await markSheet(reading, reviews, { flags: true, mastery: true }))
  const rows = reviews.flatMap((each) => recordRows(each, { date: '2026-11-06', class: '4H' }))
  runner.wrote(await addToRecordSheet(await readRecordSheet((await readSheet()).sheets), rows))
  await keepSettings({ className: '4H' })
  const remover = new Remover(runner)
  const notice = () => runner.state().notice
  return { bench, before, runner, remover, notice }
}

const shown = (remover: Remover) => {
  const { found } = remover.state()
  return found && goes(found)
}

describe('removing everything of Columnwise’s', () => {
  it('shows first and changes nothing, then removes', async () => {
    const { bench, before, remover, notice } = await used()
    const marked = everything(bench)
    await remover.look()
    expect(shown(remover)).toEqual([
      'Colours, flags, notes and comments on: Heron.',
      'Sheets that Columnwise laid out: Mastery, Record.',
      'The settings.',
    ])
    expect(everything(bench)).toEqual(marked)
    expect(await remover.remove()).toBe(true)
    expect(everything(bench)).toEqual(before)
    expect(notice()?.sentence).toBe('Everything of Columnwise’s is out of this workbook.')
    await remover.look()
    expect(shown(remover)).toEqual([])
  })

  it('is undone as far as it can be, and so is what was written before, without an error', async () => {
    const { bench, before, runner, remover, notice } = await used()
    const [marked] = everything(bench)
    await remover.look()
    await remover.remove()
    await runner.undo()
    expect(everything(bench)).toEqual([marked])
    while (runner.state().undo) {
      await runner.undo()
      expect(notice()).toMatchObject({ kind: 'done' })
    }
    expect(everything(bench)).toEqual(before)
  })

  it('removes nothing where there is more by now than was shown, and shows that', async () => {
    const { bench, remover, notice } = await used()
    await remover.look()
    const more = bench.grid.addSheet('To share')
    bench.grid.write(more, 0, 0, [['Columnwise · To share']])
    const now = everything(bench)
    expect(await remover.remove()).toBe(false)
    expect(notice()?.sentence).toBe(
      'The workbook has changed since Columnwise looked, so nothing was removed.',
    )
    expect(everything(bench)).toEqual(now)
    expect(shown(remover)?.[1]).toBe('Sheets that Columnwise laid out: Mastery, Record, To share.')
    expect(await remover.remove()).toBe(true)
  })

  it('offers no Undo where nothing can be brought back', async () => {
    const bench = await benchOf('heron-notes')
    await keepSettings({ className: '4H' })
    const runner = new Runner()
    const remover = new Remover(runner)
    await remover.look()
    expect(shown(remover)).toEqual(['The settings.'])
    expect(await remover.remove()).toBe(true)
    expect(runner.state().undo).toBeNull()
    expect(bench.book.settings.size).toBe(0)
  })

  it('is refused on a protected sheet with a sentence, and can be stopped', async () => {
    const { bench, runner, remover, notice } = await used()
    const marked = everything(bench)
    await Excel.run(async (context) => {
      context.workbook.worksheets.getItem('Heron').protection.protect()
      await context.sync()
    })
    await remover.look()
    expect(await remover.remove()).toBe(false)
    expect(notice()?.sentence).toBe('Protected, so nothing can be taken off: Heron. Nothing was changed.')
    const removing = remover.remove()
    runner.stop()
    expect(await removing).toBe(false)
    expect(notice()?.sentence).toBe('Stopped, and nothing was changed.')
    expect(everything(bench)).toEqual(marked)
  })
})
