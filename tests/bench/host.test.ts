import { describe, expect, test, vi } from 'vitest'
import { startBench } from '../../src/bench/node'

/** The code a batch fails with, or 'none'. */
async function codeOf(batch: (context: Excel.RequestContext) => Promise<void>): Promise<string> {
  try {
    await Excel.run(batch)
    return 'none'
  } catch (error) {
    return error instanceof OfficeExtension.Error ? error.code : String(error)
  }
}

const write = (...cells: string[]) =>
  codeOf(async (context) => {
    const sheet = context.workbook.worksheets.getActiveWorksheet()
    for (const cell of cells) sheet.getRange(cell).values = [[cell]]
    await context.sync()
  })

describe('the bench says loudly what it lacks', () => {
  test('an unknown member is an error that names its class and itself', async () => {
    const bench = await startBench()
    const code = await codeOf(async (context) => {
      context.workbook.worksheets.getActiveWorksheet().slicers.load('items')
      await context.sync()
    })
    expect(code).toBe('ApiNotFound')
    expect([...bench.host.unsupported]).toEqual([['Worksheet.slicers', 1]])
  })

  test("the host's own helpers cannot be reached over the wire", async () => {
    const bench = await startBench()
    const action = { Id: 2, ActionType: 2, Name: '', ObjectPathId: 1, QueryInfo: { Select: ['context'] } }
    const reply = await bench.host.execute({
      Actions: [action],
      ObjectPaths: { 1: { Id: 1, ObjectPathType: 1, Name: '' } },
    })
    expect(reply.Error?.Message).toContain('Workbook.context')
  })
})

describe('faults come when asked for', () => {
  test('the next sync fails with the code given; the one after it does not', async () => {
    const bench = await startBench()
    bench.host.failAt({ code: 'GeneralException' })
    expect(await write('A1')).toBe('GeneralException')
    expect(await write('A1')).toBe('none')
  })

  test('a later sync fails', async () => {
    const bench = await startBench()
    bench.host.failAt({ sync: 2, code: 'RequestAborted' })
    expect(await write('A1')).toBe('none')
    expect(await write('A2')).toBe('RequestAborted')
  })

  test('the writes before the fault stay done', async () => {
    const bench = await startBench()
    bench.host.failAt({ code: 'GeneralException', after: 2 })
    expect(await write('A1', 'A2', 'A3')).toBe('GeneralException')
    const sheet = bench.grid.activeSheet()
    expect(bench.grid.values(sheet, { row: 0, col: 0, rows: 3, cols: 1 })).toEqual([['A1'], ['A2'], ['']])
  })

  test('while the user is typing in a cell every sync fails', async () => {
    const bench = await startBench()
    bench.host.editing = true
    expect(await write('A1')).toBe('InvalidOperationInCellEditMode')
    bench.host.editing = false
    expect(await write('A1')).toBe('none')
  })

  test('more than 5 MB in one request is refused, as by Excel on the web', async () => {
    await startBench()
    const text = 'x'.repeat(30_000)
    const code = await codeOf(async (context) => {
      const range = context.workbook.worksheets.getActiveWorksheet().getRangeByIndexes(0, 0, 200, 1)
      range.values = Array.from({ length: 200 }, () => [text])
      await context.sync()
    })
    expect(code).toBe('RequestPayloadSizeLimitExceeded')
  })
})

describe('what a person does at the grid', () => {
  test('typed text is read as Excel reads it, and the change is told with its values', async () => {
    const bench = await startBench({ today: () => new Date(2025, 5, 1) })
    const told = vi.fn((change: Excel.WorksheetChangedEventArgs) => Promise.resolve(void change))
    await Excel.run(async (context) => {
      context.workbook.worksheets.getItem('Sheet1').onChanged.add(told)
      await context.sync()
    })
    bench.userEdit('Sheet1', 'B2', [['3-4']])
    await vi.waitFor(() => {
      expect(told).toHaveBeenCalledTimes(1)
    })
    const change = told.mock.calls[0]?.[0]
    // The 4th of March 2025 is day 45720 of Excel's calendar.
    expect(change?.address).toBe('B2')
    expect(change?.details).toEqual({
      valueBefore: '',
      valueAfter: 45_720,
      valueTypeBefore: 'Empty',
      valueTypeAfter: 'Double',
    })
    expect(change?.triggerSource).toBe('Unknown')
  })

  test('a selection is told and can be read', async () => {
    const bench = await startBench()
    bench.select('Sheet1', 'C3:D9')
    const address = await Excel.run(async (context) => {
      const range = context.workbook.getSelectedRange().load('address')
      await context.sync()
      return range.address
    })
    expect(address).toBe('Sheet1!C3:D9')
  })
})

test('the counts of requests, actions and characters grow', async () => {
  const bench = await startBench()
  const before = { ...bench.stats }
  await write('A1')
  expect(bench.stats.requests).toBeGreaterThan(before.requests)
  expect(bench.stats.actions).toBeGreaterThan(before.actions)
  expect(bench.stats.bytesIn).toBeGreaterThan(before.bytesIn)
})

test('settings of the document and of the workbook are one store', async () => {
  await startBench()
  await Excel.run(async (context) => {
    context.workbook.settings.add('years', [3, 4])
    await context.sync()
  })
  await new Promise((resolve) => Office.context.document.settings.refreshAsync(resolve))
  expect(Office.context.document.settings.get('years')).toEqual([3, 4])
})

test("custom functions are called through the add-in's runtime", async () => {
  const bench = await startBench()
  CustomFunctions.associate('TWICE', (value: number) => value * 2)
  CustomFunctions.associate('PICKY', () => {
    throw new CustomFunctions.Error(CustomFunctions.ErrorCode.invalidValue, 'Not that.')
  })
  expect(await bench.callCustomFunction('TWICE', [21])).toEqual({ value: 42 })
  expect(await bench.callCustomFunction('PICKY', [])).toEqual({ value: '#VALUE!', message: 'Not that.' })
})
