import { afterEach, expect, it, vi } from 'vitest'
import { runContract } from '../../src/bench/contract'
import { REPORT_SHEET, reportText, writeReport } from '../../src/bench/contract/report'
import { startBench } from '../../src/bench/node'

afterEach(() => {
  vi.useRealTimers()
})

it('checks that get no answer from Excel are told as such, and after the second no others are run', async () => {
  vi.useFakeTimers()
  const answers = { name: 'answers', run: () => Promise.resolve() }
  const hangs = { name: 'hangs', run: () => new Promise<void>(() => undefined) }
  const running = runContract([hangs, answers, hangs, answers])
  await vi.advanceTimersByTimeAsync(200_000)
  const results = await running
  expect(results.map(({ name, passed }) => [name, passed])).toEqual([
    ['hangs', false],
    ['answers', true],
    ['hangs', false],
    ['answers', false],
  ])
  expect(results[0]?.message).toBe('Excel did not answer within 90 seconds.')
  expect(results[3]?.message).toBe('Not run, since Excel answered no more.')
})

it('the report of the host checks stands on a sheet of its own, as text, failures first, and is written anew each time', async () => {
  const bench = await startBench()
  const passed = { name: '=SUM is text', passed: true, message: '' }
  const failed = { name: 'Writes a date', passed: false, message: '3-4' }
  const rows = (from: number) => {
    const sheet = bench.grid.sheets().find(({ name }) => name === REPORT_SHEET)
    return bench.grid.values(sheet?.id ?? '', { row: from, col: 0, rows: 4, cols: 3 })
  }
  await writeReport([passed, failed, passed])
  expect(rows(0).map(([, what, value]) => [what, value])).toEqual([
    ['Host', 'Excel'],
    ['Platform', 'PC'],
    ['Build', '16.0.17328.20068'],
    ['Language', 'en-US on screen, en-US in the workbook'],
  ])
  expect(rows(4)[0]?.[2]).toMatch(/^ExcelApi 1\.17, no ExcelApiOnline, .*DialogApi 1\.2/)
  expect(rows(5)).toEqual([
    ['', 'Check', 'What went wrong, or was found'],
    ['failed', 'Writes a date', '3-4'],
    ['passed', '=SUM is text', ''],
    ['passed', '=SUM is text', ''],
  ])
  await writeReport([passed])
  expect(rows(6).slice(0, 2)).toEqual([
    ['passed', '=SUM is text', ''],
    ['', '', ''],
  ])
  expect(reportText([passed, failed])).toMatch(
    /^Host: Excel\n.*\nCheck: What went wrong, or was found\nfailed: Writes a date: 3-4\npassed: =SUM is text$/s,
  )
})
