import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { loadFunctions, type FunctionsHost } from './host'

let host: FunctionsHost
beforeAll(async () => {
  host = await loadFunctions()
})

async function draw(...args: unknown[]): Promise<string[][]> {
  const { value, message } = await host.call('QUESTIONS', ...args)
  if (!Array.isArray(value)) throw new Error(message)
  return value as string[][]
}

describe('QUESTIONS', () => {
  it('gives ten different questions of the type down a column, where nothing else is said', async () => {
    const drawn = await draw('through a zero', 3, 3)
    expect(drawn.length).toBe(10)
    expect(drawn.every((row) => row.length === 1)).toBe(true)
    expect(new Set(drawn.flat()).size).toBe(10)
    const types = (await host.call('TYPE', drawn)).value
    expect(types).toEqual(drawn.map(() => ['through a zero']))
  })

  it('lays them across on asking: the same questions, in a row', async () => {
    const down = await draw('no exchange', 4, 3, 5, 7)
    expect(await draw('no exchange', 4, 3, 5, 7, true)).toEqual([down.flat()])
    expect(await draw('no exchange', 4, 3, 5, 7, false)).toEqual(down)
  })

  it('gives the same questions for the same seed, others for another, and has a seed where none is given', async () => {
    const type = 'two carries, apart'
    const first = await draw(type, 4, 4, 8, 'Monday')
    expect(await draw(type, 4, 4, 8, 'Monday')).toEqual(first)
    expect(await draw(type, 4, 4, 8, 'Tuesday')).not.toEqual(first)
    expect(await draw(type, 4, 4, 8)).toEqual(await draw(type, 4, 4, 8, 1))
    for (const empty of [null, 0, '', ' '])
      expect(await draw(type, 4, 4, 8, empty)).toEqual(await draw(type, 4, 4, 8))
  })

  it('gives what was asked for: type, digits and count, with any seed', async () => {
    const asked = fc.record({
      type: fc.constantFrom(
        'no exchange',
        'one exchange, tens to ones',
        'No carry',
        ' one carry, tens to hundreds ',
      ),
      digits: fc.integer({ min: 3, max: 6 }),
      fewer: fc.integer({ min: 0, max: 1 }),
      count: fc.integer({ min: 1, max: 20 }),
      seed: fc.integer(),
    })
    await fc.assert(
      fc.asyncProperty(asked, async ({ type, digits, fewer, count, seed }) => {
        const drawn = await draw(type, digits, digits - fewer, count, seed)
        expect(drawn.length).toBe(count)
        expect((await host.call('TYPE', drawn)).value).toEqual(drawn.map(() => [type.trim().toLowerCase()]))
        for (const [text = ''] of drawn) {
          const lengths = text
            .replace(/,/g, '')
            .split(/ [−+] /)
            .map((number) => number.length)
          expect(lengths).toEqual([digits, digits - fewer])
        }
      }),
      { numRuns: 50 },
    )
  })

  it.each([
    ['an unknown type', ['two swaps', 3, 3], /no type called “two swaps”/],
    ['no type', [null, 3, 3], /no type called “”/],
    ['too many digits', ['no exchange', 16, 3], /top number must have 1 to 15 digits/],
    ['digits that are no number', ['no exchange', 'three', 3], /top number must have 1 to 15 digits/],
    ['a bottom number that is longer', ['no exchange', 2, 3], /more digits than the top number/],
    ['a count below 1', ['no exchange', 3, 3, -1], /whole number from 1 to 1000/],
    ['half a question', ['no exchange', 3, 3, 2.5], /whole number from 1 to 1000/],
    ['a count that is no number', ['no exchange', 3, 3, 'many'], /whole number from 1 to 1000/],
    ['more than a set holds', ['no exchange', 3, 3, 1001], /whole number from 1 to 1000/],
  ])('refuses %s with #VALUE! and the reason', async (_, args, message) => {
    const result = await host.call('QUESTIONS', ...args)
    expect(result).toEqual({ value: '#VALUE!', message: expect.stringMatching(message) as string })
  })

  it('gives #N/A and says so where there are none, or fewer than asked', async () => {
    const none = await host.call('QUESTIONS', 'through a zero', 2, 2)
    expect(none).toEqual({
      value: '#N/A',
      message: expect.stringMatching(/^No such question exists/) as string,
    })
    const few = await host.call('QUESTIONS', 'no exchange', 1, 1, 1000)
    expect(few).toEqual({
      value: '#N/A',
      message: expect.stringMatching(/^Only \d+ such questions exist/) as string,
    })
  })

  it('prints questions as text that no spreadsheet takes for a date or a formula', async () => {
    const drawn = (await draw('no exchange', 2, 1, 50)).flat()
    expect(drawn.every((text) => /^\d{2} − \d$/.test(text))).toBe(true)
  })
})
