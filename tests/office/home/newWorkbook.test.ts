import { expect, test } from 'vitest'
import { startBench } from '../../../src/bench/node'
import { homeWorkbook } from '../../../src/home/workbook'
import { openNewWorkbook } from '../../../src/office/home/newWorkbook'
import { askedAs } from '../../support/asked'

test('a home workbook is opened beside the workbook in front, byte for byte, and nothing is written in that one', async () => {
  const bench = await startBench()
  const { bytes } = homeWorkbook({ child: null, questions: ['932 − 457', '305 − 128'].map(askedAs) })
  await openNewWorkbook(bytes)
  expect(bench.book.openedBeside.map((file) => new Uint8Array(Buffer.from(file, 'base64')))).toEqual([bytes])
  const sheet = bench.grid.activeSheet()
  expect(bench.grid.values(sheet, { row: 0, col: 0, rows: 1, cols: 1 })).toEqual([['']])
})
