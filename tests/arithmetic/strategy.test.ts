import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { columnStrategy, STRATEGY_SETTINGS, strategyFor } from '../../src/arithmetic/strategy'
import { asked } from '../support/asked'

// Where the strategies lie is common practice, no source.
describe('the strategy for a whole question', () => {
  it.each([
    ['92 − 87', 'count on', '87 and 92 are close: count on from 87 to 92.'],
    ['2003 − 1998', 'count on', '1,998 and 2,003 are close: count on from 1,998 to 2,003.'],
    ['640 − 640', 'count on', '640 and 640 are equal: nothing is left.'],
    ['23 − 4', 'count back', '4 is small: count back 4 from 23.'],
    ['7214 − 0', 'count back', 'Subtracting 0 from 7,214 changes nothing.'],
    ['800 − 299', 'round and adjust', '299 is close to 300: work out 800 − 300, then add 1.'],
    ['745 − 203', 'round and adjust', '203 is close to 200: work out 745 − 200, then subtract 3.'],
    [
      '745 − 300',
      'in the head',
      'In 745 − 300 nothing is exchanged and only one digit changes: subtract 300 in the head.',
    ],
    [
      '845 − 32',
      'in the head',
      'In 845 − 32 nothing is exchanged and only two digits change: subtract 30, then 2 in the head.',
    ],
    ['600 − 250', 'in the head', '600 and 250 are round numbers: subtract 200, then 50 in the head.'],
    [
      '32 + 845',
      'in the head',
      'In 32 + 845 nothing is carried and only two digits change: add 30, then 2 to 845 in the head.',
    ],
    [
      '4003 − 1257',
      'written method',
      '4,003 and 1,257 are neither close together nor easy to round: use the written method.',
    ],
    [
      '932 − 457',
      'written method',
      '932 and 457 are neither close together nor easy to round: use the written method.',
    ],
    [
      '500 − 137',
      'written method',
      '500 and 137 are neither close together nor easy to round: use the written method.',
    ],
    ['8 + 357', 'count on', '8 is small: count on 8 from 357.'],
    ['357 + 0', 'count on', 'Adding 0 to 357 changes nothing.'],
    ['456 + 1998', 'round and adjust', '1,998 is close to 2,000: work out 456 + 2,000, then subtract 2.'],
    ['702 + 356', 'round and adjust', '702 is close to 700: work out 700 + 356, then add 2.'],
    [
      '789 + 642',
      'written method',
      '789 and 642 are neither small nor easy to round: use the written method.',
    ],
  ])('%s: %s', (text, name, reason) => {
    expect(strategyFor(asked(text))).toEqual({ name, reason })
  })

  it.each([
    ['£5 − £4.85', 'count on', '£4.85 and £5 are close: count on from £4.85 to £5.'],
    ['£7.60 − £4.99', 'round and adjust', '£4.99 is close to £5.00: work out £7.60 − £5.00, then add 1p.'],
    ['£5 − £1.35', 'count on', 'This is change from £5: count on from £1.35 to £2.00, then to £5.'],
    ['£5 − £4.20', 'count on', 'This is change from £5: count on from £4.20 to £5.'],
    [
      '£8.75 − £3.20',
      'in the head',
      'In £8.75 − £3.20 nothing is exchanged and only two digits change: subtract £3.00, then 20p in the head.',
    ],
    ['8.6 − 0.4', 'count back', '0.4 is small: count back 0.4 from 8.6.'],
    ['9.87 − 1.98', 'round and adjust', '1.98 is close to 2.00: work out 9.87 − 2.00, then add 0.02.'],
    ['95p − 88p', 'count on', '88p and 95p are close: count on from 88p to 95p.'],
  ])('judges decimals and money by units of the last place: %s, %s', (text, name, reason) => {
    expect(strategyFor(asked(text))).toEqual({ name, reason })
  })

  it('judges a missing-number question by the calculation that finds it', () => {
    expect(strategyFor(asked('□ − 46 = 30'))).toEqual({
      name: 'in the head',
      reason:
        '30 + 46 finds the missing number. In 30 + 46 nothing is carried and only one digit changes: add 30 to 46 in the head.',
    })
    expect(strategyFor(asked('87 + □ = 92')).name).toBe('count on')
  })

  it('takes what is small and near from its settings', () => {
    expect(strategyFor(asked('95 − 70')).name).toBe('in the head')
    expect(strategyFor(asked('95 − 70'), { ...STRATEGY_SETTINGS, small: 25 }).name).toBe('count on')
    expect(strategyFor(asked('800 − 295'), { ...STRATEGY_SETTINGS, near: 5 }).name).toBe('round and adjust')
  })

  it('counts where, and only where, something is small, and then counts the shorter way', () => {
    fc.assert(
      fc.property(fc.nat(1200), fc.nat(1200), (one, other) => {
        const [top, bottom] = one < other ? [other, one] : [one, other]
        const { name } = strategyFor(asked(`${top} − ${bottom}`))
        const left = top - bottom
        const isCounted = name === 'count on' || name === 'count back'
        expect(isCounted).toBe(Math.min(left, bottom) <= STRATEGY_SETTINGS.small)
        if (isCounted && bottom > 0) expect(name).toBe(left <= bottom ? 'count on' : 'count back')
      }),
    )
  })

  it('never rounds the number taken from', () => {
    fc.assert(
      fc.property(fc.integer({ min: 100, max: 99999 }), fc.nat(99999), (top, other) => {
        const bottom = other % top
        const { name, reason } = strategyFor(asked(`${top} − ${bottom}`))
        if (name !== 'round and adjust') return
        expect(reason).toContain(`work out ${top.toLocaleString('en-GB')} − `)
        const off = Math.min(bottom % 100, 100 - (bottom % 100))
        expect([1, 2, 3]).toContain(off)
      }),
      { numRuns: 2000 },
    )
  })

  it('counts up for change from whole pounds, in every draw', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100 }), fc.nat(9999), (pounds, pence) => {
        const price = pence % (pounds * 100)
        fc.pre(price % 100 !== 0 && price > STRATEGY_SETTINGS.small)
        const text = `£${Math.floor(price / 100)}.${String(price % 100).padStart(2, '0')}`
        expect(strategyFor(asked(`£${pounds} − ${text}`)).name).toBe('count on')
      }),
    )
  })

  it('works in the head only where at most two digits change and no column is short, round numbers aside', () => {
    const digits = (value: number) => Array.from(String(value), Number).reverse()
    fc.assert(
      fc.property(fc.nat(9999), fc.nat(9999), fc.boolean(), (one, other, adds) => {
        const [top, bottom] = one < other ? [other, one] : [one, other]
        const { name } = strategyFor(asked(`${top} ${adds ? '+' : '−'} ${bottom}`))
        const [above, below] = [digits(top), digits(bottom)]
        const isEasy = above.every((digit, place) =>
          adds ? digit + (below[place] ?? 0) < 10 : digit >= (below[place] ?? 0),
        )
        const nonZero = (some: readonly number[]) => some.filter((digit) => digit > 0).length
        const changed = adds ? Math.min(nonZero(above), nonZero(below)) : nonZero(below)
        const isRound = !adds && nonZero(above) === 1 && top % 100 === 0 && bottom % 50 === 0
        if (name === 'in the head') expect([changed <= 2, isEasy || isRound]).toEqual([true, true])
        if (name === 'written method') expect(changed <= 2 && (isEasy || isRound)).toBe(false)
      }),
      { numRuns: 2000 },
    )
  })

  it('rounds and adjusts to the right answer', () => {
    const sum = /work out ([\d,]+) ([−+]) ([\d,]+), then (add|subtract) (\d)\.$/
    const near = fc.tuple(fc.integer({ min: 1, max: 99 }), fc.integer({ min: -3, max: 3 }))
    fc.assert(
      fc.property(
        near,
        fc.integer({ min: 21, max: 9999 }),
        fc.constantFrom('−', '+'),
        ([hundreds, off], b, sign) => {
          const [a, other] = [hundreds * 100 + off, b]
          const [top, bottom] = a < other ? [other, a] : [a, other]
          const { name, reason } = strategyFor(asked(`${top} ${sign} ${bottom}`))
          fc.pre(name === 'round and adjust')
          const [, left = '', , right = '', adjust, by] = sum.exec(reason) ?? []
          const [x, y] = [left, right].map((text) => Number(text.replaceAll(',', ''))) as [number, number]
          const eased = sign === '+' ? x + y : x - y
          const answer = sign === '+' ? top + bottom : top - bottom
          expect(eased + Number(by) * (adjust === 'add' ? 1 : -1)).toBe(answer)
        },
      ),
    )
  })
})

describe('the strategy within one column', () => {
  it.each([
    [12, 9, 'count on', 'count on from 9 to 12'],
    [11, 2, 'count back', 'count back 2 from 11'],
    [8, 4, 'known fact', 'use the fact 8 − 4 = 4'],
    [16, 8, 'known fact', 'use the fact 16 − 8 = 8'],
    [6, 6, 'known fact', 'use the fact 6 − 6 = 0'],
    [19, 5, 'known fact', 'use the fact 19 − 5 = 14'],
    [12, 7, 'through ten', 'subtract 2 to reach 10, then 5 more'],
  ])('%i − %i: %s', (top, bottom, name, how) => {
    expect(columnStrategy(top, bottom)).toEqual({ name, how })
  })

  it.each([
    [9, 2, 'count on', 'count on 2 from 9'],
    [3, 8, 'count on', 'count on 3 from 8'],
    [5, 4, 'known fact', 'use the fact 5 + 4 = 9'],
    [7, 7, 'known fact', 'use the fact 7 + 7 = 14'],
    [0, 6, 'known fact', 'use the fact 0 + 6 = 6'],
    [4, 8, 'through ten', 'start at 8, add 2 to make 10, then 2 more'],
  ])('%i + %i: %s', (top, bottom, name, how) => {
    expect(columnStrategy(top, bottom, 'add')).toEqual({ name, how })
  })

  it('passes through ten in two parts that make up the number taken away or added', () => {
    for (let top = 0; top <= 19; top++)
      for (let bottom = 0; bottom <= 9; bottom++) {
        const taken = top >= bottom ? columnStrategy(top, bottom) : null
        const added = top <= 9 ? columnStrategy(top, bottom, 'add') : null
        if (taken?.name === 'through ten') {
          const [toTen = NaN, , more = NaN] = Array.from(taken.how.matchAll(/\d+/g), Number)
          expect([top - toTen, toTen + more]).toEqual([10, bottom])
        }
        if (added?.name === 'through ten') {
          const [from = NaN, toTen = NaN, , more = NaN] = Array.from(added.how.matchAll(/\d+/g), Number)
          expect([from + toTen, from + toTen + more]).toEqual([10, top + bottom])
        }
      }
  })

  it.each([
    [3, 7],
    [20, 4],
    [4.5, 1],
    [5, -1],
  ])('refuses %d and %d, which no column of a subtraction holds', (top, bottom) => {
    expect(() => columnStrategy(top, bottom)).toThrow(RangeError)
  })
})
