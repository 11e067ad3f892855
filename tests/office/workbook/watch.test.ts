import { describe, expect, it } from 'vitest'
import { goTo } from '../../../src/office/workbook/read'
import { watchEdits, watchSelection, watchSheets } from '../../../src/office/workbook/watch'
import { benchWith } from '../host'

const CELL = { top: 0, left: 0, bottom: 0, right: 0 }
const quiet = () => new Promise((resolve) => setTimeout(resolve, 50))

async function twoSheets() {
  const bench = await benchWith({ name: 'One', values: [['x']] })
  return { bench, one: bench.grid.activeSheet(), two: bench.grid.addSheet('Two') }
}

describe('watching', () => {
  it('tells when another sheet comes to the front, by the add-in or by a person, until it is ended', async () => {
    const { bench, one, two } = await twoSheets()
    let told = 0
    const end = await watchSheets(() => told++)
    await goTo(two, CELL)
    await expect.poll(() => told).toBe(1)
    bench.grid.activateSheet(one)
    await expect.poll(() => told).toBe(2)
    bench.grid.activateSheet(one)
    await quiet()
    expect(told).toBe(2)
    await end()
    await goTo(two, CELL)
    await quiet()
    expect(told).toBe(2)
  })

  it('tells when other cells are selected', async () => {
    const { bench } = await twoSheets()
    let told = 0
    const end = await watchSelection(() => told++)
    bench.select('One', 'D5')
    await expect.poll(() => told).toBe(1)
    await end()
    bench.select('One', 'D6')
    await quiet()
    expect(told).toBe(1)
  })

  it('tells which cells of which sheet were edited, but not by the add-in itself', async () => {
    const { bench, two } = await twoSheets()
    const told: unknown[] = []
    const end = await watchEdits((...edit) => told.push(edit))
    bench.userEdit('Two', 'B2', [['1', '2']])
    await expect.poll(() => told).toEqual([[two, [{ top: 1, left: 1, bottom: 1, right: 2 }]]])
    await Excel.run(async (context) => {
      context.workbook.worksheets.getItem('Two').getRange('B9').values = [[9]]
      await context.sync()
    })
    await quiet()
    expect(told).toHaveLength(1)
    await end()
    bench.userEdit('Two', 'B3', [['3']])
    await quiet()
    expect(told).toHaveLength(1)
  })
})
