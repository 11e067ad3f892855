import { describe, expect, it } from 'vitest'
import { DEFAULT_MASTERY } from '../../src/mastery/settings'
import { standingOf, standingOver } from '../../src/mastery/standing'
import reference from './standing-reference.json'

/** Check values as exact fractions from an independent computation of the two-state model; learning as Corbett and Anderson (1995, from memory). */
describe('where a pupil stands beside an independent computation', () => {
  it('goes by the same rates', () => {
    const { slip, guess, prior, learn, forget, secure, needsSupport } = DEFAULT_MASTERY
    const { fade, ...others } = reference
    expect({ slip, guess, prior, learn, forget, secure, needsSupport }).toEqual({
      slip: others.slip,
      guess: others.guess,
      prior: others.prior,
      learn: others.learn,
      forget: fade,
      secure: others.secure,
      needsSupport: others.needsSupport,
    })
  })

  it('gives every count on one occasion the same probability and word', () => {
    expect(reference.oneOccasion).toHaveLength(91)
    for (const { right, tried, probability, status } of reference.oneOccasion) {
      const standing = standingOf({ right, tried })
      expect(standing).toMatchObject({ right, tried, status })
      expect(Math.abs(standing.probability - probability)).toBeLessThan(1e-12)
    }
  })

  it('gives the same over several occasions', () => {
    expect(reference.overOccasions).toHaveLength(12)
    for (const { occasions, probability, status } of reference.overOccasions) {
      const standing = standingOver(occasions.map(([right = 0, tried = 0]) => ({ right, tried })))
      expect(standing.status).toBe(status)
      expect(Math.abs(standing.probability - probability)).toBeLessThan(1e-12)
    }
  })
})
