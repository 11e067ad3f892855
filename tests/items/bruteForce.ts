import type { Operation } from '../../src/arithmetic/question'
import { digitChoices, type Kind } from '../../src/items/kind'

/** How many pairs share everything that a kind can ask for. */
export interface Sort {
  readonly places: readonly number[]
  readonly zerosCrossed: number
  readonly zeroBelow: boolean
  readonly answerDigits: number
  readonly count: number
}

/** Numbers with so many digits before the point (0: below 1, but not 0) and after it, as whole multiples of the last place. */
function scaled(digits: number, decimals: number): number[] {
  const [from, to] =
    digits === 0 ? [1, 10 ** decimals] : [10 ** (digits + decimals - 1), 10 ** (digits + decimals)]
  return Array.from({ length: to - from }, (_, index) => from + index)
}

/**
 * Every pair of numbers of these lengths, worked with plain number arithmetic and no column method: below a column the numbers
 * are what is left by 10^(column + 1), and a ten changes hands there when the remainders' difference is negative or their sum
 * too long.
 */
export function bruteForce(
  operation: Operation,
  [topDigits, topDecimals]: readonly [number, number],
  [bottomDigits, bottomDecimals]: readonly [number, number],
): Sort[] {
  const decimals = Math.max(topDecimals, bottomDecimals)
  const columns = decimals + Math.max(topDigits, bottomDigits, 1)
  const powers = Array.from({ length: columns + 2 }, (_, index) => 10 ** index)
  const counts = new Map<number, number>()
  const bottoms = scaled(bottomDigits, bottomDecimals).map((value) => ({
    value: value * 10 ** (decimals - bottomDecimals),
    hasZero: bottomDigits === 0 || String(value).includes('0'),
  }))
  for (const unscaled of scaled(topDigits, topDecimals)) {
    const top = unscaled * 10 ** (decimals - topDecimals)
    const topZeros = powers.slice(0, columns).map((power) => Math.floor(top / power) % 10 === 0)
    const topRemainders = powers.slice(1).map((power) => top % power)
    for (const { value: bottom, hasZero } of bottoms) {
      if (operation === 'subtract' && bottom > top) continue
      let mask = 0
      let zeros = 0
      for (let column = 0; column < columns; column++) {
        const power = powers[column + 1] ?? NaN
        const upper = topRemainders[column] ?? NaN
        const changes = operation === 'subtract' ? upper < bottom % power : upper + (bottom % power) >= power
        if (!changes) continue
        mask |= 1 << column
        if (operation === 'subtract' && topZeros[column + 1]) zeros++
      }
      const answer = operation === 'subtract' ? top - bottom : top + bottom
      let answerDigits = 0
      while (answer >= (powers[answerDigits + decimals] ?? Infinity)) answerDigits++
      const code = ((mask * 16 + zeros) * 2 + Number(hasZero)) * 16 + answerDigits
      counts.set(code, (counts.get(code) ?? 0) + 1)
    }
  }
  return [...counts].map(([code, count]) => ({
    places: Array.from({ length: columns }, (_, column) => column)
      .filter((column) => (code >> (9 + column)) & 1)
      .map((column) => column - decimals),
    zerosCrossed: (code >> 5) & 15,
    zeroBelow: ((code >> 4) & 1) === 1,
    answerDigits: code & 15,
    count,
  }))
}

const COLUMN_PAIRS: Readonly<Record<Operation, readonly string[]>> = {
  subtract: ['tens to ones', 'hundreds to tens', 'thousands to hundreds', 'ten thousands to thousands'],
  add: ['ones to tens', 'tens to hundreds', 'hundreds to thousands', 'thousands to ten thousands'],
}
const DECIMAL_PAIRS: Readonly<Record<Operation, readonly string[]>> = {
  subtract: ['ones to tenths', 'tenths to hundredths', 'hundredths to thousandths'],
  add: ['tenths to ones', 'hundredths to tenths', 'thousandths to hundredths'],
}

/** The type's name, written down a second time from its definition. */
function typeName(operation: Operation, { places, zerosCrossed }: Sort): string {
  const [one, many] = operation === 'subtract' ? ['exchange', 'exchanges'] : ['carry', 'carries']
  const [first = 0, second = 0] = places
  if (places.length === 0) return `no ${one}`
  if (zerosCrossed > 0) return zerosCrossed > 1 ? 'through two or more zeros' : 'through a zero'
  if (places.length > 2) return `three or more ${many}`
  if (places.length === 2) return `two ${many}, ${second === first + 1 ? 'next to each other' : 'apart'}`
  const pair = first < 0 ? DECIMAL_PAIRS[operation][-1 - first] : COLUMN_PAIRS[operation][first]
  return `one ${one}, ${pair ?? 'beyond ten thousands'}`
}

/** How many of the pairs are of a kind; its numbers of digits are taken to be those of the pairs. */
export function countOf(kind: Kind, sorts: readonly Sort[]): bigint {
  const places = kind.places && [...kind.places].sort((a, b) => a - b).join()
  const answers = kind.answerDigits === undefined ? undefined : digitChoices(kind.answerDigits)
  return BigInt(
    sorts
      .filter((sort) => kind.type === 'any' || kind.type === typeName(kind.operation, sort))
      .filter((sort) => places === undefined || places === sort.places.join())
      .filter((sort) => kind.zerosCrossed === undefined || kind.zerosCrossed === sort.zerosCrossed)
      .filter((sort) => kind.zerosBelow !== false || !sort.zeroBelow)
      .filter((sort) => answers?.includes(sort.answerDigits) ?? true)
      .reduce((sum, { count }) => sum + count, 0),
  )
}
