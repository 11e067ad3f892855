import fc from 'fast-check'
import { uniformInt } from 'pure-rand/distribution/uniformInt'
import { describe, expect, it } from 'vitest'
import { answerKey } from '../../src/answers/typed'
import { numeralText } from '../../src/arithmetic/numeral'
import { printQuestion } from '../../src/arithmetic/question'
import { strategyFor } from '../../src/arithmetic/strategy'
import { generatorFrom } from '../../src/items/seed'
import {
  BOARDS,
  diceGrid,
  expectedRolls,
  gridSizes,
  minutesFor,
  shareOut,
  TOTALS,
  type Board,
  type DiceGrid,
} from '../../src/lesson/dice'

const sides = fc.integer({ min: 2, max: 8 })

function gridOf(rows: number, columns: number, seed: string | number): DiceGrid {
  const reading = diceGrid(rows, columns, seed)
  if ('problem' in reading) throw new Error(reading.problem)
  return reading.grid
}

/** The counts of cells by total, from a few that are not 0. */
const counts = (given: Record<number, number>) => TOTALS.map(({ total }) => given[total] ?? 0)

/** The expected number of rolls by first-step analysis over what is still uncovered. */
function byFirstStep(open: readonly number[], known = new Map<string, number>()): number {
  if (open.every((count) => count === 0)) return 0
  const before = known.get(open.join())
  if (before !== undefined) return before
  let chance = 0
  let after = 0
  TOTALS.forEach(({ ways }, index) => {
    if (open[index] === 0) return
    chance += ways / 36
    const next = open.map((count, each) => (each === index ? count - 1 : count))
    after += (ways / 36) * byFirstStep(next, known)
  })
  const value = (1 + after) / chance
  known.set(open.join(), value)
  return value
}

describe('the dice grid', () => {
  it('holds two-digit minus one-digit questions whose answers are their totals, in the chosen shape', () => {
    fc.assert(
      fc.property(sides, sides, fc.integer(), (rows, columns, seed) => {
        const grid = gridOf(rows, columns, seed)
        expect(grid.rows.map((row) => row.length)).toEqual(Array(rows).fill(columns))
        for (const { question, total, counting } of grid.rows.flat()) {
          const { top, bottom } = question.calculation
          expect([numeralText(top).length, numeralText(bottom).length]).toEqual([2, 1])
          expect(answerKey(question).value).toBe(String(total))
          expect(strategyFor(question).name).toBe(counting)
        }
      }),
      { numRuns: 40 },
    )
  })

  it('of every board asks for the total, in tens or hundreds where it says so, in numbers to its size', () => {
    const shapes: Readonly<Record<Board, RegExp>> = {
      'take away': /^\d\d − \d$/,
      add: /^\d \+ \d$/,
      tens: /^\d\d0 − \d0$/,
      hundreds: /^\d,\d00 − \d00$/,
      bonds: /^(?:20 − □ = \d+|\d+ \+ □ = 20|□ \+ \d+ = 20)$/,
    }
    fc.assert(
      fc.property(sides, sides, fc.integer(), fc.constantFrom(...BOARDS), (rows, columns, seed, board) => {
        const reading = diceGrid(rows, columns, seed, board)
        if ('problem' in reading) throw new Error(reading.problem)
        const worth = { 'take away': 1, add: 1, tens: 10, hundreds: 100, bonds: 1 }[board]
        for (const { question, total } of reading.grid.rows.flat()) {
          expect(printQuestion(question)).toMatch(shapes[board])
          expect(Number(answerKey(question).value)).toBe(total * worth)
        }
        const counts = TOTALS.map(
          (each) => reading.grid.rows.flat().filter(({ total }) => total === each.total).length,
        )
        expect(counts).toEqual(shareOut(rows * columns))
      }),
      { numRuns: 100 },
    )
  })

  it('takes about as many minutes as its rolls, four to a minute (common practice, no source)', () => {
    expect([1, 40, 62, 63].map(minutesFor)).toEqual([1, 10, 16, 16])
  })

  it('holds each total in proportion to its chance, to within one cell', () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 64 }), (cells) => {
        const shared = shareOut(cells)
        expect(shared.reduce((sum, count) => sum + count, 0)).toBe(cells)
        TOTALS.forEach(({ ways }, index) =>
          expect(Math.abs((shared[index] ?? 0) - (cells * ways) / 36)).toBeLessThan(1),
        )
      }),
    )
    expect(shareOut(36)).toEqual([1, 2, 3, 4, 5, 6, 5, 4, 3, 2, 1])
  })

  it('is mixed: as many counted on as back, to within one cell', () => {
    fc.assert(
      fc.property(sides, sides, fc.integer(), (rows, columns, seed) => {
        const cells = gridOf(rows, columns, seed).rows.flat()
        const on = cells.filter(({ counting }) => counting === 'count on').length
        expect(Math.abs(on - cells.length / 2)).toBeLessThanOrEqual(1)
      }),
      { numRuns: 150 },
    )
  })

  it('has no question twice up to 36 cells, and is the same for the same seed', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const texts = gridOf(6, 6, seed)
          .rows.flat()
          .map(({ question }) => printQuestion(question))
        expect(new Set(texts).size).toBe(36)
        expect(
          gridOf(6, 6, String(seed))
            .rows.flat()
            .map(({ question }) => printQuestion(question)),
        ).toEqual(texts)
      }),
      { numRuns: 20 },
    )
  })

  it('says what sizes there are when asked for another', () => {
    const problem = 'A grid has 2 to 8 rows and as many columns.'
    expect(diceGrid(1, 6, 1)).toEqual({ problem })
    expect(diceGrid(6, 9, 1)).toEqual({ problem })
    expect(diceGrid(2.5, 4, 1)).toEqual({ problem })
  })
})

describe('the expected number of rolls', () => {
  it('small cases by hand', () => {
    // One cell: 36 rolls for each way in which its total falls.
    expect(expectedRolls(counts({ 7: 1 }))).toEqual({ numerator: 6n, denominator: 1n, value: 6 })
    expect(expectedRolls(counts({ 2: 1 })).value).toBe(36)
    // Two cells with one total follow each other; with 2 and 12, one of two ways first (18 rolls), then the other (36).
    expect(expectedRolls(counts({ 7: 2 })).value).toBe(12)
    expect(expectedRolls(counts({ 2: 1, 12: 1 })).value).toBe(54)
    // 2 and 7: 36/7 for the first; after a 2 (1 in 7) six more, after a 7 (6 in 7) thirty-six: (36 + 6 + 216)/7.
    expect(expectedRolls(counts({ 2: 1, 7: 1 }))).toMatchObject({ numerator: 258n, denominator: 7n })
    expect(expectedRolls(counts({})).value).toBe(0)
  })

  it('agrees with first-step analysis', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 11, maxLength: 11 }), (open) => {
        expect(expectedRolls(open).value).toBeCloseTo(byFirstStep(open), 6)
      }),
      { numRuns: 8 },
    )
  })

  it('agrees with 20,000 games played, to within four standard errors', () => {
    const generator = generatorFrom('games')
    const shared = shareOut(20)
    const games = Array.from({ length: 20_000 }, () => {
      const open = [...shared]
      let left = 20
      let rolls = 0
      for (; left > 0; rolls++) {
        const index = uniformInt(generator, 1, 6) + uniformInt(generator, 1, 6) - 2
        if ((open[index] ?? 0) === 0) continue
        open[index] = (open[index] ?? 0) - 1
        left--
      }
      return rolls
    })
    const mean = games.reduce((sum, rolls) => sum + rolls, 0) / games.length
    const variance = games.reduce((sum, rolls) => sum + (rolls - mean) ** 2, 0) / (games.length - 1)
    const error = Math.sqrt(variance / games.length)
    expect(Math.abs(mean - expectedRolls(shared).value)).toBeLessThan(4 * error)
  })

  it('is told for every size, and a larger grid with more of every total takes longer', () => {
    const sizes = gridSizes()
    expect(sizes[0]).toMatchObject({ rows: 2, columns: 2 })
    expect(sizes.at(-1)).toMatchObject({ rows: 8, columns: 8 })
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 5 }), { minLength: 11, maxLength: 11 }),
        fc.nat(10),
        (open, at) => {
          const more = open.map((count, index) => (index === at ? count + 1 : count))
          expect(expectedRolls(more).value).toBeGreaterThan(expectedRolls(open).value)
        },
      ),
      { numRuns: 30 },
    )
  })

  it('refuses counts that are none', () => {
    expect(() => expectedRolls([1, 2])).toThrow('The cells are counted for each total from 2 to 12.')
    expect(() => expectedRolls(counts({ 7: -1 }))).toThrow(RangeError)
  })
})
