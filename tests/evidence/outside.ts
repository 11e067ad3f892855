import { review } from '../../src/marksheet/marking/review'
import { generatorFrom } from '../../src/items/seed'
import { chance, oneOf } from './pupils'
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator'

/**
 * Classes made without any of the code that judges them: the wrong procedures are worked on figures anew, by their descriptions (the
 * catalogue is not read), typed into a sheet, and the sheet is reviewed as a whole. What is counted is what a teacher sees.
 */
export type Sum = readonly [top: number, sign: '+' | '−', bottom: number]
type Working = (top: readonly number[], bottom: readonly number[]) => string

/** The digits of a number, ones first. */
const digits = (number: number) => [...String(number)].reverse().map(Number)
const written = (columns: readonly (number | string)[]) =>
  columns
    .toReversed()
    .join('')
    .replace(/^0+(?=\d)/, '')

/** Works column by column from the ones, below zero where a column is short and nothing is left to take from; `habit` gives what is written, or null to go on as taught, and may change the digits on top. */
function columnwise(
  habit: (
    column: number,
    top: number[],
    bottom: readonly number[],
    printed: readonly number[],
  ) => number | null,
  lend: (top: number[], from: number) => void = takeTen,
): Working {
  return (printed, bottom) => {
    const top = [...printed]
    return written(
      printed.map((_, column) => {
        const out = habit(column, top, bottom, printed)
        if (out !== null) return out
        const isLast = column === printed.length - 1
        if (isLast || (top[column] ?? 0) >= (bottom[column] ?? 0))
          return (top[column] ?? 0) - (bottom[column] ?? 0)
        lend(top, column + 1)
        return (top[column] ?? 0) + 10 - (bottom[column] ?? 0)
      }),
    )
  }
}

/** As taught: zeros become nine, the next digit gives one. */
function takeTen(top: number[], from: number): void {
  let at = from
  while (top[at] === 0) top[at++] = 9
  if (at < top.length) top[at] = (top[at] ?? 0) - 1
}

const asTaught = columnwise(() => null)
const zeroOnTop = (gives: (bottom: number) => number) =>
  columnwise((column, top, bottom, printed) =>
    printed[column] === 0 && top[column] === 0 && (bottom[column] ?? 0) > 0
      ? gives(bottom[column] ?? 0)
      : null,
  )
const number = (columns: readonly number[]) => Number(columns.toReversed().join(''))

export const SUBTRACTION: Readonly<Record<string, Working>> = {
  'takes-smaller-from-larger': columnwise((c, top, bottom) => Math.abs((top[c] ?? 0) - (bottom[c] ?? 0))),
  'zero-when-short': columnwise((c, top, bottom) => ((top[c] ?? 0) < (bottom[c] ?? 0) ? 0 : null)),
  'no-reduction': columnwise(
    () => null,
    () => undefined,
  ),
  'zero-gives-digit': zeroOnTop((bottom) => bottom),
  'zero-gives-zero': zeroOnTop(() => 0),
  'skips-over-zero': columnwise(
    () => null,
    (top, from) => {
      const found = top.findIndex((digit, column) => column >= from && digit > 0)
      const at = found < 0 ? top.length - 1 : found
      top[at] = (top[at] ?? 0) - 1
    },
  ),
  'nine-for-free': columnwise(
    () => null,
    (top, from) => {
      top[from] = top[from] === 0 ? 9 : (top[from] ?? 0) - 1
    },
  ),
  'zero-left-as-ten': columnwise(
    () => null,
    (top, from) => {
      let at = from
      while (top[at] === 0) top[at++] = 10
      top[at] = (top[at] ?? 0) - 1
    },
  ),
  'take-zero-gives-zero': columnwise((c, _, bottom) => (bottom[c] === 0 ? 0 : null)),
  'lines-up-left': (top, bottom) => String(number(top) - number(bottom) * 10 ** (top.length - bottom.length)),
  'drops-unpaired-digits': (top, bottom) => String(Number(asTaught(top, bottom)) % 10 ** bottom.length),
  'wrong-operation': (top, bottom) => String(number(top) + number(bottom)),
}

const total = (top: readonly number[], bottom: readonly number[], column: number) =>
  (top[column] ?? 0) + (bottom[column] ?? 0)

export const ADDITION: Readonly<Record<string, Working>> = {
  'drops-carried-ten': (top, bottom) => written(top.map((_, c) => total(top, bottom, c) % 10)),
  'loses-last-ten': (top, bottom) => String((number(top) + number(bottom)) % 10 ** top.length),
  'writes-whole-total': (top, bottom) => written(top.map((_, c) => total(top, bottom, c))),
  'carries-wrong-digit': (top, bottom) => {
    let sent = 0
    return written(
      top.map((_, c) => {
        const sum = total(top, bottom, c) + sent
        sent = 0
        if (sum < 10 || c === top.length - 1) return sum
        sent = sum % 10
        return Math.floor(sum / 10)
      }),
    )
  },
  'lines-up-left': (top, bottom) => String(number(top) + number(bottom) * 10 ** (top.length - bottom.length)),
  'wrong-operation': (top, bottom) => String(number(top) - number(bottom)),
}

const right = ([top, sign, bottom]: Sum) => String(sign === '+' ? top + bottom : top - bottom)

/** What the procedure gives; null where this sum cannot be worked by it. */
export function workedBy(fault: string, [top, sign, bottom]: Sum): string | null {
  const working = (sign === '+' ? ADDITION : SUBTRACTION)[fault]
  const answer = working?.(digits(top), digits(bottom)) ?? null
  return answer?.startsWith('-') === true ? null : answer
}

/** A slip of ordinary care: a number fact out by one or two, now and then two figures next to each other swapped. */
function slip(random: RandomGenerator, answer: string): string {
  const at = Math.floor(chance(random) * answer.length)
  const next = answer[at + 1]
  if (chance(random) < 0.2 && next !== undefined && next !== answer[at])
    return answer.slice(0, at) + next + (answer[at] ?? '') + answer.slice(at + 2)
  const digit = Number(answer[at]) + oneOf(random, [-1, 1, -1, 1, -2, 2])
  return digit < 0 || digit > 9 || (at === 0 && digit === 0)
    ? slip(random, answer)
    : answer.slice(0, at) + String(digit) + answer.slice(at + 1)
}

/** Sums as a sheet for Year 4 has them: three and four figures, some shorter below, some zeros on top. */
export function sums(random: RandomGenerator, signs: readonly ('+' | '−')[], count: number): Sum[] {
  const figures = (length: number) =>
    Number(
      Array.from({ length }, (_, place) =>
        place > 0 && chance(random) < 0.15
          ? 0
          : Math.floor((place > 0 ? 0 : 1) + chance(random) * (place > 0 ? 10 : 9)),
      ).join(''),
    )
  return Array.from({ length: count }, (_, index): Sum => {
    const length = oneOf(random, [3, 3, 4, 4])
    const [one, other] = [figures(length), figures(oneOf(random, [length, length, length - 1]))]
    const sign = signs[Math.floor((index * signs.length) / count)] ?? '−'
    return [Math.max(one, other), sign, Math.min(one, other)]
  })
}

interface Told {
  readonly flagged: boolean
  readonly first: string | null
  readonly fits: readonly string[]
}

/** What the tool says of pupils who worked a sheet of these sums. */
function told(all: readonly Sum[], typed: readonly (readonly string[])[]): Told[] {
  const header = ['Name', ...all.map(([top, sign, bottom]) => `${top} ${sign} ${bottom}`)]
  const rows = typed.map((answers, index) => [`Pupil ${letters(index)}`, ...answers.map(Number)])
  const [found] = review({ name: 'Sheet', values: [header, ...rows] })
  if (found?.pupils.length !== typed.length) throw new Error('The sheet was not read whole.')
  return found.pupils.map(({ judgement: { need, needsSupport }, diagnosis }) => ({
    flagged: needsSupport,
    first: need.fault,
    fits: diagnosis.named.find(({ fault }) => fault === need.fault)?.alsoFits ?? [],
  }))
}

const letters = (index: number) =>
  [676, 26, 1].map((unit) => String.fromCharCode(97 + (Math.floor(index / unit) % 26))).join('')

/** Shares of pupils, 0 to 1. `named`: the fault, or one that fits the same answers, first; for right pupils any fault at all. */
export interface Shares {
  readonly pupils: number
  readonly flagged: number
  readonly named: number
}

const COUNTS = [10, 12, 16, 20]
const SIGNS = [['−'], ['+'], ['−', '+']] as const

function shares(all: readonly (Told & { readonly hit: boolean })[]): Shares {
  const part = (some: readonly unknown[]) => some.length / all.length
  return {
    pupils: all.length,
    flagged: part(all.filter(({ flagged }) => flagged)),
    named: part(all.filter(({ hit }) => hit)),
  }
}

/** Pupils who know the method and slip at a rate from `least` to `most`. */
export function rightPupils(sheets: number, least: number, most: number): Shares {
  const random = generatorFrom(`outside right ${least} ${most}`)
  const all = Array.from({ length: sheets }, (_, index) => {
    const asked = sums(random, SIGNS[index % 3] ?? ['−'], COUNTS[index % 4] ?? 12)
    const typed = Array.from({ length: 20 }, () => {
      const rate = least + (most - least) * chance(random)
      return asked.map((sum) => (chance(random) < rate ? slip(random, right(sum)) : right(sum)))
    })
    return told(asked, typed).map((each) => ({ ...each, hit: each.first !== null }))
  })
  return shares(all.flat())
}

/** Pupils with one fault each, in turn, that shows in at least three answers; held at every question or at a rate, with 5% slips. */
export function faultyPupils(sheets: number, held: number): Shares {
  const random = generatorFrom(`outside faults ${held}`)
  const all = Array.from({ length: sheets }, (_, index) => {
    const signs = SIGNS[index % 3] ?? ['−']
    const asked = sums(random, signs, COUNTS[index % 4] ?? 12)
    const faults = [...new Set(signs.flatMap((sign) => Object.keys(sign === '+' ? ADDITION : SUBTRACTION)))]
    const pupils = faults.flatMap((fault) => {
      const typed = asked.map((sum) => {
        const meant = chance(random) < held ? (workedBy(fault, sum) ?? right(sum)) : right(sum)
        return chance(random) < 0.05 ? slip(random, meant) : meant
      })
      const shown = asked.filter(
        (sum, place) => typed[place] !== right(sum) && typed[place] === workedBy(fault, sum),
      )
      return shown.length >= 3 ? [{ fault, typed }] : []
    })
    if (pupils.length === 0) return []
    return told(
      asked,
      pupils.map(({ typed }) => typed),
    ).map((each, place) => {
      const fault = pupils[place]?.fault ?? ''
      return {
        ...each,
        hit: each.first === fault || (each.first !== null && each.fits.some((id) => id === fault)),
      }
    })
  })
  return shares(all.flat())
}

/** The table of what a teacher sees of pupils whose truth is known. */
export function outsideTable(sheets = 400): string[] {
  const line = (what: string, { pupils, flagged, named }: Shares) =>
    [what, pupils, `${(100 * flagged).toFixed(1)}%`, `${(100 * named).toFixed(1)}%`].join(' | ')
  return [
    'whole sheets of 10 to 20 questions, reviewed | pupils | flagged | named the fault first (right pupils: any fault)',
    line('fault always, shown in 3 or more', faultyPupils(sheets, 1)),
    line('fault now and then (65%), shown in 3 or more', faultyPupils(sheets, 0.65)),
    line('right, 5% slips', rightPupils(sheets, 0.05, 0.05)),
    line('right but careless, 15 to 20% slips', rightPupils(sheets, 0.15, 0.2)),
  ]
}
