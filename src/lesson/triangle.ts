import { generatorFrom } from '../items/seed'
import { pickFrom } from './random'

/**
 * The numbers 1 to 9 around a triangle, four on a side, from the top corner clockwise: top, two numbers, right corner, two
 * numbers, left corner, two numbers.
 */
export type Triangle = readonly number[]

/** The places of the corners in a triangle. */
export const CORNERS: readonly number[] = [0, 3, 6]

/** The places of each side, from corner to corner: right, bottom, left. */
export const SIDES: readonly (readonly number[])[] = [
  [0, 1, 2, 3],
  [3, 4, 5, 6],
  [6, 7, 8, 0],
]

const NUMBERS = [1, 2, 3, 4, 5, 6, 7, 8, 9]

/** The total of a triangle's right side; in a solution of every side. */
export function sideTotal(triangle: Triangle): number {
  return sumAt(triangle, SIDES[0] ?? [])
}

/** The sum of the corners where every side has this total: the sides count each corner twice, and 1 to 9 make 45. */
export function cornerSum(total: number): number {
  return 3 * total - NUMBERS.reduce((sum, number) => sum + number, 0)
}

let found: readonly Triangle[] | undefined

/** Every way to place 1 to 9 so that all sides have one total, turned, reflected and swapped ways counted each: 864 of them. */
export function allTriangles(): readonly Triangle[] {
  found ??= findTriangles()
  return found
}

function findTriangles(): Triangle[] {
  return arrangements(NUMBERS, 3).flatMap(([top = 0, right = 0, left = 0]) => {
    const rest = without(NUMBERS, [top, right, left])
    return arrangements(rest, 2).flatMap(([a = 0, b = 0]) => {
      const total = top + a + b + right
      const others = without(rest, [a, b])
      return arrangements(others, 2)
        .filter(([c = 0, d = 0]) => right + c + d + left === total)
        .filter((pair) => sum(without(others, pair)) === total - left - top)
        .flatMap(([c = 0, d = 0]) =>
          arrangements(without(others, [c, d]), 2).map(([e = 0, f = 0]) => [
            ...[top, a, b],
            ...[right, c, d],
            ...[left, e, f],
          ]),
        )
    })
  })
}

/**
 * The essentially different solutions, one of each: turning or reflecting the triangle, and swapping the two numbers between the
 * corners of a side, make no other solution. Of the 48 ways so made the one given has its corners ascending from the top
 * clockwise, and the numbers of each side too.
 */
export function essentialTriangles(): Triangle[] {
  const inOrder: readonly (readonly [number, number])[] = [
    [0, 3],
    [3, 6],
    [1, 2],
    [4, 5],
    [7, 8],
  ]
  return allTriangles().filter((triangle) =>
    inOrder.every(([first, second]) => (triangle[first] ?? 0) < (triangle[second] ?? 0)),
  )
}

/** How much of a triangle is given: an inner number on each side, and two corners, one corner or none. */
export type TriangleGrade = 1 | 2 | 3

/** A puzzle: the total of every side, the given numbers by place (null where the pupil writes), its only solution, and a hint. */
export interface TrianglePuzzle {
  readonly grade: TriangleGrade
  readonly total: number
  readonly given: readonly (number | null)[]
  readonly solution: Triangle
  readonly hint: readonly string[]
}

const CORNERS_GIVEN: Readonly<Record<TriangleGrade, readonly (readonly number[])[]>> = {
  1: [
    [0, 3],
    [3, 6],
    [0, 6],
  ],
  2: [[0], [3], [6]],
  3: [[]],
}

/** One inner number of each side: two blanks side by side could always be swapped, so a puzzle needs at least these. */
const INNER_GIVEN = [1, 2].flatMap((right) =>
  [4, 5].flatMap((bottom) => [7, 8].map((left) => [right, bottom, left])),
)

/**
 * A puzzle of this grade with exactly one solution, each such puzzle as likely as any other: solutions and places to show are
 * drawn until what is shown, with the side total, leaves no other solution. The same seed gives the same puzzle.
 */
export function trianglePuzzle(grade: TriangleGrade, seed: string | number): TrianglePuzzle {
  const generator = generatorFrom(`${seed} grade ${grade}`)
  const triangles = allTriangles()
  for (;;) {
    const solution = pickFrom(triangles, generator)
    const shown = [...pickFrom(CORNERS_GIVEN[grade], generator), ...pickFrom(INNER_GIVEN, generator)]
    const total = sideTotal(solution)
    const fits = (triangle: Triangle) =>
      sideTotal(triangle) === total && shown.every((place) => triangle[place] === solution[place])
    if (triangles.filter(fits).length > 1) continue
    const given = solution.map((number, place) => (shown.includes(place) ? number : null))
    return { grade, total, given, solution, hint: cornerHint(total, given) }
  }
}

/** So many puzzles of a grade, none of them twice, at most TRIANGLES_ON_A_PAGE. The same seed gives the same puzzles. */
export function trianglePuzzles(
  grade: TriangleGrade,
  count: number,
  seed: string | number,
): TrianglePuzzle[] {
  const puzzles = new Map<string, TrianglePuzzle>()
  for (let draw = 1; puzzles.size < Math.min(count, TRIANGLES_ON_A_PAGE); draw++) {
    const puzzle = trianglePuzzle(grade, `${seed} ${draw}`)
    puzzles.set(JSON.stringify([puzzle.total, puzzle.given]), puzzle)
  }
  return [...puzzles.values()]
}

/** How many puzzles a page has room for. */
export const TRIANGLES_ON_A_PAGE = 4

/** The corner rule in words, for a side total and what is given: why the corners add up as they do, and what that leaves. */
function cornerHint(total: number, given: TrianglePuzzle['given']): string[] {
  const corners = cornerSum(total)
  const known = CORNERS.flatMap((place) => given[place] ?? [])
  const left = corners - sum(known)
  const rule = [
    `The numbers 1 to 9 add up to 45. The three sides together make 3 × ${total} = ${3 * total}.`,
    `That is ${corners} more than 45, because each corner is on two sides. So corner + corner + corner = ${corners}.`,
  ]
  if (known.length === 0) return [...rule, `Which three different numbers make ${corners}?`]
  const shown = known.length === 1 ? `One corner is ${known[0]}` : `Two corners are ${known.join(' and ')}`
  const other = known.length === 1 ? 'the other two corners add up to' : 'the last corner is'
  return [...rule, `${shown}, so ${other} ${left}.`]
}

function arrangements(numbers: readonly number[], count: number): number[][] {
  if (count === 0) return [[]]
  return numbers.flatMap((first) =>
    arrangements(without(numbers, [first]), count - 1).map((rest) => [first, ...rest]),
  )
}

function without(numbers: readonly number[], taken: readonly number[]): number[] {
  return numbers.filter((number) => !taken.includes(number))
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, number) => total + number, 0)
}

function sumAt(triangle: Triangle, places: readonly number[]): number {
  return sum(places.map((place) => triangle[place] ?? 0))
}
