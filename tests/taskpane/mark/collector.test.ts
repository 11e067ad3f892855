import { describe, expect, it } from 'vitest'
import type { CellValue } from '../../../src/answers/typed'
import type { Matrix } from '../../../src/marksheet/layout/matrix'
import { UNWATCHED } from '../../../src/office/edit/work'
import { Runner } from '../../../taskpane/common/runner'
import { lookAt } from '../../../taskpane/mark/actions'
import { Collector } from '../../../taskpane/mark/collect/collector'
import { HERON, marksheetOf, returnedBy, workbookOf } from '../../home/collect/returned'
import { benchWith, everything } from '../../office/host'

const plain = (value: CellValue) => (value === null ? '' : value)

/** A collector over a class, some answers of which are there already. */
async function collecting(held: readonly (readonly CellValue[])[] = []) {
  const { values } = marksheetOf(HERON, held)
  const bench = await benchWith({ name: 'Heron', values: values.map((row) => row.map(plain)) })
  const runner = new Runner()
  const collector = new Collector(runner, await lookAt(undefined, () => [], UNWATCHED))
  const answers = () => bench.grid.values(bench.sheetId('Heron'), { row: 1, col: 1, rows: 4, cols: 3 })
  return { bench, runner, collector, answers, notice: () => runner.state().notice?.sentence }
}

async function fileOf(name: string, sheets: readonly Matrix[]): Promise<File> {
  return new File([(await workbookOf(sheets)) as BlobPart], name)
}

describe('collecting answers in the pane', () => {
  it('shows whose they are before anything is written, then writes into blank cells, and Undo takes them back', async () => {
    const { bench, runner, collector, answers, notice } = await collecting([[null, 999]])
    const before = everything(bench)
    await collector.takeFiles([
      await fileOf('ada.xlsx', returnedBy(HERON, 'Ada Kay', { answers: [475, 321, '3-4'] })),
      await fileOf('cai.xlsx', returnedBy(HERON, 'Cai Lane', { answers: ['£86'] })),
      new File(['no workbook'], 'notes.xlsx'),
    ])
    expect(everything(bench)).toEqual(before)
    const { plan } = collector.state()
    expect([plan.writes.length, plan.taken.length, plan.left.map(({ file }) => file)]).toEqual([
      3,
      1,
      ['notes.xlsx'],
    ])
    expect(await collector.write()).toBe(true)
    expect(answers()).toEqual([
      [475, 999, '3-4'],
      ['', '', ''],
      ['', '', ''],
      ['£86', '', ''],
    ])
    expect(notice()).toBe('3 answers of 2 children went into Heron.')
    await runner.undo()
    expect(everything(bench)).toEqual(before)
  })

  it('writes over a filled cell only where the teacher ticks it', async () => {
    const { collector, answers } = await collecting([[null, 999, 999]])
    await collector.takeFiles([
      await fileOf('ada.xlsx', returnedBy(HERON, 'Ada Kay', { answers: [475, 321, 86] })),
    ])
    const [taken] = collector.state().plan.taken
    if (!taken) throw new Error('A filled cell.')
    collector.chooseOver(taken, true)
    await collector.write()
    expect(answers()[0]).toEqual([475, 321, 999])
  })

  it('asks whose a file without a name is, and writes it where the teacher says', async () => {
    const { collector, answers } = await collecting()
    await collector.takeFiles([
      await fileOf('who.xlsx', returnedBy(HERON, null, { answers: [475], name: 'Ada' })),
    ])
    const [arrival] = collector.state().arrivals
    const ben = collector.targets[2]
    if (!arrival || !ben) throw new Error('An arrival.')
    expect([arrival.target, collector.state().plan.writes]).toEqual([null, []])
    collector.assign(arrival, ben)
    await collector.write()
    expect(answers()[2]).toEqual([475, '', ''])
  })

  it('takes a message for the child who was chosen, and guesses by its signature', async () => {
    const { collector, answers } = await collecting()
    const text = '1) 475, 2) 321 or 312\nLove Cai'
    const [guess] = collector.writersOf(text)
    if (!guess) throw new Error('A guess.')
    expect(guess.pupil.name).toBe('Cai Lane')
    collector.takeMessage(text, guess)
    expect(collector.state().plan.left).toHaveLength(1)
    await collector.write()
    expect(answers()[3]).toEqual([475, '', ''])
  })

  it('merges the answers of a form from another sheet by name', async () => {
    const { bench, collector, answers } = await collecting()
    const grid = bench.grid
    const id = grid.addSheet('Form')
    grid.write(id, 0, 0, [
      ['Your name', '642 - 321', '932 − 457'],
      ['Cai Lane', 321, 475],
      ['Zoe', 1, 2],
    ])
    await collector.takeSheet(id)
    expect(collector.state().plan.left.map(({ pupil }) => pupil)).toEqual(['Zoe'])
    await collector.write()
    expect(answers()[3]).toEqual([475, 321, ''])
  })

  it('writes nothing where pupils were moved, or a cell filled, since the files were read', async () => {
    const { bench, collector, answers, notice } = await collecting()
    await collector.takeFiles([await fileOf('ada.xlsx', returnedBy(HERON, 'Ada Kay', { answers: [475] }))])
    bench.userEdit('Heron', 'B2', [['7']])
    expect(await collector.write()).toBe(false)
    expect(answers()[0]?.[0]).toBe(7)
    expect(notice()).toMatch(/^Cell B2 on Heron is not empty/)
    bench.userEdit('Heron', 'B2', [['']])
    bench.userEdit('Heron', 'A2:A3', [['Ben Brook'], ['Ada Kay']])
    expect(await collector.write()).toBe(false)
    expect(notice()).toMatch(/^Pupils or questions on Heron have changed/)
    expect(
      answers()
        .flat()
        .every((value) => value === ''),
    ).toBe(true)
  })
})
