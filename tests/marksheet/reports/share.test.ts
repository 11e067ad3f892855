import { describe, expect, it } from 'vitest'
import type { CellValue } from '../../../src/answers/typed'
import { review } from '../../../src/marksheet/marking/review'
import { initialsOf, planShared } from '../../../src/marksheet/reports/share'
import { marksheetOf } from '../../office/host'
import { WORKBOOKS } from '../../marksheets'

const QUESTIONS = ['932 − 457', '305 − 128']
const CLASS: CellValue[][] = [
  ['Name', ...QUESTIONS],
  ['Amina Khan', 475, 177],
  ['Adam King', 525, 'see me'],
  ['Zoë O’Neill-Blythe', null, 'abs'],
]

const textsOf = ({ rows }: ReturnType<typeof planShared>) => rows.map((row) => row.map(({ text }) => text))

describe('initials', () => {
  it('are the first letters of the words of a name, and numbered where several have the same', () => {
    expect(initialsOf(['Amina Khan', 'Adam King', 'Zoë O’Neill-Blythe', 'Max'])).toEqual([
      'AK 1',
      'AK 2',
      'ZOB',
      'M',
    ])
  })

  it('are there for names in any script, and for one without a letter', () => {
    const names = ['محمد علي', '李小龙', 'Ṣọlá Adé', 'e\u0301lise', '𐌰𐌽 B', '4B-07', '***']
    expect(initialsOf(names)).toEqual(['مع', '李', 'ṢA', 'É', '𐌰B', '40', '1'])
  })
})

describe('a sheet to share', () => {
  it('tells right from wrong by a sign, and holds no name', () => {
    const shared = textsOf(planShared(review({ name: 'S', values: CLASS }), 'initials', ''))
    expect(shared.slice(3)).toEqual([
      ['3 pupils, 2 questions'],
      ['Pupil', ...QUESTIONS],
      ['AK 1', '✓ 475', '✓ 177'],
      ['AK 2', '✗ 525', '? see me'],
      ['ZOB', '', 'abs'],
    ])
  })

  it('numbers pupils in an order that does not follow the sheet’s, the same for the same seed', () => {
    const names = Array.from({ length: 12 }, (_, index) => `Pupil ${'ABCDEFGHIJKL'[index] ?? ''}`)
    const values = [['Name', ...QUESTIONS], ...names.map((name, index) => [name, 400 + index, 177])]
    const shared = (seed: string) =>
      textsOf(planShared(review({ name: 'S', values }), 'codes', seed)).slice(5)
    expect(shared('one').map(([label]) => label)).toEqual(
      Array.from({ length: 12 }, (_, index) => `Pupil ${String(index + 1).padStart(2, '0')}`),
    )
    const order = (seed: string) => shared(seed).map(([, first = '']) => Number(first.slice(2)) - 400)
    expect(order('one')).not.toEqual(order('two'))
    expect(order('one')).toEqual(order('one'))
    expect(order('one').toSorted((a, b) => a - b)).toEqual(names.map((_, index) => index))
  })

  it('gives a child the same code in every marksheet, and two of one name two', () => {
    const twice = [...CLASS, ['Amina Khan', 1, 2], [null], ['Name', '81 + 9'], ['Amina Khan', 90]]
    const reviews = review({ name: 'S', values: twice })
    expect(reviews).toHaveLength(2)
    const labels = textsOf(planShared(reviews, 'initials', '')).flatMap(([label = '']) =>
      label.startsWith('AK') ? [label] : [],
    )
    expect(labels).toEqual(['AK 1', 'AK 2', 'AK 3', 'AK 1'])
  })

  it.each(WORKBOOKS)('of %s holds every answer once and no name', async (name) => {
    const reviews = review(await marksheetOf(name))
    for (const how of ['initials', 'codes'] as const) {
      const shared = textsOf(planShared(reviews, how, 'seed'))
      const all = shared.slice(2).flat()
      const answers = reviews
        .flatMap(({ pupils }) => pupils.flatMap(({ typed }) => typed))
        .filter((text) => text !== '')
      const told = all.map((text) => text.replace(/^[✓✗?] (?:.* = )?/, ''))
      for (const answer of new Set(answers))
        expect(told.filter((text) => text === answer).length).toBeGreaterThanOrEqual(
          answers.filter((text) => text === answer).length,
        )
      const words = reviews
        .flatMap(({ pupils }) => pupils.flatMap((pupil) => pupil.name.split(' ')))
        .filter((word) => word.length > 2)
      for (const word of words) expect(all.join('\n')).not.toContain(word)
    }
  })
})
