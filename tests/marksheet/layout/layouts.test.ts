import { describe, expect, it } from 'vitest'
import type { CellValue } from '../../../src/answers/typed'
import { addressOf, type Matrix } from '../../../src/marksheet/layout/matrix'
import { review } from '../../../src/marksheet/marking/review'

/** A sheet from rows as a teacher would see them; a formula is written as { formula, value }. */
type Given = CellValue | undefined | { formula: string; value: CellValue }
function sheet(rows: readonly (readonly Given[])[], formats: Record<string, string> = {}): Matrix {
  const plain = (cell: Given): CellValue =>
    typeof cell === 'object' && cell !== null ? cell.value : (cell ?? null)
  return {
    name: 'Sheet1',
    values: rows.map((row) => row.map(plain)),
    formulas: rows.map((row) =>
      row.map((cell) => (typeof cell === 'object' && cell !== null ? cell.formula : '')),
    ),
    formats: rows.map((row, r) => row.map((_, c) => formats[addressOf({ row: r, column: c })] ?? 'General')),
  }
}
const turned = (rows: readonly (readonly Given[])[]) =>
  Array.from({ length: Math.max(...rows.map((row) => row.length)) }, (_, c) => rows.map((row) => row[c]))

/** What a review found, in a form that can be read in a test. */
function found(matrix: Matrix) {
  return review(matrix).map(({ orientation, marked, questions, pupils }) => ({
    orientation,
    marked,
    questions: questions.map((question) => `${addressOf(question)} ${question.text}`),
    pupils: pupils.map(
      ({ name, nameCells, typed, outcomes }) =>
        `${nameCells.map(addressOf).join('+')} ${name}: ${outcomes.map((outcome, i) => `${typed[i]} ${outcome}`).join(', ')}`,
    ),
  }))
}

const CLASS = [
  ['Name', '932 − 457', '305 − 128'],
  ['Amina K', 475, 177],
  ['Bryn T', 525, '177'],
  ['Caris W', 'abs', null],
]
const FOUND = [
  'A2 Amina K: 475 correct, 177 correct',
  'A3 Bryn T: 525 incorrect, 177 correct',
  'A4 Caris W: abs absent,  blank',
]

describe('layouts of marksheets', () => {
  it('pupils down, questions across', () => {
    expect(found(sheet(CLASS))).toEqual([
      {
        orientation: 'pupils-down',
        marked: false,
        questions: ['B1 932 − 457', 'C1 305 − 128'],
        pupils: FOUND,
      },
    ])
  })

  it('pupils across, questions down', () => {
    const [one] = found(sheet(turned(CLASS)))
    expect(one?.orientation).toBe('pupils-across')
    expect(one?.questions).toEqual(['A2 932 − 457', 'A3 305 − 128'])
    expect(one?.pupils[1]).toBe('C1 Bryn T: 525 incorrect, 177 correct')
  })

  it('anywhere on the sheet, with a title, notes and sums around', () => {
    const rows: Given[][] = [
      ['Starter, week 3'],
      [],
      [null, null, 'No.', 'Pupil', '932 − 457', 'Notes', '305 − 128', 'Total'],
      [null, null, 1, 'Amina K', 475, 'neat', 177, { formula: '=COUNT(E4:G4)', value: 2 }],
      [null, null, 2, 'Bryn T', 525, null, 177, { formula: '=COUNT(E5:G5)', value: 2 }],
      [null, null, 3, 'Caris W', null, null, null, { formula: '=COUNT(E6:G6)', value: 0 }],
      [
        null,
        null,
        null,
        'Facility',
        { formula: '=COUNTIF(E4:E6,475)', value: 1 },
        null,
        { formula: '=COUNT(G4:G6)', value: 2 },
      ],
      [],
      [null, null, null, 'Remember to print the sheet for Thursday'],
    ]
    const [one, ...more] = found(sheet(rows))
    expect(more).toEqual([])
    expect(one?.questions).toEqual(['E3 932 − 457', 'G3 305 − 128'])
    expect(one?.pupils.map((pupil) => pupil.slice(0, 10))).toEqual(['D4 Amina K', 'D5 Bryn T:', 'D6 Caris W'])
  })

  it('two marksheets side by side, and two below each other, are two', () => {
    const beside = CLASS.map((row, i) => [
      ...row,
      null,
      ...(i === 0 ? ['Pupil', '46 + 27', '81 + 9'] : [`Child ${'XYZ'[i - 1] ?? ''}`, 73, 90]),
    ])
    const reviews = found(sheet(beside))
    expect(reviews.map(({ questions }) => questions)).toEqual([
      ['B1 932 − 457', 'C1 305 − 128'],
      ['F1 46 + 27', 'G1 81 + 9'],
    ])
    expect(reviews[1]?.pupils[0]).toBe('E2 Child X: 73 correct, 90 correct')
    const below = [
      ...CLASS,
      [],
      ['Week 2'],
      ['Name', '46 + 27', '81 + 9'],
      ['Amina K', 73, 90],
      ['Bryn T', 63, '?'],
    ]
    expect(found(sheet(below)).map(({ pupils }) => pupils)).toEqual([
      FOUND,
      ['A8 Amina K: 73 correct, 90 correct', 'A9 Bryn T: 63 incorrect, ? unreadable'],
    ])
  })

  it('two transposed marksheets side by side are two', () => {
    const rows = turned(CLASS).map((row, i) => [
      ...row,
      null,
      ...(i === 0
        ? ['Question', 'Dilys P', 'Efe O']
        : ([
            ['46 + 27', 73, 63],
            ['81 + 9', 90, 90],
          ][i - 1] ?? [])),
    ])
    expect(found(sheet(rows)).map(({ questions, pupils }) => [questions, pupils.length])).toEqual([
      [['A2 932 − 457', 'A3 305 − 128'], 3],
      [['F2 46 + 27', 'F3 81 + 9'], 2],
    ])
  })

  it('question–answer pairs along each pupil’s row', () => {
    const rows = [
      ['Name', 'Q1', 'Answer', 'Q2', 'Answer'],
      ['Amina K', '932 − 457', 475, '305 − 128', 177],
      ['Bryn T', '640 − 218', 422, '81 + 9', 'abs'],
      ['Caris W', '23 + 9', null, '700 − 1', 698],
    ]
    expect(found(sheet(rows))).toEqual([
      {
        orientation: 'pairs',
        marked: false,
        questions: ['B2 932 − 457', 'D2 305 − 128', 'B3 640 − 218', 'D3 81 + 9', 'B4 23 + 9', 'D4 700 − 1'],
        pupils: [
          'A2 Amina K: 475 correct, 177 correct',
          'A3 Bryn T: 422 correct, abs absent',
          'A4 Caris W:  blank, 698 incorrect',
        ],
      },
    ])
  })

  it('one question each, beside the name, is pairs; one question for all is a column', () => {
    const pairs = [
      ['Name', 'Question', 'Answer'],
      ['Amina K', '932 − 457', 475],
      ['Bryn T', '640 − 218', 422],
    ]
    expect(found(sheet(pairs))[0]?.orientation).toBe('pairs')
    const column = [
      ['Name', '932 − 457'],
      ['Amina K', 475],
      ['Bryn T', 422],
    ]
    expect(found(sheet(column))[0]?.pupils).toEqual(['A2 Amina K: 475 correct', 'A3 Bryn T: 422 incorrect'])
  })

  it('a form export: the name column among others, quiz points left aside', () => {
    const rows = [
      [
        'Id',
        'Start time',
        'Email',
        'Name',
        'Your name',
        'Total points',
        '932 − 457',
        'Points - 932 − 457',
        '305 − 128',
        'Points - 305 − 128',
      ],
      [1, 45622.4, 'a@example.org', 'anonymous', 'Amina K', 2, '475', 1, ' 177', 1],
      [2, 45622.4, 'b@example.org', 'anonymous', 'Bryn T', 1, '475.', 1, '187', 0],
    ]
    expect(found(sheet(rows))[0]?.pupils).toEqual([
      'E2 Amina K: 475 correct,  177 correct',
      'E3 Bryn T: 475. correct, 187 incorrect',
    ])
  })

  it('first name and surname in two columns, whichever comes first', () => {
    const rows = [
      ['First name', 'Surname', 'Group', '932 − 457'],
      ['Amina', 'K', 'A', 475],
      ['Bryn', 'T', 'A', 474],
    ]
    expect(found(sheet(rows))[0]?.pupils).toEqual([
      'A2+B2 Amina K: 475 correct',
      'A3+B3 Bryn T: 474 incorrect',
    ])
  })

  it('names above each other in two rows of a transposed sheet', () => {
    const rows = [
      ['Surname', 'K', 'T'],
      ['First name', 'Amina', 'Bryn'],
      ['932 − 457', 475, 474],
      ['81 + 9', 90, 90],
    ]
    expect(found(sheet(rows))[0]?.pupils[0]).toBe('B1+B2 Amina K: 475 correct, 90 correct')
  })

  it('numbers in place of names under a header that says so', () => {
    const rows = [
      ['Pupil', '932 − 457'],
      [101, 475],
      [102, 474],
      [103, null],
    ]
    expect(found(sheet(rows))[0]?.pupils.length).toBe(3)
  })

  it('questions made by formulas, and answers typed with a leading =', () => {
    const rows: Given[][] = [
      ['Name', { formula: '=A9&" − "&B9', value: '932 − 457' }, { formula: '=A9', value: '81 + 9' }],
      ['Amina K', { formula: '=475', value: 475 }, { formula: '=90', value: 90 }],
      ['Bryn T', 474, 90],
    ]
    expect(found(sheet(rows))[0]?.pupils[0]).toBe('A2 Amina K: 475 correct, 90 correct')
  })

  it('money and missing numbers', () => {
    const rows = [
      ['Name', '£5 − £1.35', '□ − 46 = 30', '76 − __ = 30'],
      ['Amina K', 3.65, 76, 46],
      ['Bryn T', '£3.75', 16, '46.'],
    ]
    expect(found(sheet(rows))[0]?.pupils).toEqual([
      'A2 Amina K: 3.65 correct, 76 correct, 46 correct',
      'A3 Bryn T: £3.75 incorrect, 16 incorrect, 46. correct',
    ])
  })

  it('a pupil between group headings and after an empty row counts; the headings do not', () => {
    const rows = [
      ['Name', '932 − 457'],
      ['Group A'],
      ['Amina K', 475],
      ['Bryn T'],
      [],
      ['Group B'],
      ['Caris W', 474],
      ['Dilys P (left)'],
    ]
    expect(found(sheet(rows))[0]?.pupils.map((pupil) => pupil.slice(0, 10))).toEqual([
      'A3 Amina K',
      'A4 Bryn T:',
      'A7 Caris W',
    ])
  })

  it('a date that the spreadsheet made of an answer is left for the teacher', () => {
    const rows = [
      ['Name', '932 − 457'],
      ['Amina K', 46115],
      ['Bryn T', 475],
    ]
    expect(found(sheet(rows, { B2: 'd-mmm' }))[0]?.pupils[0]).toBe('A2 Amina K: 3 Apr unreadable')
  })

  it('a 180 × 40 sheet', () => {
    const header = ['Name', ...Array.from({ length: 40 }, (_, i) => `${900 + i} − ${100 + i}`)]
    const names = Array.from({ length: 180 }, (_, i) => `Pupil ${String.fromCharCode(65 + (i % 26))}${i}`)
    const rows = [header, ...names.map((name) => [name, ...Array.from({ length: 40 }, () => 800)])]
    const [one] = review(sheet(rows))
    expect([one?.pupils.length, one?.questions.length]).toEqual([180, 40])
    expect(one?.pupils.every(({ outcomes }) => outcomes.every((outcome) => outcome === 'correct'))).toBe(true)
  })
})

describe('sheets already marked', () => {
  it.each([
    [1, 0],
    ['✓', '✗'],
    ['✔', 'x'],
    ['y', 'n'],
    ['Yes', 'No'],
    [true, false],
  ])('%j and %j are marks', (right, wrong) => {
    const rows = [
      ['Name', '932 − 457', '305 − 128'],
      ['Amina K', right, wrong],
      ['Bryn T', right, right],
      ['Caris W', 'abs', null],
    ]
    const [one] = review(sheet(rows))
    expect(one?.marked).toBe(true)
    expect(one?.pupils.map(({ outcomes }) => outcomes)).toEqual([
      ['correct', 'incorrect'],
      ['correct', 'correct'],
      ['absent', 'blank'],
    ])
  })

  it('1 and 0 that could be answers are answers', () => {
    const rows = [
      ['Name', '932 − 931', '305 − 305'],
      ['Amina K', 1, 0],
      ['Bryn T', 1, 1],
    ]
    const [one] = review(sheet(rows))
    expect(one?.marked).toBe(false)
    expect(one?.pupils.map(({ outcomes }) => outcomes)).toEqual([
      ['correct', 'correct'],
      ['correct', 'incorrect'],
    ])
  })

  it('a single 1 typed among answers is an answer', () => {
    const rows = [
      ['Name', '932 − 457', '305 − 128', '81 + 9'],
      ['Amina K', 1, 177, 90],
      ['Bryn T', null, 177, 80],
    ]
    expect(review(sheet(rows))[0]?.pupils[0]?.outcomes[0]).toBe('incorrect')
  })
})

describe('sheets without a marksheet', () => {
  it.each([
    ['empty', []],
    ['names only', [['Name'], ['Amina K'], ['Bryn T']]],
    [
      'questions only',
      [
        ['932 − 457', '305 − 128'],
        [475, 177],
      ],
    ],
    [
      'a key',
      [
        ['Question', 'Answer'],
        ['932 − 457', 475],
        ['305 − 128', 177],
      ],
    ],
    [
      'an attendance list with school years',
      [
        ['Name', '2023-24', '2024-25'],
        ['Amina K', 96.5, 97],
        ['Bryn T', 93, 95],
      ],
    ],
    [
      'a sheet of our own',
      [
        ['Columnwise · Mastery', '932 − 457'],
        ['Amina K', 475],
      ],
    ],
    [
      'a timetable',
      [
        ['Day', '9-10', '10-11'],
        ['Mon', 'Maths', 'English'],
        ['Tue', 'PE', 'Maths'],
      ],
    ],
  ] satisfies [string, Given[][]][])('%s', (_what, rows) => {
    expect(review(sheet(rows))).toEqual([])
  })
})
