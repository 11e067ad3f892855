import { describe, expect, it } from 'vitest'
import { DEFAULT_SETTINGS } from '../../src/office/workbook/settings'
import { expectQuiet, openStage, useStage, type Stage } from './stage'

useStage()

const button = ({ pane }: Stage, name: string) => pane.getByRole('button', { name, exact: true })

/** The pane with its settings open. */
async function settingsOf(): Promise<Stage> {
  const stage = await openStage()
  await button(stage, 'Settings').click()
  await stage.pane.getByRole('heading', { name: 'Settings', exact: true }).waitFor()
  return stage
}

/** The settings as the workbook keeps them. */
const kept = ({ page }: Stage) =>
  page.evaluate(() => window.columnwiseBench?.bench.book.settings.get('columnwise'))

describe('the settings', () => {
  it('are kept in the workbook, and Mark goes by them at once', async () => {
    const stage = await settingsOf()
    const { pane, page } = stage
    await pane.getByLabel('Secure from', { exact: true }).fill('90')
    await pane.getByLabel('Write the Mastery sheet', { exact: true }).uncheck()
    await button(stage, 'Keep').click()
    await pane.getByText('The settings are kept in this workbook.').waitFor()
    expect(await kept(stage)).toMatchObject({ mastery: { secure: 0.9 }, masterySheet: false })
    expect(await pane.getByLabel('Write the Mastery sheet too').isChecked()).toBe(false)
    expect(await button(stage, 'Settings').evaluate((gear) => gear === document.activeElement)).toBe(true)
    expectQuiet(stage)
    await page.close()
  })

  it('change the words for a status in Review', async () => {
    const stage = await settingsOf()
    const { pane, page } = stage
    await pane.getByLabel('○ needs support').fill('working towards')
    await button(stage, 'Keep').click()
    await pane.getByRole('tab', { name: 'Review' }).click()
    await pane.getByText('“working towards” is a prompt for your own judgement').waitFor()
    expect(await pane.locator('.heat tbody').getByText('working towards').count()).toBeGreaterThan(0)
    expect(await pane.locator('.heat tbody').getByText('needs support').count()).toBe(0)
    expectQuiet(stage)
    await page.close()
  })

  it('that make no sense are refused with a sentence, and nothing is kept', async () => {
    const stage = await settingsOf()
    await stage.pane.getByLabel('Secure from', { exact: true }).fill('20')
    await button(stage, 'Keep').click()
    await stage.pane.getByText('The threshold for secure must be above that for needs support.').waitFor()
    expect(await kept(stage)).toBeUndefined()
    await stage.page.close()
  })

  it('go back to the defaults, but for the name of the class', async () => {
    const stage = await settingsOf()
    await stage.pane.getByLabel('Slips').fill('20')
    await stage.pane.getByLabel('Class', { exact: true }).fill('Kingfisher')
    await button(stage, 'Back to the defaults').click()
    expect(await stage.pane.getByLabel('Slips').inputValue()).toBe('8')
    await button(stage, 'Keep').click()
    await expect.poll(() => kept(stage)).toEqual({ ...DEFAULT_SETTINGS, className: 'Kingfisher' })
    await stage.page.close()
  })

  it('close by Escape without keeping anything, and by opening an area', async () => {
    const stage = await settingsOf()
    const { pane, page } = stage
    await pane.getByLabel('Slips').fill('20')
    await page.keyboard.press('Escape')
    await pane.getByRole('button', { name: 'Mark this sheet' }).waitFor()
    await button(stage, 'Settings').click()
    expect(await pane.getByLabel('Slips').inputValue()).toBe('8')
    await pane.getByRole('tab', { name: 'Mark' }).click()
    await pane.getByRole('button', { name: 'Mark this sheet' }).waitFor()
    expect(await kept(stage)).toBeUndefined()
    await page.close()
  })
})
