import { scaledValue, movePoint } from '../../arithmetic/numeral'
import { amountText, type Question } from '../../arithmetic/question'
import type { Drawing, Shape } from './drawing'

export type LineWay = 'count on' | 'count back'

/** One jump on a number line, as printed: how far, and where it lands. */
export interface Jump {
  readonly by: string
  readonly to: string
}

/** Counting on an empty number line: where it starts, the jumps, and what they tell at the end. */
export interface NumberLine {
  readonly way: LineWay
  readonly start: string
  readonly jumps: readonly Jump[]
  readonly end: string
}

/** The most jumps that can still be read in the pane. */
const MOST_JUMPS = 8

/**
 * A question on a number line. Counting on from the number taken away: to the next ten, the next hundred and so on, then by the parts
 * that are left. Counting back from the top number, or on from the larger number of an addition, by the parts of the other. Null where
 * there is nothing to count, where it takes too many jumps, and for an addition counted back.
 */
export function numberLine({ calculation, unit }: Question, way: LineWay): NumberLine | null {
  const { operation, top, bottom } = calculation
  if (operation === 'add' && way === 'count back') return null
  const places = Math.max(top.places, bottom.places)
  const [a, b] = [scaledValue(top, places), scaledValue(bottom, places)]
  const print = (value: bigint) =>
    amountText(movePoint({ digits: Array.from(String(value), Number).reverse(), places: 0 }, places), unit)
  const far = (value: bigint) => (unit === '£' && places === 2 && value < 100n ? `${value}p` : print(value))
  const isUp = way === 'count on'
  const [start, parts] =
    operation === 'add' ? [a < b ? b : a, partsOf(a < b ? a : b)] : isUp ? [b, upTo(a, b)] : [a, partsOf(b)]
  if (parts.length === 0 || parts.length > MOST_JUMPS) return null
  let at = start
  const jumps = parts.map((by): Jump => {
    at = isUp ? at + by : at - by
    return { by: `${isUp ? '+' : '−'}${far(by)}`, to: print(at) }
  })
  const found =
    operation === 'subtract' && isUp
      ? `${parts.map(far).join(' + ')}${parts.length > 1 ? ` = ${print(a - b)}` : ''}`
      : print(at)
  const end =
    operation === 'subtract' && isUp
      ? `The jumps make ${found}: that is the difference.`
      : `The last jump lands on the answer: ${found}.`
  return { way, start: print(start), jumps, end }
}

/** The values of the digits that are not 0, the largest first. */
function partsOf(value: bigint): bigint[] {
  const digits = Array.from(String(value), BigInt)
  return digits
    .map((digit, index) => digit * 10n ** BigInt(digits.length - 1 - index))
    .filter((part) => part > 0n)
}

/** The jumps from one number up to another: to rounder and rounder numbers, then by parts. */
function upTo(end: bigint, start: bigint): bigint[] {
  const jumps: bigint[] = []
  let at = start
  for (let step = 10n; step <= end; step *= 10n) {
    const next = ((at + step - 1n) / step) * step
    if (next > end) break
    if (next > at) jumps.push(next - at)
    at = next
  }
  return [...jumps, ...partsOf(end - at)]
}

const JUMP = 58
const EDGE = 34
const LINE = 62
const HEIGHT = 92

/** Draws the first n jumps of a number line; the jumps are drawn equally long, as on an empty number line. */
export function drawNumberLine({ way, start, jumps }: NumberLine, n: number): Drawing {
  const width = 2 * EDGE + jumps.length * JUMP
  const isUp = way === 'count on'
  const at = (index: number) => (isUp ? EDGE + index * JUMP : width - EDGE - index * JUMP)
  const shown = jumps.slice(0, n)
  const marked = (index: number, text: string): Shape[] => [
    { shape: 'line', kind: 'tick', x1: at(index), y1: LINE - 5, x2: at(index), y2: LINE + 5 },
    { shape: 'text', kind: 'stop', x: at(index), y: LINE + 17, text },
  ]
  return {
    width,
    height: HEIGHT,
    shapes: [
      { shape: 'rect', kind: 'sheet', x: 0, y: 0, width, height: HEIGHT },
      { shape: 'line', kind: 'rule', x1: 6, y1: LINE, x2: width - 6, y2: LINE },
      ...marked(0, start),
      ...shown.flatMap(({ by, to }, index): Shape[] => {
        const [from, end] = [at(index), at(index + 1)]
        const middle = (from + end) / 2
        return [
          { shape: 'path', kind: 'jump', d: `M${from} ${LINE - 6}Q${middle} 12 ${end} ${LINE - 6}` },
          { shape: 'text', kind: 'by', x: middle, y: 20, text: by },
          ...marked(index + 1, to),
        ]
      }),
    ],
  }
}

/** What is said after the first n jumps. */
export function saidOfLine({ start, jumps, end }: NumberLine, n: number): string {
  const last = jumps[n - 1]
  if (!last) return `Start at ${start}.`
  const landed = `Jump ${last.by}, to ${last.to}.`
  return n === jumps.length ? `${landed} ${end}` : landed
}

/** What the line shows, for readers who hear it. */
export function lineInWords({ start, jumps }: NumberLine, n: number): string {
  const shown = jumps.slice(0, n).map(({ by, to }) => `${by} to ${to}`)
  return `A number line from ${[start, ...shown].join(', ')}.`
}
