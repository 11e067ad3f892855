import { describe, expect, it } from 'vitest'
import type { ExchangeType } from '../../src/arithmetic/exchange'
import { describeKind, problemOfKind, type Kind } from '../../src/items/kind'

const SUBTRACT: Kind = { operation: 'subtract', type: 'any', topDigits: 4, bottomDigits: 3 }
const ADD: Kind = { ...SUBTRACT, operation: 'add' }

describe('what is wrong with a kind', () => {
  it.each<[Kind, string]>([
    [{ ...SUBTRACT, type: 'no carry' }, '“no carry” is a type of addition, not of subtraction.'],
    [{ ...ADD, type: 'through a zero' }, '“through a zero” is a type of subtraction, not of addition.'],
    [{ ...ADD, type: 'hard' as ExchangeType }, 'There is no type called “hard”.'],
    [
      { ...ADD, topDigits: 16 },
      'The top number must have 1 to 15 digits before the point (0 for a number below 1).',
    ],
    [
      { ...ADD, topDigits: [] },
      'The top number must have 1 to 15 digits before the point (0 for a number below 1).',
    ],
    [
      { ...ADD, bottomDigits: [3, 2.5] },
      'The bottom number must have 1 to 15 digits before the point (0 for a number below 1).',
    ],
    [
      { ...ADD, bottomDigits: NaN },
      'The bottom number must have 1 to 15 digits before the point (0 for a number below 1).',
    ],
    [{ ...ADD, bottomDigits: 0 }, 'For the bottom number to be below 1 it needs digits after the point.'],
    [{ ...ADD, topDecimals: 4 }, 'The top number must have 0 to 3 digits after the point.'],
    [
      { ...SUBTRACT, bottomDigits: 5 },
      'The bottom number has more digits than the top number, so it cannot be taken away from it.',
    ],
    [
      { ...ADD, answerDigits: 17 },
      'The answer must have 1 to 16 digits before the point (0 for an answer below 1).',
    ],
    [{ ...ADD, places: [15] }, 'The columns of a question run from -3 (thousandths) through 0 (ones) to 14.'],
    [{ ...SUBTRACT, zerosCrossed: -1 }, 'The number of zeros crossed must be a whole number from 0 up.'],
    [{ ...ADD, zerosCrossed: 1 }, 'Only a subtraction can exchange through a zero.'],
    [
      { ...ADD, unit: '£', topDecimals: 1 },
      'Pounds are written with two digits after the point, or with none.',
    ],
    [{ ...ADD, unit: 'p', topDecimals: 2 }, 'Pence are written without digits after the point.'],
  ])('%j', (kind, problem) => {
    expect(problemOfKind(kind)).toBe(problem)
  })

  it.each<Kind>([
    SUBTRACT,
    { ...ADD, bottomDigits: 15 },
    { ...SUBTRACT, bottomDigits: [3, 5] },
    { ...SUBTRACT, bottomDigits: 0, bottomDecimals: 1 },
    { ...SUBTRACT, unit: '£', topDecimals: 0, bottomDecimals: 2 },
  ])('nothing: %j', (kind) => {
    expect(problemOfKind(kind)).toBeNull()
  })
})

describe('a kind in words', () => {
  it.each<[Kind, string]>([
    [SUBTRACT, '4 digits − 3 digits'],
    [
      { ...SUBTRACT, type: 'through a zero', bottomDigits: [3, 2], zerosBelow: false },
      '4 digits − 2 or 3 digits, through a zero, no 0 in the bottom number',
    ],
    [
      { ...ADD, topDecimals: 2, bottomDigits: [0, 1], bottomDecimals: 2, unit: '£' },
      '4 digits with 2 after the point + below 1 or 1 digit with 2 after the point, in pounds',
    ],
    [
      { ...SUBTRACT, places: [0, 1], zerosCrossed: 1, answerDigits: [3, 4], unit: 'p' },
      '4 digits − 3 digits, exchanges in exactly the chosen columns, zeros crossed: 1, answer 3 or 4 digits, in pence',
    ],
  ])('%j', (kind, words) => {
    expect(describeKind(kind)).toBe(words)
  })
})
