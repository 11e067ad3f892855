import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { answerKey, markAnswer, readTyped, type CellValue } from '../../src/answers/typed'
import { asked } from '../support/asked'

function mark(question: string, typed: CellValue) {
  return markAnswer(typed, answerKey(asked(question)))
}

describe('marking a typed answer', () => {
  it.each([
    2357,
    '2357',
    ' 2357 ',
    '2357\u00a0',
    '\u20092357',
    '2,357',
    '2 357',
    '2\u00a0357',
    '=2357',
    '= 2357',
    '£2357',
    '2357.',
    '２３５７',
    '2357.0',
    '02357',
  ])('%j is right for 5,839 − 3,482', (typed) => {
    expect(mark('5,839 − 3,482', typed)).toBe('correct')
  })

  it.each([2356, '2356', '23570', '-2357', -2357, '2.357', 0, '0', 2357.5, '2257.'])(
    '%j is wrong for it',
    (typed) => {
      expect(mark('5,839 − 3,482', typed)).toBe('incorrect')
    },
  )

  it.each(['', null, '-', '–', '−', '/', 'n/a', 'N/A', '   ', '\u00a0'])('%j is blank', (typed) => {
    expect(mark('5,839 − 3,482', typed)).toBe('blank')
  })

  it.each(['abs', 'ABS', 'a', 'A', 'Absent', 'ill', ' ill '])('%j is an absence', (typed) => {
    expect(mark('5,839 − 3,482', typed)).toBe('absent')
  })

  it.each([
    '2357 or 2356',
    '2357/2356',
    '2357, 2356',
    '2357 2356',
    '23 57',
    '23?7',
    '2357?',
    '?',
    'no working - see me',
    "can't read",
    'two thousand',
    '3-4',
    '1/2',
    '1e3',
    '23,57',
    '2357 r 1',
    '5839 − 3482 = 2357',
    true,
    false,
    '#VALUE!',
    Number.NaN,
  ])('%j is left for the teacher, never wrong', (typed) => {
    expect(mark('5,839 − 3,482', typed)).toBe('unreadable')
  })

  it.each([
    ['£8.60 − £2.00', '6.6', 'correct'],
    ['£8.60 − £2.00', '£6.60', 'correct'],
    ['£8.60 − £2.00', 6.6, 'correct'],
    ['£8.60 − £2.00', '660p', 'correct'],
    ['£8.60 − £2.00', '£6.60p', 'correct'],
    ['£8.60 − £2.00', '660', 'incorrect'],
    ['86p + 45p', '131p', 'correct'],
    ['86p + 45p', '£1.31', 'correct'],
    ['86p + 45p', '131', 'correct'],
    ['86p + 45p', '1.31', 'incorrect'],
    ['5.2 − 3.1', 5.2 - 3.1, 'correct'],
    ['0.75 − 0.25', '.5', 'correct'],
    ['46 − 46', 0, 'correct'],
    ['5.2 kg − 3.1 kg', '2.1 kg', 'correct'],
    ['5.2 kg − 3.1 kg', '2.1', 'correct'],
    ['5.2 kg − 3.1 kg', '2.1 g', 'unreadable'],
    ['932 − 457', '475 m', 'unreadable'],
    ['□ − 46 = 30', '76', 'correct'],
  ] as const)('to %s, %j is %s', (question, typed, outcome) => {
    expect(mark(question, typed)).toBe(outcome)
  })

  it('finds the right number right however it is grouped, padded or followed by a stop', () => {
    const spaces = fc.stringMatching(/^[ \u00a0\u2009\u202f]{0,3}$/)
    fc.assert(
      fc.property(
        fc.nat(),
        spaces,
        spaces,
        fc.constantFrom('', '=', '£', '= '),
        fc.constantFrom('', '.'),
        (n, before, after, sign, stop) => {
          const typed = before + sign + n.toLocaleString('en-GB') + stop + after
          expect(mark(`${n} + 0`, typed)).toBe('correct')
        },
      ),
    )
  })

  it('reads any number cell as that number and any text without throwing', () => {
    fc.assert(
      fc.property(fc.integer(), (n) => {
        expect(readTyped(n)).toEqual({ kind: 'number', value: String(n) })
      }),
    )
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        expect(['number', 'blank', 'absent', 'unreadable']).toContain(readTyped(text).kind)
      }),
    )
  })
})
