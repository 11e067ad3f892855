import { describe, expect, it } from 'vitest'
import { addToKey, keyRows, planAnswerKey, readAnswerKey } from '../../../src/marksheet/setting/answerKey'
import { findMarksheets } from '../../../src/marksheet/layout/find'
import type { TableSheet } from '../../../src/marksheet/marking/plan'
import { asked } from '../../support/asked'

const matrixOf = ({ name, rows }: TableSheet) => ({
  name,
  values: rows.map((row) => row.map(({ text }) => text)),
})

const ROWS = keyRows(['4003 - 1567', '£12.40 + £3', '□ − 46 = 30'].map(asked), {
  sheet: 'Subtraction',
  set: '4827',
  recipe: 'Year 4, mixed',
})

describe('the answer key', () => {
  it('gives question, answer, type, set and recipe of each question in order', () => {
    expect(ROWS.map(({ number, question: text, answer, type }) => [number, text, answer, type])).toEqual([
      ['1', '4,003 − 1,567', '2,436', 'through two or more zeros'],
      ['2', '£12.40 + £3', '£15.40', 'no carry'],
      ['3', '□ − 46 = 30', '76', 'no carry'],
    ])
    expect(ROWS[0]).toMatchObject({ sheet: 'Subtraction', set: '4827', recipe: 'Year 4, mixed' })
  })

  it('is never taken for a marksheet', () => {
    const matrix = matrixOf(planAnswerKey(ROWS))
    expect(findMarksheets(matrix)).toEqual([])
  })

  it('is read back as it was written', () => {
    expect(readAnswerKey(matrixOf(planAnswerKey(ROWS)))).toEqual(ROWS)
  })

  it('is not read from another sheet', () => {
    expect(
      readAnswerKey({ name: 'Answer key', values: [['Answers'], [], [], ['a', 'b', '1', '2 + 2', '4']] }),
    ).toEqual([])
  })

  it('keeps the sets before, newest first, and a set on a sheet once', () => {
    const other = keyRows([asked('932 − 457')], { sheet: 'Subtraction (2)', set: '91', recipe: 'Year 3' })
    const both = addToKey(ROWS, other)
    expect(both).toEqual([...other, ...ROWS])
    expect(addToKey(both, ROWS)).toEqual([...ROWS, ...other])
  })

  it('lets the oldest go when there are too many', () => {
    const many = Array.from({ length: 700 }, (_, index) =>
      ROWS.map((row) => ({ ...row, set: `old ${index}` })),
    ).flat()
    const kept = addToKey(many, ROWS)
    expect(kept.slice(0, 3)).toEqual(ROWS)
    expect(kept.slice(3)).toEqual(many.slice(0, 1997))
  })
})
