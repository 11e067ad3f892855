import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Bench } from '../../../src/bench/bench'
import { cellArea } from '../../../src/bench/grid/area'
import { answerKey } from '../../../src/answers/typed'
import { amountText, printQuestion } from '../../../src/arithmetic/question'
import { RECIPES } from '../../../src/items/recipes'
import { lessonWorksheets, worksheetsOf } from '../../../src/lesson/cells/worksheet'
import { diceGrid } from '../../../src/lesson/dice'
import { makeLesson, type Lesson } from '../../../src/lesson/lessonSet'
import { personalSets, type PersonalSet } from '../../../src/lesson/personal'
import { withCriteria } from '../../../src/lesson/ownCriteria'
import { personalHandout } from '../../../src/lesson/questionSheets'
import { diceHandout } from '../../../src/lesson/starterSheets'
import { findMarksheets, OWN_SHEET } from '../../../src/marksheet/layout/find'
import { planMarksheet } from '../../../src/marksheet/setting/layOut'
import type { Matrix } from '../../../src/marksheet/layout/matrix'
import { planPersonalSheet } from '../../../src/marksheet/setting/personalSheet'
import { review } from '../../../src/marksheet/marking/review'
import { takeBack } from '../../../src/office/edit/edit'
import { writeLesson } from '../../../src/office/handouts/lesson'
import { writeHandout } from '../../../src/office/handouts/sheets'
import { markSheet } from '../../../src/office/marking/markSheet'
import { writePersonalSets } from '../../../src/office/handouts/personalSheet'
import { readSheet } from '../../../src/office/workbook/read'
import { readSetBook } from '../../../src/office/questions/target'
import { readTraces } from '../../../src/office/removal/traces'
import { benchWith, countSyncs, problemIn, shown } from '../host'
import { differences, pictureOf } from '../workbookPicture'
import { MAKING } from '../../lesson/making'
import { judged } from '../../mastery/judged'

const NAMES = ['Amira P', 'Una K', 'Daniel O']
const CLASS: Matrix = { name: 'Class', values: [['Name'], ...NAMES.map((name) => [name])] }

function given<T extends object>(reading: T): Exclude<T, { readonly problem: string }> {
  if ('problem' in reading) throw new Error(String(reading.problem))
  return reading as Exclude<T, { readonly problem: string }>
}

const dice = (seed: number) => worksheetsOf(diceHandout([given(diceGrid(4, 5, seed)).grid], '7'))
const lessonOf = (index: number, seed = index): Lesson => {
  const recipe = RECIPES[index % RECIPES.length]
  if (!recipe) throw new Error('There are no recipes.')
  return given(makeLesson({ recipe, seed })).lesson
}
const questionsOf = ({ practice }: Lesson) =>
  practice.flatMap(({ questions }) => questions.map(({ question }) => question))

/** What a sheet holds and how it looks and is printed. */
function picture(bench: Bench, name: string) {
  const { grid, book } = bench
  const id = bench.sheetId(name)
  const used = grid.used(id, false) ?? cellArea(0, 0)
  const cells = Array.from({ length: used.row + used.rows }, (_, row) =>
    Array.from({ length: used.col + used.cols }, (__, col) => grid.format(id, row, col)),
  )
  return { values: grid.values(id, used), cells, page: book.sheet(id).page, breaks: book.sheet(id).rowBreaks }
}

describe('a hand-out written as worksheets', () => {
  it('takes five requests, comes to the front, and nothing of it is taken for a marksheet', async () => {
    const bench = await benchWith(CLASS)
    const syncs = countSyncs(bench)
    const { sheets } = await writeHandout(lessonWorksheets(lessonOf(60), MAKING))
    expect(syncs()).toBeLessThanOrEqual(5)
    expect(sheets).toEqual(['Lesson', 'Lesson answers', 'Lesson letter'])
    expect((await readSheet()).name).toBe('Lesson')
    for (const name of sheets) {
      const { matrix } = await readSheet(bench.sheetId(name))
      expect(String(matrix.values[0]?.[0]).startsWith(OWN_SHEET)).toBe(true)
      expect(findMarksheets(matrix)).toEqual([])
      expect(review(matrix)).toEqual([])
    }
    expect(bench.host.unsupported).toEqual(new Map())
  })

  it('is written all the same where no printer is set up, and that is told', async () => {
    const bench = await benchWith(CLASS)
    await writeHandout(lessonWorksheets(lessonOf(60), MAKING))
    const whole = picture(bench, 'Lesson').values
    const without = await benchWith(CLASS)
    without.book.hasPrinter = false
    const { done } = await writeHandout(lessonWorksheets(lessonOf(60), MAKING))
    expect(picture(without, 'Lesson').values).toEqual(whole)
    expect(done.told).toHaveLength(3)
    expect(done.told?.[0]).toMatch(
      /^Excel did not take how Lesson is to be printed.*Page Layout before you print\.$/,
    )
    expect(await takeBack(done)).toEqual([])
    expect(shown(without)).toEqual(shown(await benchWith(CLASS)))
  })

  it('prints upright on A4, one page wide, without the row that says whose sheet it is', async () => {
    const bench = await benchWith(CLASS)
    await writeHandout(lessonWorksheets(lessonOf(60), MAKING))
    const { page, breaks } = picture(bench, 'Lesson')
    expect([page.orientation, page.paperSize, page.zoom, page.centerHorizontally]).toEqual([
      'Portrait',
      'A4',
      { horizontalFitToPages: 1 },
      true,
    ])
    expect([page.printArea?.row, page.printArea?.col, page.printArea?.cols]).toEqual([1, 0, 24])
    expect(breaks.length).toBeGreaterThanOrEqual(4)
    expect(bench.grid.columnHidden(bench.sheetId('Lesson'), 26)).toBe(true)
  })

  it('never goes onto a sheet of the teacher’s: a numbered one is added', async () => {
    const bench = await benchWith({ name: 'Roll and cover', values: [['my own plan']] })
    const before = picture(bench, 'Roll and cover')
    const { sheets, done } = await writeHandout(dice(1))
    expect(sheets).toEqual(['Roll and cover (2)', 'Roll and cover answers'])
    expect(picture(bench, 'Roll and cover')).toEqual(before)
    await takeBack(done)
    expect(shown(bench).map(({ name }) => name)).toEqual(['Roll and cover'])
  })

  it('made again takes the place of ours; Undo gives back what stood there, with its look and its pages', async () => {
    const bench = await benchWith(CLASS)
    const first = await writeHandout(lessonWorksheets(lessonOf(60), MAKING))
    const before = first.sheets.map((name) => picture(bench, name))
    const again = await writeHandout(lessonWorksheets(lessonOf(20), MAKING))
    expect(again.sheets).toEqual(first.sheets)
    expect(picture(bench, 'Lesson').values).not.toEqual(before[0]?.values)
    expect(await takeBack(again.done)).toEqual([])
    expect(first.sheets.map((name) => picture(bench, name).values)).toEqual(
      before.map(({ values }) => values),
    )
    first.sheets.forEach((name, index) => {
      const now = picture(bench, name)
      expect([now.page, now.breaks]).toEqual([before[index]?.page, before[index]?.breaks])
      before[index]?.cells.forEach((row, at) => {
        expect(now.cells[at]?.slice(0, row.length)).toEqual(row)
      })
    })
    expect(await takeBack(first.done)).toEqual([])
    expect(shown(bench).map(({ name }) => name)).toEqual(['Class'])
  })

  it('is laid out again on the hidden sheets that Undo left', async () => {
    const bench = await benchWith(CLASS)
    await takeBack((await writeHandout(dice(1))).done)
    const { sheets } = await writeHandout(dice(2))
    expect(sheets).toEqual(['Roll and cover', 'Roll and cover answers'])
    expect(bench.grid.sheets()).toHaveLength(3)
  })

  it('stays where something was typed on it since', async () => {
    const bench = await benchWith(CLASS)
    const { done } = await writeHandout(dice(1))
    bench.grid.write(bench.sheetId('Roll and cover'), 30, 2, [['bring dice']])
    expect(await takeBack(done)).toEqual(['The sheet Roll and cover has been changed since, so it stayed.'])
    expect(shown(bench).map(({ name }) => name)).toEqual(['Class', 'Roll and cover'])
  })

  it('is refused where our own sheet is protected, and nothing is changed', async () => {
    const bench = await benchWith(CLASS)
    await writeHandout(dice(1))
    bench.book.sheet(bench.sheetId('Roll and cover')).protection = { options: {} }
    const before = picture(bench, 'Roll and cover answers')
    const { sentence } = await problemIn(writeHandout(dice(2)))
    expect(sentence).toContain('Roll and cover is protected')
    expect(picture(bench, 'Roll and cover answers')).toEqual(before)
  })

  it('is found among the traces of ours, whatever it is', async () => {
    await benchWith(CLASS)
    await writeHandout(dice(1))
    await writeHandout(lessonWorksheets(lessonOf(60), MAKING))
    expect((await readTraces()).own.map(({ name }) => name)).toEqual([
      'Roll and cover',
      'Roll and cover answers',
      'Lesson',
      'Lesson answers',
      'Lesson letter',
    ])
  })
})

describe('a sheet to print of ours that somebody has used', () => {
  const PLACES = [
    [2, 24, 'beside the paper'],
    [3, 25, 12],
    [90, 1, 'below it'],
  ] as const

  it('gives back what was typed on it, whatever and wherever, when it is laid out anew and taken back', async () => {
    const bench = await benchWith(CLASS)
    await writeHandout(dice(1))
    const id = bench.sheetId('Roll and cover')
    for (const [row, column, typed] of PLACES) bench.grid.write(id, row, column, [[typed]])
    bench.grid.write(id, 91, 1, [[{ formula: '=1+1', value: 2 }]])
    const before = pictureOf(bench)
    const { done } = await writeHandout(dice(2))
    expect(differences(before, pictureOf(bench))).not.toEqual([])
    expect(bench.grid.used(id, true)?.rows).toBeLessThan(60)
    expect(await takeBack(done)).toEqual([])
    expect(differences(before, pictureOf(bench))).toEqual([])
  })

  it('is taken back under the name that somebody has given it since', async () => {
    const bench = await benchWith(CLASS)
    const { done } = await writeHandout(dice(1))
    bench.grid.renameSheet(bench.sheetId('Roll and cover'), 'Monday')
    expect(await takeBack(done)).toEqual([])
    expect(shown(bench).map(({ name }) => name)).toEqual(['Class'])
  })

  it('is not mistaken for one that somebody adds under its name in the meantime', async () => {
    const bench = await benchWith(CLASS)
    const book = await readSetBook()
    bench.grid.addSheet('Lesson')
    const { sentence } = await problemIn(writeLesson(lessonOf(60), MAKING, null, book))
    expect(sentence).toBe('A sheet called Lesson has been added in the meantime.')
    expect(shown(bench).map(({ name }) => name)).toEqual(['Class', 'Lesson'])
  })
})

describe('texts that look like formulas', () => {
  const NAME = '=HYPERLINK("http://example.org","x")'

  it('stay texts on sheets to print, on personal sets and on a lesson’s marksheet', async () => {
    const bench = await benchWith(CLASS)
    const reading = personalSets({ pupils: [{ name: NAME, judgement: judged() }], year: 4, seed: 1 })
    const { sets } = given(reading)
    await writeHandout(worksheetsOf(personalHandout(sets, MAKING)))
    await writePersonalSets({ sheet: 'Personal sets', title: NAME }, sets)
    const lesson = withCriteria(lessonOf(60), ['=1+1', '+A1', '@SUM(A1)', '-1'])
    const marksheet = { sheet: 'Marks', title: '=1+1', names: [NAME], questions: questionsOf(lesson) }
    await writeLesson(lesson, MAKING, marksheet, await readSetBook())
    for (const { id } of bench.grid.sheets()) {
      const used = bench.grid.used(id, true)
      if (used) expect(bench.grid.formulas(id, used)).toEqual(bench.grid.values(id, used))
    }
    const shownOn = (name: string) => {
      const id = bench.sheetId(name)
      return bench.grid
        .values(id, bench.grid.used(id, true) ?? cellArea(0, 0))
        .flat()
        .map((value) => String(value).trim())
    }
    expect(shownOn('Marks')).toEqual(expect.arrayContaining(['=1+1', NAME]))
    expect(shownOn('Personal sets')).toContain(NAME)
    expect(shownOn('Lesson')).toEqual(expect.arrayContaining(['=1+1', '+A1', '@SUM(A1)', '-1']))
  })
})

describe('a lesson made in one action', () => {
  it('is its sheets and its marksheet, in five requests; one Undo takes it all back', async () => {
    const bench = await benchWith(CLASS)
    const syncs = countSyncs(bench)
    const lesson = lessonOf(60)
    const wanted = {
      sheet: 'Subtraction',
      title: 'Lesson (set 7)',
      names: NAMES,
      questions: questionsOf(lesson),
    }
    const before = pictureOf(bench)
    const { done, marksheet } = await writeLesson(lesson, MAKING, wanted, await readSetBook())
    expect(syncs()).toBeLessThanOrEqual(5)
    expect(marksheet).toBe('Subtraction')
    const { name, matrix } = await readSheet()
    expect(name).toBe('Subtraction')
    const [found] = findMarksheets(matrix)
    expect(found?.questions.map(({ text }) => text)).toEqual(questionsOf(lesson).map(printQuestion))
    expect(found?.pupils.map((pupil) => pupil.name)).toEqual(NAMES)
    expect(shown(bench)).toHaveLength(5)
    expect(await takeBack(done)).toEqual([])
    expect(differences(before, pictureOf(bench))).toEqual([])
    expect(shown(bench).map((sheet) => sheet.name)).toEqual(['Class'])
  })

  it('without a marksheet, brings the sheet to print to the front', async () => {
    await benchWith(CLASS)
    const { marksheet } = await writeLesson(lessonOf(60), MAKING, null, await readSetBook())
    expect([marksheet, (await readSheet()).name]).toEqual([null, 'Lesson'])
  })

  it('changes nothing where its marksheet would be too large', async () => {
    const bench = await benchWith(CLASS)
    const [question] = questionsOf(lessonOf(60))
    const questions = Array.from({ length: 41 }, () => question).filter((each) => each !== undefined)
    const wanted = { sheet: 'Subtraction', title: '', names: NAMES, questions }
    const { sentence } = await problemIn(writeLesson(lessonOf(60), MAKING, wanted, await readSetBook()))
    expect(sentence).toContain('up to 1,000 pupils and 40 questions')
    expect(bench.grid.sheets()).toHaveLength(1)
  })

  it('whatever its objective: its marksheet, read back by the review, holds the same questions', () => {
    fc.assert(
      fc.property(fc.nat(RECIPES.length - 1), fc.integer(), (index, seed) => {
        const questions = questionsOf(lessonOf(index, seed))
        const { plan } = given(planMarksheet({ title: 'Lesson (set 7)', names: NAMES, questions }))
        const [found, ...others] = findMarksheets({ name: 'Lesson', values: plan.rows })
        expect(others).toEqual([])
        expect(found?.questions.map((each) => printQuestion(each.question))).toEqual(
          questions.map(printQuestion),
        )
        expect(found?.pupils.map(({ name }) => name)).toEqual(NAMES)
      }),
      { numRuns: 60 },
    )
  })
})

const PUPILS = [
  { name: 'Amira P', judgement: judged({ 'through a zero': [0, 3] }) },
  { name: 'Daniel O', judgement: judged({ 'one exchange, tens to ones': [2, 3] }) },
  { name: 'Una K', judgement: judged() },
] as const
const setsWith = (seed: number, count = 4): readonly PersonalSet[] =>
  given(personalSets({ pupils: PUPILS, year: 4, seed, count })).sets

describe('personal sets on a sheet', () => {
  it('are read and marked as pairs: each pupil’s own questions, right and wrong answers as they are', async () => {
    const bench = await benchWith(CLASS)
    const sets = setsWith(7)
    const { sheet, done } = await writePersonalSets(
      { sheet: 'Personal sets', title: '4H: personal sets (set 7)' },
      sets,
    )
    expect(sheet).toBe('Personal sets')
    const id = bench.sheetId(sheet)
    sets.forEach(({ questions }, pupil) => {
      questions.forEach((question, index) => {
        const { numeral } = answerKey(question)
        const right = amountText(numeral, question.unit)
        bench.grid.write(id, 3 + pupil, 2 + 2 * index, [[index === 1 ? '1' : right]])
      })
    })
    const reading = await readSheet(id)
    const [found, ...others] = review(reading.matrix)
    expect([found?.orientation, others]).toEqual(['pairs', []])
    expect(found?.pupils.map(({ name }) => name)).toEqual(PUPILS.map(({ name }) => name))
    expect(
      found?.pupils.map(({ answers }) =>
        answers.flatMap(({ question }) => {
          const asked = found.questions[question]
          return asked ? [printQuestion(asked.question)] : []
        }),
      ),
    ).toEqual(sets.map(({ questions }) => questions.map(printQuestion)))
    expect(found?.pupils.map(({ outcomes }) => outcomes)).toEqual(
      sets.map(() => ['correct', 'incorrect', 'correct', 'correct']),
    )
    await markSheet(reading, review(reading.matrix), { flags: false, mastery: false })
    expect(bench.grid.conditionalFormats(id).length).toBeGreaterThan(0)
    expect(await takeBack(done)).toEqual(['The sheet Personal sets has been changed since, so it stayed.'])
  })

  it('are taken back whole where nothing was typed', async () => {
    const bench = await benchWith(CLASS)
    const { done } = await writePersonalSets({ sheet: 'Personal sets', title: '(set 7)' }, setsWith(7))
    expect(await takeBack(done)).toEqual([])
    expect(shown(bench).map(({ name }) => name)).toEqual(['Class'])
  })

  it('whatever the draw, read back they hold the same questions', () => {
    fc.assert(
      fc.property(fc.integer(), fc.integer({ min: 2, max: 12 }), (seed, count) => {
        const sets = setsWith(seed, count)
        const { plan } = given(planPersonalSheet('Personal sets (set 7)', sets))
        const [found] = findMarksheets({ name: 'Personal sets', values: plan.rows })
        expect(found?.orientation).toBe('pairs')
        expect(found?.questions.map((each) => printQuestion(each.question))).toEqual(
          sets.flatMap(({ questions }) => questions.map(printQuestion)),
        )
      }),
      { numRuns: 40 },
    )
  })

  it('need pupils, a thousand at most', () => {
    const [one] = setsWith(7)
    const many = Array.from({ length: 1001 }, () => one).filter((each) => each !== undefined)
    expect([planPersonalSheet('', []), planPersonalSheet('', many)]).toEqual([
      { problem: 'There are no pupils to lay personal sets out for.' },
      { problem: 'Personal sets are laid out for up to 1,000 pupils.' },
    ])
  })
})
