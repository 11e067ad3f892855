import fc from 'fast-check'
import { ADDITION_TYPES, SUBTRACTION_TYPES } from '../../src/arithmetic/exchange'
import { problemOfKind, type Kind } from '../../src/items/kind'

const digits = fc.oneof(
  fc.integer({ min: 1, max: 15 }),
  fc.uniqueArray(fc.integer({ min: 0, max: 15 }), { minLength: 1, maxLength: 3 }),
)

/** At most one of the limits that leave few questions, beside those that leave most. */
const limits = fc
  .tuple(
    fc.record({ zerosBelow: fc.boolean() }, { requiredKeys: [] }),
    fc.oneof(
      { weight: 3, arbitrary: fc.constant({}) },
      fc.record({ answerDigits: fc.uniqueArray(fc.integer({ min: 0, max: 16 }), { minLength: 8 }) }),
      fc.record({ places: fc.subarray([-1, 0, 1, 2]) }),
      fc.record({ zerosCrossed: fc.integer({ min: 0, max: 3 }) }),
    ),
  )
  .map(([some, few]): Partial<Kind> => ({ ...some, ...few }))

const numbers = fc.record(
  {
    topDigits: digits,
    bottomDigits: digits,
    topDecimals: fc.integer({ min: 0, max: 3 }),
    bottomDecimals: fc.integer({ min: 0, max: 3 }),
  },
  { requiredKeys: ['topDigits', 'bottomDigits'] },
)

const wanted: fc.Arbitrary<Pick<Kind, 'operation' | 'type'>> = fc.oneof(
  fc.record({ operation: fc.constant('add' as const), type: fc.constantFrom('any', ...ADDITION_TYPES) }),
  fc.record({
    operation: fc.constant('subtract' as const),
    type: fc.constantFrom('any', ...SUBTRACTION_TYPES),
  }),
)

/** Random sound kinds, about half of them not empty: 1 to 15 digits, 0 to 3 decimals, any type, some limits. */
export const kinds: fc.Arbitrary<Kind> = fc
  .tuple(wanted, numbers, limits)
  .map(([type, lengths, more]): Kind => ({ ...type, ...lengths, ...more }))
  .filter((kind) => problemOfKind(kind) === null)
