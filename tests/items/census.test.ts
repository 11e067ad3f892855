import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ADDITION_TYPES, SUBTRACTION_TYPES } from '../../src/arithmetic/exchange'
import type { Operation } from '../../src/arithmetic/question'
import { takeCensus } from '../../src/items/census'
import type { Kind } from '../../src/items/kind'
import { bruteForce, countOf, type Sort } from './bruteForce'

const OPERATIONS: readonly Operation[] = ['add', 'subtract']
const typesOf = (operation: Operation) => (operation === 'add' ? ADDITION_TYPES : SUBTRACTION_TYPES)
const count = (kind: Kind) => takeCensus(kind).count

/** Checks every type, and kinds drawn at random from all that a kind can ask for, on pairs of one pair of lengths. */
function agree(
  operation: Operation,
  [topDigits, topDecimals]: readonly [number, number],
  [bottomDigits, bottomDecimals]: readonly [number, number],
): void {
  const sorts: Sort[] = bruteForce(operation, [topDigits, topDecimals], [bottomDigits, bottomDecimals])
  const base = { operation, topDigits, bottomDigits, topDecimals, bottomDecimals }
  const types = ['any' as const, ...typesOf(operation)]
  for (const type of types) {
    const kind: Kind = { ...base, type }
    expect([type, count(kind)]).toEqual([type, countOf(kind, sorts)])
  }
  const asked = fc.record(
    {
      answerDigits: fc.uniqueArray(fc.integer({ min: 0, max: 5 }), { minLength: 1, maxLength: 3 }),
      places: fc.subarray([-2, -1, 0, 1, 2, 3]),
      zerosCrossed: fc.integer({ min: 0, max: 3 }),
      zerosBelow: fc.boolean(),
    },
    { requiredKeys: [] },
  )
  fc.assert(
    fc.property(asked, fc.constantFrom(...types), (limits, type) => {
      const kind: Kind = { ...base, ...limits, type }
      expect(count(kind)).toBe(countOf(kind, sorts))
    }),
  )
}

describe('the census counts what a count one by one finds', () => {
  const whole = OPERATIONS.flatMap((operation) =>
    [1, 2, 3].map((bottom): [Operation, number] => [operation, bottom]),
  )
  it.each(whole)('%s: all pairs of a 3-digit and a %i-digit number, every type', (operation, bottom) => {
    agree(operation, [3, 0], [bottom, 0])
  })

  it.each(OPERATIONS)('%s: all pairs of 4-digit numbers, every type', (operation) => {
    agree(operation, [4, 0], [4, 0])
  })

  it.each([
    [
      [1, 1],
      [1, 2],
    ],
    [
      [1, 2],
      [1, 1],
    ],
    [
      [2, 0],
      [1, 2],
    ],
    [
      [1, 2],
      [0, 2],
    ],
    [
      [0, 2],
      [0, 1],
    ],
    [
      [0, 3],
      [0, 2],
    ],
    [
      [2, 1],
      [2, 1],
    ],
  ] as const)('decimals, digits before and after the point: %j and %j', (top, bottom) => {
    for (const operation of OPERATIONS) agree(operation, top, bottom)
  })

  it('an addition whose bottom number is the longer one', () => {
    agree('add', [1, 0], [3, 0])
  })

  it('takes several allowed lengths together, each once', () => {
    const kind = { operation: 'subtract', type: 'through a zero' } as const
    const apart = [2, 3, 4].map((top) => count({ ...kind, topDigits: top, bottomDigits: 2 }))
    expect(count({ ...kind, topDigits: [4, 2, 3, 3, 2], bottomDigits: 2 })).toBe(
      apart.reduce((sum, one) => sum + one, 0n),
    )
  })
})

/**
 * Of the 100 pairs of digits 55 add without a carry and 45 with one, and 55 subtract without an exchange (common practice, no
 * source; counted by 1 + 2 + … + 10). Of the 81 pairs without a 0, which a first column may hold, 36 and 45.
 */
describe('the census agrees with closed forms', () => {
  const lengths = Array.from({ length: 15 }, (_, index) => index + 1)

  it.each(lengths)(
    '%i digits: without a carry 36 · 55^(n − 1), without an exchange 45 · 55^(n − 1)',
    (digits) => {
      const same = { topDigits: digits, bottomDigits: digits }
      const below = 55n ** BigInt(digits - 1)
      expect(count({ operation: 'add', type: 'no carry', ...same })).toBe(36n * below)
      expect(count({ operation: 'subtract', type: 'no exchange', ...same })).toBe(45n * below)
    },
  )

  it.each(lengths)('%i digits: N² additions and N(N + 1)/2 subtractions of N numbers', (digits) => {
    const same = { type: 'any', topDigits: digits, bottomDigits: digits } as const
    const numbers = 9n * 10n ** BigInt(digits - 1)
    expect(count({ operation: 'add', ...same })).toBe(numbers * numbers)
    expect(count({ operation: 'subtract', ...same })).toBe((numbers * (numbers + 1n)) / 2n)
  })

  it.each(OPERATIONS)(
    '%s: the types share out all questions, at 15 digits and 3 decimal places too',
    (operation) => {
      const kind = { operation, topDigits: 15, bottomDigits: [9, 15], topDecimals: 2, bottomDecimals: 3 }
      const byType = typesOf(operation).map((type) => count({ ...kind, type }))
      expect(byType.reduce((sum, one) => sum + one, 0n)).toBe(count({ ...kind, type: 'any' }))
    },
  )

  /** Two endings of k digits, zeros in front allowed, make 10^k or more in 10^k (10^k − 1)/2 of their pairs. */
  it.each([1, 2, 3])(
    '4 digits: the column at place %i − 1 carries as often as endings of that length do',
    (length) => {
      const subsets = Array.from({ length: 16 }, (_, mask) =>
        [0, 1, 2, 3].filter((place) => (mask >> place) & 1),
      )
      const carrying = subsets
        .filter((places) => places.includes(length - 1))
        .map((places) => count({ operation: 'add', type: 'any', topDigits: 4, bottomDigits: 4, places }))
      const endings = 10n ** BigInt(length)
      expect(carrying.reduce((sum, one) => sum + one, 0n)).toBe(
        ((endings * (endings - 1n)) / 2n) * (9000n / endings) ** 2n,
      )
    },
  )
})

describe('empty kinds', () => {
  it.each<[string, Kind]>([
    [
      'three exchanges in three digits',
      { operation: 'subtract', type: 'three or more exchanges', topDigits: 3, bottomDigits: 3 },
    ],
    [
      'two zeros in three digits',
      { operation: 'subtract', type: 'through two or more zeros', topDigits: 3, bottomDigits: 3 },
    ],
    [
      '15 zeros crossed in 15 digits',
      { operation: 'subtract', type: 'any', topDigits: 15, bottomDigits: 15, zerosCrossed: 15 },
    ],
    [
      'no exchange and an exchange in the tens',
      { operation: 'subtract', type: 'no exchange', topDigits: 15, bottomDigits: 15, places: [1] },
    ],
    [
      'a bottom number below 1 without a 0',
      { operation: 'add', type: 'any', topDigits: 1, bottomDigits: 0, bottomDecimals: 1, zerosBelow: false },
    ],
  ])('%s: none', (_, kind) => {
    expect(takeCensus(kind)).toEqual({ kind, count: 0n, sections: [] })
  })
})
