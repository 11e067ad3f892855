import fc from 'fast-check'
import { uniformBigInt } from 'pure-rand/distribution/uniformBigInt'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import { describe, expect, it } from 'vitest'
import { printQuestion, type Question } from '../../src/arithmetic/question'
import { takeCensus } from '../../src/items/census'
import { indexOfQuestion, questionAt } from '../../src/items/draw'
import type { Kind } from '../../src/items/kind'
import { generatorFrom, hashText } from '../../src/items/seed'
import { drawGradedSet, drawSet, MOST_QUESTIONS, type DrawnSet } from '../../src/items/sets'
import { kinds } from './kinds'

const questions = (set: DrawnSet): readonly Question[] => {
  if ('problem' in set) throw new Error(set.problem)
  return set.questions
}
const printed = (set: DrawnSet) => questions(set).map(printQuestion)

const ONE_DIGIT_SUMS: Kind = { operation: 'add', type: 'no carry', topDigits: 1, bottomDigits: 1 }
const THROUGH_ZEROS: Kind = {
  operation: 'subtract',
  type: 'through two or more zeros',
  topDigits: 4,
  bottomDigits: 4,
}
/** 1 − 1, 2 − 2, … 9 − 9. */
const NOTHING_LEFT: Kind = {
  operation: 'subtract',
  type: 'any',
  topDigits: 1,
  bottomDigits: 1,
  answerDigits: 0,
}

describe('seeds', () => {
  /** FNV-1a, 32 bits: test values published with the algorithm (from memory). */
  it.each([
    ['', 0x811c9dc5],
    ['a', 0xe40c292c],
    ['foobar', 0xbf9cf968],
  ])('hash of %j', (text, hash) => {
    expect(hashText(text)).toBe(hash)
  })

  it("are pure-rand's own generator, started with the hash, after 32 numbers", () => {
    const reference = xoroshiro128plus(hashText('Monday'))
    for (let left = 32; left > 0; left--) reference.next()
    const ours = generatorFrom('Monday')
    for (let left = 100; left > 0; left--) expect(ours.next()).toBe(reference.next())
  })

  it('choose as a plain shuffle of the whole list does', () => {
    const census = takeCensus(ONE_DIGIT_SUMS)
    const reference = generatorFrom(42)
    const list = Array.from({ length: 36 }, (_, index) => index)
    for (let here = 0; here < 10; here++) {
      const other = Number(uniformBigInt(reference, BigInt(here), 35n))
      const [one = NaN, two = NaN] = [list[here], list[other]]
      list[here] = two
      list[other] = one
    }
    const expected = list.slice(0, 10).map((index) => questionAt(census, BigInt(index)))
    expect(
      questions(drawSet({ kind: ONE_DIGIT_SUMS, count: 10, seed: 42 })).map((q) => q.calculation),
    ).toEqual(expected)
  })

  it('give the same set again, as number or text, and another set for another seed', () => {
    const set = (seed: string | number) => printed(drawSet({ kind: THROUGH_ZEROS, count: 10, seed }))
    expect(set(7)).toEqual(set('7'))
    expect(set('week 3')).toEqual(set('week 3'))
    expect(new Set(Array.from({ length: 200 }, (_, seed) => set(seed).join())).size).toBe(200)
  })

  it('stay the same from one release to the next', () => {
    expect(printed(drawSet({ kind: THROUGH_ZEROS, count: 5, seed: 1 }))).toEqual([
      '8,004 − 2,985',
      '2,008 − 1,989',
      '8,001 − 6,747',
      '6,007 − 3,329',
      '5,006 − 1,049',
    ])
  })
})

describe('a set', () => {
  it('holds as many questions as asked, none twice, or says how many there are', () => {
    fc.assert(
      fc.property(kinds, fc.integer({ min: 1, max: 40 }), fc.string(), (kind, count, seed) => {
        const set = drawSet({ kind, count, seed })
        const available = takeCensus(kind).count
        if ('problem' in set) {
          expect(set.available).toBe(available)
          expect(available).toBeLessThan(BigInt(count))
          expect(set.problem).toMatch(
            available === 0n ? /^No such question exists: .+\.$/ : /^Only \d+ such .+\.$/,
          )
        } else {
          expect(new Set(printed(set)).size).toBe(count)
        }
      }),
      { numRuns: 300 },
    )
  })

  it('can be the whole kind, in another order for another seed', () => {
    const whole = (seed: number) => printed(drawSet({ kind: ONE_DIGIT_SUMS, count: 36, seed }))
    expect(whole(1)).not.toEqual(whole(2))
    expect([...whole(1)].sort()).toEqual([...whole(2)].sort())
    expect(new Set(whole(1)).size).toBe(36)
  })

  it('avoids the questions already set, to the last one', () => {
    const avoid: Question[] = []
    for (const left of [26n, 16n, 6n]) {
      avoid.push(...questions(drawSet({ kind: ONE_DIGIT_SUMS, count: 10, seed: 'again', avoid })))
      expect(new Set(avoid.map(printQuestion)).size).toBe(avoid.length)
      expect(drawSet({ kind: ONE_DIGIT_SUMS, count: 30, seed: 1, avoid })).toMatchObject({ available: left })
    }
    avoid.push(...questions(drawSet({ kind: ONE_DIGIT_SUMS, count: 6, seed: 'again', avoid })))
    expect(new Set(avoid.map(printQuestion)).size).toBe(36)
    expect(drawSet({ kind: ONE_DIGIT_SUMS, count: 1, seed: 1, avoid })).toEqual({
      problem: 'All 36 such questions have been used: 1 digit + 1 digit, no carry.',
      available: 0n,
    })
  })

  it('takes no heed of avoided questions of other kinds, or named twice', () => {
    const others = questions(drawSet({ kind: THROUGH_ZEROS, count: 20, seed: 1 }))
    const [own] = questions(drawSet({ kind: ONE_DIGIT_SUMS, count: 1, seed: 1 }))
    if (!own) throw new Error('nothing drawn')
    expect(drawSet({ kind: ONE_DIGIT_SUMS, count: 36, seed: 1, avoid: [...others, own, own] })).toEqual({
      problem: 'Only 35 of the 36 such questions are left: 1 digit + 1 digit, no carry.',
      available: 35n,
    })
  })

  it('prints money in pounds and in pence', () => {
    const money = { operation: 'add', type: 'any', topDigits: 2, bottomDigits: 1 } as const
    const pounds = { ...money, topDecimals: 2, bottomDecimals: 2, unit: '£' } as const
    expect(printed(drawSet({ kind: pounds, count: 1, seed: 1 }))[0]).toMatch(/^£\d\d\.\d\d \+ £\d\.\d\d$/)
    expect(printed(drawSet({ kind: { ...money, unit: 'p' }, count: 1, seed: 1 }))[0]).toMatch(
      /^\d\dp \+ \dp$/,
    )
  })

  it.each<[Kind, number, string, bigint]>([
    [
      { ...THROUGH_ZEROS, topDigits: 3, bottomDigits: 3 },
      1,
      'No such question exists: 3 digits − 3 digits, through two or more zeros.',
      0n,
    ],
    [NOTHING_LEFT, 10, 'Only 9 such questions exist: 1 digit − 1 digit, answer below 1.', 9n],
    [
      { ...THROUGH_ZEROS, topDigits: 15, bottomDigits: 15, zerosCrossed: 14 },
      1,
      'No such question exists: 15 digits − 15 digits, through two or more zeros, zeros crossed: 14.',
      0n,
    ],
    [THROUGH_ZEROS, 0, `A set holds 1 to ${MOST_QUESTIONS} questions of a kind.`, 162000n],
    [THROUGH_ZEROS, 2.5, `A set holds 1 to ${MOST_QUESTIONS} questions of a kind.`, 162000n],
    [THROUGH_ZEROS, NaN, `A set holds 1 to ${MOST_QUESTIONS} questions of a kind.`, 162000n],
    [
      { ...THROUGH_ZEROS, topDigits: 16 },
      1,
      'The top number must have 1 to 15 digits before the point (0 for a number below 1).',
      0n,
    ],
  ])('says why there is none: %j, %d questions', (kind, count, problem, available) => {
    expect(drawSet({ kind, count, seed: 1 })).toEqual({ problem, available })
  })
})

/** 0.999 quantile of chi-square with 35 degrees of freedom: 66.62 (handbook table, from memory; computed again). */
const QUANTILE = 66.62

function chiSquare(seen: readonly string[], cells: number): number {
  const counts = new Map<string, number>()
  for (const cell of seen) counts.set(cell, (counts.get(cell) ?? 0) + 1)
  const expected = seen.length / cells
  const unseen = cells - counts.size
  return [...counts.values()].reduce(
    (sum, count) => sum + (count - expected) ** 2 / expected,
    unseen * expected,
  )
}

describe('uniformity, by chi-square over 36 cells', () => {
  const seeds = Array.from({ length: 7200 }, (_, seed) => seed)

  it('of single questions over a small kind, from one seed to the next', () => {
    const seen = seeds.flatMap((seed) => printed(drawSet({ kind: ONE_DIGIT_SUMS, count: 1, seed })))
    expect(chiSquare(seen, 36)).toBeLessThan(QUANTILE)
  })

  it('of the sets of two out of nine questions', () => {
    const seen = seeds.map((seed) =>
      [...printed(drawSet({ kind: NOTHING_LEFT, count: 2, seed }))].sort().join(),
    )
    expect(chiSquare(seen, 36)).toBeLessThan(QUANTILE)
  })

  it('of the first digits over a kind of 36 · 55^14 questions', () => {
    const kind: Kind = { operation: 'add', type: 'no carry', topDigits: 15, bottomDigits: 15 }
    const seen = seeds
      .slice(0, 72)
      .flatMap((seed) =>
        questions(drawSet({ kind, count: 100, seed })).map(
          ({ calculation: { top, bottom } }) => `${top.digits.at(-1)} ${bottom.digits.at(-1)}`,
        ),
      )
    expect(chiSquare(seen, 36)).toBeLessThan(QUANTILE)
  })

  it('finds out a lopsided draw', () => {
    const seen = seeds.map((seed) => String(Math.floor(36 * ((seed + 0.5) / 7200) ** 1.1)))
    expect(chiSquare(seen, 36)).toBeGreaterThan(QUANTILE)
  })
})

describe('a graded set', () => {
  const zero: Kind = { operation: 'subtract', type: 'through a zero', topDigits: 3, bottomDigits: [2, 3] }
  const one: Kind = {
    operation: 'subtract',
    type: 'one exchange, tens to ones',
    topDigits: 3,
    bottomDigits: 3,
  }
  const none: Kind = { operation: 'subtract', type: 'no exchange', topDigits: 3, bottomDigits: 3 }

  it('runs from easy to hard whatever the order of its parts, short numbers first', () => {
    const parts = [zero, one, none].map((kind) => ({ kind, count: 4 }))
    const set = drawGradedSet({ parts, seed: 3 })
    const census = [none, one, zero].map(takeCensus)
    const rungs = questions(set).map(({ calculation }) =>
      census.findIndex((each) => indexOfQuestion(each, calculation) !== undefined),
    )
    expect(rungs).toEqual([0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2, 2])
    const lengths = questions(set)
      .slice(8)
      .map(({ calculation }) => calculation.bottom.digits.length)
    expect(lengths).toEqual([...lengths].sort())
    expect(drawGradedSet({ parts, seed: 3 })).toEqual(set)
  })

  it('never repeats a question, even where its parts overlap', () => {
    const parts = [
      { kind: ONE_DIGIT_SUMS, count: 30 },
      { kind: { ...ONE_DIGIT_SUMS, type: 'any' as const }, count: 51 },
    ]
    expect(new Set(printed(drawGradedSet({ parts, seed: 5 }))).size).toBe(81)
  })

  it('avoids what has been set, and names the part that cannot be filled', () => {
    const avoid = questions(drawSet({ kind: ONE_DIGIT_SUMS, count: 36, seed: 1 }))
    const parts = [none, ONE_DIGIT_SUMS].map((kind) => ({ kind, count: 2 }))
    expect(drawGradedSet({ parts, seed: 1, avoid })).toEqual({
      problem: 'All 36 such questions have been used: 1 digit + 1 digit, no carry.',
      available: 0n,
    })
  })
})
