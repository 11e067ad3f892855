import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  addEvidence,
  answerWeights,
  chancesOfAll,
  letTimePass,
  startingWeights,
  sumOverSubsets,
  sumOverSupersets,
} from '../../src/mastery/model'

/** One number for each subset of up to six things. */
const values = fc
  .nat({ max: 6 })
  .chain((skills) =>
    fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 1 << skills, maxLength: 1 << skills }),
  )

function sumWhere(all: readonly number[], holds: (index: number) => boolean): number {
  return all.reduce((sum, value, index) => sum + (holds(index) ? value : 0), 0)
}

function chances(logWeights: Float64Array): number[] {
  const found = new Float64Array(logWeights.length)
  chancesOfAll(logWeights, found)
  return [...found]
}

describe('sums over subsets and supersets', () => {
  it('are the sums written out', () => {
    fc.assert(
      fc.property(values, (all) => {
        const below = Float64Array.from(all)
        const above = Float64Array.from(all)
        sumOverSubsets(below)
        sumOverSupersets(above)
        expect([...below]).toEqual(all.map((_, index) => sumWhere(all, (each) => (each & index) === each)))
        expect([...above]).toEqual(all.map((_, index) => sumWhere(all, (each) => (each & index) === index)))
      }),
    )
  })
})

describe('the start', () => {
  it('holds every set of skills with the chance prior to the power of its size', () => {
    for (const prior of [0.5, 0.2, 0.97])
      chances(startingWeights(5, prior)).forEach((chance, demand) => {
        const size = [...demand.toString(2)].filter((bit) => bit === '1').length
        expect(chance).toBeCloseTo(prior ** size, 12)
      })
  })
})

describe('time between occasions', () => {
  it('moves one skill by learning and forgetting', () => {
    const weights = startingWeights(1, 0.3)
    letTimePass(weights, 0.2, 0.05)
    expect(chances(weights)[1]).toBeCloseTo(0.3 * 0.95 + 0.7 * 0.2, 12)
  })

  it('changes nothing where nothing is learnt or forgotten', () => {
    const { right, wrong } = answerWeights(0.08, 0.1)
    const weights = startingWeights(3, 0.5)
    addEvidence(weights, Float64Array.of(0, 4 * right, wrong, 0, 0, right, 0, 2 * wrong))
    const before = chances(weights)
    letTimePass(weights, 0, 0)
    chances(weights).forEach((chance, demand) => {
      expect(chance).toBeCloseTo(before[demand] ?? NaN, 12)
    })
  })

  it('leads from any start to learn / (learn + forget) in the end', () => {
    for (const prior of [0.001, 0.999]) {
      const weights = startingWeights(2, prior)
      for (let week = 0; week < 200; week++) letTimePass(weights, 0.2, 0.05)
      expect(chances(weights)[1]).toBeCloseTo(0.8, 9)
      expect(chances(weights)[3]).toBeCloseTo(0.64, 9)
    }
  })

  it('leaves later evidence its power after any amount of contrary evidence', () => {
    const { right, wrong } = answerWeights(0.08, 0.1)
    const weights = startingWeights(2, 0.5)
    addEvidence(weights, Float64Array.of(0, 1000 * wrong, 0, 0))
    letTimePass(weights, 0, 0)
    addEvidence(weights, Float64Array.of(0, 1000 * right, 0, 0))
    expect(chances(weights)[1]).toBeCloseTo(1, 9)
  })
})
