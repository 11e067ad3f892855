import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { workOut } from '../../src/arithmetic/columns'
import { numeralText, readNumeral, wholeNumeral } from '../../src/arithmetic/numeral'
import { printQuestion, questionOf, readQuestion, type Question } from '../../src/arithmetic/question'
import { asked } from '../support/asked'

const answer = (text: string) => numeralText(workOut(asked(text).calculation).answer)
const problem = (text: string) => {
  const reading = readQuestion(text)
  return 'problem' in reading ? reading.problem : null
}

describe('reading a question', () => {
  it.each([
    ['932 − 457', '475'],
    ['932-457=', '475'],
    ['932 – 457 = ?', '475'],
    ['932 — 457 = □', '475'],
    ['932 − 457 = ____', '475'],
    ['932 − 457 …', '475'],
    ['932 - 457 [ ]', '475'],
    ['7,214 − 86', '7128'],
    ['7 214 − 86', '7128'],
    ['7\u2009214 − 86', '7128'],
    ['7\u00a0214\u00a0−\u00a086', '7128'],
    ['9 000 000 - 1', '8999999'],
    ['９３２－４５７', '475'],
    ['subtract 86 from 7,214', '7128'],
    ['Take 86 away from 7,214.', '7128'],
    ['7,214 take away 86', '7128'],
    ['7214 minus 86', '7128'],
    ['7214 subtract 86', '7128'],
    ['add 86 to 7,214', '7300'],
    ['7214 plus 86', '7300'],
    ['789 + 642', '1431'],
    ['1) 932 − 457', '475'],
    ['12. 932 − 457', '475'],
    ['(b) 932 − 457', '475'],
    ['Q4 932 − 457', '475'],
    ['Q4: Work out 932 − 457.', '475'],
    ['Question 10\n932 − 457', '475'],
    ['What is 932 − 457?', '475'],
    ['1\n932 − 457', '475'],
    ['932\n− 457', '475'],
    ['a. 932 − 457', '475'],
    ['Qu 1: 932 − 457', '475'],
    ['★ 932 − 457', '475'],
    ['Q1 (932 − 457)', '475'],
    ['932 − 457 (1 mark)', '475'],
    ['932 − 457 [1]', '475'],
    ['932 − 457 equals', '475'],
    ['932 − 457 = ⬜\ufe0f', '475'],
    ['932 ➖ 457', '475'],
    ['the difference between 932 and 457', '475'],
    ['add 81 and 9', '90'],
    ['5.2 kg − 3.1 kg', '2.1'],
    ['8.6 − 2.35', '6.25'],
    ['£8.60 − £2.35', '6.25'],
    ['£3 - 45p', '2.55'],
    ['86p + 45p', '131'],
    ['£1,234.50 + £0.50', '1235.00'],
    ['123456789012345 − 1', '123456789012344'],
  ])('%j is answered %s', (text, expected) => {
    expect(answer(text)).toBe(expected)
  })

  it.each([
    ['□ − 46 = 30', 'add', 'first', '76'],
    ['76 − □ = 30', 'subtract', 'second', '46'],
    ['46 + ? = 76', 'subtract', 'second', '30'],
    ['__ + 46 = 76', 'subtract', 'first', '30'],
    ['[ ] + 46 = 76', 'subtract', 'first', '30'],
    ['… − 46 = 30', 'add', 'first', '76'],
    ['76 = □ + 46', 'subtract', 'first', '30'],
    ['76 − 46 = □', 'subtract', 'result', '30'],
    ['£5 − □ = £3.25', 'subtract', 'second', '1.75'],
  ])('%j is found by %s, the %s number missing: %s', (text, operation, missing, expected) => {
    expect(asked(text).calculation.operation).toBe(operation)
    expect(asked(text).missing).toBe(missing)
    expect(answer(text)).toBe(expected)
  })

  it.each([
    '',
    'Name',
    'Total',
    'Q1',
    '/10',
    '3 28 − 5',
    '932 − 457 − 1',
    '932 × 457',
    'How did you find this quiz?',
    'Points - Work out 231 − 192',
    '− 457',
    '932 −',
    '□ − □ = 5',
    '□ + 5',
    '12,34 − 5',
    '1,2345 − 5',
    'Thurs 28th Nov',
    'Part B (4 digit)',
    '3 − 4 apples',
  ])('%j is no question', (text) => {
    expect(problem(text)).toMatch(/not an addition or subtraction question/)
  })

  it.each([
    ['86 − 7,214', /greater than the number it is taken from/],
    ['76 − □ = 80', /No number from 0 up/],
    ['□ + 80 = 76', /No number from 0 up/],
    ['932 − 457 = 475', /already has its answer/],
    ['1234567890123456 − 1', /more than 15 digits/],
    ['1 kg − 300 g', /different measures/],
    ['1.2345 − 1', /more than 15 digits before the point or 3 after/],
  ])('%j is refused with a sentence', (text, why) => {
    expect(problem(text)).toMatch(why)
  })

  it('reads back whatever it prints, for every unit and every missing number', () => {
    const numbers = fc.tuple(
      fc.nat({ max: 10 ** 9 }),
      fc.nat({ max: 10 ** 9 }),
      fc.integer({ min: 0, max: 3 }),
    )
    const units = fc.constantFrom('', '£', 'p', 'kg', 'ml')
    fc.assert(
      fc.property(numbers, fc.constantFrom('add', 'subtract'), units, ([a, b, places], operation, unit) => {
        const [top, bottom] = [Math.max(a, b), Math.min(a, b)].map((value) => {
          const digits = String(value).padStart(places + 1, '0')
          return readNumeral(
            unit === 'p' || places === 0 ? digits : `${digits.slice(0, -places)}.${digits.slice(-places)}`,
          )
        })
        if (!top || !bottom) throw new Error('the numbers are well formed')
        const made = questionOf({ operation, top, bottom }, unit)
        if (!('question' in made)) throw new Error(made.problem)
        for (const missing of operation === 'add'
          ? (['result', 'first'] as const)
          : (['result', 'first', 'second'] as const)) {
          const sign =
            missing === 'result'
              ? operation
              : missing === 'first'
                ? operation === 'add'
                  ? 'subtract'
                  : 'add'
                : 'subtract'
          const question: Question = { ...made.question, missing, sign }
          expect(asked(printQuestion(question))).toEqual(question)
        }
      }),
    )
  })

  it('never throws and always answers, whatever text a cell holds', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: 'grapheme' }),
          fc.string({ unit: fc.constantFrom(...'0123456789,. −+-=?□_£p()Q') }),
        ),
        (text) => {
          const reading = readQuestion(text)
          expect('question' in reading || reading.problem.endsWith('.')).toBe(true)
        },
      ),
    )
  })
})

describe('whole numbers as numerals', () => {
  it('refuses what is no whole number', () => {
    expect(() => wholeNumeral(-1)).toThrow(RangeError)
    expect(() => wholeNumeral(1.5)).toThrow(RangeError)
  })
})
