import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  allTriangles,
  CORNERS,
  cornerSum,
  sideTotal,
  trianglePuzzle,
  trianglePuzzles,
  TRIANGLES_ON_A_PAGE,
  type TriangleGrade,
} from '../../src/lesson/triangle'

const triangles = allTriangles()
const grades = fc.constantFrom<TriangleGrade>(1, 2, 3)

describe('number triangle puzzles', () => {
  it('have exactly one solution, which agrees with what is given', () => {
    fc.assert(
      fc.property(grades, fc.integer(), (grade, seed) => {
        const { given, total, solution } = trianglePuzzle(grade, seed)
        const fitting = triangles.filter(
          (triangle) =>
            sideTotal(triangle) === total &&
            given.every((number, place) => number === null || number === triangle[place]),
        )
        expect(fitting).toEqual([solution])
      }),
      { numRuns: 60 },
    )
  })

  it('give fewer numbers from grade to grade: an inner number on each side, and two, one or no corners', () => {
    for (const grade of [1, 2, 3] as const) {
      const { given } = trianglePuzzle(grade, 'week 3')
      expect(given.filter((number) => number !== null)).toHaveLength(6 - grade)
      expect(CORNERS.filter((place) => given[place] !== null)).toHaveLength(3 - grade)
    }
  })

  it('come from a large stock, and the same seed gives the same puzzle', () => {
    expect(trianglePuzzle(2, 7)).toEqual(trianglePuzzle(2, '7'))
    const drawn = Array.from({ length: 20 }, (_, seed) => trianglePuzzle(3, seed).given.join())
    expect(new Set(drawn).size).toBeGreaterThan(15)
  })

  it('fill a page without the same puzzle twice, and no more than a page', () => {
    fc.assert(
      fc.property(grades, fc.integer(), fc.integer({ min: 0, max: 9 }), (grade, seed, count) => {
        const puzzles = trianglePuzzles(grade, count, seed)
        expect(puzzles).toHaveLength(Math.min(count, TRIANGLES_ON_A_PAGE))
        expect(new Set(puzzles.map((each) => JSON.stringify(each))).size).toBe(puzzles.length)
        expect(puzzles.every((each) => each.grade === grade)).toBe(true)
        expect(trianglePuzzles(grade, count, seed)).toEqual(puzzles)
      }),
      { numRuns: 20 },
    )
  })

  it('hint by the corner rule in words, true of the solution', () => {
    fc.assert(
      fc.property(grades, fc.integer(), (grade, seed) => {
        const { total, hint, given, solution } = trianglePuzzle(grade, seed)
        const corners = CORNERS.map((place) => solution[place] ?? 0)
        expect(corners.reduce((sum, corner) => sum + corner, 0)).toBe(cornerSum(total))
        expect(hint[1]).toContain(`corner + corner + corner = ${cornerSum(total)}.`)
        const hidden = CORNERS.filter((place) => given[place] === null).map((place) => solution[place] ?? 0)
        const left = hidden.reduce((sum, corner) => sum + corner, 0)
        expect(hint[2]).toMatch(grade === 3 ? /^Which three/ : new RegExp(` ${left}\\.$`))
      }),
      { numRuns: 40 },
    )
  })
})
