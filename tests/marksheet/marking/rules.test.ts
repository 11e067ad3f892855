import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { answerKey, markAnswer, type CellValue } from '../../../src/answers/typed'
import {
  exceptionRule,
  flagRules,
  isFlag,
  lookByRules,
  lookOf,
  markRules,
  otherRules,
  rightRule,
  SIGNATURE,
  wrongRules,
} from '../../../src/marksheet/marking/rules'
import { asked } from '../../support/asked'

const keyOf = (text: string) => answerKey(asked(text))
const area = { top: 999_999, left: 16_383, bottom: 1_000_000, right: 16_383 }
const FAR = { row: 999_998, column: 16_383, text: 'Work out 9,000 − 2,456' }
const NEAR = { row: 2, column: 2, text: '932 − 457' }
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
      ...KEYS.flatMap((key) => [rightRule([area], key, FAR), ...wrongRules([area], FAR)]),
      ...otherRules([area]),
      ...markRules([area]),
      ...flagRules(
        [area],
        ['XFD1000000'],
        Array.from({ length: 40 }, (_, index) => `Pupil ${index}`),
      ),
    ]
    for (const { formula } of rules) {
      expect(formula.length).toBeLessThanOrEqual(255)
      expect(formula).toContain(SIGNATURE)
    }
    expect(exceptionRule({ row: 0, column: 0 }, 'x'.repeat(300), 'unreadable', FAR)).toBeNull()
  })

  it('say nothing once another question stands in the cell of theirs', () => {
    const near = [{ top: 4, left: 2, bottom: 9, right: 2 }]
    for (const { formula } of [rightRule(near, keyOf('932 − 457'), NEAR), ...wrongRules(near, NEAR)])
      expect(formula).toContain('$C$3="932 − 457"')
    const long = { ...NEAR, text: `Work out ${'very '.repeat(40)}carefully 932 − 457` }
    for (const { formula } of [rightRule(near, keyOf('932 − 457'), long), ...wrongRules(near, long)])
      expect(formula).toContain('FIND("932 − 457",$C$3)')
  })

  it('flag all names that are told, in pieces, and no other', () => {
    const names = Array.from({ length: 60 }, (_, index) => `Ada "${index}" B`)
    const rules = flagRules([area], ['A4'], names)
    expect(rules.length).toBeGreaterThan(1)
    const flagged = rules.flatMap(({ formula }) =>
      [...formula.matchAll(/Ada ""\d+"" B/g)].map(([name]) => name),
    )
    expect(flagged).toEqual(names.map((name) => name.replaceAll('"', '""')))
    for (const { formula } of rules) expect(isFlag(formula)).toBe(true)
    expect(isFlag(rightRule([area], keyOf('932 − 457'), NEAR).formula)).toBe(false)
  })

  it('keep a quotation mark in a pupil’s answer inside the text', () => {
    expect(exceptionRule({ row: 4, column: 2 }, '"=1+1', 'unreadable', NEAR)?.formula).toBe(
      `AND(${SIGNATURE},$C$3="932 − 457",EXACT(C5,"""=1+1"))`,
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

/**
 * What the formulas make of a text where a comma is the decimal sign and a full stop stands between groups: --text reads "6,25" as 6.25 and
 * "7.456" as 7456; a number turns into a text with a comma; TEXT with "#,##0" has three places after the comma, and no 0 before it. (Excel's
 * behaviour, from memory; tests/files/libreoffice.test.ts asks LibreOffice.)
 */
const COMMA = {
  read: (text: string) =>
    /^-?(?:\d{1,3}(?:\.\d{3})+|\d+)?(?:,\d*)?$/.test(text) && /\d/.test(text)
      ? Number(text.replaceAll('.', '').replace(',', '.'))
      : null,
  write: (number: number) => String(number).replace('.', ','),
  grouped: (number: number) => `${number === 0 ? '' : number},000`,
}

/** Whether the rules for wrong texts hold in such an Excel. */
function isWrongText(own: string): boolean {
  const number = COMMA.read(own.replaceAll(',', ''))
  if (number === null) return false
  return own === COMMA.write(number) || (own.includes(',') && number !== 0 && own === COMMA.grouped(number))
}

describe('where Excel’s own decimal sign is a comma', () => {
  it('no text is shown wrong that marking does not count wrong', () => {
    const texts = fc.oneof(
      fc.string({ unit: fc.constantFrom(...'0123456789,.-'), maxLength: 9 }),
      fc.constantFrom('6,25', '6.25', '6,544', '6.544', '6.540', ',000', '0,000', '2,9', '1.234.567', '7456'),
    )
    fc.assert(
      fc.property(texts, fc.constantFrom(...KEYS), (text, key) => {
        const isRight = lookByRules(text, key) === 'right'
        if (!isRight && isWrongText(text)) expect(markAnswer(text, key)).toBe('incorrect')
      }),
      { numRuns: 20_000 },
    )
  })

  it('a number is compared as a number, so that 6.544 is never taken for 6,544', () => {
    const { formula } = rightRule([area], keyOf('9,000 − 2,456'), FAR)
    expect(formula).toContain('IF(ISNUMBER(XFD1000000),XFD1000000=6544,')
    expect(lookByRules(6.544, keyOf('9,000 − 2,456'))).toBe('wrong')
    expect(rightRule([area], keyOf('8.6 − 2.35'), FAR).formula).toContain('ABS(XFD1000000-6.25)<1E-9')
  })
})
