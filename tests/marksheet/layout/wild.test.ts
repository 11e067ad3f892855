import { describe, expect, it } from 'vitest'
import type { CellValue } from '../../../src/answers/typed'
import { review } from '../../../src/marksheet/marking/review'

/** Four pupils and what comes of their answers, in one letter each: correct, incorrect, blank, absent, unreadable. */
const QUESTIONS = ['932 − 457', '305 − 128', '640 − 218', '81 + 9']
const PUPILS: CellValue[][] = [
  ['Ada B', 475, 177, 422, 90],
  ['Ben C', 525, 177, null, 90],
  ['Cai D', 475, 223, 422, 'abs'],
  ['Dee E', 475, 187, 421, 80],
]
const FOUND = 'Ada B:cccc Ben C:icbc Cai D:cica Dee E:ciii'
const HEADER = ['Name', ...QUESTIONS]

function found(...values: CellValue[][]): string {
  return review({ name: 'S', values })
    .map(({ orientation, marked, pupils }) => {
      const kind = orientation === 'pupils-down' ? '' : `${orientation} `
      const all = pupils.map(({ name, outcomes }) => `${name}:${outcomes.map(([first]) => first).join('')}`)
      return kind + (marked ? 'marked ' : '') + all.join(' ')
    })
    .join(' | ')
}

describe('what heads the names', () => {
  it.each([
    'Class 4B',
    'Kestrel Class',
    'Maths Set 2',
    'Year 4',
    '4B',
    'Children',
    'Child’s name',
    'Class list',
    'Table 3',
    'Pupil/Class',
    'House',
    'Who',
    '',
  ])('%j', (title) => {
    expect(found([title, ...QUESTIONS], ...PUPILS)).toBe(FOUND)
  })

  it('a title right above an empty heading', () => {
    expect(found(['Class 4 maths test marks'], [null, ...QUESTIONS], ...PUPILS)).toBe(FOUND)
  })

  it.each([
    ['Surname', 'Forename'],
    ['Legal Surname', 'Legal Forename'],
    ['Last', 'First'],
    ['Surname', 'Known as'],
    ['SURNAME', 'FORENAME(S)'],
    ['Surname', 'Name'],
  ])('%s and %s', (surname, first) => {
    const rows = PUPILS.map(([name, ...typed]) => [...String(name).split(' ').toReversed(), ...typed])
    expect(found([surname, first, ...QUESTIONS], ...rows)).toBe(FOUND)
    expect(found([null, null, ...QUESTIONS], [surname, first, 'Q1', 'Q2', 'Q3', 'Q4'], ...rows)).toBe(FOUND)
  })

  it('a column of notes or languages near the questions is not the names', () => {
    const rows = PUPILS.map(([name, ...typed], index) => [
      name ?? null,
      ['Polish', 'Urdu', 'Welsh', 'Twi'][index] ?? null,
      ...typed,
    ])
    expect(found([null, 'Home language', ...QUESTIONS], ...rows)).toBe(FOUND)
  })

  it('a name asked for last, in a form', () => {
    const rows = PUPILS.map(([name, ...typed]) => [45622.4, ...typed, name ?? null])
    expect(found(['Timestamp', ...QUESTIONS, 'What is your name?'], ...rows)).toBe(FOUND)
  })
})

describe('rows that are nobody', () => {
  it.each(['Answers', 'Ans.', 'Mark scheme', 'Model answer', 'Correct Answers ->', 'Teacher', 'Key'])(
    'a key: %s',
    (label) => {
      expect(found(HEADER, [label, 475, 177, 422, 90], ...PUPILS)).toBe(FOUND)
      expect(found(HEADER, ...PUPILS, [label, 475, 177, 422, 90])).toBe(FOUND)
    },
  )

  it.each([
    'Class average',
    'Ave',
    'Mode',
    'Max',
    'Total correct',
    'No. correct',
    '% correct',
    'Score',
    'Facility',
    'Total (30)',
    '/30',
    'Girls',
    'Whole class',
    'Std dev',
  ])('a sum put in as numbers: %s', (label) => {
    expect(found(HEADER, ...PUPILS, [label, 3, 2, 2, 2])).toBe(FOUND)
  })

  it.each([
    ['Skill', 'tens', 'through zero', 'tens', 'carry'],
    ['Marks', 1, 1, 1, 1],
    ['/4', 1, 1, 1, 1],
  ])('%s under the questions', (...row) => {
    expect(found(HEADER, row, ...PUPILS)).toBe(FOUND)
  })

  it.each(['Red group', 'Hexagons', 'LA', 'Lower group', 'Group B'])('%s', (label) => {
    expect(found(HEADER, ...PUPILS.slice(0, 2), [label], ...PUPILS.slice(2))).toBe(FOUND)
  })

  it.each(['Reteach zeros on Friday', 'Checked by Mrs Day'])(
    'a note right under the last pupil: %s',
    (note) => {
      expect(found(HEADER, ...PUPILS, [note])).toBe(FOUND)
    },
  )

  it.each(['Max', 'Mark', 'Max H', 'May', 'Ella B *', 'Zoë O’Neill', 'Łukasz', '李小龙'])(
    'but a pupil called %s is somebody',
    (name) => {
      expect(found(HEADER, PUPILS[0] ?? [], [name, 475, 1, null, 90])).toContain(`${name}:cibc`)
    },
  )

  it('and so is one with no answers, among the others or after a gap', () => {
    expect(found(HEADER, PUPILS[0] ?? [], ['Fay N'], [], ['Gus R'], PUPILS[1] ?? [])).toBe(
      'Ada B:cccc Fay N:bbbb Gus R:bbbb Ben C:icbc',
    )
  })
})

describe('columns between the questions', () => {
  it.each(['Method', 'Explain how you worked it out', 'Notes'])('%s', (title) => {
    const texts = ['Exchange', 'Column', 'Counted on', 'Number line']
    const rows = PUPILS.map(([name = null, a = null, b = null], index) => [name, a, texts[index] ?? null, b])
    expect(found(['Name', QUESTIONS[0] ?? '', title, QUESTIONS[1] ?? ''], ...rows)).toBe(
      'Ada B:cc Ben C:ic Cai D:ci Dee E:ci',
    )
  })

  it('names under a class heading start another marksheet', () => {
    const rows = PUPILS.map((row, index) => [
      ...row.slice(0, 2),
      null,
      ['Eve F', 'Flo G', 'Gil H', 'Hal I'][index] ?? null,
      177,
    ])
    expect(found(['Class 4A', QUESTIONS[0] ?? '', null, 'Class 4B', QUESTIONS[1] ?? ''], ...rows)).toBe(
      'Ada B:c Ben C:i Cai D:c Dee E:c | Eve F:c Flo G:c Gil H:c Hal I:c',
    )
  })
})

describe('pairs', () => {
  const rows = [
    ['Ada B', '932 − 457', 475, '305 − 128', 177],
    ['Ben C', '640 − 218', 422, '81 + 9', 80],
  ]
  it.each([
    ['Name', 'Q1', 'A1', 'Q2', 'A2'],
    ['Name', 'Calculation', 'Response', 'Calculation', 'Response'],
    ['Name', 'First sum', 'Ans', 'Second sum', 'Ans'],
    ['Class 4B', 'Q1', 'Answer', 'Q2', 'Answer'],
  ])('headed %s, %s, %s', (...header) => {
    expect(found(header, ...rows)).toBe('pairs Ada B:cc Ben C:ci')
  })

  it('of one pupil, without a header, and with an equals sign between', () => {
    expect(found(['Name', 'Q1', 'Answer', 'Q2', 'Answer'], rows[0] ?? [])).toBe('pairs Ada B:cc')
    expect(
      found(['Name', 'Q1', 'Answer', 'Q2', 'Answer'], ['Ada B', '932 − 457', null, '305 − 128', null]),
    ).toBe('pairs Ada B:bb')
    expect(found(...rows)).toBe('pairs Ada B:cc Ben C:ci')
    expect(
      found(
        ['Name', 'Question', '', 'Answer'],
        ['Ada B', '932 − 457', '=', 475],
        ['Ben C', '81 + 9', '=', 80],
      ),
    ).toBe('pairs Ada B:c Ben C:i')
  })

  it('one question a row, the name on every row or on the first', () => {
    const long = [
      ['Name', 'Question', 'Answer'],
      ['Ada B', '932 − 457', 475],
      ['Ada B', '305 − 128', 177],
      ['Ben C', '81 + 9', 80],
      [null, '640 − 218', 422],
    ]
    expect(found(...long)).toBe('pairs Ada B:cc Ben C:ic')
  })
})

describe('marks', () => {
  const names = ['Ada', 'Ben', 'Cai', 'Dee', 'Eve', 'Fay']
  const marks = (stray: CellValue) =>
    names.map((name, index) => [name, index === 0 ? stray : 1, index % 2, 1, 0])

  it.each(['½', '?', 11])('one stray %s does not make the rest of a sheet of marks wrong', (stray) => {
    expect(found(HEADER, ...marks(stray))).toBe(
      'marked Ada:uici Ben:ccci Cai:cici Dee:ccci Eve:cici Fay:ccci',
    )
  })

  it('✅ and ❌ are marks, also in one column of a sheet of answers', () => {
    expect(found(HEADER, ['Ada', '✅', 177, 422, 90], ['Ben', '❌', 177, 42, 90])).toBe('Ada:cccc Ben:icic')
  })

  it('scores of two marks are left for the teacher, not counted wrong', () => {
    expect(found(HEADER, ['Ada', 2, 2, 1, 0], ['Ben', 0, 1, 1, 2], ['Cai', 2, 0, 2, 2])).toBe(
      'marked Ada:uuci Ben:iccu Cai:uiuu',
    )
  })
})

describe('sheets that are nearly a marksheet', () => {
  it.each<[string, ...CellValue[][]]>([
    [
      'numbered questions with a key',
      ['No', 'Question', 'Answer'],
      [1, '932 − 457', 475],
      [2, '305 − 128', 177],
    ],
    [
      'questions by topic',
      ['Topic', 'Question', 'Answer'],
      ['Exchange', '932 − 457', 475],
      ['Zeros', '305 − 128', 177],
    ],
    ['lettered questions', ['a)', '932 − 457', 475], ['b)', '305 − 128', 177]],
    [
      'bands of scores',
      ['Name', '100-90', '89-80', '79-70'],
      ['Ada', 'x', null, null],
      ['Ben', null, 'x', null],
    ],
    ['reading ages', ['Name', 'Reading age', ''], ['Ada', '9-3', ''], ['Ben', '10-2', '']],
    ['results', ['Team', '3-1', '2-0'], ['Reds', 'won', 'won'], ['Blues', 'lost', 'drew']],
  ])('%s', (_what, ...rows) => {
    expect(found(...rows)).toBe('')
  })
})
