import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { workOut } from '../../src/arithmetic/columns'
import { exchangesOf } from '../../src/arithmetic/exchange'
import { numeralText, readNumeral, wholeDigits, type Numeral } from '../../src/arithmetic/numeral'
import { questionOf, type Calculation } from '../../src/arithmetic/question'
import { takeCensus } from '../../src/items/census'
import { indexOfQuestion, questionAt } from '../../src/items/draw'
import { digitChoices, type Digits, type Kind } from '../../src/items/kind'
import { kinds } from './kinds'

function numeral(text: string): Numeral {
  const read = readNumeral(text)
  if (!read) throw new Error(`${text} is no number`)
  return read
}
const text = ({ top, bottom }: Calculation) => `${numeralText(top)} ${numeralText(bottom)}`

/** Digits before the point as a kind counts them: 0 for a number below 1. */
const counted = (number: Numeral) => (/^0(\.|$)/.test(numeralText(number)) ? 0 : wholeDigits(number))
const allows = (digits: Digits, number: Numeral) => digitChoices(digits).includes(counted(number))

/** Whether the written method finds in a calculation all that a kind asks for. */
function expectOfKind(kind: Kind, calculation: Calculation): void {
  const { operation, top, bottom } = calculation
  const written = workOut(calculation)
  const { type, places, zerosCrossed } = exchangesOf(written)
  expect(operation).toBe(kind.operation)
  expect(questionOf(calculation)).not.toHaveProperty('problem')
  expect([top.places, bottom.places]).toEqual([kind.topDecimals ?? 0, kind.bottomDecimals ?? 0])
  expect(allows(kind.topDigits, top) && allows(kind.bottomDigits, bottom)).toBe(true)
  for (const number of [top, bottom]) {
    expect(readNumeral(numeralText(number))).toEqual(number)
    expect(number.digits.some((digit) => digit > 0)).toBe(true)
  }
  if (kind.type !== 'any') expect(type).toBe(kind.type)
  if (kind.answerDigits !== undefined) expect(allows(kind.answerDigits, written.answer)).toBe(true)
  if (kind.places) expect(places).toEqual([...kind.places].sort((a, b) => a - b))
  if (kind.zerosCrossed !== undefined) expect(zerosCrossed).toBe(kind.zerosCrossed)
  if (kind.zerosBelow === false) expect(bottom.digits).not.toContain(0)
}

describe('drawing the k-th question', () => {
  it('gives a question of the kind, and its number back, for any kind and any number', () => {
    let filled = 0
    fc.assert(
      fc.property(kinds, fc.nat({ max: 1_000_000 }), (kind, millionths) => {
        const census = takeCensus(kind)
        if (census.count === 0n) return
        filled++
        for (const index of [
          0n,
          ((census.count - 1n) * BigInt(millionths)) / 1_000_000n,
          census.count - 1n,
        ]) {
          const calculation = questionAt(census, index)
          expectOfKind(kind, calculation)
          expect(indexOfQuestion(census, calculation)).toBe(index)
        }
      }),
      { numRuns: 600 },
    )
    expect(filled).toBeGreaterThan(100)
  })

  it('numbers all 3-digit subtractions through a zero, each once, as a plain count finds them', () => {
    const census = takeCensus({
      operation: 'subtract',
      type: 'through a zero',
      topDigits: 3,
      bottomDigits: 3,
    })
    const drawn = Array.from({ length: Number(census.count) }, (_, index) =>
      text(questionAt(census, BigInt(index))),
    )
    const found: string[] = []
    for (let top = 100; top <= 999; top++)
      for (let bottom = 100; bottom <= top; bottom++)
        if (top % 10 < bottom % 10 && Math.floor(top / 10) % 10 === 0) found.push(`${top} ${bottom}`)
    expect(drawn.sort()).toEqual(found.sort())
  })

  it.each<[string, Kind]>([
    [
      'numbers below 1',
      {
        operation: 'subtract',
        type: 'any',
        topDigits: [0, 1],
        bottomDigits: 0,
        topDecimals: 1,
        bottomDecimals: 2,
      },
    ],
    [
      'several lengths',
      { operation: 'add', type: 'any', topDigits: [1, 2], bottomDigits: [1, 2], zerosBelow: false },
    ],
    [
      'chosen columns',
      { operation: 'subtract', type: 'any', topDigits: 3, bottomDigits: [1, 2], places: [0, 1] },
    ],
    [
      'a short answer',
      { operation: 'subtract', type: 'any', topDigits: 3, bottomDigits: 3, answerDigits: [0, 1] },
    ],
  ])('is a bijection: %s', (_, kind) => {
    const census = takeCensus(kind)
    const seen = new Set<string>()
    for (let index = 0n; index < census.count; index++) {
      const calculation = questionAt(census, index)
      expectOfKind(kind, calculation)
      expect(indexOfQuestion(census, calculation)).toBe(index)
      seen.add(text(calculation))
    }
    expect(BigInt(seen.size)).toBe(census.count)
    expect(census.count).toBeGreaterThan(100n)
  })

  it('refuses numbers that no question has', () => {
    const census = takeCensus({ operation: 'add', type: 'no carry', topDigits: 1, bottomDigits: 1 })
    expect(census.count).toBe(36n)
    expect(() => questionAt(census, 36n)).toThrow(RangeError)
    expect(() => questionAt(census, -1n)).toThrow(RangeError)
  })

  it('gives no number to a question of another kind', () => {
    const kind: Kind = { operation: 'subtract', type: 'through a zero', topDigits: 3, bottomDigits: [2, 3] }
    const census = takeCensus(kind)
    const index = (operation: 'add' | 'subtract', top: string, bottom: string) =>
      indexOfQuestion(census, { operation, top: numeral(top), bottom: numeral(bottom) })
    expect(index('subtract', '305', '128')).toBeTypeOf('bigint')
    expect(index('subtract', '305', '28')).toBeTypeOf('bigint')
    expect(index('add', '305', '128')).toBeUndefined()
    expect(index('subtract', '932', '457')).toBeUndefined()
    expect(index('subtract', '3005', '128')).toBeUndefined()
    expect(index('subtract', '305', '8')).toBeUndefined()
    expect(index('subtract', '305.0', '128')).toBeUndefined()
  })
})
