import type { RandomGenerator } from 'pure-rand/types/RandomGenerator'
import { wholeNumeral } from '../arithmetic/numeral'
import { questionOf, type Operation, type Question } from '../arithmetic/question'
import { strategyFor } from '../arithmetic/strategy'
import { generatorFrom } from '../items/seed'
import { pickFrom, shuffled } from './random'

/** The totals of two dice, each with the number of ways, of 36, in which it falls. */
export const TOTALS: readonly { readonly total: number; readonly ways: number }[] = Array.from(
  { length: 11 },
  (_, index) => ({ total: index + 2, ways: 6 - Math.abs(5 - index) }),
)

const WAYS_IN_ALL = 36

/** The fewest and the most rows, and columns, of a grid. */
export const GRID_SIDE = { least: 2, most: 8 } as const

/** How a question of the grid is best worked out: by strategyFor. */
export type Counting = 'count on' | 'count back'

/**
 * What a board practises. `take away`: two digits minus one digit; `tens` and `hundreds`: the same in tens and hundreds; `add`: one digit and
 * another; `bonds`: what makes 20.
 */
export const BOARDS = ['take away', 'add', 'tens', 'hundreds', 'bonds'] as const
export type Board = (typeof BOARDS)[number]

/** What a total of the dice is worth on a board. */
export function worthOf(board: Board): number {
  return board === 'tens' ? 10 : board === 'hundreds' ? 100 : 1
}

/**
 * A cell of the grid: a question, the total of two dice for which it stands (its answer is that times the board's worth), and which way of
 * counting suits, null on boards without counting.
 */
export interface DiceCell {
  readonly question: Question
  readonly total: number
  readonly counting: Counting | null
}

/** A grid of questions, row by row, and the exact expected number of rolls until every cell is covered. */
export interface DiceGrid {
  readonly board: Board
  readonly rows: readonly (readonly DiceCell[])[]
  readonly rolls: ExactRolls
}

/** An exact fraction in lowest terms, and the nearest number. */
export interface ExactRolls {
  readonly numerator: bigint
  readonly denominator: bigint
  readonly value: number
}

/** A grid, or the sentence that says why there is none. */
export type DiceReading = { readonly grid: DiceGrid } | { readonly problem: string }

/**
 * A grid for the dice starter. Two dice are rolled and one uncovered cell whose answer is their total is covered; when there is
 * none the roll is lost. The totals are shared out in proportion to their chances, where there is counting half the cells (as nearly as
 * the numbers allow) are counted on and half back, and no question comes twice before all with its total have come. The same seed gives
 * the same grid.
 */
export function diceGrid(
  rows: number,
  columns: number,
  seed: string | number,
  board: Board = 'take away',
): DiceReading {
  const isSide = (side: number) => Number.isInteger(side) && side >= GRID_SIDE.least && side <= GRID_SIDE.most
  if (!isSide(rows) || !isSide(columns))
    return { problem: `A grid has ${GRID_SIDE.least} to ${GRID_SIDE.most} rows and as many columns.` }
  const counts = shareOut(rows * columns)
  const generator = generatorFrom(board === 'take away' ? seed : `${seed} ${board}`)
  const stock = TOTALS.map(({ total }) => cellsWith(total, board))
  const cells = shuffled(fillCells(counts, stock, generator), generator)
  return {
    grid: {
      board,
      rows: Array.from({ length: rows }, (_, row) => cells.slice(row * columns, (row + 1) * columns)),
      rolls: expectedRolls(counts),
    },
  }
}

/** The sizes a teacher can choose from, the shortest game first, with the expected number of rolls of each. */
export function gridSizes(): { readonly rows: number; readonly columns: number; readonly rolls: number }[] {
  const sides = Array.from({ length: GRID_SIDE.most - GRID_SIDE.least + 1 }, (_, i) => i + GRID_SIDE.least)
  return sides
    .flatMap((rows) =>
      sides
        .filter((columns) => columns === rows || columns === rows + 1)
        .map((columns) => ({ rows, columns })),
    )
    .map((size) => ({ ...size, rolls: expectedRolls(shareOut(size.rows * size.columns)).value }))
}

/** How many times a pair of children roll in a minute, with finding a cell and agreeing on it (common practice, no source). */
const ROLLS_A_MINUTE = 4

/** About how many minutes so many rolls take, at least 1. */
export function minutesFor(rolls: number): number {
  return Math.max(1, Math.round(rolls / ROLLS_A_MINUTE))
}

/**
 * How many of so many cells hold each total, 2 to 12: the whole part of its share, and one more where the share's fraction is
 * largest (of equal fractions first the total nearer to 7, then the lower).
 */
export function shareOut(cells: number): number[] {
  const whole = TOTALS.map(({ ways }) => Math.floor((cells * ways) / WAYS_IN_ALL))
  const left = cells - whole.reduce((sum, count) => sum + count, 0)
  const next = TOTALS.map(({ ways, total }, index) => ({
    index,
    total,
    fraction: (cells * ways) % WAYS_IN_ALL,
  }))
    .sort(
      (a, b) => b.fraction - a.fraction || Math.abs(a.total - 7) - Math.abs(b.total - 7) || a.total - b.total,
    )
    .slice(0, left)
    .map(({ index }) => index)
  return whole.map((count, index) => count + Number(next.includes(index)))
}

/**
 * The exact expected number of rolls until every cell is covered, for the number of cells with each total, 2 to 12.
 *
 * Let rolls come at random moments, 36 in each unit of time, so that each total comes at its own rate, its ways w, whatever the
 * others do. A total with n cells is still open at time x with chance e^(−wx) Σ (wx)^j / j!, j < n; the game is over when none
 * is. Multiplying out one minus these chances (inclusion and exclusion) leaves terms c · x^m / m! · e^(−Wx), W the ways of the
 * totals in the term, with whole numbers c; each adds c / W^(m+1) to the expected time, and 36 times that are the rolls.
 */
export function expectedRolls(counts: readonly number[]): ExactRolls {
  if (counts.length !== TOTALS.length || !counts.every((count) => Number.isSafeInteger(count) && count >= 0))
    throw new RangeError('The cells are counted for each total from 2 to 12.')
  let terms = new Map<number, readonly bigint[]>([[0, [1n]]])
  TOTALS.forEach(({ ways }, index) => {
    const open = Array.from({ length: counts[index] ?? 0 }, (_, j) => BigInt(ways) ** BigInt(j))
    if (open.length > 0) terms = withTotal(terms, ways, open)
  })
  let time: Fraction = { over: 0n, under: 1n }
  for (const [ways, coefficients] of terms) {
    if (ways === 0) continue
    const base = BigInt(ways)
    const over = coefficients.reduce((sum, coefficient) => sum * base + coefficient, 0n)
    time = add(time, { over: -over, under: base ** BigInt(coefficients.length) })
  }
  const { over, under } = lowest(time.over * BigInt(WAYS_IN_ALL), time.under)
  return { numerator: over, denominator: under, value: Number((over * 10n ** 9n) / under) / 1e9 }
}

/** The terms times one minus the chance that another total is open. Coefficients are those of x^m / m!. */
function withTotal(
  terms: ReadonlyMap<number, readonly bigint[]>,
  ways: number,
  open: readonly bigint[],
): Map<number, readonly bigint[]> {
  const product = new Map<number, bigint[]>()
  for (const [before, coefficients] of terms) {
    addTo(product, before, coefficients, [1n])
    addTo(
      product,
      before + ways,
      coefficients,
      open.map((value) => -value),
    )
  }
  return product
}

function addTo(
  terms: Map<number, bigint[]>,
  ways: number,
  one: readonly bigint[],
  other: readonly bigint[],
): void {
  const sum = terms.get(ways) ?? []
  one.forEach((a, i) =>
    other.forEach((b, j) => {
      while (sum.length <= i + j) sum.push(0n)
      sum[i + j] = (sum[i + j] ?? 0n) + a * b * choose(i + j, j)
    }),
  )
  terms.set(ways, sum)
}

function choose(n: number, k: number): bigint {
  let result = 1n
  for (let i = 1; i <= k; i++) result = (result * BigInt(n - k + i)) / BigInt(i)
  return result
}

interface Fraction {
  readonly over: bigint
  readonly under: bigint
}

function add(one: Fraction, other: Fraction): Fraction {
  return lowest(one.over * other.under + other.over * one.under, one.under * other.under)
}

function lowest(over: bigint, under: bigint): Fraction {
  const common = greatestCommonFactor(over < 0n ? -over : over, under)
  return { over: over / common, under: under / common }
}

function greatestCommonFactor(a: bigint, b: bigint): bigint {
  return b === 0n ? a : greatestCommonFactor(b, a % b)
}

/** Every question of a board for this total. */
function cellsWith(total: number, board: Board): DiceCell[] {
  const digits = Array.from({ length: 9 }, (_, index) => index + 1)
  if (board === 'add')
    return digits
      .filter((first) => total - first >= 1 && total - first <= 9)
      .map((first) => ({ question: asked('add', first, total - first), total, counting: null }))
  if (board === 'bonds') return bondsWith(total)
  const worth = worthOf(board)
  return digits
    .filter((less) => total + less >= 10)
    .map((less) => ({
      question: asked('subtract', worth * (total + less), worth * less),
      total,
      counting: countingFor(asked('subtract', total + less, less)),
    }))
}

/** What is said to make 20, as a missing number in each of its places. */
const WHOLE = 20

function bondsWith(total: number): DiceCell[] {
  const question = asked('subtract', WHOLE, WHOLE - total)
  const forms: readonly Pick<Question, 'sign' | 'missing'>[] = [
    { sign: 'add', missing: 'second' },
    { sign: 'add', missing: 'first' },
    { sign: 'subtract', missing: 'second' },
  ]
  return forms.map((form) => ({ question: { ...question, ...form }, total, counting: null }))
}

function asked(operation: Operation, top: number, bottom: number): Question {
  const reading = questionOf({ operation, top: wholeNumeral(top), bottom: wholeNumeral(bottom) })
  if ('problem' in reading) throw new RangeError(reading.problem)
  return reading.question
}

function countingFor(question: Question): Counting {
  const { name, reason } = strategyFor(question)
  if (name !== 'count on' && name !== 'count back') throw new RangeError(reason)
  return name
}

/** Cells for the counts, those whose answers leave least choice between counting on and back first, so that the others can balance. */
function fillCells(
  counts: readonly number[],
  stock: readonly (readonly DiceCell[])[],
  generator: RandomGenerator,
): DiceCell[] {
  const wanted = TOTALS.flatMap((_, index) => Array<number>(counts[index] ?? 0).fill(index))
  const leeway = (index: number) => {
    const on = (stock[index] ?? []).filter(({ counting }) => counting === 'count on').length
    return Math.min(on, (stock[index]?.length ?? 0) - on)
  }
  const used = new Set<DiceCell>()
  const cells: DiceCell[] = []
  for (const index of wanted.sort((a, b) => leeway(a) - leeway(b))) {
    const all = stock[index] ?? []
    if (all.every((cell) => used.has(cell))) all.forEach((cell) => used.delete(cell))
    const fresh = all.filter((cell) => !used.has(cell))
    const wantedNext = shortOf(cells, generator)
    const short = fresh.filter(({ counting }) => counting === wantedNext)
    const cell = pickFrom(short.length > 0 ? short : fresh, generator)
    used.add(cell)
    cells.push(cell)
  }
  return cells
}

/** Which counting there is less of so far; by chance where they are even. */
function shortOf(cells: readonly DiceCell[], generator: RandomGenerator): Counting {
  const on = cells.filter(({ counting }) => counting === 'count on').length
  if (2 * on === cells.length) return pickFrom(['count on', 'count back'], generator)
  return 2 * on < cells.length ? 'count on' : 'count back'
}
