import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readQuestion } from '../../src/arithmetic/question'
import { answerKey, markAnswer, type AnswerKey, type CellValue } from '../../src/answers/typed'
import {
  exceptionRule,
  flagRule,
  lookByRules,
  lookOf,
  markRules,
  otherRules,
  rightRule,
  SIGNATURE,
} from '../../src/marksheet/rules'

function keyOf(text: string): AnswerKey {
  const reading = readQuestion(text)
  if ('problem' in reading) throw new Error(reading.problem)
  return answerKey(reading.question)
}
const area = { top: 999_999, left: 16_383, bottom: 1_000_000, right: 16_383 }
const KEYS = [
  '932 − 457',
  '305 − 128',
  '9,000 − 2,456',
  '46 − 46',
  '52,345 − 7,000',
  '8.6 − 2.35',
  '£8.60 − £2.00',
  '86p + 45p',
  '999999999999999 + 0',
].map(keyOf)

describe('conditional formats', () => {
  it('have formulas of at most 255 characters at the far end of a sheet, and a signature each', () => {
    const rules = [
      ...KEYS.map((key) => rightRule([area], key)),
      ...otherRules([area]),
      ...markRules([area]),
      flagRule([area]),
    ]
    for (const { formula } of rules) {
      expect(formula.length).toBeLessThanOrEqual(255)
      expect(formula).toContain(SIGNATURE)
    }
    expect(exceptionRule({ row: 0, column: 0 }, 'x'.repeat(300), 'unreadable')).toBeNull()
  })

  it('keep a quotation mark in a pupil’s answer inside the text', () => {
    expect(exceptionRule({ row: 4, column: 2 }, '"=1+1', 'unreadable')?.formula).toBe(
      `AND(${SIGNATURE},EXACT(C5,"""=1+1"))`,
    )
  })

  it('never say other than the review, whatever a cell holds: where they cannot tell, they leave it as it is', () => {
    const typed = fc.oneof(
      fc.integer({ min: -100, max: 99_999 }),
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.constantFrom(...KEYS.map(({ value }) => Number(value))),
      fc.boolean(),
      fc.constant(null),
      fc.string({ unit: 'grapheme-ascii' }),
      fc.string({ unit: fc.constantFrom(...'0123456789,.= £p?/-ab \u00a0'), maxLength: 9 }),
      fc
        .constantFrom(...KEYS)
        .chain(({ value }) =>
          fc.constantFrom(
            value,
            ` ${value}`,
            `${value}.`,
            `=${value}`,
            `£${value}`,
            `${value}\u00a0`,
            `${value}p`,
            `${value}?`,
            `${value} or 3`,
            `0${value}`,
            `${value}.0`,
            Number(value).toLocaleString('en-GB'),
          ),
        ),
    ) satisfies fc.Arbitrary<CellValue>
    fc.assert(
      fc.property(typed, fc.constantFrom(...KEYS), (value, key) => {
        const look = lookByRules(value, key)
        if (look !== null) expect(look).toBe(lookOf(markAnswer(value, key)))
      }),
      { numRuns: 5000 },
    )
  })

  it('tell plain numbers and the words for an absence by themselves', () => {
    const key = keyOf('9,000 − 2,456')
    const looks = [
      6544,
      '6544',
      ' 6,544 ',
      '6 544',
      7456,
      '7,456',
      'abs',
      'A',
      'two or',
      '6?44',
      '6544/6545',
      '326, 426',
      '',
    ].map((value) => lookByRules(value, key))
    expect(looks).toEqual([
      'right',
      'right',
      'right',
      'right',
      'wrong',
      'wrong',
      'absent',
      'absent',
      'unreadable',
      'unreadable',
      'unreadable',
      'unreadable',
      null,
    ])
  })
})
