import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { workOut, type Written } from '../../src/arithmetic/columns'
import { exchangesOf } from '../../src/arithmetic/exchange'
import { numeralText, readNumeral, scaledValue, type Numeral } from '../../src/arithmetic/numeral'
import type { Operation } from '../../src/arithmetic/question'

function numeral(text: string): Numeral {
  const read = readNumeral(text)
  if (!read) throw new Error(`${text} is no number`)
  return read
}
function written(text: string): Written {
  const [top = '', sign, bottom = ''] = text.split(' ')
  return workOut({ operation: sign === '+' ? 'add' : 'subtract', top: numeral(top), bottom: numeral(bottom) })
}

/** Numbers of up to 15 digits before the point and 3 after it, as text. */
const number = fc
  .tuple(fc.bigInt({ min: 0n, max: 10n ** 15n - 1n }), fc.integer({ min: 0, max: 3 }), fc.nat({ max: 999 }))
  .map(([whole, places, decimals]) =>
    places === 0 ? `${whole}` : `${whole}.${String(decimals).padStart(3, '0').slice(0, places)}`,
  )

describe('the written method', () => {
  it('gives the exact sum and difference of any two numbers', () => {
    fc.assert(
      fc.property(number, number, fc.constantFrom<Operation>('add', 'subtract'), (one, other, operation) => {
        const [a, b] = [numeral(one), numeral(other)]
        const [top, bottom] =
          operation === 'subtract' && scaledValue(a, 3) < scaledValue(b, 3) ? [b, a] : [a, b]
        const { answer } = workOut({ operation, top, bottom })
        const [x, y] = [scaledValue(top, 3), scaledValue(bottom, 3)]
        expect(scaledValue(answer, 3)).toBe(operation === 'add' ? x + y : x - y)
      }),
    )
  })

  it('refuses to take a greater number from a smaller one', () => {
    expect(() => written('86 − 7214')).toThrow(RangeError)
  })

  it('writes over a zero 10, then 9, when the exchange runs through it', () => {
    expect(written('305 − 128').columns.map(({ marks }) => marks)).toEqual([[15], [10, 9], [2]])
    expect(written('4003 − 1567').columns.map(({ marks }) => marks)).toEqual([[13], [10, 9], [10, 9], [3]])
  })

  it('writes over a digit that lends first and receives later one less, then ten more', () => {
    expect(written('412 − 185').columns.map(({ marks }) => marks)).toEqual([[12], [0, 10], [3]])
  })

  it('keeps digit − lent + received − bottom = result in every column, and one lender for each receiver', () => {
    fc.assert(
      fc.property(number, number, (one, other) => {
        const [a, b] = [numeral(one), numeral(other)]
        const [top, bottom] = scaledValue(a, 3) < scaledValue(b, 3) ? [b, a] : [a, b]
        const { columns } = workOut({ operation: 'subtract', top, bottom })
        for (const { top: upper = 0, bottom: lower = 0, lends, receives, marks, result } of columns) {
          expect(upper - Number(lends) + 10 * Number(receives) - lower).toBe(result)
          expect((marks.at(-1) ?? upper) - lower).toBe(result)
          expect(result >= 0 && result <= 9).toBe(true)
        }
        columns.forEach((column, index) => expect(column.receives).toBe(columns[index + 1]?.lends ?? false))
      }),
    )
  })
})

describe('exchange types and skills', () => {
  it.each([
    ['874 − 523', 'no exchange', 0, 0],
    ['932 − 457', 'two exchanges, next to each other', 2, 0],
    ['305 − 128', 'through a zero', 2, 1],
    ['4003 − 1567', 'through two or more zeros', 3, 2],
    ['412 − 185', 'two exchanges, next to each other', 2, 0],
    ['5272 − 1348', 'two exchanges, apart', 2, 0],
    ['5213 − 1578', 'three or more exchanges', 3, 0],
    ['682 − 347', 'one exchange, tens to ones', 1, 0],
    ['748 − 464', 'one exchange, hundreds to tens', 1, 0],
    ['5389 − 1764', 'one exchange, thousands to hundreds', 1, 0],
    ['52345 − 17123', 'one exchange, ten thousands to thousands', 1, 0],
    ['523456 − 171234', 'one exchange, beyond ten thousands', 1, 0],
    ['8.6 − 2.7', 'one exchange, ones to tenths', 1, 0],
    ['8.62 − 2.35', 'one exchange, tenths to hundredths', 1, 0],
    ['8.662 − 2.535', 'one exchange, hundredths to thousandths', 1, 0],
    ['8 − 2.35', 'through a zero', 2, 1],
    ['523 + 241', 'no carry', 0, 0],
    ['789 + 642', 'three or more carries', 3, 0],
    ['467 + 258', 'two carries, next to each other', 2, 0],
    ['1627 + 2914', 'two carries, apart', 2, 0],
    ['467 + 225', 'one carry, ones to tens', 1, 0],
    ['467 + 251', 'one carry, tens to hundreds', 1, 0],
    ['467 + 712', 'one carry, hundreds to thousands', 1, 0],
    ['4671 + 7112', 'one carry, thousands to ten thousands', 1, 0],
    ['46711 + 71122', 'one carry, beyond ten thousands', 1, 0],
    ['4.7 + 2.5', 'one carry, tenths to ones', 1, 0],
    ['4.57 + 2.25', 'one carry, hundredths to tenths', 1, 0],
    ['4.557 + 2.225', 'one carry, thousandths to hundredths', 1, 0],
  ])('%s: %s, %i, zeros crossed %i', (text, type, count, zeros) => {
    const found = exchangesOf(written(text))
    expect([found.type, found.places.length, found.zerosCrossed]).toEqual([type, count, zeros])
  })

  it.each([
    ['874 − 523', []],
    [
      '305 − 128',
      [
        'subtract.tens-to-ones',
        'subtract.hundreds-to-tens',
        'subtract.next-to-each-other',
        'subtract.through-zero',
      ],
    ],
    [
      '7214 − 86',
      [
        'subtract.tens-to-ones',
        'subtract.hundreds-to-tens',
        'subtract.next-to-each-other',
        'subtract.different-length',
      ],
    ],
    ['5040 − 2308', ['subtract.tens-to-ones', 'subtract.thousands-to-hundreds', 'subtract.zero-below']],
    ['52340 − 17123', ['subtract.tens-to-ones', 'subtract.beyond-thousands']],
    ['8.6 − 2.35', ['subtract.into-decimals', 'subtract.different-length']],
    [
      '789 + 642',
      [
        'add.ones-to-tens',
        'add.tens-to-hundreds',
        'add.hundreds-to-thousands',
        'add.next-to-each-other',
        'add.new-column',
      ],
    ],
    ['52341 + 19022', ['add.beyond-thousands']],
    ['4.7 + 12.5', ['add.from-decimals', 'add.different-length']],
  ])('%s demands %j', (text, skills) => {
    expect(exchangesOf(written(text)).skills).toEqual(skills)
  })

  it('counts every exchange once: a digit sum grows by nine for each ten exchanged or shrinks so for each carried', () => {
    const digitSum = (text: string) =>
      [...text].reduce((sum, digit) => sum + (digit === '.' ? 0 : Number(digit)), 0)
    fc.assert(
      fc.property(number, number, fc.constantFrom<Operation>('add', 'subtract'), (one, other, operation) => {
        const [a, b] = [numeral(one), numeral(other)]
        const [top, bottom] =
          operation === 'subtract' && scaledValue(a, 3) < scaledValue(b, 3) ? [b, a] : [a, b]
        const worked = workOut({ operation, top, bottom })
        const [x = 0, y = 0, z = 0] = [top, bottom, worked.answer].map((each) => digitSum(numeralText(each)))
        const tens = exchangesOf(worked).places.length
        expect(z).toBe(operation === 'add' ? x + y - 9 * tens : x - y + 9 * tens)
      }),
    )
  })
})
