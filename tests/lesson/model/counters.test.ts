import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { workOut } from '../../../src/arithmetic/columns'
import { scaledValue } from '../../../src/arithmetic/numeral'
import { stepsOf } from '../../../src/arithmetic/steps'
import { countersAfter, countersInWords, drawCounters } from '../../../src/lesson/model/counters'
import { questions } from './arbitraries'
import { asked } from '../../support/asked'

describe('place-value counters', () => {
  it('keep their value through every exchange; what stands at the end is the answer', () => {
    fc.assert(
      fc.property(questions, (question) => {
        const { operation, top, bottom } = question.calculation
        const { answer } = workOut(question.calculation)
        const { places } = answer
        const worth = (counts: readonly { place: number; count: number }[]) =>
          counts.reduce((sum, { place, count }) => sum + BigInt(count) * 10n ** BigInt(place + places), 0n)
        const [a, b] = [scaledValue(top, places), scaledValue(bottom, places)]
        const steps = stepsOf(question)
        const setOut = steps.findLastIndex(({ kind }) => kind === 'set-out') + 1
        for (let n = setOut; n <= steps.length; n++) {
          const all = countersAfter(question, n)
          for (const { there, second, taken } of all) {
            expect(there).toBeGreaterThanOrEqual(0)
            expect(there + second + taken).toBeLessThanOrEqual(20)
          }
          const total = worth(all.map(({ place, ...c }) => ({ place, count: c.there + c.second + c.taken })))
          expect(total).toBe(operation === 'add' ? a + b : a)
        }
        const end = countersAfter(question, steps.length)
        expect(worth(end.map(({ place, there }) => ({ place, count: there })))).toBe(
          scaledValue(answer, places),
        )
        expect(worth(end.map(({ place, taken }) => ({ place, count: taken })))).toBe(
          operation === 'add' ? 0n : b,
        )
        expect(end.every(({ second }) => second === 0)).toBe(true)
      }),
      { numRuns: 100 },
    )
  })

  it('are drawn one by one inside the drawing, none over another, those taken away crossed out', () => {
    fc.assert(
      fc.property(questions, fc.nat(40), (question, n) => {
        const columns = countersAfter(question, Math.min(n, stepsOf(question).length))
        const { width, height, shapes } = drawCounters(question, columns)
        const circles = shapes.flatMap((shape) => (shape.shape === 'circle' ? [shape] : []))
        const wanted = columns.reduce((sum, { there, second, taken }) => sum + there + second + taken, 0)
        expect(circles).toHaveLength(wanted)
        expect(new Set(circles.map(({ cx, cy }) => `${cx} ${cy}`)).size).toBe(wanted)
        for (const { cx, cy, r } of circles) {
          expect(cx - r).toBeGreaterThan(0)
          expect(cx + r).toBeLessThan(width)
          expect(cy + r).toBeLessThan(height)
        }
        expect(shapes.filter(({ kind }) => kind === 'cross')).toHaveLength(
          columns.reduce((sum, { taken }) => sum + taken, 0),
        )
      }),
      { numRuns: 60 },
    )
  })

  it('are told in words, money in coins', () => {
    const words = (text: string) => {
      const question = asked(text)
      return countersInWords(question, countersAfter(question, stepsOf(question).length))
    }
    expect(words('52 − 17')).toBe('Counters: 3 tens with 1 taken away; 5 ones with 7 taken away.')
    expect(words('85p + 47p')).toBe('Counters: 1 pound; 3 ten-pence coins; 2 pennies.')
  })
})
