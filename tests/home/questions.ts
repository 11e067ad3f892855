import fc from 'fast-check'
import { asked } from '../support/asked'

/** The texts of random questions, of whole numbers, money and measures, with their right answers worked out in whole thousandths. */
export const askedTexts: fc.Arbitrary<{
  readonly text: string
  readonly thousandths: number
  readonly unit: string
}> = fc
  .record({
    unit: fc.constantFrom('', '', '£', 'kg'),
    places: fc.constantFrom(0, 0, 1, 2, 3),
    sign: fc.constantFrom('+', '−'),
    a: fc.integer({ min: 1, max: 99_999 }),
    b: fc.integer({ min: 1, max: 99_999 }),
  })
  .map(({ unit, places, sign, a, b }) => {
    const digits = unit === '£' ? 2 : places
    const [top, bottom] = sign === '−' ? [Math.max(a, b), Math.min(a, b)] : [a, b]
    const text = (value: number) => {
      const shown = (value / 10 ** digits).toFixed(digits)
      return unit === '£' ? `£${shown}` : `${shown}${unit === '' ? '' : ` ${unit}`}`
    }
    const answer = sign === '−' ? top - bottom : top + bottom
    return { text: `${text(top)} ${sign} ${text(bottom)}`, thousandths: answer * 10 ** (3 - digits), unit }
  })

export const questions = askedTexts.map(({ text }) => asked(text))
