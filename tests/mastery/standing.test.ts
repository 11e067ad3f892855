import fc from 'fast-check'
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import { describe, expect, it } from 'vitest'
import { familyOf } from '../../src/arithmetic/families'
import { DEFAULT_MASTERY } from '../../src/mastery/settings'
import {
  standingOf,
  standingOver,
  standings,
  STATUSES,
  statusOf,
  type Count,
  type Told,
} from '../../src/mastery/standing'
import { TEACHING_ORDER } from '../../src/mastery/support'

const count = fc.tuple(fc.nat(8), fc.nat(8)).map(([right, wrong]): Count => ({ right, tried: right + wrong }))
const told = fc.array(
  fc.record({ type: fc.constantFrom(...TEACHING_ORDER), told: fc.constantFrom(true, false, null) }),
  { maxLength: 30 },
)

describe('a count', () => {
  it('gets the word that its own right and tried answers give, in every class of words', () => {
    expect(statusOf(1, 1, DEFAULT_MASTERY)).toBe('not enough seen')
    expect(statusOf(2, 0.25, DEFAULT_MASTERY)).toBe('needs support')
    expect(statusOf(2, 0.26, DEFAULT_MASTERY)).toBe('not enough seen')
    expect(statusOf(3, 0.26, DEFAULT_MASTERY)).toBe('nearly secure')
    expect(statusOf(3, 0.8499, DEFAULT_MASTERY)).toBe('nearly secure')
    expect(statusOf(2, 0.85, DEFAULT_MASTERY)).toBe('secure')
  })

  it('never reads better with one right answer turned wrong', () => {
    fc.assert(
      fc.property(count, ({ right, tried }) => {
        fc.pre(right > 0)
        const [one, other] = [standingOf({ right, tried }), standingOf({ right: right - 1, tried })]
        expect(other.probability).toBeLessThan(one.probability)
        // With two tried, between the thresholds nothing is said; from three on the words are in order.
        if (tried > 2)
          expect(STATUSES.indexOf(other.status)).toBeLessThanOrEqual(STATUSES.indexOf(one.status))
      }),
    )
  })

  it('is never secure on less than half right, nor needs support on all right', () => {
    fc.assert(
      fc.property(count, ({ right, tried }) => {
        const { status } = standingOf({ right, tried })
        if (2 * right < tried) expect(['needs support', 'not enough seen']).toContain(status)
        if (right === tried && tried >= 2) expect(status).toBe('secure')
      }),
    )
  })
})

describe('standings', () => {
  it('count each type and family by the answers that tell something, whatever else was asked', () => {
    fc.assert(
      fc.property(told, (answers: readonly Told[]) => {
        const { byType, byFamily } = standings([answers])
        const counted = (belongs: (type: Told['type']) => boolean) => {
          const own = answers.filter((each) => belongs(each.type) && each.told !== null)
          return { right: own.filter((each) => each.told === true).length, tried: own.length }
        }
        for (const { type, ...standing } of byType)
          expect(standing).toEqual(standingOf(counted((each) => each === type)))
        for (const { family, ...standing } of byFamily)
          expect(standing).toEqual(standingOf(counted((each) => familyOf(each) === family)))
        expect(new Set(byType.map(({ type }) => type))).toEqual(new Set(answers.map(({ type }) => type)))
      }),
    )
  })
})

describe('over several occasions', () => {
  const NOTHING: Count = { right: 0, tried: 0 }

  it('time alone makes nothing better, nor worse than a half', () => {
    fc.assert(
      fc.property(count, fc.nat(30), (first, weeks) => {
        const then = standingOf(first).probability
        const now = standingOver([first, ...Array.from({ length: weeks }, () => NOTHING)]).probability
        expect(now).toBeLessThanOrEqual(then)
        expect(now).toBeGreaterThanOrEqual(Math.min(then, 0.5))
      }),
    )
  })

  const week = (right: number): Count => ({ right, tried: 4 })

  it('a pupil who has learnt leaves the list within two weeks, one who has not stays, one who has forgotten is back', () => {
    const before = [week(0), week(1), week(0)]
    expect(standingOver(before).status).toBe('needs support')
    expect(standingOver([...before, week(4), week(3)]).status).not.toBe('needs support')
    expect(standingOver([...before, week(0), week(1)]).status).toBe('needs support')
    expect(standingOver([week(4), week(4), week(4)]).status).toBe('secure')
    expect(standingOver([week(4), week(4), week(4), week(0), week(0)]).status).toBe('needs support')
  })

  it('tells in simulated classes who learnt in the fourth of six weeks from who never did', () => {
    const random = xoroshiro128plus(4)
    const { slip, guess } = DEFAULT_MASTERY
    const listed = (weekOfLearning: number): number =>
      Array.from({ length: 200 }, () =>
        standingOver(
          Array.from({ length: 6 }, (_, index) => {
            const chance = index + 1 >= weekOfLearning ? 1 - slip : guess
            return week(
              Array.from({ length: 4 }, () => uniformFloat64(random) < chance).filter(Boolean).length,
            )
          }),
        ),
      ).filter(({ status }) => status === 'needs support').length
    expect(listed(4)).toBeLessThanOrEqual(4)
    expect(listed(Infinity)).toBeGreaterThanOrEqual(180)
  })
})
