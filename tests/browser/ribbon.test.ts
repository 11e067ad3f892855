import { describe, expect, it } from 'vitest'
import { expectQuiet, openStage, useStage } from './stage'

useStage()

describe('Mark this sheet on the ribbon', () => {
  it('marks at its very first press, which wakes the add-in before the pane’s script is there', async () => {
    const stage = await openStage({ scriptDelay: 1500, press: 'markThisSheet' })
    const { page } = stage
    expect(await page.evaluate(() => window.firstPress)).toBe(true)
    const rules = () =>
      page.evaluate(() => {
        const grid = window.columnwiseBench?.bench.grid
        return grid?.conditionalFormats(grid.activeSheet()).length
      })
    await expect.poll(rules).toBeGreaterThan(0)
    expectQuiet(stage)
    await page.close()
  })
})
