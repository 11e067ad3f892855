import { describe, expect, it } from 'vitest'
import type { CellValue } from '../../../src/answers/typed'
import { review } from '../../../src/marksheet/marking/review'

type Rows = readonly (readonly CellValue[])[]

/** Every child found with what the child typed, one line each, in the order of the sheet. */
function typedBy(values: Rows): string[] {
  return review({ name: 'S', values }).flatMap(({ pupils }) =>
    pupils.map(({ name, typed }) => `${name}: ${typed.join(' ')}`),
  )
}

/** Rows set beside others, so many columns free between them, the second ones so many rows lower. */
function beside(left: Rows, right: Rows, { gap = 1, lower = 0 } = {}): CellValue[][] {
  const width = Math.max(...left.map(({ length }) => length)) + gap
  const height = Math.max(left.length, right.length + lower)
  return Array.from({ length: height }, (_, index) => {
    const own = left[index] ?? []
    return [
      ...own,
      ...Array.from({ length: width - own.length }, () => null),
      ...(right[index - lower] ?? []),
    ]
  })
}

function turned(rows: Rows): CellValue[][] {
  const width = Math.max(...rows.map(({ length }) => length))
  return Array.from({ length: width }, (_, column) => rows.map((row) => row[column] ?? null))
}

const OWLS: Rows = [
  ['Name', '932 − 457', '305 − 128'],
  ['Ada B', 475, 177],
  ['Ben C', 525, 223],
  ['Cai D', 475, null],
  ['Dee E', 474, 177],
]
const OWLS_TYPED = ['Ada B: 475 177', 'Ben C: 525 223', 'Cai D: 475 ', 'Dee E: 474 177']
const wrens = (corner: CellValue): Rows => [
  [corner, '46 + 27', '81 + 9'],
  ['Eve F', 73, 90],
  ['Flo G', 63, 80],
  ['Gil H', 73, 89],
]
const WRENS_TYPED = ['Eve F: 73 90', 'Flo G: 63 80', 'Gil H: 73 89']
const BOTH = [...OWLS_TYPED, ...WRENS_TYPED]

describe('blocks side by side', () => {
  const corners = ['Name', 'Wrens', 'Mrs Day', 'Re-test', 'Kestrel', '4B', null]
  it.each(corners.flatMap((corner) => [0, 1, 2, 3].map((lower) => ({ corner, lower }))))(
    'the right one headed $corner, $lower rows lower, is its own children’s',
    ({ corner, lower }) => {
      for (const gap of [0, 1, 2])
        expect(typedBy(beside(OWLS, wrens(corner), { gap, lower })).toSorted()).toEqual(BOTH)
    },
  )

  it.each(corners)('the same with pupils across, the second class underneath, its corner %s', (corner) => {
    for (const gap of [0, 1, 2])
      for (const lower of [0, 1, 2])
        expect(typedBy(turned(beside(OWLS, wrens(corner), { gap, lower }))).toSorted()).toEqual(BOTH)
  })

  it('the left one headed by its class or by nothing', () => {
    for (const corner of ['Owls', null]) {
      const left = [[corner, ...(OWLS[0] ?? []).slice(1)], ...OWLS.slice(1)]
      for (const lower of [0, 1, 2])
        expect(typedBy(beside(left, wrens('Wrens'), { lower })).toSorted()).toEqual(BOTH)
    }
  })

  it('three of them, each a row lower', () => {
    const third: Rows = [
      ['Terns', '70 − 1'],
      ['Hal I', 69],
      ['Ivy J', 71],
    ]
    expect(
      typedBy(beside(beside(OWLS, wrens('Wrens'), { lower: 1 }), third, { lower: 2 })).toSorted(),
    ).toEqual([...BOTH, 'Hal I: 69', 'Ivy J: 71'])
  })

  it('the same children again', () => {
    const again: Rows = [
      ['Re-test', '46 + 27'],
      ['Cai D', 73],
      ['Ada B', 63],
      ['Dee E', 71],
    ]
    for (const lower of [0, 1, 2])
      expect(typedBy(beside(OWLS, again, { lower })).toSorted()).toEqual(
        [...OWLS_TYPED, 'Ada B: 63', 'Cai D: 73', 'Dee E: 71'].toSorted(),
      )
  })

  it('a right block that has lost its names is left out', () => {
    const nameless = wrens(null).map(([, ...rest]) => rest)
    expect(typedBy(beside(OWLS, nameless, { gap: 2, lower: 1 })).toSorted()).toEqual(OWLS_TYPED)
  })

  it('a list of names at the left of all is nobody’s answers', () => {
    const list: Rows = [['Name'], ['Hal I'], ['Ivy J'], ['Jon K'], ['Kit L']]
    expect(typedBy(beside(list, wrens('Wrens')))).toEqual(WRENS_TYPED)
  })

  it('pairs beside pairs', () => {
    const pairs = (corner: CellValue, names: string[]): Rows => [
      [corner, 'Question', 'Answer'],
      ...names.map((name, index) => [name, `${90 + index} − 27`, 63 + index]),
    ]
    for (const corner of ['Name', 'Wrens', null])
      for (const lower of [0, 1, 2])
        expect(
          typedBy(
            beside(pairs('Name', ['Ada B', 'Ben C', 'Cai D']), pairs(corner, ['Eve F', 'Flo G']), { lower }),
          ).toSorted(),
        ).toEqual(['Ada B: 63', 'Ben C: 64', 'Cai D: 65', 'Eve F: 63', 'Flo G: 64'])
  })

  it('pupils down on the left, pupils across on the right', () => {
    for (const lower of [0, 1])
      expect(typedBy(beside(OWLS, turned(wrens('Wrens')), { lower })).toSorted()).toEqual(BOTH)
  })

  it('pupils down above, pupils across below', () => {
    for (const corner of ['Name', 'Wrens', null])
      expect(typedBy([...OWLS, [], ...turned(wrens(corner))]).toSorted()).toEqual(BOTH)
  })
})

describe('rows that are no child', () => {
  const rows: CellValue[][] = [
    ['Common wrong answer', 525, 223],
    ['Common error', 525, 223],
    ['Most common slip', 525, 223],
    ['Common mistakes', 525, '223 or 187'],
    ['Objective', 'exchange twice', 'through zero'],
    ['LO', 1, 2],
    ['Learning objective', 'exchange twice', 'through zero'],
    ['Difficulty', 2, 3],
    ['Level of difficulty', 'easy', 'hard'],
    ['Last year', '64%', '58%'],
    ['Last year', 0.64, 0.58],
    ['Last year', 64, 58],
    ['Last year’s class', 64, 58],
    ['Previous year', 19, 20],
    ['Percentages', 64, 58],
    ['As a percentage', '50%', '75%'],
    ['% right', 50, 75],
    ['Mark scheme', 475, 177],
    ['Mark scheme', '475 (1 mark)', '177 (1 mark)'],
    ['Correct answer', 475, 177],
    ['Facility 2024', 0.5, 0.75],
    ['Predicted', 70, 65],
    ['Autumn', 0.5, 0.75],
  ]
  it.each(rows)('%s: %s, %s', (...row) => {
    const [head = [], ...pupils] = OWLS
    expect(typedBy([...OWLS, row])).toEqual(OWLS_TYPED)
    expect(typedBy([...OWLS, [], row])).toEqual(OWLS_TYPED)
    expect(typedBy([head, row, ...pupils])).toEqual(OWLS_TYPED)
    expect(typedBy(turned([...OWLS, row]))).toEqual(OWLS_TYPED)
  })

  it('several of them, over and under the pupils', () => {
    const [head = [], ...pupils] = OWLS
    expect(
      typedBy([head, ...rows.slice(4, 8), ...pupils, ...rows.slice(0, 2), ...rows.slice(9, 12)]),
    ).toEqual(OWLS_TYPED)
  })
})

describe('numbers in the row of names', () => {
  it('are nobody beside a glued class, and its rows are no answers of the first', () => {
    const lines = typedBy([
      [null, null, null, 'Name', '363 + 104', '936 + 98'],
      ['Name', 'Ada W', 'Ben P', 'Dee W', 467, 1034],
      ['537 − 65', 472, 472, 'Eve M', 467, 1134],
      ['885 − 83', 802, 702, 'Gil P', 467, 1033],
    ])
    expect(lines.filter((line) => /^\d/.test(line))).toEqual([])
    for (const line of lines)
      expect([
        'Ada W: 472 802',
        'Ben P: 472 702',
        'Dee W: 467 1034',
        'Eve M: 467 1134',
        'Gil P: 467 1033',
      ]).toContain(line)
  })

  it('stand for children where nobody is named', () => {
    expect(
      typedBy([
        ['No.', '46 + 27'],
        [1, 73],
        [2, 63],
        [3, 73],
      ]),
    ).toEqual(['1: 73', '2: 63', '3: 73'])
  })
})

describe('pairs beside a class with rows that are nobody’s', () => {
  it('take no answer of its children', () => {
    const lines = typedBy([
      [null, null, null, 'Class 4', '547 − 102', '386 + 94'],
      [null, null, null, 'Eve W', 445, 580],
      ['Name', 'Question 1', 'Answer 1', 'Gil W', 435, 580],
      ['Ada C', '920 − 80', 840, 'Hal D', 445, 481],
      ['Ben F', '357 − 55', 302, 'Ivy S', 445, 480],
      ['Cai M', '243 − 53', null, 'Jem M', 444, 480],
      ['Dee F', '947 − 111', null, 'Common wrong answer', 455, 490],
    ])
    expect(lines).toContain('Ada C: 840')
    expect(lines).toContain('Dee F: ')
  })
})
