import type { Bench } from '../../src/bench/bench'
import { makeSet } from '../../src/items/makeSet'
import { RECIPES } from '../../src/items/recipes'
import { worksheetsOf } from '../../src/lesson/cells/worksheet'
import { makeLesson } from '../../src/lesson/lessonSet'
import { personalSets } from '../../src/lesson/personal'
import { triangleHandout } from '../../src/lesson/starterSheets'
import { trianglePuzzle } from '../../src/lesson/triangle'
import { OWN_SHEET } from '../../src/marksheet/layout/find'
import type { Matrix } from '../../src/marksheet/layout/matrix'
import { planReports } from '../../src/marksheet/reports/pupilReport'
import { recordRows } from '../../src/marksheet/record/record'
import { review } from '../../src/marksheet/marking/review'
import { planWeek } from '../../src/marksheet/record/week'
import { cellsEdit } from '../../src/office/edit/cells'
import { perform, type Done } from '../../src/office/edit/edit'
import { Problem } from '../../src/office/edit/errors'
import { writeLesson } from '../../src/office/handouts/lesson'
import { writeHandout } from '../../src/office/handouts/sheets'
import { clearSheet, hideFlags, markSheet } from '../../src/office/marking/markSheet'
import { insertLayout, layoutPlace } from '../../src/office/model/cells'
import { insertPicture } from '../../src/office/model/picture'
import { writePersonalSets } from '../../src/office/handouts/personalSheet'
import { readSheet } from '../../src/office/workbook/read'
import { addToRecordSheet, clearRecordBefore, readRecordSheet } from '../../src/office/record/record'
import { writeComments } from '../../src/office/marking/comments'
import { writePages } from '../../src/office/reports/pages'
import { readSetBook } from '../../src/office/questions/target'
import { layOutMarksheet, writeQuestions } from '../../src/office/questions/writeQuestions'
import { keepSettings } from '../../src/office/workbook/settings'
import { writeShared } from '../../src/office/reports/share'
import { readTraces, removeTraces } from '../../src/office/removal/traces'
import { asked } from '../support/asked'
import { benchWith } from './host'
import { MAKING } from '../lesson/making'
import { judged } from '../mastery/judged'

/** What writes, once everything that it needs has been read. */
export type Write = () => Promise<Done>

/** A writing action of the add-in. */
export interface Action {
  readonly name: string
  /** Makes ready the workbook in which it is done. */
  before(): Promise<unknown>
  read(): Promise<Write>
  /** The sheet that it writes to, and cells of it that it fills; without `cells` it writes no cell, or a new sheet. */
  readonly sheet: string
  readonly cells?: string
  /** Whether the whole sheet is laid out anew, so that only contents and looks of ours come back. */
  readonly laysOut?: true
  /** What cannot be undone about it, so that only what it leaves is looked at. */
  readonly forGood?: true
}

/** A small class in which some need support; the notes go to column H. */
export const OWLS: Matrix = {
  name: 'Owls',
  values: [
    ['Subtraction, autumn'],
    ['Name', '532 − 217', '603 − 245', '718 − 354', '940 − 268', '305 − 128'],
    ['Amira P', 315, 358, 364, 672, 177],
    ['Bertie L', 325, 442, 444, 728, 223],
    ['Cerys H', 315, ' 358.', 'abs', '', '67?'],
    ['Daniel O', 325, 358, 444, 728, 223],
    [],
    [],
    ['old', 'words', 'here', 4, 5],
  ],
}

const PIXEL =
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg=='
const made = makeSet(
  { operation: 'subtract', numbers: { year: 4, topic: 'Four-digit numbers' }, aim: 'graded', count: 4 },
  '4827',
)
if ('problem' in made) throw new Error(made.problem)
const SET = { questions: made.questions, set: '4827', recipe: 'Year 4' }
const LAYOUT = asked('932 − 457')
const DAY = '2026-11-06'

/** The workbook with the small class, nothing of ours in it. */
export async function owls(): Promise<Bench> {
  const bench = await benchWith(OWLS)
  Office.context.document.settings.remove('columnwise')
  return bench
}

const select = (address: string) =>
  Excel.run(async (context) => {
    context.workbook.worksheets.getItem('Owls').getRange(address).select()
    await context.sync()
  })

async function reading() {
  const sheet = await readSheet()
  return { sheet, reviews: review(sheet.matrix) }
}

async function marking(flags = true, mastery = true): Promise<Write> {
  const { sheet, reviews } = await reading()
  return () => markSheet(sheet, reviews, { flags, mastery })
}

const mark = async () => (await marking())()

const given = (written: { readonly done: Done | null }): Done => {
  if (!written.done) throw new Problem('Cells are not empty.', 'The pane asks whether they may go.')
  return written.done
}

async function setting(cell: string, direction: 'across' | 'down', withKey: boolean): Promise<Write> {
  await select(cell)
  const first = await writeQuestions({ ...SET, withKey }, direction, null)
  return async () =>
    given(first.done ? first : await writeQuestions({ ...SET, withKey }, direction, first.target))
}

async function recording(date = DAY, sheet = 'Owls'): Promise<Write> {
  const { reviews, sheet: read } = await reading()
  const rows = reviews.flatMap((each) => recordRows(each, { date, class: '4H' }))
  const record = await readRecordSheet(read.sheets)
  return () =>
    addToRecordSheet(
      record,
      rows.map((row) => ({ ...row, sheet })),
    )
}

async function commenting(texts: readonly string[]): Promise<Write> {
  const { sheet } = await reading()
  const comments = texts.map((text, index) => ({ row: 3, column: 1 + index, text }))
  return async () => (await writeComments(sheet, comments)).done
}

async function paging(which: 'week' | 'reports', pupil = 'Amira P'): Promise<Write> {
  const { sheet } = await reading()
  const printed =
    which === 'week'
      ? { table: planWeek({ className: '4H', date: DAY, byNeed: [] }), breaks: [] }
      : planReports([{ name: pupil, can: [], mostly: [], isSeen: false, next: null }], DAY)
  return () => writePages(printed, which === 'week' ? 'one' : 'many', sheet.sheets)
}

async function layingInCells(cell: string): Promise<Write> {
  await select(cell)
  const place = await layoutPlace(LAYOUT, MAKING.notation)
  return () => insertLayout(place, place.taken.length > 0)
}

/** A small lesson; another seed gives another one. */
function lessonOf(seed: number) {
  const [recipe] = RECIPES
  const reading = recipe && makeLesson({ recipe, seed, practice: 1, recap: 0 })
  if (!reading || 'problem' in reading) throw new Error('There is no lesson.')
  return reading.lesson
}

async function writingLesson(seed = 1): Promise<Write> {
  const book = await readSetBook()
  const lesson = lessonOf(seed)
  const questions = lesson.practice.flatMap((set) => set.questions.map(({ question }) => question))
  const marksheet = { sheet: 'Lesson marks', title: 'Lesson', names: ['Amira P', '=A1'], questions }
  return async () => (await writeLesson(lesson, MAKING, marksheet, book)).done
}

/** Number triangles to print; another seed gives others. */
const printing =
  (seed = 1): Write =>
  async () =>
    (await writeHandout(worksheetsOf(triangleHandout([trianglePuzzle(1, seed)], '7')))).done

const settingEach: Write = async () => {
  const pupils = ['Amira P', '=A1'].map((name) => ({ name, judgement: judged() }))
  const reading = personalSets({ pupils, year: 4, seed: 1, count: 2 })
  if ('problem' in reading) throw new Error(reading.problem)
  return (await writePersonalSets({ sheet: 'Personal sets', title: 'Personal sets' }, reading.sets)).done
}

const nothing = () => Promise.resolve()

const picture = { base64: PIXEL, width: 150, height: 120, name: 'Columnwise 52 − 17', altText: '52 − 17' }

/** Every writing action, on new ground and where it was done before. */
export const ACTIONS: readonly Action[] = [
  { name: 'marking', before: nothing, read: marking, sheet: 'Owls', cells: 'H3:H6' },
  { name: 'marking again', before: mark, read: () => marking(), sheet: 'Owls', cells: 'H3:H6' },
  { name: 'marking without flags', before: mark, read: () => marking(false), sheet: 'Owls', cells: 'H3:H6' },
  {
    name: 'writing the Mastery sheet again',
    before: mark,
    read: marking,
    sheet: 'Mastery',
    cells: 'A6:B8',
    laysOut: true,
  },
  {
    name: 'clearing',
    before: mark,
    read: async () => {
      const { sheet } = await reading()
      return () => clearSheet(sheet)
    },
    sheet: 'Owls',
    cells: 'H3:H6',
  },
  {
    name: 'hiding flags',
    before: mark,
    read: async () => {
      const { sheet } = await reading()
      return () => hideFlags(sheet)
    },
    sheet: 'Owls',
    cells: 'H3:H6',
  },
  {
    name: 'setting questions across',
    before: nothing,
    read: async () => {
      await select('B12')
      return async () => given(await writeQuestions({ ...SET, withKey: true }, 'across', null))
    },
    sheet: 'Owls',
    cells: 'B12:E12',
  },
  {
    name: 'setting questions down over other words',
    before: nothing,
    read: () => setting('B9', 'across', false),
    sheet: 'Owls',
    cells: 'B9:E9',
  },
  {
    name: 'laying out a marksheet',
    before: nothing,
    read: async () => {
      const book = await readSetBook()
      const on = { sheet: 'Subtraction', title: 'Subtraction', names: ['Amira P', '=A1'] }
      return async () => (await layOutMarksheet({ ...SET, withKey: true }, on, book)).done
    },
    sheet: 'Subtraction',
  },
  {
    name: 'writing the answer key again',
    before: async () => {
      await select('B12')
      await writeQuestions({ ...SET, withKey: true }, 'down', null)
    },
    read: async () => {
      await select('D12')
      return async () => given(await writeQuestions({ ...SET, withKey: true }, 'down', null))
    },
    sheet: 'Answer key',
    cells: 'A4:D6',
    laysOut: true,
  },
  { name: 'beginning a record', before: nothing, read: recording, sheet: 'Record' },
  {
    name: 'adding to the record',
    before: async () => (await recording())(),
    read: () => recording('2026-11-13', 'Week 2'),
    sheet: 'Record',
    cells: 'A24:C25',
  },
  {
    name: 'forgetting a part of the record',
    before: async () => {
      await (
        await recording('2026-07-03', 'Last year')
      )()
      await (
        await recording()
      )()
    },
    read: async () => {
      const record = await readRecordSheet((await readSheet()).sheets)
      return () => clearRecordBefore(record, '2026-09-01')
    },
    sheet: 'Record',
    cells: 'A4:C6',
  },
  { name: 'writing comments', before: nothing, read: () => commenting(['one', 'two']), sheet: 'Owls' },
  {
    name: 'writing comments again',
    before: async () => (await commenting(['one', 'two', 'three']))(),
    read: () => commenting(['other']),
    sheet: 'Owls',
  },
  {
    name: 'taking comments off',
    before: async () => (await commenting(['one', 'two']))(),
    read: () => commenting([]),
    sheet: 'Owls',
  },
  { name: 'writing the page of the week', before: nothing, read: () => paging('week'), sheet: 'This week' },
  {
    name: 'writing reports again',
    before: async () => (await paging('reports', 'Bertie L'))(),
    read: () => paging('reports'),
    sheet: 'Reports',
    cells: 'A1:A2',
    laysOut: true,
  },
  {
    name: 'putting a model into cells',
    before: nothing,
    read: () => layingInCells('B12'),
    sheet: 'Owls',
    cells: 'B12:E16',
  },
  {
    name: 'putting a model over other words',
    before: nothing,
    read: () => layingInCells('B9'),
    sheet: 'Owls',
    cells: 'B9:E9',
  },
  {
    name: 'putting a picture of a model',
    before: () => select('B12'),
    read: () => Promise.resolve(() => insertPicture(picture)),
    sheet: 'Owls',
  },
  {
    name: 'writing sheets to print',
    before: nothing,
    read: () => Promise.resolve(printing()),
    sheet: 'Number triangles',
  },
  {
    name: 'writing sheets to print again',
    before: printing(2),
    read: () => Promise.resolve(printing()),
    sheet: 'Number triangles',
    cells: 'A2:B3',
    laysOut: true,
  },
  { name: 'writing a lesson', before: nothing, read: () => writingLesson(), sheet: 'Lesson' },
  {
    name: 'writing a lesson again',
    before: async () => (await writingLesson(2))(),
    read: () => writingLesson(),
    sheet: 'Lesson answers',
    cells: 'A2:B3',
    laysOut: true,
  },
  {
    name: 'writing the marksheet of a lesson',
    before: nothing,
    read: () => writingLesson(),
    sheet: 'Lesson marks',
  },
  {
    name: 'writing personal sets',
    before: nothing,
    read: () => Promise.resolve(settingEach),
    sheet: 'Personal sets',
  },
  {
    name: 'writing a sheet to share',
    before: nothing,
    read: async () => {
      const { sheet, reviews } = await reading()
      return () => writeShared(reviews, 'codes', 'seed', sheet.sheets)
    },
    sheet: 'To share',
  },
  {
    name: 'entering answers',
    before: nothing,
    read: async () => {
      const { sheet } = await reading()
      return () => perform('quick entry', [cellsEdit(sheet, [{ top: 4, left: 4, rows: [[315]] }])])
    },
    sheet: 'Owls',
    cells: 'E5:E5',
  },
  {
    name: 'removing every trace of marking',
    before: async () => {
      const { sheet, reviews } = await reading()
      await markSheet(sheet, reviews, { flags: true, mastery: false })
      await (
        await commenting(['one'])
      )()
    },
    read: async () => {
      const traces = await readTraces()
      return () => removeTraces(traces)
    },
    sheet: 'Owls',
    cells: 'H3:H6',
  },
  {
    name: 'removing sheets and settings too',
    before: async () => {
      await mark()
      await keepSettings({ className: '4H' })
    },
    read: async () => {
      const traces = await readTraces()
      return () => removeTraces(traces)
    },
    sheet: 'Owls',
    cells: 'H3:H6',
    forGood: true,
  },
]

/** Whether a sheet is one that we lay out. */
export function isOurs(bench: Bench, name: string): boolean {
  const sheet = bench.grid.sheets().find((each) => each.name === name)
  if (!sheet) return false
  const [[first] = []] = bench.grid.values(sheet.id, { row: 0, col: 0, rows: 1, cols: 1 })
  return String(first).startsWith(OWN_SHEET)
}
