import { describe, expect, it } from 'vitest'
import type { CellValue } from '../../../src/answers/typed'
import { addressOf } from '../../../src/marksheet/layout/matrix'
import { review } from '../../../src/marksheet/marking/review'

type Rows = readonly (readonly CellValue[])[]
const ADA: Rows = [
  ['Ada B', 136, 422],
  ['Ben C', 264, 438],
  ['Cai D', 136, null],
]
const READ = ['Ada B: 136 422', 'Ben C: 264 438', 'Cai D: 136 ']
const ASKED = ['321 − 185', '640 − 218']

/** Each question with the cell it begins in, and each child with what the child typed. */
function found(values: Rows): { asked: string[]; typed: string[] } {
  const reviews = review({ name: 'S', values })
  return {
    asked: reviews.flatMap(({ questions }) => questions.map((each) => `${addressOf(each)} ${each.text}`)),
    typed: reviews.flatMap(({ pupils }) => pupils.map(({ name, typed }) => `${name}: ${typed.join(' ')}`)),
  }
}

const turned = (rows: Rows): CellValue[][] =>
  Array.from({ length: Math.max(...rows.map(({ length }) => length)) }, (_, column) =>
    rows.map((row) => row[column] ?? null),
  )
const texts = (asked: readonly string[]) => asked.map((text) => text.replace(/^\S+ /, ''))

describe('questions over two rows or more', () => {
  const tops: Rows = [
    [
      ['Name', 321, 640],
      ['', '− 185', '− 218'],
    ],
    [
      ['', 321, 640],
      ['Name', '− 185', '− 218'],
    ],
    [
      ['Name', 321, 640],
      ['', -185, -218],
    ],
    [
      ['Name', 321, 640],
      ['take away', 185, 218],
    ],
    [
      ['Start with', 321, 640],
      ['Subtract', 185, 218],
    ],
    [
      ['', 321, 640],
      ['−', 185, 218],
    ],
    [
      ['Top number', 321, 640],
      ['minus bottom number', 185, 218],
      ['Name', null, null],
    ],
    [
      ['Name', 321, 640],
      ['', '−', '−'],
      ['', 185, 218],
    ],
    [
      ['Name', '321', '640'],
      ['', '-185', '-218'],
      ['', '=', '='],
    ],
    [
      ['Name', '321 −', '640 −'],
      ['', 185, 218],
    ],
    [['Column subtraction'], [], ['Name', 321, 640], ['', '− 185', '− 218']],
  ] as unknown as Rows
  it.each(tops.map((rows) => ({ rows: rows as unknown as Rows })))('$rows', ({ rows }) => {
    for (const values of [[...rows, ...ADA], turned([...rows, ...ADA])]) {
      const { asked, typed } = found(values)
      expect(texts(asked)).toEqual(ASKED)
      expect(typed).toEqual(READ)
    }
  })

  it('begin in the cell of the top number', () => {
    expect(found([['Name', 321, 640], ['', '− 185', '− 218'], ...ADA]).asked).toEqual([
      'B1 321 − 185',
      'C1 640 − 218',
    ])
  })

  it('with additions, one question alone, and empty answers', () => {
    expect(
      found([
        ['Name', 321],
        ['', '+ 185'],
        ['Ada B', 506],
        ['Ben C', null],
      ]),
    ).toEqual({
      asked: ['B1 321 + 185'],
      typed: ['Ada B: 506', 'Ben C: '],
    })
    expect(found([['Name', 321, 640], ['add', 185, 218], ['Ada B'], ['Ben C']]).typed).toEqual([
      'Ada B:  ',
      'Ben C:  ',
    ])
  })

  it('of two classes below each other', () => {
    const second: Rows = [
      ['Name', 500, 90],
      ['', '− 4', '− 8'],
      ['Dee E', 496, 82],
    ]
    expect(found([['Name', 321, 640], ['', '− 185', '− 218'], ...ADA, [], ...second]).typed).toEqual([
      ...READ,
      'Dee E: 496 82',
    ])
  })
})

describe('questions spread along a row', () => {
  it.each([
    [['', '', '', '', 'Answer'], '='],
    [['Name', '', '', '', ''], null],
    [['Name', 'Question', '', '', 'Answer'], '='],
  ])('one for each child, under %j, ended by %j', (head, equals) => {
    const side = (cells: CellValue[]) => (equals === null ? cells.filter((cell) => cell !== '=') : cells)
    const rows = [
      side(head.map((text, index) => (index === 0 ? 'Name' : text))),
      side(['Ada B', 321, '−', 185, '=', 136]),
      side(['Ben C', 640, '−', 218, '=', 438]),
      side(['Cai D', 81, '+', 9, '=', null]),
    ]
    const { asked, typed } = found(rows)
    expect(asked).toEqual(['B2 321 − 185', 'B3 640 − 218', 'B4 81 + 9'])
    expect(typed).toEqual(['Ada B: 136', 'Ben C: 438', 'Cai D: '])
  })

  it.each([0, 1, 2, 3])('over one column of answers, the %i. of theirs', (place) => {
    const answers = ADA.map(([name = null, one = null, other = null]) => {
      const cells: CellValue[] = [name, ...Array.from({ length: 8 }, () => null)]
      cells[1 + place] = one
      cells[5 + place] = other
      return cells
    })
    const rows: Rows = [['Name', 321, '−', 185, '=', 640, '−', 218, '='], ...answers]
    const { asked, typed } = found(rows)
    expect(asked).toEqual(['B1 321 − 185', 'F1 640 − 218'])
    expect(typed).toEqual(READ)
    expect(found(turned(rows)).typed).toEqual(READ)
  })

  it('beside the names along the top', () => {
    const rows: Rows = [
      ['', '', '', '', 'Ada B', 'Ben C'],
      [321, '−', 185, '=', 136, 264],
      [640, '−', 218, '=', 422, 438],
    ]
    expect(found(rows)).toEqual({
      asked: ['A2 321 − 185', 'A3 640 − 218'],
      typed: ['Ada B: 136 422', 'Ben C: 264 438'],
    })
  })
})

describe('numbers and dashes that are no questions', () => {
  it.each<[string, Rows]>([
    [
      'marks in subjects, one not sat',
      [
        ['Name', 'Maths', 'Spelling', 'English'],
        ['Ada B', 42, '-', 36],
        ['Ben C', 40, 38, 35],
      ],
    ],
    [
      'a subject that nobody sat',
      [
        ['Name', 'Maths', 'Spelling', 'English'],
        ['Ada B', 42, '-', 36],
        ['Ben C', 40, '-', 35],
      ],
    ],
    [
      'points won and lost',
      [
        ['Name', 'Won', 'Lost', 'Points'],
        ['Ada B', 20, -5, 15],
        ['Ben C', 30, -2, 28],
      ],
    ],
    [
      'numbers over each other',
      [
        ['Name', 321, 640],
        ['Ada B', 185, 218],
        ['Ben C', 120, 210],
      ],
    ],
  ])('%s', (_what, rows) => {
    expect(found(rows).typed).toEqual([])
    expect(found(turned(rows)).typed).toEqual([])
  })

  it('a negative answer under another child’s', () => {
    const rows: Rows = [
      ['Name', 321, 640],
      ['', '− 185', '− 218'],
      ['Ada B', 475, null],
      ['Ben C', '-46', null],
    ]
    expect(found(rows).typed).toEqual(['Ada B: 475 ', 'Ben C: -46 '])
    expect(found(turned(rows)).typed).toEqual(['Ada B: 475 ', 'Ben C: -46 '])
  })

  it('dashes for blanks between answers, and answers below nothing', () => {
    const rows: Rows = [
      ['Name', '932 − 457', '305 − 128', '81 + 9'],
      ['Ada B', 475, '-', 90],
      ['Ben C', 475, '-', 90],
      ['Cai D', -475, -177, 90],
    ]
    const read = ['Ada B: 475 - 90', 'Ben C: 475 - 90', 'Cai D: -475 -177 90']
    expect(found(rows).typed).toEqual(read)
    expect(found(turned(rows)).typed).toEqual(read)
  })
})

describe('signs that children typed', () => {
  const head = ['Name', '321 − 185', '640 − 218']
  it.each([
    [-136, -422],
    ['-', '-'],
    ['- 136', '−422'],
  ])('are no questions: %j, %j', (one, other) => {
    for (const gap of [true, '□']) {
      const values: Rows = [
        head,
        ['Ada B', 136, 422],
        ['Ben C', gap, other],
        ['Cai D', one, other],
        ['Dee E', 136, 7],
      ]
      const typed = values.slice(1).map(([name, ...cells]) => `${name}: ${cells.join(' ')}`)
      for (const rows of [values, turned(values)]) {
        expect(found(rows).asked).toHaveLength(2)
        expect(found(rows).typed.map((line) => line.replaceAll('TRUE', 'true'))).toEqual(typed)
      }
    }
  })

  it('do not end a class whose children typed numbers below zero above each other', () => {
    const values: Rows = [
      ['Name', '7493 + 2202', '8850 + 1806', '8643 − 6318', '1527 − 323'],
      ['Ada B', 136, true, 78361, 5385],
      ['Ben C', 5090, -10, '“', -4251],
      ['Cai D', 9695, 136, -85460, 'y'],
    ]
    expect(found(values).typed).toHaveLength(3)
    expect(found(turned(values)).typed).toHaveLength(3)
  })
})

describe('spread questions of a class', () => {
  it('right under another class take the rows from there on', () => {
    const { typed } = found([
      ['Name', '500 − 4', '90 − 8'],
      ['Dee E', 496, 82],
      ['Wrens', 321, 640],
      ['', -185, -218],
      ...ADA,
    ])
    expect(typed).toEqual(['Dee E: 496 82', ...READ])
  })

  it('are read for each child where numbers stand two rows below', () => {
    const { typed } = found([
      ['Wrens', 'Question 1', '', '', '', 'Answer 1', 'Question 2', '', '', '', 'Answer 2'],
      ['Hal T', 465, '−', 101, '=', null, 315, '−', 71, '=', 244],
      ['Ivy J', 945, '−', 64, '=', 881, 321, '−', 94, '=', 227],
      [],
      ['Pupil', 643, '−', 61, '=', 547, '+', 30, '='],
      ['Lin S', null, null, null, 582, null, null, null, 577],
    ])
    expect(typed.slice(0, 2)).toEqual(['Hal T:  244', 'Ivy J: 881 227'])
  })

  it('under a sign as heading, another class over them', () => {
    const { typed } = found([
      ['Pupil', '407 + 20', '270 + 33', '980 − 81'],
      ['Ada D', 427, 303, 799],
      [],
      ['Re-test', '−', 'Hal C', 'Ivy V'],
      [297, 55, 242, 142],
      [205, 35, 170, 180],
    ])
    expect(typed).toEqual(['Ada D: 427 303 799', 'Hal C: 242 170', 'Ivy V: 142 180'])
  })
})
