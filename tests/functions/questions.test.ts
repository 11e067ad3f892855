import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { loadFunctions, type FunctionsHost } from './host'

const NOT_A_QUESTION = /not an addition or subtraction question/
const IN_SHAPE = ['ANSWER', 'EXCHANGES', 'TYPE', 'SKILLS', 'STRATEGY']
const MODELLED = ['STEPS', 'LAYOUT']

let host: FunctionsHost
beforeAll(async () => {
  host = await loadFunctions()
})

describe('functions of questions, in the shape of the range', () => {
  it('ANSWER: the formal methods of the National Curriculum 2013, Mathematics Appendix 1 (figures from memory)', async () => {
    const { value } = await host.call('ANSWER', [
      ['789 + 642', '874 − 523'],
      ['932 - 457', ''],
    ])
    expect(value).toEqual([
      [1431, 351],
      [475, ''],
    ])
  })

  it('ANSWER: money in pounds, decimals, missing numbers', async () => {
    const { value } = await host.call('ANSWER', [['£3.45 + 86p', '8.60 − 0.35', '□ − 46 = 30', '12 − 12']])
    expect(value).toEqual([[4.31, 8.25, 76, 0]])
  })

  it('ANSWER: any whole numbers of up to 14 digits give their sum and difference', async () => {
    const number = fc.bigInt({ min: 0n, max: 99_999_999_999_999n })
    await fc.assert(
      fc.asyncProperty(number, number, async (one, other) => {
        const [top, bottom] = one > other ? [one, other] : [other, one]
        const { value } = await host.call('ANSWER', [[`${top} + ${bottom}`, `${top} − ${bottom}`]])
        expect(value).toEqual([[Number(top + bottom), Number(top - bottom)]])
      }),
      { numRuns: 200 },
    )
  })

  it('ANSWER: #N/A where a spreadsheet would cut digits off', async () => {
    const { value, message } = await host.call('ANSWER', [['999999999999999 + 999999999999999']])
    expect(value).toBe('#N/A')
    expect(message).toMatch(/15 digits/)
    const row = ['999999999999999 + 999999999999999', '1 + 1']
    expect((await host.call('ANSWER', [row])).value).toEqual([['too long', 2]])
    expect(await host.call('ANSWER', [['999999999999999 + 1']])).toEqual({ value: [[1e15]] })
  })

  it('EXCHANGES and TYPE: by the definitions of an exchange and of a zero crossed', async () => {
    const asked = [['932 − 457'], ['305 − 128'], ['4003 − 1567'], ['874 − 523'], ['789 + 642']]
    expect((await host.call('EXCHANGES', asked)).value).toEqual([[2], [2], [3], [0], [3]])
    expect((await host.call('TYPE', asked)).value).toEqual([
      ['two exchanges, next to each other'],
      ['through a zero'],
      ['through two or more zeros'],
      ['no exchange'],
      ['three or more carries'],
    ])
  })

  it('SKILLS: joined by semicolons, an empty text where none is demanded', async () => {
    const { value } = await host.call('SKILLS', [['305 − 128', '874 − 523']])
    expect(value).toEqual([
      [
        'subtract.tens-to-ones; subtract.hundreds-to-tens; subtract.next-to-each-other; subtract.through-zero',
        '',
      ],
    ])
  })

  it('STRATEGY: the way, then the reason', async () => {
    const { value } = await host.call('STRATEGY', [
      ['2003 − 1998', '7214 − 6'],
      ['1562 + 998', '932 − 457'],
    ])
    expect(value).toEqual([
      [expect.stringMatching(/^count on: .*close/), expect.stringMatching(/^count back: .*small/)],
      [
        expect.stringMatching(/^round and adjust: .*close to 1,000/),
        expect.stringMatching(/^written method: .*\.$/),
      ],
    ])
  })

  it.each(IN_SHAPE)('%s: empty cells, however the host passes them, give an empty text', async (id) => {
    expect((await host.call(id, [[null, 0, '', '  ']])).value).toEqual([['', '', '', '']])
  })

  it.each(IN_SHAPE)('%s: a cell that is no question gives a word there and spoils no other', async (id) => {
    const { value } = await host.call(id, [
      ['Name', '5 − 3', true],
      [{ basicValue: '#N/A' }, '', '3 − 5'],
    ])
    const [[name, sum, truth], [error, empty, negative]] = value as [unknown[], unknown[]]
    expect([name, truth, error, negative]).toEqual(Array(4).fill('no question'))
    expect(sum).not.toBe('no question')
    expect(empty).toBe('')
  })

  it.each([...IN_SHAPE, ...MODELLED])(
    '%s: a single cell that is no question gives #VALUE! with the reason',
    async (id) => {
      const passed = (text: string) => (MODELLED.includes(id) ? text : [[text]])
      const header = await host.call(id, passed('Name'))
      expect(header).toEqual({ value: '#VALUE!', message: expect.stringMatching(NOT_A_QUESTION) as string })
      const negative = await host.call(id, passed('3 − 5'))
      expect(negative).toEqual({ value: '#VALUE!', message: expect.stringMatching(/greater than/) as string })
    },
  )

  it('reads a question in a cell with a data type by its basic value', async () => {
    const { value } = await host.call('ANSWER', [[{ type: 'String', basicValue: '5 − 3' }]])
    expect(value).toEqual([[2]])
  })
})

describe('functions of one question', () => {
  it('STEPS: a sentence to a row, the exchange through a zero in words, the answer at the end', async () => {
    const { value } = await host.call('STEPS', '305 − 128')
    const rows = value as string[][]
    expect(rows.length).toBeGreaterThan(5)
    expect(rows.every((row) => row.length === 1 && /[.?!]$/.test(row[0] ?? ''))).toBe(true)
    expect(rows.flat().join(' ')).toMatch(/exchange/i)
    expect(rows.flat().join(' ')).toContain('177')
  })

  it('LAYOUT: rows of one length; the answer is the last one', async () => {
    const { value } = await host.call('LAYOUT', '305 − 128')
    const rows = value as string[][]
    expect(new Set(rows.map((row) => row.length)).size).toBe(1)
    expect(rows.slice(-3).map((row) => row.join(''))).toEqual(['305', '−128', '177'])
    expect(rows.flat()).toContain('10')
  })

  it.each(MODELLED)('%s: an empty cell gives an empty text', async (id) => {
    for (const empty of [null, 0, '', undefined]) expect((await host.call(id, empty)).value).toEqual([['']])
  })
})
