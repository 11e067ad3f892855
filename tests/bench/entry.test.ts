import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { cellText } from '../../src/bench/grid/cellText'
import { readEntry } from '../../src/bench/host/entry'

const today = new Date(2025, 8, 1)
const read = (text: unknown, format = 'General') => readEntry(text, format, today)

// Serial numbers: days since the 30th of December 1899, for dates after February 1900 (ECMA-376, part 1, 18.17.4.1,
// from memory).
const serial = (year: number, month: number, day: number) =>
  Date.UTC(year, month - 1, day) / 86_400_000 + 25_569

describe('what Excel makes of text, in US form (from memory of its documentation)', () => {
  test.each([
    ['475', 475, undefined],
    [' 12 ', 12, undefined],
    ['475.', 475, undefined],
    ['007', 7, undefined],
    ['(5)', -5, undefined],
    ['1e3', 1000, '0.00E+00'],
    ['7,214', 7214, '#,##0'],
    ['12%', 0.12, '0%'],
    ['$4.50', 4.5, '$#,##0.00'],
    ['FALSE', false, undefined],
    ['12:30', 0.520_833_333_333_333_4, 'h:mm'],
    ['3-4', serial(2025, 3, 4), 'd-mmm'],
    ['3/4', serial(2025, 3, 4), 'd-mmm'],
    ['12-45', serial(1945, 12, 1), 'mmm-yy'],
    ['2-30', serial(1930, 2, 1), 'mmm-yy'],
    ['3-4-24', serial(2024, 3, 4), 'm/d/yyyy'],
    ['2024-03-04', serial(2024, 3, 4), 'm/d/yyyy'],
    ['4 Mar', serial(2025, 3, 4), 'd-mmm'],
    ['March 4', serial(2025, 3, 4), 'd-mmm'],
    ['4 March 2024', serial(2024, 3, 4), 'd-mmm-yy'],
    ['Mar 2024', serial(2024, 3, 1), 'mmm-yy'],
    ['1 1/2', 1.5, '# ?/?'],
  ])('%s', (text, content, numberFormat) => {
    const entry = read(text)
    expect(entry.content).toBe(content)
    expect(entry.numberFormat).toBe(numberFormat)
  })

  test.each([
    '932-457',
    '13-5',
    '30-2',
    '47 5',
    '475?',
    '−5',
    '-',
    '/',
    'abs',
    'May',
    'n/a',
    '4.7.5',
    'mark',
    '½',
  ])('%s stays text', (text) => {
    expect(read(text)).toEqual({ content: text })
  })

  test('an apostrophe or the format @ keeps text', () => {
    fc.assert(
      fc.property(fc.string({ minLength: 1 }), (text) => {
        expect(read(`'${text}`).content).toBe(text)
        expect(read(text, '@').content).toBe(text.startsWith("'") ? text.slice(1) : text)
      }),
    )
  })

  test('every whole number written in digits becomes that number and shows again as it was', () => {
    fc.assert(
      fc.property(fc.nat(999_999_999), (n) => {
        expect(read(String(n)).content).toBe(n)
        expect(cellText(n, 'General')).toBe(String(n))
      }),
    )
  })

  test('an error value stays one, a formula becomes one', () => {
    expect(read('#n/a')).toEqual({ content: '#N/A' })
    expect(read('=A1+1')).toEqual({ content: { formula: '=A1+1' } })
    expect(read('=')).toEqual({ content: '=' })
  })

  test.each(['=SUM(1', '=1+', '="a', '=A1)', '=(*2)'])('the broken formula %s is refused', (formula) => {
    expect(() => read(formula)).toThrow(/invalid/)
  })

  test('what no cell can hold is refused', () => {
    for (const thing of [Number.NaN, Infinity, {}, [], 'x'.repeat(32_768)])
      expect(() => read(thing)).toThrow(/invalid/)
  })
})
