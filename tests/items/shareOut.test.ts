import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { workOut } from '../../src/arithmetic/columns'
import { exchangesOf } from '../../src/arithmetic/exchange'
import { FAMILIES, familyOf } from '../../src/arithmetic/families'
import type { Question } from '../../src/arithmetic/question'
import { makeSet } from '../../src/items/makeSet'
import { shareOut } from '../../src/items/shareOut'
import { aimsFor, TOPICS, WISH_COUNT, type Wish } from '../../src/items/wish'
import { TEACHING_ORDER } from '../../src/mastery/support'

/** How many questions of each family there are, of those that there are any of. */
function familiesOf(questions: readonly Question[]): number[] {
  const families = questions.map(({ calculation }) => familyOf(exchangesOf(workOut(calculation)).type))
  return FAMILIES.map((family) => families.filter((each) => each === family).length).filter(
    (count) => count > 0,
  )
}

const wishes: fc.Arbitrary<Wish> = fc
  .record({
    operation: fc.constantFrom('add' as const, 'subtract' as const, 'both' as const),
    numbers: fc.constantFrom(...TOPICS),
    count: fc.integer({ min: WISH_COUNT.least, max: WISH_COUNT.most }),
    at: fc.nat(),
  })
  .map(({ at, ...wish }) => {
    const aims = aimsFor(wish)
    return { ...wish, aim: aims[at % aims.length]?.aim ?? 'graded' }
  })

describe('sets that can be judged', () => {
  it('hold two questions or more of every family that they touch, whatever recipe, size and set number', () => {
    fc.assert(
      fc.property(wishes, fc.string(), (wish, seed) => {
        const set = makeSet(wish, seed)
        if ('problem' in set) return
        const operations = wish.operation === 'both' ? 2 : 1
        if (wish.count < 2 * operations) return
        expect(Math.min(...familiesOf(set.questions))).toBeGreaterThanOrEqual(2)
      }),
      { numRuns: 150 },
    )
  })

  it('hold three of every family where there is room for all', () => {
    for (const aim of ['graded', 'mixed'] as const)
      for (const numbers of TOPICS)
        for (const operation of ['add', 'subtract'] as const) {
          const set = makeSet({ operation, numbers, aim, count: 12 }, '4827')
          if ('problem' in set) throw new Error(set.problem)
          expect(Math.min(...familiesOf(set.questions))).toBeGreaterThanOrEqual(3)
        }
  })
})

describe('sharing out', () => {
  const supplies = fc.uniqueArray(
    fc.record({ type: fc.constantFrom(...TEACHING_ORDER), room: fc.integer({ min: 1, max: 12 }) }),
    { selector: ({ type }) => type, minLength: 1 },
  )

  it('gives what is wanted as long as there is room, and nobody more than there is', () => {
    fc.assert(
      fc.property(supplies, fc.integer({ min: 1, max: 40 }), (all, count) => {
        const given = shareOut(all, count)
        given.forEach((share, index) => expect(share).toBeLessThanOrEqual(all[index]?.room ?? 0))
        const room = all.reduce((sum, each) => sum + each.room, 0)
        expect(given.reduce((sum, each) => sum + each, 0)).toBe(Math.min(count, room))
      }),
    )
  })
})
