import { describe, expect, it, vi } from 'vitest'
import { NOTATION } from '../../../src/lesson/model/notation'
import { printQuestion } from '../../../src/arithmetic/question'
import { stepsOf } from '../../../src/arithmetic/steps'
import { startBench } from '../../../src/bench/node'
import { Modeller } from '../../../taskpane/model/modeller'
import { Runner } from '../../../taskpane/common/runner'
import { asked as readable } from '../../support/asked'

const PIXEL =
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg=='

/** The Model area's state over a workbook with a small marksheet. */
async function modelling() {
  const bench = await startBench()
  const { id, name } = bench.grid.sheets()[0] ?? { id: '', name: '' }
  bench.grid.write(id, 0, 0, [
    ['Name', '932 − 457', '305 − 128'],
    ['Robin A', 525, 177],
    ['Wren F', 475, 277],
  ])
  const runner = new Runner()
  const modeller = new Modeller(runner)
  const shown = () => {
    const { question, ...rest } = modeller.state()
    return { ...rest, question: question && printQuestion(question) }
  }
  return { bench, id, runner, modeller, shown, select: (cell: string) => bench.select(name, cell) }
}

describe('the question', () => {
  it('is read from what is typed, and written as it is printed', async () => {
    const { modeller, shown } = await modelling()
    modeller.type('7214-86')
    modeller.read()
    expect(shown()).toMatchObject({ text: '7,214 − 86', question: '7,214 − 86', step: 0, problem: null })
  })

  it('that is none is told in a sentence, and no other working is shown with it', async () => {
    const { modeller, shown } = await modelling()
    modeller.type('52 - 17')
    modeller.read()
    modeller.goTo(3)
    modeller.type('seventeen')
    modeller.read()
    expect(shown().problem).toMatch(/not an addition or subtraction/)
    expect(shown()).toMatchObject({ text: 'seventeen', question: null, step: 0, fault: null })
    modeller.type('86 - 7214')
    modeller.read()
    expect(shown().problem).toMatch(/greater than/)
  })

  it('shown from elsewhere comes with its fault, whose working begins at its first step', async () => {
    const { modeller, shown } = await modelling()
    const question = readable('305 − 128')
    modeller.show(question, 'nine-for-free')
    expect(shown()).toMatchObject({ text: '305 − 128', fault: 'nine-for-free', comparing: 0 })
    modeller.compare(2)
    modeller.chooseFault('zero-left-as-ten')
    expect(shown()).toMatchObject({ fault: 'zero-left-as-ten', comparing: 0 })
    modeller.compare(1)
    modeller.show(question, null)
    expect(shown()).toMatchObject({ fault: null, comparing: 0 })
  })

  it('of a wrong answer comes with the likeliest reason', async () => {
    const { modeller, shown, select } = await modelling()
    select('B2')
    await modeller.takeSelected()
    expect(shown()).toMatchObject({ question: '932 − 457', fault: 'takes-smaller-from-larger' })
  })

  it('of a cell that holds none is told, and the model stays', async () => {
    const { modeller, shown, select, runner } = await modelling()
    select('B1')
    await modeller.takeSelected()
    select('A2')
    await modeller.takeSelected()
    expect(runner.state().notice?.sentence).toBe('Cell A2 holds no question, nor an answer to one.')
    expect(shown().question).toBe('932 − 457')
  })

  it('follows the selection while it is asked to, in silence where there is no question', async () => {
    const { modeller, shown, select, runner } = await modelling()
    select('B1')
    await modeller.follow(true)
    expect(shown().question).toBe('932 − 457')
    select('C3')
    await vi.waitFor(() => {
      expect(shown()).toMatchObject({ question: '305 − 128', fault: 'nine-for-free' })
    })
    select('F9')
    await new Promise((resolve) => setTimeout(resolve, 100))
    expect(runner.state().notice).toBeNull()
    await modeller.follow(false)
    select('B1')
    await new Promise((resolve) => setTimeout(resolve, 100))
    expect(shown().question).toBe('305 − 128')
  })

  it('of the selected cell is taken at the press of the button, where Excel does not tell that another is selected', async () => {
    const { bench, modeller, shown, select } = await modelling()
    bench.book.tellsSelections = false
    await modeller.follow(true)
    select('C1')
    await modeller.takeSelected()
    expect(shown().question).toBe('305 − 128')
    await modeller.follow(false)
  })

  it('asked for again keeps its step; another one begins anew', async () => {
    const { modeller, shown, select } = await modelling()
    select('B1')
    await modeller.takeSelected()
    const { question } = modeller.state()
    modeller.goTo(question ? stepsOf(question).length : 0)
    select('B3')
    await modeller.takeSelected()
    expect(shown().step).toBeGreaterThan(0)
    select('C1')
    await modeller.takeSelected()
    expect(shown().step).toBe(0)
  })
})

describe('into the sheet', () => {
  it('the layout goes to the selected cell, and Undo takes it away', async () => {
    const { bench, id, modeller, runner, select } = await modelling()
    modeller.type('52 - 17')
    modeller.read()
    select('E5')
    await modeller.insertCells(NOTATION)
    expect(runner.state().notice?.sentence).toMatch(/^The layout of 52 − 17 is on /)
    expect(bench.grid.values(id, { row: 7, col: 4, rows: 1, cols: 3 })).toEqual([['', 3, 5]])
    await runner.undo()
    expect(bench.grid.values(id, { row: 7, col: 4, rows: 1, cols: 3 })).toEqual([['', '', '']])
  })

  it('cells that are not empty are asked about; left alone they keep what they hold', async () => {
    const { bench, id, modeller, select, shown } = await modelling()
    modeller.type('52 - 17')
    modeller.read()
    select('A1')
    await modeller.insertCells(NOTATION)
    expect(shown().asked?.taken).toEqual(['A1', 'B1', 'C1', 'A2', 'B2', 'C2', 'A3', 'B3', 'C3'])
    await modeller.answer(false)
    expect(bench.grid.values(id, { row: 0, col: 0, rows: 1, cols: 1 })).toEqual([['Name']])
    await modeller.insertCells(NOTATION)
    await modeller.answer(true)
    expect(bench.grid.values(id, { row: 3, col: 1, rows: 1, cols: 2 })).toEqual([[3, 5]])
    expect(shown().asked).toBeNull()
  })

  it('the picture goes to the selected cell, with words for readers who hear it', async () => {
    const { bench, id, modeller, runner, select } = await modelling()
    modeller.type('52 - 17')
    modeller.read()
    select('E5')
    const picture = { base64: PIXEL, width: 100, height: 80, name: 'Columnwise 52 − 17', altText: '52 − 17' }
    await modeller.insertPicture(() => Promise.resolve(picture))
    expect(bench.book.sheet(id).shapes).toMatchObject([{ altText: '52 − 17', width: 100, height: 80 }])
    await runner.undo()
    expect(bench.book.sheet(id).shapes).toEqual([])
  })
})
