import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { RECIPES } from '../../src/items/recipes'
import { COLUMNS, PAGE_HEIGHT, SIZES } from '../../src/lesson/cells/paper'
import type { Cells } from '../../src/lesson/cells/piece'
import { lessonWorksheets, printedCells, type PrintedCells } from '../../src/lesson/cells/worksheet'
import type { Block, Room, Sheet } from '../../src/lesson/handout'
import { makeLesson, type Lesson } from '../../src/lesson/lessonSet'
import { practiceSheets, togetherSheet, workingOf } from '../../src/lesson/lessonSheets'
import { CRITERIA, withCriteria } from '../../src/lesson/ownCriteria'
import { partWorked } from '../../src/lesson/partWorked'
import type { Bar } from '../../src/lesson/stories/bars'
import { gridOf } from '../../src/lesson/model/grid'
import { workedQuestion, type WorkedQuestion } from '../../src/lesson/worked'
import { asked } from '../support/asked'
import { fadingHelp, scaffold } from '../../src/lesson/scaffold'
import { stagesOf } from '../../src/lesson/stages'
import { MAKING, rowsOf } from './making'

/** Any lesson that can be made. */
const lessons = fc
  .record({
    recipe: fc.constantFrom(...RECIPES),
    seed: fc.integer(),
    practice: fc.integer({ min: 1, max: 8 }),
    recap: fc.integer({ min: 0, max: 6 }),
  })
  .map((wish): Lesson => {
    const reading = makeLesson(wish)
    if ('problem' in reading) throw new Error(reading.problem)
    return reading.lesson
  })

const sheetOf = (reader: Sheet['reader'], ...blocks: readonly Block[]): PrintedCells =>
  printedCells({ set: '', sheets: [{ title: 'Title', reader, blocks }] })

const isIn = ({ top, left, bottom, right }: Cells, row: number, column: number) =>
  row >= top && row <= bottom && column >= left && column <= right

/** The texts in some cells, by their place within them. */
const textsIn = ({ texts }: PrintedCells, cells: Cells) =>
  texts
    .filter(({ row, column }) => isIn(cells, row, column))
    .map(({ row, column, text }) => [row - cells.top, column - cells.left, text.trim()] as const)
    .toSorted(([row, column], [otherRow, otherColumn]) => row - otherRow || column - otherColumn)

const linedWith = ({ looks }: PrintedCells, wanted: string) =>
  looks.filter(({ lines }) => lines === wanted).map(({ cells }) => cells)

/** The texts of each page, by column 0 or any. */
const pagesOf = ({ texts, breaks, heights }: PrintedCells): string[][] =>
  [0, ...breaks].map((first, index) =>
    texts
      .filter(({ row }) => row >= first && row < (breaks[index] ?? heights.length))
      .map(({ text }) => text.trim()),
  )

const working = (text: string): WorkedQuestion => workedQuestion(asked(text))
const drawn = (text: string, label = '') => workingOf(working(text), label, MAKING.notation)

describe('each kind of block in cells', () => {
  it('a heading and a text stand in column A, in the letters of their reader', () => {
    for (const reader of ['pupil', 'adult'] as const) {
      const printed = sheetOf(
        reader,
        { kind: 'heading', text: 'Look' },
        { kind: 'text', text: 'Take turns.' },
      )
      const placed = printed.texts.map(({ row, column, text }) => {
        const look = printed.looks.find(({ cells }) => isIn(cells, row, column))
        return [column, text, look?.size, look?.bold]
      })
      const { title, heading, text } = SIZES[reader]
      expect(placed).toEqual([
        [0, 'Title', title, true],
        [0, 'Look', heading, true],
        [0, 'Take turns.', text, false],
      ])
    }
  })

  it('fields have a line each, which begins behind its name and ends before the next', () => {
    const printed = sheetOf('pupil', { kind: 'fields', names: ['Name', 'Date'] })
    const [name, date] = linedWith(printed, 'under')
    expect(printed.texts.slice(1).map(({ column, text }) => [column, text])).toEqual([
      [0, 'Name'],
      [COLUMNS / 2, 'Date'],
    ])
    expect(name?.left).toBeGreaterThan(0)
    expect(name?.right).toBeLessThan(COLUMNS / 2 - 1)
    expect(date?.left).toBeGreaterThan(COLUMNS / 2)
    expect(date?.right).toBe(COLUMNS - 1)
  })

  it('a list has a dot before each item, ticks a box; what runs on stands below the first words', () => {
    const long = 'I check my answer with the inverse, column by column, before I write the next one down.'
    const list = sheetOf('pupil', { kind: 'list', items: ['I line up.', long] })
    expect(list.texts.filter(({ text }) => text === '•').map(({ column }) => column)).toEqual([0, 0])
    expect(list.texts.slice(1).filter(({ text, column }) => text !== '•' && column !== 1)).toEqual([])
    const ticks = sheetOf('pupil', { kind: 'ticks', items: ['I line up.', long] })
    expect(linedWith(ticks, 'box').map(({ left, right }) => [left, right])).toEqual([
      [0, 0],
      [0, 0],
    ])
    expect(ticks.texts.length).toBeGreaterThan(3)
  })

  it('rooms are empty squares, two beside each other, under number and question, with a line where one is wanted', () => {
    const rooms = ['72 − 5', '90 − 4', '81 − 3'].map((text, index): Room => ({
      label: `${index + 1}`,
      text,
      columns: 8,
      rows: 6,
      above: '',
      line: index === 2 ? 'Answer' : '',
      given: null,
    }))
    const printed = sheetOf('pupil', { kind: 'rooms', rooms })
    const squares = linedWith(printed, 'squares')
    expect(squares.map(({ top, left, bottom, right }) => [left, right - left + 1, bottom - top + 1])).toEqual(
      [
        [0, 8, 6],
        [13, 8, 6],
        [0, 8, 6],
      ],
    )
    expect(squares.flatMap((cells) => textsIn(printed, cells))).toEqual([])
    squares.forEach(({ top, left }, index) => {
      const above = printed.texts.filter(
        ({ row, column }) => row === top - 1 && column >= left && column < left + 8,
      )
      expect(above.map(({ text }) => text)).toEqual([rooms[index]?.label, rooms[index]?.text])
    })
    expect(linedWith(printed, 'under').map(({ top }) => top)).toEqual([(squares[2]?.bottom ?? 0) + 1])
  })

  it('a working in pictures has each with its number, and all its steps on their right', () => {
    const { question, steps } = working('532 − 217')
    const stages = stagesOf(question, MAKING.notation)
    const printed = sheetOf('pupil', { kind: 'stages', stages })
    const squares = linedWith(printed, 'squares')
    expect(squares).toHaveLength(stages.length)
    const right = squares[0]?.right ?? COLUMNS
    const beside = printed.texts.filter(({ row, column }) => row > 0 && column > right)
    expect(beside.map(({ text }) => text).join(' ')).toBe(steps.join(' '))
    for (const { top } of squares)
      expect(printed.texts.some(({ row, column }) => row === top && column === 0)).toBe(true)
  })

  it('workings of any length stand beside each other, each sign in a cell of its own, one cell apart at least', () => {
    const workings = ['532 − 217', '8,000 − 7', '999,999 + 999,999'].map((text, index) =>
      drawn(text, `${index + 1}`),
    )
    const printed = sheetOf('adult', { kind: 'workings', workings })
    const squares = linedWith(printed, 'squares')
    expect(squares).toHaveLength(3)
    squares.forEach((cells, index) => {
      const paper = workings[index]?.paper
      const rows = paper ? gridOf(paper) : []
      expect(textsIn(printed, cells)).toEqual(
        rows.flatMap((row, at) =>
          row.cells.flatMap(({ text }, column) => (text === '' ? [] : [[at, column, text]])),
        ),
      )
      for (const other of squares.slice(index + 1))
        expect(other.top > cells.bottom || other.left > cells.right + 1).toBe(true)
    })
    for (const { answer } of workings) expect(printed.texts.map(({ text }) => text)).toContain(answer)
  })

  it('a grid is boxes that share the columns, its notes below its texts', () => {
    const rows = [
      [
        { text: '12 − 5', note: 'count on' },
        { text: '14 − 3', note: 'count back' },
      ],
      [
        { text: '11 − 9', note: 'count on' },
        { text: '17 − 8', note: 'count on' },
      ],
    ]
    const printed = sheetOf('adult', { kind: 'grid', rows })
    const boxes = linedWith(printed, 'box')
    expect(boxes.map(({ left, right }) => [left, right])).toEqual([
      [0, 11],
      [12, 23],
      [0, 11],
      [12, 23],
    ])
    expect(boxes.map((cells) => textsIn(printed, cells).map(([, , text]) => text))).toEqual(
      rows.flat().map(({ text, note }) => [text, note]),
    )
  })

  it('a triangle is nine boxes with the given numbers, four on a side, the total in the middle', () => {
    const numbers = [1, null, 2, 3, null, null, 4, null, 9]
    const printed = sheetOf('pupil', {
      kind: 'triangles',
      triangles: [{ label: 'Triangle 1', total: 17, numbers }],
    })
    const boxes = linedWith(printed, 'box')
    expect(boxes.map((cells) => textsIn(printed, cells)[0]?.[2] ?? null)).toEqual(
      numbers.map((number) => (number === null ? null : String(number))),
    )
    expect(new Set(boxes.map(({ top, left }) => `${top} ${left}`)).size).toBe(9)
    const lowest = boxes.filter(({ top }) => top === Math.max(...boxes.map((box) => box.top)))
    expect(lowest).toHaveLength(4)
    expect(printed.texts.map(({ text }) => text)).toContain('17')
  })

  it('a bar is a whole over two parts of the same width together; what is found stays hidden from pupils', () => {
    const bar: Bar = {
      compares: false,
      whole: { label: 'In all', amount: '900', length: 900, role: 'asked' },
      parts: [
        { label: 'Red', amount: '890', length: 890, role: 'found' },
        { label: 'Blue', amount: '10', length: 10, role: 'told' },
      ],
    }
    const shown = (isComplete: boolean) => {
      const printed = sheetOf('pupil', { kind: 'bars', bars: [bar], shown: isComplete ? 'all' : 'told' })
      return linedWith(printed, 'box').map((cells) => [
        cells.right - cells.left + 1,
        textsIn(printed, cells)
          .map(([, , text]) => text)
          .join(''),
      ])
    }
    expect(shown(false)).toEqual([
      [11, '?'],
      [8, ''],
      [3, '10'],
    ])
    expect(shown(true).map(([, text]) => text)).toEqual(['900', '890', '10'])
  })

  it('blocks kept together go to the next page as a whole', () => {
    const text = (words: string): Block => ({ kind: 'text', text: words })
    const lines = Array.from({ length: 26 }, (_, index) => text(`before ${index}`))
    const kept = Array.from({ length: 9 }, (_, index) => text(`kept ${index}`))
    const pages = pagesOf(sheetOf('pupil', ...lines, { kind: 'together', blocks: kept }))
    expect(pages).toHaveLength(2)
    expect(pages[1]).toEqual(kept.map((_, index) => `kept ${index}`))
  })
})

describe('any lesson’s worksheets', () => {
  it('have every question of a grade on the pages of that grade, and those to start with on theirs, in order', () => {
    fc.assert(
      fc.property(lessons, (lesson) => {
        const wanted = [
          [...lesson.recap, lesson.partner],
          ...lesson.practice.map(({ questions }) => questions),
        ]
        const sheets = [togetherSheet(lesson), ...practiceSheets(lesson, MAKING.notation)]
        sheets.forEach((sheet, index) => {
          const questions = (wanted[index] ?? []).map(({ text }) => text)
          const found = printedCells({ set: '', sheets: [sheet] })
            .texts.toSorted((a, b) => a.row - b.row || a.column - b.column)
            .map(({ text }) => text)
            .filter((text) => questions.includes(text))
          expect(found).toEqual(questions)
        })
        const [pupils] = lessonWorksheets(lesson, MAKING)
        const all = (pupils ? printedCells(pupils).texts : []).map(({ text }) => text)
        for (const { text } of wanted.flat()) expect(all.filter((each) => each === text)).toHaveLength(1)
      }),
      { numRuns: 60 },
    )
  })

  it('have answers and workings on the answer sheet alone: the pupils’ squares are empty but for the example and what is begun for them', () => {
    fc.assert(
      fc.property(lessons, (lesson) => {
        const [pupils, answers] = lessonWorksheets(lesson, MAKING).map(printedCells)
        if (!pupils || !answers) throw new Error('There are no worksheets.')
        const pictures = stagesOf(lesson.model.question, MAKING.notation).length
        const squaresOfPupils = linedWith(pupils, 'squares')
        for (const example of squaresOfPupils.slice(0, pictures))
          expect(textsIn(pupils, example).length).toBeGreaterThan(0)
        const rooms = squaresOfPupils.slice(pictures)
        const begun = rooms.filter((cells) => textsIn(pupils, cells).length > 0)
        const given = lesson.practice.flatMap(({ grade, questions: [first, ...others], tasks }) => [
          ...(grade === 'The way in' && first ? [partWorked(first.question, MAKING.notation)] : []),
          ...(grade === 'The way in'
            ? fadingHelp(others.length).flatMap((help, index) => {
                const lines = others[index] && scaffold(others[index].question, MAKING.notation, help)
                return lines ? [lines] : []
              })
            : []),
          ...tasks.flatMap((task) => (task.given ? [task.given] : [])),
        ])
        expect(begun.map((cells) => textsIn(pupils, cells).map(([, , text]) => text))).toEqual(
          given.map((lines) =>
            lines.flatMap(({ cells }) => cells.map(({ text }) => text).filter((text) => text !== '')),
          ),
        )
        const all = [
          lesson.model,
          lesson.partner,
          ...lesson.practice.flatMap(({ questions }) => questions),
          ...lesson.recap,
          ...lesson.exit,
        ]
        const squares = linedWith(answers, 'squares')
        expect(squares).toHaveLength(all.length)
        const signs = (cells: Cells) => textsIn(answers, cells).map(([, , text]) => text)
        const wanted = all.map(({ question }) =>
          rowsOf(question).flatMap(({ cells }) => cells.flatMap(({ text }) => (text === '' ? [] : [text]))),
        )
        expect(squares.map(signs)).toEqual(wanted)
        for (const text of wanted.flat()) expect(text.length).toBeLessThanOrEqual(2)
        const words = answers.texts.map(({ text }) => text)
        for (const { answer, text } of all) expect(words).toEqual(expect.arrayContaining([answer, text]))
      }),
      { numRuns: 40 },
    )
  })

  it('strike a digit exactly where a newer one stands above it', () => {
    fc.assert(
      fc.property(lessons, (lesson) => {
        const printed = printedCells(lessonWorksheets(lesson, MAKING)[1] ?? { set: '', sheets: [] })
        const isNumber = (row: number, column: number) =>
          printed.texts.some(
            (each) => each.row === row && each.column === column && /^¹?\d+$/.test(each.text),
          )
        const struck = printed.looks
          .filter((look) => look.struck)
          .map(({ cells }) => `${cells.top} ${cells.left}`)
        const all = [
          lesson.model,
          lesson.partner,
          ...lesson.practice.flatMap(({ questions }) => questions),
          ...lesson.recap,
          ...lesson.exit,
        ]
        const wanted = linedWith(printed, 'squares').flatMap(({ top, left, right }, index) => {
          const kinds = (all[index] ? rowsOf(all[index].question) : []).map(({ kind }) => kind)
          const last = kinds.indexOf('top')
          return kinds.flatMap((kind, at) =>
            Array.from(
              { length: right - left + 1 },
              (_, column) => [top + at, left + column] as const,
            ).filter(
              ([row, column]) =>
                at <= last &&
                kind !== 'carried' &&
                kinds[0] === 'mark' &&
                at > 0 &&
                isNumber(row, column) &&
                Array.from({ length: at }, (_, above) => top + above).some((above) =>
                  isNumber(above, column),
                ),
            ),
          )
        })
        expect(struck.toSorted()).toEqual(wanted.map((place) => place.join(' ')).toSorted())
      }),
      { numRuns: 25 },
    )
  })

  it('have no heading at the foot of a page, and no empty page', () => {
    fc.assert(
      fc.property(lessons, (lesson) => {
        for (const { sheets } of lessonWorksheets(lesson, MAKING)) {
          const headings = sheets.flatMap(({ title, blocks }) => [
            title,
            ...blocks.flatMap((block) => (block.kind === 'heading' ? [block.text] : [])),
          ])
          for (const page of pagesOf(printedCells({ set: '7', sheets }))) {
            expect(page).not.toEqual([])
            expect(headings).not.toContain(page.findLast((text) => text !== ''))
          }
        }
      }),
      { numRuns: 60 },
    )
  })

  it('hold eight rooms, each with its estimate, on a page that holds nothing else, so that twenty questions take four pages at most', () => {
    const [recipe] = RECIPES
    const reading = recipe && makeLesson({ recipe, seed: 1, practice: 20 })
    if (!reading || 'problem' in reading) throw new Error('There is no lesson.')
    for (const sheet of practiceSheets(reading.lesson, MAKING.notation)) {
      const printed = printedCells({ set: '', sheets: [sheet] })
      const starts = [0, ...printed.breaks, printed.heights.length]
      const rooms = starts
        .slice(1)
        .map(
          (end, page) =>
            linedWith(printed, 'squares').filter(({ top }) => top < end && top >= (starts[page] ?? 0)).length,
        )
      expect(rooms[0]).toBeGreaterThanOrEqual(4)
      if (sheet.title !== 'Deeper') expect(rooms[1]).toBe(8)
      expect(rooms.length).toBeLessThanOrEqual(4)
    }
  })

  it('fit the paper with as many and as long success criteria of a teacher’s own as may be typed', () => {
    const line = 'I say ‘Which column? WHICH COLUMN?’ to myself, mmm. '.repeat(5).slice(0, CRITERIA.letters)
    fc.assert(
      fc.property(lessons, (lesson) => {
        const own = withCriteria(lesson, Array<string>(CRITERIA.lines).fill(line))
        for (const { sheets } of lessonWorksheets(own, MAKING)) {
          const { heights, breaks } = printedCells({ set: '7', sheets })
          const starts = [0, ...breaks]
          const pages = starts.map((start, index) => heights.slice(start, starts[index + 1]))
          for (const page of pages)
            expect(page.reduce((sum, height) => sum + height, 0)).toBeLessThanOrEqual(PAGE_HEIGHT)
        }
      }),
      { numRuns: 15 },
    )
  })
})
