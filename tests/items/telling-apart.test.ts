import { describe, expect, it } from 'vitest'
import { answerWith, FAULTS } from '../../src/answers/faults'
import type { Operation, Question } from '../../src/arithmetic/question'
import { generatorFrom } from '../../src/items/seed'
import {
  chooseTellingApart,
  countTold,
  faultsAskedBy,
  type TellingApartSet,
} from '../../src/items/telling-apart'
import { asked } from '../support/asked'
import { sheetOf } from '../evidence/pupils'

const candidatesOf = (seed: string, count: number, operation: Operation = 'subtract') =>
  sheetOf(generatorFrom(seed), operation, count)

/** What a given set tells apart. */
const toldBy = (questions: readonly Question[], faults = faultsAskedBy(questions)): TellingApartSet =>
  chooseTellingApart(questions, questions.length, faults)

/** One number for how good a set is: pairs told on two questions first, then those told on one. */
function worth(set: TellingApartSet): number {
  const { enough, once } = countTold(set)
  return enough * 1000 + once
}

function combinations(size: number, count: number, from = 0): number[][] {
  if (count === 0) return [[]]
  return Array.from({ length: size - from }, (_, step) => from + step).flatMap((first) =>
    combinations(size, count - 1, first + 1).map((rest) => [first, ...rest]),
  )
}

describe('telling-apart sets', () => {
  it('reports for every pair of ways on how many of the questions their answers differ', () => {
    const questions = ['932 − 457', '305 − 128', '8000 − 2999', '7214 − 86'].map(asked)
    const { pairs, chosen } = toldBy(questions)
    expect(chosen).toEqual([0, 1, 2, 3])
    expect(pairs).toHaveLength((14 * 13) / 2)
    for (const { ways, questions: told } of pairs) {
      const [one, other] = ways.map((way) => FAULTS.filter(({ id }) => id === way))
      const differing = questions.filter(
        ({ calculation }) => answerWith(one ?? [], calculation) !== answerWith(other ?? [], calculation),
      )
      expect(told).toBe(differing.length)
    }
  })

  it('holds as many different candidates as asked, all where there are fewer, none of none', () => {
    const candidates = candidatesOf('size', 30)
    const { chosen } = chooseTellingApart(candidates, 8)
    expect(new Set(chosen).size).toBe(8)
    expect(chooseTellingApart(candidates.slice(0, 5), 8).chosen).toEqual([0, 1, 2, 3, 4])
    expect(chooseTellingApart([], 8)).toEqual({ chosen: [], pairs: [] })
  })

  it('is the same for the same candidates', () => {
    const candidates = candidatesOf('same', 40)
    expect(chooseTellingApart(candidates, 6)).toEqual(chooseTellingApart(candidates, 6))
  })

  it.each(['add', 'subtract'] as const)(
    'tells more pairs apart than any of 200 random sets (%s)',
    (operation) => {
      const candidates = candidatesOf('against chance', 120, operation)
      const faults = faultsAskedBy(candidates)
      const chosen = worth(chooseTellingApart(candidates, 8))
      for (let set = 0; set < 200; set += 1)
        expect(worth(toldBy(candidatesOf(`random ${set}`, 8, operation), faults))).toBeLessThanOrEqual(chosen)
    },
  )

  it.each([
    [10, 3],
    [12, 4],
    [14, 5],
  ])(
    'tells nearly as many pairs apart on two questions as the best set there is (%i candidates, %i chosen)',
    (size, count) => {
      for (const operation of ['add', 'subtract'] as const)
        for (const seed of ['a', 'b', 'c']) {
          const candidates = candidatesOf(`${seed} ${size}`, size, operation)
          const faults = faultsAskedBy(candidates)
          const best = combinations(size, count)
            .map((indices) =>
              toldBy(
                indices.flatMap((index) => candidates[index] ?? []),
                faults,
              ),
            )
            .reduce((a, b) => (worth(b) > worth(a) ? b : a))
          const found = chooseTellingApart(candidates, count)
          expect(worth(found)).toBeLessThanOrEqual(worth(best))
          expect(countTold(found).enough).toBeGreaterThanOrEqual(0.97 * countTold(best).enough)
        }
    },
  )

  it('tells every two subtraction faults on whole numbers apart, twice, with eight questions', () => {
    const { pairs } = chooseTellingApart(candidatesOf('all', 300), 8)
    const untold = pairs.filter(({ questions }) => questions < 2).map(({ ways }) => ways)
    expect(untold).toEqual([['right', 'lines-up-right']])
  })

  it('settles an open question: only the faults given, and the right method', () => {
    const { pairs } = chooseTellingApart(candidatesOf('open', 60), 3, [
      'takes-smaller-from-larger',
      'zero-gives-digit',
    ])
    expect(pairs.map(({ ways }) => ways)).toEqual([
      ['right', 'takes-smaller-from-larger'],
      ['right', 'zero-gives-digit'],
      ['takes-smaller-from-larger', 'zero-gives-digit'],
    ])
    for (const { questions } of pairs) expect(questions).toBeGreaterThanOrEqual(2)
  })
})
