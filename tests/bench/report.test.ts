import { expect, it } from 'vitest'
import { REPORT_SHEET, writeReport } from '../../src/bench/contract/report'
import { startBench } from '../../src/bench/node'

it('the report of the host checks stands on a sheet of its own, as text, failures first, and is written anew each time', async () => {
  const bench = await startBench()
  const passed = { name: '=SUM is text', passed: true, message: '' }
  const failed = { name: 'Writes a date', passed: false, message: '3-4' }
  const rows = () => {
    const sheet = bench.grid.sheets().find(({ name }) => name === REPORT_SHEET)
    return bench.grid.values(sheet?.id ?? '', { row: 0, col: 0, rows: 4, cols: 3 })
  }
  await writeReport([passed, failed, passed])
  expect(rows()).toEqual([
    ['', 'Check', 'What went wrong'],
    ['failed', 'Writes a date', '3-4'],
    ['passed', '=SUM is text', ''],
    ['passed', '=SUM is text', ''],
  ])
  await writeReport([passed])
  expect(rows().slice(1)).toEqual([
    ['passed', '=SUM is text', ''],
    ['', '', ''],
    ['', '', ''],
  ])
})
