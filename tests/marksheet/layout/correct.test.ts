import { describe, expect, it } from 'vitest'
import { areMeeting, marksheetFrom, rangesOf, type Ranges } from '../../../src/marksheet/layout/correct'
import { findMarksheets, type Marksheet } from '../../../src/marksheet/layout/find'
import type { Matrix } from '../../../src/marksheet/layout/matrix'
import { bytesOf, matricesOf, WORKBOOKS } from '../../marksheets'

function made(matrix: Matrix, ranges: Ranges): Marksheet {
  const marksheet = marksheetFrom(matrix, ranges)
  if ('problem' in marksheet) throw new Error(marksheet.problem)
  return marksheet
}

function problem(matrix: Matrix, ranges: Ranges): string {
  const marksheet = marksheetFrom(matrix, ranges)
  return 'problem' in marksheet ? marksheet.problem : ''
}

const area = (top: number, left: number, bottom: number, right: number) => ({ top, left, bottom, right })

const PLAIN: Matrix = {
  name: 'Plain',
  values: [
    ['Maths', '932 − 457', '305 − 128', 'Total', '503 − 46'],
    ['Ada', 475, 177, 2, 457],
    ['Ben', 525, '', 0, ''],
    ['', '', '', '', ''],
    ['Class average', 500, 177, 1, 457],
    ['Cy', 475, 187, 1, 457],
  ],
}

describe('a marksheet from the ranges of one that was found', () => {
  it.each(WORKBOOKS)('is that one (%s)', async (name) => {
    const all = await matricesOf(bytesOf(name))
    const found = all.flatMap((matrix) => findMarksheets(matrix).map((marksheet) => ({ matrix, marksheet })))
    expect(found.length).toBeGreaterThan(0)
    for (const { matrix, marksheet } of found) expect(made(matrix, rangesOf(marksheet))).toEqual(marksheet)
  })

  it('is that one where questions and answers come in pairs', () => {
    const matrix: Matrix = {
      name: 'Pairs',
      values: [
        ['Name', 'Sum', 'Answer', 'Sum', 'Answer'],
        ['Ada', '932 − 457', 475, '305 − 128', 177],
        ['Ben', '503 − 46', 457, '7214 − 86', 7128],
        ['Cy', '412 − 185', 227, '789 + 642', 1431],
      ],
    }
    const [marksheet] = findMarksheets(matrix)
    if (!marksheet) throw new Error('Nothing was found.')
    expect(marksheet.orientation).toBe('pairs')
    expect(made(matrix, rangesOf(marksheet))).toEqual(marksheet)
  })
})

describe('a marksheet with spread questions', () => {
  it.each([
    [
      ['Name', 321, 640],
      ['take away', 185, 218],
      ['Ada', 136, 422],
      ['Ben', 264, 438],
    ],
    [
      ['Name', '', '', '', ''],
      ['Ada', 321, '−', 185, 136],
      ['Ben', 640, '−', 218, 438],
    ],
  ])('is the one that was found', (...values) => {
    const matrix: Matrix = { name: 'Spread', values }
    const [marksheet] = findMarksheets(matrix)
    if (!marksheet) throw new Error('Nothing was found.')
    expect(made(matrix, rangesOf(marksheet))).toEqual(marksheet)
  })
})

describe('a marksheet from ranges that a teacher selects', () => {
  it('takes the pupils that names and answers have in common, and the questions that can be read', () => {
    const { pupils, questions, orientation } = made(PLAIN, {
      names: area(1, 0, 5, 0),
      questions: area(0, 1, 0, 4),
      answers: area(1, 1, 9, 4),
    })
    expect(orientation).toBe('pupils-down')
    expect(pupils.map(({ name }) => name)).toEqual(['Ada', 'Ben', 'Cy'])
    expect(questions.map(({ text }) => text)).toEqual(['932 − 457', '305 − 128', '503 − 46'])
    expect(pupils[1]?.answers).toEqual([
      { row: 2, column: 1, question: 0 },
      { row: 2, column: 2, question: 1 },
      { row: 2, column: 4, question: 2 },
    ])
  })

  it('is cut to the columns of the answers', () => {
    const ranges = { names: area(1, 0, 5, 0), questions: area(0, 1, 0, 4), answers: area(1, 2, 2, 2) }
    const { pupils, questions } = made(PLAIN, ranges)
    expect(questions.map(({ text }) => text)).toEqual(['305 − 128'])
    expect(pupils.map(({ name }) => name)).toEqual(['Ada', 'Ben'])
  })

  it('runs across where the questions stand on the left of the names', () => {
    const values = [
      ['', 'Ada', 'Ben'],
      ['932 − 457', 475, 525],
      ['305 − 128', 177, ''],
    ]
    const ranges = { names: area(0, 1, 0, 2), questions: area(1, 0, 2, 0), answers: area(1, 1, 2, 2) }
    const { pupils, orientation } = made({ name: 'Across', values }, ranges)
    expect(orientation).toBe('pupils-across')
    expect(pupils.map(({ name, nameCells }) => [name, nameCells[0]])).toEqual([
      ['Ada', { row: 0, column: 1 }],
      ['Ben', { row: 0, column: 2 }],
    ])
    expect(pupils[1]?.answers[1]).toEqual({ row: 2, column: 2, question: 1 })
  })

  it('reads two columns of names by their headings, else as they stand', () => {
    const rows = [
      ['Shah', 'Ada', 475],
      ['Lane', 'Ben', 525],
    ]
    const ranges = { names: area(1, 0, 2, 1), questions: area(0, 2, 0, 2), answers: area(1, 2, 2, 2) }
    const headed = { name: 'S', values: [['Surname', 'First name', '932 − 457'], ...rows] }
    expect(made(headed, ranges).pupils.map(({ name }) => name)).toEqual(['Ada Shah', 'Ben Lane'])
    const bare = { name: 'S', values: [['', '', '932 − 457'], ...rows] }
    expect(made(bare, ranges).pupils.map(({ name }) => name)).toEqual(['Shah Ada', 'Lane Ben'])
  })
})

describe('ranges that make no marksheet get a sentence', () => {
  const good: Ranges = { names: area(1, 0, 5, 0), questions: area(0, 1, 0, 4), answers: area(1, 1, 5, 4) }
  it.each([
    [
      'questions below the names',
      { ...good, questions: area(8, 1, 8, 4) },
      /must stand above the pupils’ names in A2:A6/,
    ],
    [
      'no question in the range',
      { ...good, questions: area(0, 3, 0, 3) },
      /No question such as 7,214 − 86 can be read in D1:D1/,
    ],
    [
      'answers beside the questions',
      { ...good, answers: area(1, 7, 5, 9) },
      /can be read in B1:E1 that has answers in H2:J6/,
    ],
    ['names of other rows', { ...good, answers: area(7, 1, 9, 4) }, /have no pupil in common/],
    ['empty names', { ...good, names: area(3, 0, 3, 0) }, /have no pupil in common/],
  ])('%s', (_, ranges, sentence) => {
    expect(problem(PLAIN, ranges)).toMatch(sentence)
  })
})

describe('areas meet', () => {
  it('where they share a cell', () => {
    expect(areMeeting(area(0, 0, 3, 3), area(3, 3, 5, 5))).toBe(true)
    expect(areMeeting(area(0, 0, 3, 3), area(4, 0, 5, 5))).toBe(false)
    expect(areMeeting(area(0, 0, 3, 3), area(0, 4, 3, 5))).toBe(false)
  })
})
