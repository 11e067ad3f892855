import { describe, expect, it } from 'vitest'
import { FAULTS } from '../../src/answers/faults'
import { generatorFrom } from '../../src/items/seed'
import { ADDITION, faultyPupils, rightPupils, SUBTRACTION, sums, workedBy } from '../evidence/outside'
import { asked } from '../support/asked'

describe('wrong procedures worked anew, by their descriptions', () => {
  const random = generatorFrom('procedures')
  it.each([
    ['−', 'subtract', SUBTRACTION],
    ['+', 'add', ADDITION],
  ] as const)('%s: give what the catalogue gives', (sign, operation, workings) => {
    for (const sum of sums(random, [sign], 600)) {
      const { calculation } = asked(sum.join(' '))
      for (const id of Object.keys(workings)) {
        const fault = FAULTS.find((each) => each.id === id && each.operation === operation)
        const worked = workedBy(id, sum)
        if (worked !== null) expect([sum, id, fault?.apply(calculation)]).toEqual([sum, id, worked])
      }
    }
  })
})

/** A fast share of `npm run evidence`. */
describe('pupils whose truth is known, on whole sheets', () => {
  it('are flagged, with their fault first, where it shows in three answers', () => {
    const always = faultyPupils(24, 1)
    expect(always.flagged).toBeGreaterThanOrEqual(0.98)
    expect(always.named).toBeGreaterThanOrEqual(0.97)
    expect(faultyPupils(24, 0.65).named).toBeGreaterThanOrEqual(0.8)
  })

  it('are hardly ever flagged, and never named a fault, where they know the method', () => {
    const secure = rightPupils(24, 0.05, 0.05)
    expect(secure.flagged).toBeLessThanOrEqual(0.035)
    expect(secure.named).toBeLessThanOrEqual(0.01)
  })

  it('are flagged about one time in four where they are careless: so many have two of two or of three wrong by chance', () => {
    const careless = rightPupils(24, 0.15, 0.2)
    expect(careless.flagged).toBeLessThanOrEqual(0.28)
    expect(careless.named).toBeLessThanOrEqual(0.01)
  })
})
