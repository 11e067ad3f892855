import { describe, expect, it } from 'vitest'
import { readHome } from '../../src/home/back'
import { MARK, TITLE } from '../../src/home/format'
import { findMarksheets } from '../../src/marksheet/layout/find'

const shown = {
  name: 'Questions',
  values: [
    [`${TITLE} for Ada K.`],
    ['No.', 'Question', 'Answer', 'How it went'],
    [1, '932 − 457', '475 ', 'Right'],
    [2, '305 − 128', null, ''],
    ['For your teacher: set S234567, child C234567.'],
  ],
}
const hidden = {
  name: 'Columnwise',
  values: [
    [MARK],
    ['Set', 'S234567'],
    ['Child', 'C234567'],
    ['No.', 'Question', 'Answer cell'],
    [1, '932 − 457', 'C3'],
    [2, '305 − 129', 'C4'],
  ],
}

describe('a home workbook that came back', () => {
  it('gives the codes and each answer with the question beside it, and as it was sent', () => {
    expect(readHome([shown, hidden])).toEqual({
      sheet: 'Questions',
      set: 'S234567',
      child: 'C234567',
      name: '',
      answers: [
        {
          number: 1,
          question: '932 − 457',
          sent: '932 − 457',
          cell: 'C3',
          typed: { kind: 'typed', typed: '475 ' },
        },
        { number: 2, question: '305 − 128', sent: '305 − 129', cell: 'C4', typed: { kind: 'nothing' } },
      ],
    })
  })

  it('is read without its hidden sheet, by the codes that it shows', () => {
    expect(readHome([shown])).toMatchObject({
      set: 'S234567',
      child: 'C234567',
      answers: [{ sent: null }, {}],
    })
  })

  it('tells an answer that a program made a date of', () => {
    const formats = [[], [], ['General', 'General', 'd-mmm']]
    const values = shown.values.map((row, at) => (at === 2 ? [1, '932 − 457', 45_000, ''] : row))
    expect(readHome([{ name: 'Questions', values, formats }])?.answers[0]).toMatchObject({
      typed: { kind: 'lost' },
    })
  })

  it('is no marksheet, and a marksheet is no home workbook', () => {
    expect([shown, hidden].flatMap(findMarksheets)).toEqual([])
    expect(
      readHome([
        {
          name: 'Heron',
          values: [
            ['Name', '932 − 457'],
            ['Ada K.', 475],
          ],
        },
      ]),
    ).toBeNull()
    expect(readHome([hidden])).toBeNull()
  })
})
