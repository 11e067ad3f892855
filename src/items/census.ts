import { additionType, subtractionType } from '../arithmetic/exchange'
import { digitChoices, type Digits, type Kind } from './kind'

/** The printed digits of one column, top and bottom; undefined where none is printed. */
export type DigitPair = readonly [top: number | undefined, bottom: number | undefined]

/** Digit pairs of one column that all lead to the same situation in the columns on the left. */
export interface Branch {
  readonly pairs: readonly DigitPair[]
  readonly then: Tally
}

/** In how many ways a question can be completed leftwards from a column, `count`, by what is written in that column. */
export interface Tally {
  readonly count: bigint
  readonly branches: readonly Branch[]
}

/** The questions of one outline: `columns` are its places from the right, `tally` counts from the first of them. */
export interface Section {
  readonly columns: readonly number[]
  readonly tally: Tally
}

/** How many questions a kind has, `count`, and the tables by which they are numbered. */
export interface Census {
  readonly kind: Kind
  readonly count: bigint
  readonly sections: readonly Section[]
}

/** The place of a number's first digit that is not 0, and its digits after the point. */
interface Outline {
  readonly lead: number
  readonly decimals: number
}

/** What is asked of every question of a section: the outline of both numbers, and the answer's digits where it matters. */
interface Shape {
  readonly top: Outline
  readonly bottom: Outline
  readonly answer: number | undefined
}

/**
 * What the columns on the right hand on: whether a ten is on its way (lent to the right, or carried to the left), the columns
 * where one changed hands as far as the type depends on them, and the printed zeros crossed, up to the most that matters.
 */
interface Situation {
  readonly ten: boolean
  readonly places: readonly number[]
  readonly zeros: number
}

/** Digit pairs of a column that do the same: send a ten on or not, cross a zero or not. */
interface Way {
  readonly pairs: readonly DigitPair[]
  readonly sends: boolean
  readonly crosses: boolean
}

/**
 * Counts the ordered pairs (top, bottom) that a kind describes, exactly and without listing them: column by column from the
 * right, one count for each situation that can arise. A subtraction's top is not the smaller number.
 * The kind must be sound (see problemOfKind).
 */
export function takeCensus(kind: Kind): Census {
  const sections = shapesOf(kind).map((shape) => sectionOf(kind, shape))
  const count = sections.reduce((sum, { tally }) => sum + tally.count, 0n)
  return { kind, count, sections: sections.filter(({ tally }) => tally.count > 0n) }
}

function shapesOf(kind: Kind): Shape[] {
  const answers = kind.answerDigits === undefined ? [undefined] : digitChoices(kind.answerDigits)
  return outlinesOf(kind.topDigits, kind.topDecimals).flatMap((top) =>
    outlinesOf(kind.bottomDigits, kind.bottomDecimals).flatMap((bottom) =>
      answers.map((answer) => ({ top, bottom, answer })),
    ),
  )
}

function outlinesOf(digits: Digits, decimals = 0): Outline[] {
  const belowOne = Array.from({ length: decimals }, (_, index) => -1 - index)
  return digitChoices(digits)
    .flatMap((count) => (count === 0 ? belowOne : [count - 1]))
    .map((lead) => ({ lead, decimals }))
}

const ALL_DIGITS = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9]

function digitsAllowed({ lead, decimals }: Outline, place: number): readonly (number | undefined)[] {
  if (place < -decimals || place > Math.max(lead, 0)) return [undefined]
  if (place > lead) return [0]
  return place === lead ? ALL_DIGITS.slice(1) : ALL_DIGITS
}

function sectionOf(kind: Kind, shape: Shape): Section {
  const right = -Math.max(shape.top.decimals, shape.bottom.decimals)
  const left = Math.max(shape.top.lead, shape.bottom.lead, 0) + 1
  const columns = Array.from({ length: left - right }, (_, index) => right + index)
  if (kind.places?.some((place) => !columns.includes(place))) return { columns, tally: NONE }
  const ways = columns.map((place) => [false, true].map((ten) => waysOf(kind, shape, place, ten)))
  const zerosThatMatter = Math.max(2, (kind.zerosCrossed ?? 0) + 1)
  const known = new Map<string, Tally>()

  function tallyFrom(index: number, situation: Situation): Tally {
    const place = columns[index]
    if (place === undefined) return fits(kind, shape.answer, left, situation) ? ONE : NONE
    const key = `${index} ${situation.ten} ${situation.places} ${situation.zeros}`
    const before = known.get(key)
    if (before) return before
    const branches = (ways[index]?.[Number(situation.ten)] ?? [])
      .map((way) => ({
        pairs: way.pairs,
        then: tallyFrom(index + 1, {
          ten: way.sends,
          places: way.sends ? withPlace(situation.places, place) : situation.places,
          zeros: Math.min(situation.zeros + Number(way.crosses), zerosThatMatter),
        }),
      }))
      .filter(({ then }) => then.count > 0n)
    const tally = { count: branches.reduce((sum, branch) => sum + sizeOf(branch), 0n), branches }
    known.set(key, tally)
    return tally
  }

  return { columns, tally: tallyFrom(0, { ten: false, places: [], zeros: 0 }) }
}

const ONE: Tally = { count: 1n, branches: [] }
const NONE: Tally = { count: 0n, branches: [] }

/** How many completions lie behind a branch. */
export function sizeOf({ pairs, then }: Branch): bigint {
  return BigInt(pairs.length) * then.count
}

/** The places so far, cut down to what decides the type: a single place, whether two are neighbours, or that there are three. */
function withPlace(places: readonly number[], place: number): readonly number[] {
  const [first, second] = places
  if (first === undefined) return [place]
  if (second === undefined) return place - first === 1 ? [0, 1] : [0, 2]
  return [0, 1, 2]
}

function waysOf(kind: Kind, shape: Shape, place: number, ten: boolean): Way[] {
  const ways = new Map<string, Way & { readonly pairs: DigitPair[] }>()
  for (const top of digitsAllowed(shape.top, place)) {
    for (const bottom of digitsAllowed(shape.bottom, place)) {
      if (bottom === 0 && kind.zerosBelow === false) continue
      const { sends, crosses, result } = worked(kind, top ?? 0, bottom ?? 0, ten)
      if (kind.places && kind.places.includes(place) !== sends) continue
      if (!resultFits(result, place, shape.answer)) continue
      const key = `${sends} ${crosses}`
      const way = ways.get(key) ?? { pairs: [], sends, crosses }
      way.pairs.push([top, bottom])
      ways.set(key, way)
    }
  }
  return [...ways.values()]
}

function worked({ operation }: Kind, top: number, bottom: number, ten: boolean) {
  const value = operation === 'add' ? top + bottom + Number(ten) : top - Number(ten) - bottom
  const sends = operation === 'add' ? value >= 10 : value < 0
  return { sends, crosses: operation === 'subtract' && ten && top === 0, result: (value + 10) % 10 }
}

function resultFits(result: number, place: number, answer: number | undefined): boolean {
  if (answer === undefined || place < answer - 1) return true
  return place >= answer ? result === 0 : place < 0 || result !== 0
}

/** Whether the columns up to `left`, the first empty one, make a question of the kind. */
function fits(
  kind: Kind,
  answer: number | undefined,
  left: number,
  { ten, places, zeros }: Situation,
): boolean {
  const isSubtraction = kind.operation === 'subtract'
  if (isSubtraction && ten) return false
  if (answer !== undefined && (ten ? answer - 1 !== left : answer > left)) return false
  if (kind.zerosCrossed !== undefined && kind.zerosCrossed !== zeros) return false
  return (
    kind.type === 'any' ||
    kind.type === (isSubtraction ? subtractionType(places, zeros) : additionType(places))
  )
}
