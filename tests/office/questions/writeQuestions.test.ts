import { describe, expect, it } from 'vitest'
import { makeSet } from '../../../src/items/makeSet'
import { printQuestion } from '../../../src/arithmetic/question'
import { KEY_TITLE } from '../../../src/marksheet/setting/answerKey'
import { findClassList } from '../../../src/marksheet/layout/classList'
import { findMarksheets } from '../../../src/marksheet/layout/find'
import type { Matrix } from '../../../src/marksheet/layout/matrix'
import { takeBack } from '../../../src/office/edit/edit'
import { readSheet } from '../../../src/office/workbook/read'
import { readSetBook } from '../../../src/office/questions/target'
import {
  layOutMarksheet,
  writeQuestions,
  type SetToWrite,
} from '../../../src/office/questions/writeQuestions'
import { benchWith, countSyncs, everything, problemIn, shown } from '../host'

const made = makeSet(
  {
    operation: 'subtract',
    numbers: { year: 4, topic: 'Four-digit numbers' },
    aim: 'graded',
    count: 5,
  },
  '4827',
)
if ('problem' in made) throw new Error(made.problem)
const SET: SetToWrite = { questions: made.questions, set: '4827', recipe: 'Year 4', withKey: true }
const TEXTS = SET.questions.map(printQuestion)

const NAMES = ['Amira P', '3-4', '=A1', 'Daniel O']
const CLASS: Matrix = { name: 'Class', values: [['Name'], ...NAMES.map((name) => [name])] }

async function laidOut(names: readonly string[] = NAMES) {
  const book = await readSetBook()
  return layOutMarksheet(SET, { sheet: 'Subtraction', title: 'Subtraction · set 4827', names }, book)
}

const valuesOn = async (bench: Awaited<ReturnType<typeof benchWith>>, name: string) => {
  const sheet = bench.grid.sheets().find((each) => each.name === name)
  if (!sheet) throw new Error(`There is no sheet ${name}.`)
  return (await readSheet(sheet.id)).matrix
}

describe('a marksheet laid out from a workbook that holds only names', () => {
  it('stands on a sheet of its own in front, with every name as text and empty answer cells; the names stay as they are', async () => {
    const bench = await benchWith(CLASS)
    const before = everything(bench)[0]
    const { sheet } = await laidOut()
    expect(sheet).toBe('Subtraction')
    const matrix = (await readSheet()).matrix
    expect(matrix.name).toBe('Subtraction')
    expect(matrix.values.map((row) => row[0])).toEqual([
      'Subtraction · set 4827',
      expect.stringMatching(/^Type each answer/),
      'Name',
      ...NAMES,
    ])
    expect(matrix.values[2]).toEqual(['Name', ...TEXTS])
    expect(matrix.formulas?.flat().join('')).toBe('')
    expect(everything(bench)[0]).toEqual(before)
  })

  it('is found as a marksheet with all its questions', async () => {
    const bench = await benchWith(CLASS)
    await laidOut(['Amira P', 'Bertie L'])
    const [found] = findMarksheets(await valuesOn(bench, 'Subtraction'))
    expect(found?.pupils.map(({ name }) => name)).toEqual(['Amira P', 'Bertie L'])
    expect(found?.questions.map(({ text }) => text)).toEqual(TEXTS)
  })

  it('keeps heads and names in sight and holds answers as plain numbers', async () => {
    const bench = await benchWith(CLASS)
    await laidOut()
    const id = bench.grid.activeSheet()
    expect(bench.grid.frozen(id)).toEqual({ rows: 3, cols: 1 })
    expect(bench.grid.format(id, 3, 1).numberFormat).toBe('General')
    expect(bench.grid.format(id, 2, 1)).toMatchObject({ bold: true, wrap: true })
  })

  it('takes at most four requests with the reading of the names, for 180 pupils and 40 questions', async () => {
    const bench = await benchWith({
      name: 'Class',
      values: [['Name'], ...Array.from({ length: 180 }, (_, index) => [`Pupil ${index + 1}`])],
    })
    const syncs = countSyncs(bench)
    const book = await readSetBook()
    const names = findClassList(book.source.matrix)?.names ?? []
    expect(names).toHaveLength(180)
    const forty = Array.from({ length: 8 }, () => SET.questions).flat()
    await layOutMarksheet({ ...SET, questions: forty }, { sheet: 'S', title: 'T', names }, book)
    expect(syncs()).toBeLessThanOrEqual(4)
  })

  it('goes onto the sheet in front where that is empty', async () => {
    const bench = await benchWith({ name: 'Sheet1', values: [] })
    const { sheet } = await laidOut(['Amira P'])
    expect(sheet).toBe('Sheet1')
    expect(bench.grid.sheets().map(({ name }) => name)).toEqual(['Sheet1', 'Answer key'])
  })

  it('never takes a sheet that is there', async () => {
    const bench = await benchWith(CLASS)
    await laidOut()
    bench.grid.activateSheet(bench.grid.sheets()[0]?.id ?? '')
    expect((await laidOut()).sheet).toBe('Subtraction (2)')
  })

  it('is taken back: emptied and out of sight, and used again the next time', async () => {
    const bench = await benchWith(CLASS)
    const before = everything(bench)[0]
    const { done } = await laidOut()
    expect(await takeBack(done)).toEqual([])
    const sheets = everything(bench)
    expect(sheets[0]).toEqual(before)
    expect(bench.grid.activeSheet()).toBe(bench.grid.sheets()[0]?.id)
    expect(sheets.map(({ name, visible }) => [name, visible])).toEqual([
      ['Class', true],
      ['Subtraction', false],
      ['Answer key', false],
    ])
    expect(sheets[1]?.formulas).toBeNull()
    expect((await laidOut()).sheet).toBe('Subtraction')
    expect(everything(bench).every(({ visible }) => visible)).toBe(true)
  })

  it('stays, and says so, when answers have been typed into it', async () => {
    const bench = await benchWith(CLASS)
    const { done } = await laidOut()
    bench.grid.write(bench.grid.activeSheet(), 3, 1, [[6604]])
    expect(await takeBack(done)).toEqual(['The sheet Subtraction has been changed since, so it stayed.'])
    expect((await valuesOn(bench, 'Subtraction')).values[2]?.[1]).toBe(TEXTS[0])
  })

  it('is refused with a sentence without names', async () => {
    await benchWith(CLASS)
    await expect(laidOut([])).rejects.toThrow('There are no names to lay a marksheet out for.')
  })
})

describe.each([
  ['laying out a marksheet', () => laidOut()],
  ['writing questions down', () => writeQuestions(SET, 'down', null)],
])('%s', (_, act) => {
  const place = async () => {
    const bench = await benchWith(CLASS)
    bench.select('Class', 'C2')
    return bench
  }
  const requestsOf = async () => {
    const syncs = countSyncs(await place())
    await act()
    return syncs()
  }

  it('leaves the workbook as it was, whichever request fails, however far it came', async () => {
    const last = await requestsOf()
    const starts = Array.from({ length: last }, (__, index) => ({ sync: index + 1, after: 0 }))
    for (const fault of [...starts, ...[1, 3, 6].map((after) => ({ sync: last, after }))]) {
      const bench = await place()
      const before = shown(bench)
      bench.host.failAt({ ...fault, code: 'GeneralException' })
      const { sentence } = await problemIn(act())
      expect(sentence).toMatch(/^Excel could not finish what it was asked for\./)
      expect(shown(bench)).toEqual(before)
    }
  })

  it('says what to do where the sheets are protected', async () => {
    const sync = await requestsOf()
    const bench = await place()
    bench.host.failAt({ sync, code: 'AccessDenied', after: 0 })
    expect((await problemIn(act())).next).toMatch(/Unprotect/)
  })
})

describe('the answer key', () => {
  it('is a sheet of its own that is no marksheet, and keeps the sets before', async () => {
    const bench = await benchWith(CLASS)
    await laidOut()
    await laidOut()
    const matrix = await valuesOn(bench, 'Answer key')
    expect(matrix.values[0]?.[0]).toBe(KEY_TITLE)
    expect(matrix.values.slice(3).map((row) => [row[0], row[3]])).toEqual([
      ...TEXTS.map((text) => ['Subtraction (2)', text]),
      ...TEXTS.map((text) => ['Subtraction', text]),
    ])
    expect(findMarksheets(matrix)).toEqual([])
  })

  it('leaves a sheet of the teacher’s of that name alone', async () => {
    const bench = await benchWith({ name: 'Answer key', values: [['mine']] })
    await laidOut()
    expect(everything(bench).map(({ name }) => name)).toEqual(['Answer key', 'Subtraction', 'Answer key (2)'])
    expect((await valuesOn(bench, 'Answer key')).values[0]?.[0]).toBe('mine')
  })

  it('is not written when it is not wanted', async () => {
    const bench = await benchWith(CLASS)
    await writeQuestions({ ...SET, withKey: false }, 'across', null)
    expect(bench.grid.sheets()).toHaveLength(1)
  })
})

describe('questions from the selected cell', () => {
  it.each(['across', 'down'] as const)(
    'run %s as text, in columns wide enough, and are taken back',
    async (direction) => {
      const bench = await benchWith(CLASS)
      const before = everything(bench)[0]
      bench.select('Class', 'B1')
      const id = bench.grid.activeSheet()
      const width = bench.grid.columnWidth(id, 1)
      const { done } = await writeQuestions(SET, direction, null)
      if (!done) throw new Error('Nothing was written.')
      const { values } = await valuesOn(bench, 'Class')
      const written = direction === 'across' ? values[0]?.slice(1) : values.map((row) => row[1]).slice(0, 5)
      expect(written).toEqual(TEXTS)
      expect(bench.grid.columnWidth(id, 1)).toBeGreaterThan(width)
      expect(await takeBack(done)).toEqual([])
      expect(everything(bench)[0]).toEqual(before)
      expect(bench.grid.columnWidth(id, 1)).toBe(width)
    },
  )

  it('ask before anything is overwritten, naming the cells; then write over exactly what was shown', async () => {
    const bench = await benchWith(CLASS)
    bench.select('Class', 'A3')
    const asked = await writeQuestions(SET, 'across', null)
    expect(asked.done).toBeNull()
    expect(asked.target.taken).toEqual([{ address: 'A3', value: '3-4' }])
    expect((await valuesOn(bench, 'Class')).values).toEqual(CLASS.values)
    bench.select('Class', 'F9')
    const { done } = await writeQuestions(SET, 'across', asked.target)
    expect((await valuesOn(bench, 'Class')).values[2]).toEqual(TEXTS)
    if (done) await takeBack(done)
    expect((await valuesOn(bench, 'Class')).values).toEqual(CLASS.values)
  })

  it('are refused where a cell holds something else by now', async () => {
    const bench = await benchWith(CLASS)
    bench.select('Class', 'A3')
    const { target } = await writeQuestions(SET, 'across', null)
    bench.grid.write(bench.grid.activeSheet(), 2, 1, [['new']])
    await expect(writeQuestions(SET, 'across', target)).rejects.toThrow(/Cell B3 on Class is not empty/)
    expect((await valuesOn(bench, 'Class')).values[2]?.[0]).toBe('3-4')
  })

  it('are not written onto a sheet of our own', async () => {
    const bench = await benchWith(CLASS)
    await laidOut()
    bench.select('Answer key', 'J20')
    await expect(writeQuestions(SET, 'down', null)).rejects.toThrow(
      'Answer key is written by Columnwise itself.',
    )
  })
})
