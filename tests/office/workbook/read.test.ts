import { describe, expect, it } from 'vitest'
import { OWN_SHEET } from '../../../src/marksheet/layout/find'
import { addressArea, blocksOf, moveFormula } from '../../../src/office/edit/address'
import { goTo, readSelection, readSheet } from '../../../src/office/workbook/read'
import { benchOf, benchWith, countSyncs, largeMarksheet, marksheetOf, problemIn } from '../host'

describe('reading a sheet', () => {
  it.each([
    ['kestrel-plain', '0%', 41],
    ['form-responses', 'm/d/yy h:mm:ss', 0],
  ] as const)(
    'gives the values, dates and formulas that a file reader gives: %s',
    async (name, format, formulas) => {
      const expected = await marksheetOf(name)
      expect(expected.formats?.flat()).toContain(format)
      expect(expected.formulas?.flat().filter((text) => text !== '')).toHaveLength(formulas)
      await benchOf(name)
      const { matrix } = await readSheet()
      expect(matrix.name).toBe(expected.name)
      expected.values.forEach((row, i) => {
        row.forEach((value, j) => {
          expect(matrix.values[i]?.[j] ?? '').toEqual(value ?? '')
          expect(matrix.formats?.[i]?.[j]).toBe(expected.formats?.[i]?.[j] ?? 'General')
          expect(matrix.formulas?.[i]?.[j]).toBe(expected.formulas?.[i]?.[j] ?? '')
        })
      })
    },
  )

  it('starts at A1 where the first rows and columns are empty, and takes an empty sheet', async () => {
    await benchWith({ name: 'Gap', values: [[], [], ['', '', 'here']] })
    expect((await readSheet()).matrix.values).toEqual([
      ['', '', ''],
      ['', '', ''],
      ['', '', 'here'],
    ])
    await benchWith({ name: 'Empty', values: [] })
    expect((await readSheet()).matrix.values).toEqual([['']])
  })

  it('takes 2 requests up to 20,000 cells; beyond, pieces with progress', async () => {
    const small = await benchWith(largeMarksheet(180, 40))
    const syncs = countSyncs(small)
    await readSheet()
    expect(syncs()).toBe(2)
    const large = await benchWith(largeMarksheet(1200, 40))
    const count = countSyncs(large)
    const parts: number[] = []
    const work = { signal: new AbortController().signal, progress: (part: number) => parts.push(part) }
    const { matrix } = await readSheet(undefined, work)
    expect(matrix.values).toEqual(
      largeMarksheet(1200, 40).values.map((row) => [...row, ...new Array<string>(41 - row.length).fill('')]),
    )
    expect(count()).toBe(1 + Math.ceil(1202 / Math.floor(20_000 / 41)))
    expect(parts).toEqual(parts.toSorted((a, b) => a - b))
  })

  it('stops between pieces when asked', async () => {
    await benchWith(largeMarksheet(1200, 40))
    const stop = new AbortController()
    const work = {
      signal: stop.signal,
      progress: () => {
        stop.abort()
      },
    }
    expect((await problemIn(readSheet(undefined, work))).sentence).toMatch(/^Stopped/)
  })

  it('reads by halves where one answer would be too large', async () => {
    const { values } = largeMarksheet(30, 10)
    const bench = await benchWith({ name: 'Long texts', values })
    bench.host.failAt({ sync: 2, code: 'ResponsePayloadSizeLimitExceeded' })
    bench.host.failAt({ sync: 3, code: 'ResponsePayloadSizeLimitExceeded' })
    expect((await readSheet()).matrix.values.slice(1)).toEqual(values.slice(1))
  })

  it('knows sheets of our own by what they start with, not by their name', async () => {
    const bench = await benchWith({ name: 'Class', values: [['x']] })
    bench.grid.write(bench.grid.addSheet('Mastery'), 0, 0, [[`${OWN_SHEET}Mastery`], ['row']])
    bench.grid.write(bench.grid.addSheet('Record'), 0, 0, [['Record of the football team']])
    const { sheets } = await readSheet()
    expect(sheets.map(({ name, own }) => [name, own])).toEqual([
      ['Class', false],
      ['Mastery', true],
      ['Record', false],
    ])
    expect(sheets[1]?.filled).toEqual({ top: 0, left: 0, bottom: 1, right: 0 })
  })
})

describe('the selection', () => {
  it('is read with its sheet, and cut to the filled part where whole columns or rows are selected', async () => {
    const bench = await benchWith({
      name: 'Sheet A',
      values: [
        ['', ''],
        ['', 'x'],
        ['', 'y'],
      ],
    })
    bench.select('Sheet A', 'B2:D9')
    expect(await readSelection()).toEqual({
      sheetId: bench.grid.activeSheet(),
      sheet: 'Sheet A',
      area: { top: 1, left: 1, bottom: 8, right: 3 },
    })
    bench.select('Sheet A', 'B:B')
    expect((await readSelection()).area).toEqual({ top: 1, left: 1, bottom: 2, right: 1 })
    bench.select('Sheet A', '3:3')
    expect((await readSelection()).area).toEqual({ top: 2, left: 1, bottom: 2, right: 1 })
    const empty = await benchWith({ name: 'Empty', values: [] })
    empty.select('Empty', 'F:F')
    expect((await problemIn(readSelection())).sentence).toBe('The selection holds no filled cells.')
  })

  it('goes where it is sent, on another sheet too', async () => {
    const bench = await benchWith({ name: 'One', values: [['x']] })
    const other = bench.grid.addSheet('Two')
    await goTo(other, { top: 3, left: 2, bottom: 3, right: 2 })
    expect(bench.grid.selection()).toEqual({ sheetId: other, area: { row: 3, col: 2, rows: 1, cols: 1 } })
  })
})

describe('addresses', () => {
  it.each([
    ["'Year 4'!$B$5:N33", { top: 4, left: 1, bottom: 32, right: 13 }],
    ['AA10', { top: 9, left: 26, bottom: 9, right: 26 }],
    ['Sheet1!C:D', { top: 0, left: 2, bottom: 1_048_575, right: 3 }],
    ['4:7', { top: 3, left: 0, bottom: 6, right: 16_383 }],
  ])('%s is read', (address, area) => {
    expect(addressArea(address)).toEqual(area)
  })

  it('that is none is refused', () => {
    expect(() => addressArea('#REF!')).toThrow(RangeError)
    expect(() => addressArea('')).toThrow(RangeError)
  })

  it('of several blocks are parted, whatever the sheet is called', () => {
    expect(blocksOf("'Owls, Year 4'!$B$5:B9,'Owls, Year 4'!D5")).toEqual(['B5:B9', 'D5'])
    expect(blocksOf("'It''s 4!, ok'!A1,'It''s 4!, ok'!C:C")).toEqual(['A1', 'C:C'])
    expect(blocksOf('Sheet1!A1:B2')).toEqual(['A1:B2'])
    expect(blocksOf('A1,B2')).toEqual(['A1', 'B2'])
  })

  it('in a formula are moved as whole addresses outside texts only', () => {
    expect(moveFormula('AND(B5="B5",AB5>B50,B5<LOG10(B5))', 'B5', 'C9')).toBe(
      'AND(C9="B5",AB5>B50,C9<LOG10(C9))',
    )
  })
})
