import { describe, expect, it } from 'vitest'
import {
  allTriangles,
  CORNERS,
  cornerSum,
  essentialTriangles,
  SIDES,
  sideTotal,
  type Triangle,
} from '../../src/lesson/triangle'

/** Every order of 1 to 9 tried, independently of the search under test. */
function byBruteForce(): Triangle[] {
  const found: Triangle[] = []
  const placed: number[] = []
  const at = (place: number) => placed[place % 9] ?? 0
  const side = (corner: number) => at(corner) + at(corner + 1) + at(corner + 2) + at(corner + 3)
  const place = () => {
    if (placed.length === 9) {
      if (side(0) === side(3) && side(3) === side(6)) found.push([...placed])
      return
    }
    for (let number = 1; number <= 9; number++) {
      if (placed.includes(number)) continue
      placed.push(number)
      place()
      placed.pop()
    }
  }
  place()
  return found
}

const countsByTotal = (triangles: readonly Triangle[]) => {
  const counts: Record<number, number> = {}
  for (const triangle of triangles) counts[sideTotal(triangle)] = (counts[sideTotal(triangle)] ?? 0) + 1
  return counts
}

// Trotter (1972, 1974, Journal of Recreational Mathematics; from memory): perimeter-magic triangles of order 4.
describe('triangles of the numbers 1 to 9, four on a side', () => {
  it('have side totals 17, 19, 20, 21 and 23 only, with 2, 4, 6, 4 and 2 essentially different solutions', () => {
    expect(countsByTotal(essentialTriangles())).toEqual({ 17: 2, 19: 4, 20: 6, 21: 4, 23: 2 })
  })

  it('have corners that sum to 3S − 45, so 12 for S = 19', () => {
    expect(cornerSum(19)).toBe(12)
    for (const triangle of allTriangles()) {
      const corners = CORNERS.reduce((sum, place) => sum + (triangle[place] ?? 0), 0)
      expect(corners).toBe(3 * sideTotal(triangle) - 45)
    }
  })
})

describe('the search', () => {
  it('finds what trying all 362,880 orders finds, 48 ways of each essential solution', () => {
    const forced = byBruteForce()
    const asText = (triangles: readonly Triangle[]) => triangles.map(String).sort()
    expect(asText(allTriangles())).toEqual(asText(forced))
    expect(countsByTotal(forced)).toEqual({ 17: 96, 19: 192, 20: 288, 21: 192, 23: 96 })
  })

  it('the 48 symmetries of the essential solutions give all of them, each once', () => {
    const turns = (t: Triangle) => [0, 3, 6].map((by) => t.map((_, place) => t[(place + by) % 9] ?? 0))
    const mirror = (t: Triangle) => t.map((_, place) => t[(9 - place) % 9] ?? 0)
    const swaps = (t: Triangle) =>
      [1, 4, 7].reduce<Triangle[]>(
        (all, first) => [
          ...all,
          ...all.map((each) => {
            const copy = [...each]
            ;[copy[first], copy[first + 1]] = [copy[first + 1] ?? 0, copy[first] ?? 0]
            return copy
          }),
        ],
        [t],
      )
    const made = essentialTriangles()
      .flatMap(turns)
      .flatMap((t) => [t, mirror(t)])
      .flatMap(swaps)
    expect(new Set(made.map(String)).size).toBe(made.length)
    expect(made.map(String).sort()).toEqual(allTriangles().map(String).sort())
  })

  it('every side of every solution has the total', () => {
    for (const triangle of allTriangles())
      for (const side of SIDES)
        expect(side.reduce((sum, place) => sum + (triangle[place] ?? 0), 0)).toBe(sideTotal(triangle))
  })
})
