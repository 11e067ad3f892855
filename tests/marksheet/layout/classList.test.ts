import { describe, expect, it } from 'vitest'
import { classListIn, findClassList } from '../../../src/marksheet/layout/classList'
import type { Matrix } from '../../../src/marksheet/layout/matrix'

const sheet = (...values: (string | number)[][]): Matrix => ({ name: 'Class', values })
const NAMES = ['Amira P', 'Bertie L', 'Cerys H', 'Daniel O']

describe('the names on a sheet', () => {
  it('are those below a heading, whatever stands above it', () => {
    const matrix = sheet(['Kingfisher'], ['Autumn'], ['', 'Name'], ...NAMES.map((name) => ['', name]))
    expect(findClassList(matrix)).toEqual({ names: NAMES, area: { top: 3, left: 1, bottom: 6, right: 1 } })
  })

  it('are found without a heading', () => {
    expect(findClassList(sheet(...NAMES.map((name) => [name])))?.names).toEqual(NAMES)
  })

  it('are put together from first name and surname, whichever column comes first', () => {
    const matrix = sheet(
      ['No.', 'Surname', 'First name', 'UPN'],
      [1, 'P', 'Amira', 'A123'],
      [2, 'L', 'Bertie', 'B456'],
    )
    expect(findClassList(matrix)).toEqual({
      names: ['Amira P', 'Bertie L'],
      area: { top: 1, left: 1, bottom: 2, right: 2 },
    })
  })

  it('are those of the marksheet where there is one, not those of a list elsewhere', () => {
    const matrix = sheet(
      ['Name', '932 − 457', '874 − 523', '', 'Teachers'],
      ['Amira P', 475, 351, '', 'Nia W'],
      ['Bertie L', 525, 351, '', 'Tom A'],
    )
    expect(findClassList(matrix)?.names).toEqual(['Amira P', 'Bertie L'])
  })

  it('leave out headings and counts among the names', () => {
    const matrix = sheet(['Name'], ['Red table'], ['Amira P'], ['Bertie L'], ['Total'])
    expect(findClassList(matrix)?.names).toEqual(['Amira P', 'Bertie L'])
  })

  it('are whatever stands under a heading for names, codes too', () => {
    const matrix = sheet(['Pupil'], ['Pupil 101'], ['P-102'], [103])
    expect(findClassList(matrix)?.names).toEqual(['Pupil 101', 'P-102', '103'])
  })

  it('keep two pupils of one name', () => {
    const matrix = sheet(['Name'], ['Amira P'], ['Bertie L'], ['Amira P'], ['Daniel O'])
    expect(findClassList(matrix)?.names).toEqual(['Amira P', 'Bertie L', 'Amira P', 'Daniel O'])
  })

  it.each<[string, Matrix]>([
    ['an empty sheet', sheet()],
    ['a sheet of numbers', sheet([1, 2], [3, 4])],
    ['a sheet of our own', sheet(['Columnwise · Mastery'], ['Name'], ['Amira P'], ['Bertie L'])],
  ])('are none on %s', (_, matrix) => {
    expect(findClassList(matrix)).toBeNull()
  })
})

describe('the names in selected cells', () => {
  const matrix = sheet(
    ['x', 'Name', 'Note'],
    ['', 'amira', 'new'],
    ['', 'bertie', ''],
    ['', '', ''],
    ['', 'cerys', ''],
  )

  it('are all texts of one column, its heading and gaps left out', () => {
    expect(classListIn(matrix, { top: 0, left: 1, bottom: 4, right: 1 })).toEqual({
      names: ['amira', 'bertie', 'cerys'],
      area: { top: 1, left: 1, bottom: 4, right: 1 },
    })
  })

  it('are all texts of one row', () => {
    const across = sheet(['', ''], ['Name', 'Amira', 'Bertie'])
    expect(classListIn(across, { top: 1, left: 0, bottom: 1, right: 2 })).toEqual({
      names: ['Amira', 'Bertie'],
      area: { top: 1, left: 1, bottom: 1, right: 2 },
    })
  })

  it('are looked for among several columns', () => {
    const wide = sheet(['First name', 'Surname', 'Age'], ['Amira', 'P', 8], ['Bertie', 'L', 9])
    expect(classListIn(wide, { top: 0, left: 0, bottom: 2, right: 2 })?.names).toEqual([
      'Amira P',
      'Bertie L',
    ])
  })

  it('are none in empty cells', () => {
    expect(classListIn(matrix, { top: 3, left: 0, bottom: 3, right: 2 })).toBeNull()
  })
})
