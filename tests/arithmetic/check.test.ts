import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { estimate, inverse } from '../../src/arithmetic/check'
import { valueText, wholeNumeral } from '../../src/arithmetic/numeral'
import { questionOf } from '../../src/arithmetic/question'
import { asked } from '../support/asked'

/** Whole-number questions of 1 to 5 digits, with their plain numbers. */
const questions = fc
  .record({
    adds: fc.boolean(),
    one: fc.integer({ min: 0, max: 99_999 }),
    other: fc.integer({ min: 0, max: 99_999 }),
  })
  .map(({ adds, one, other }) => {
    const [top, bottom] = adds ? [one, other] : [Math.max(one, other), Math.min(one, other)]
    const reading = questionOf({
      operation: adds ? 'add' : 'subtract',
      top: wholeNumeral(top),
      bottom: wholeNumeral(bottom),
    })
    if ('problem' in reading) throw new Error(reading.problem)
    return { question: reading.question, adds, top, bottom }
  })

const numbersIn = (text: string) =>
  [...text.replaceAll(',', '').matchAll(/\d+(?:\.\d+)?/g)].map(([number]) => Number(number))

describe('an estimate', () => {
  it.each([
    ['4003 − 1567', '4,000 − 2,000 = 2,000'],
    ['7214 − 86', '7,210 − 90 = 7,120'],
    ['5100 − 3915', '5,100 − 3,900 = 1,200'],
    ['932 − 457', '900 − 500 = 400'],
    ['789 + 642', '800 + 600 = 1,400'],
    ['3856 + 479', '3,900 + 500 = 4,400'],
    ['5432 − 5428', '5,430 − 5,430 = 0'],
    ['52 − 6', '50 − 10 = 40'],
    ['£8.60 − £2.35', '£9 − £2 = £7'],
    ['£15.20 − £14.85', '£15.20 − £14.90 = £0.30'],
    ['15.3 kg − 4.8 kg', '15 kg − 5 kg = 10 kg'],
    ['8 − 2.35', '8 − 2 = 6'],
    ['345p − 128p', '300p − 100p = 200p'],
    ['□ + 1567 = 4003', '4,000 − 2,000 = 2,000'],
  ])('of %s is %s', (text, wanted) => {
    expect(estimate(asked(text))?.text).toBe(wanted)
  })

  it('is none where the numbers are round already', () => {
    expect(estimate(asked('8000 − 3000'))).toBeNull()
    expect(estimate(asked('600 − 200'))).toBeNull()
  })

  it('is of two numbers near the printed ones, and no further from the answer than the rounding allows', () => {
    fc.assert(
      fc.property(questions, ({ question, adds, top, bottom }) => {
        const found = estimate(question)
        if (!found) return
        const [nearTop = 0, nearBottom = 0, answer = 0] = numbersIn(found.text)
        const step = [10_000, 1000, 100, 10].find((each) =>
          [nearTop, nearBottom].every((n) => n % each === 0),
        )
        expect(step).toBeDefined()
        expect(answer).toBe(adds ? nearTop + nearBottom : nearTop - nearBottom)
        const off = [top - nearTop, bottom - nearBottom].map(Math.abs)
        const exact = adds ? top + bottom : top - bottom
        expect(Math.max(...off)).toBeLessThanOrEqual(5000)
        expect(Math.abs(answer - exact)).toBeLessThanOrEqual((off[0] ?? 0) + (off[1] ?? 0))
        if (!adds && exact >= 100) expect(Math.abs(answer - exact) / exact).toBeLessThanOrEqual(1)
      }),
      { numRuns: 2000 },
    )
  })
})

describe('the inverse', () => {
  it.each([
    ['4003 − 1567', '2,436 + 1,567 = 4,003'],
    ['789 + 642', '1,431 − 642 = 789'],
    ['8 − 2.35', '5.65 + 2.35 = 8.00'],
    ['£3.45 + 86p', '£4.31 − £0.86 = £3.45'],
    ['□ − 46 = 30', '76 − 46 = 30'],
  ])('of %s is %s', (text, wanted) => {
    expect(inverse(asked(text)).text).toBe(wanted)
  })

  it('comes back to the number that the calculation began with', () => {
    fc.assert(
      fc.property(questions, ({ question, top, bottom, adds }) => {
        const [first, second, result] = numbersIn(inverse(question).text)
        expect([first, second, result]).toEqual([adds ? top + bottom : top - bottom, bottom, top])
      }),
    )
  })

  it('of a wrong answer comes to something else', () => {
    const question = asked('305 − 128')
    const { text, answer } = inverse(question, wholeNumeral(223))
    expect(text).toBe('223 + 128 = 351')
    expect(valueText(answer)).toBe('351')
  })
})
