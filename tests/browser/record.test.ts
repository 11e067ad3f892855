import { describe, expect, it } from 'vitest'
import { axeProblems, expectQuiet, openStage, useStage, type Stage } from './stage'

useStage()

const button = ({ pane }: Stage, name: string | RegExp) => pane.getByRole('button', { name })

async function openRecord(stage: Stage): Promise<void> {
  await stage.pane.getByRole('tab', { name: 'Review' }).click()
  await stage.pane.getByRole('tab', { name: 'Record', exact: true }).click()
}

describe('Record in the pane', () => {
  it('asks for the class once, keeps every answer, and judges over the weeks', async () => {
    const stage = await openStage()
    const { pane, page } = stage
    await openRecord(stage)
    const add = button(stage, 'Add Kingfisher to Record')
    expect(await add.isDisabled()).toBe(true)
    await pane.getByRole('textbox', { name: 'Class' }).fill('4K')
    await add.click()
    await pane.getByText('Kingfisher is in Record: 336 answers of 28 pupils.').waitFor()
    await pane.getByText('336 answers of 1 day.').waitFor()
    await pane.getByRole('combobox', { name: 'Judge by' }).selectOption({ label: 'Record: 4K' })
    await pane.getByRole('tab', { name: 'Pupils' }).click()
    expect(await pane.locator('.heat tbody th').count()).toBe(28)
    expect(await pane.getByRole('tab', { name: 'Why' }).count()).toBe(0)
    await stage.pane.locator('.heat').getByRole('button', { name: 'Bertie L' }).click()
    await pane.getByText(/Kingfisher: 1 of 11/).waitFor()
    expect(await axeProblems(pane)).toEqual([])
    await button(stage, /^Undo/).click()
    await pane.getByText(/^Undone:/).waitFor()
    await expect
      .poll(() =>
        page.evaluate(() =>
          window.columnwiseBench?.bench.grid
            .sheets()
            .filter(({ visible }) => visible)
            .map(({ name }) => name),
        ),
      )
      .toEqual(['Kingfisher'])
    expectQuiet(stage)
    await page.close()
  })

  it('asks which response counts where a form was sent twice', async () => {
    const stage = await openStage()
    const { pane, page } = stage
    await page.evaluate(() => {
      window.columnwiseBench?.bench.userEdit('Kingfisher', 'A6', [['Amira P']])
    })
    await openRecord(stage)
    await button(stage, 'Look again').click()
    await pane.getByRole('textbox', { name: 'Class' }).fill('4K')
    await pane.getByText('Say which rows count first.').waitFor()
    expect(await button(stage, 'Add Kingfisher to Record').isDisabled()).toBe(true)
    await pane.getByRole('radio', { name: /^A6: 11 right of 12|^A6:/ }).check()
    expect(await axeProblems(pane)).toEqual([])
    await button(stage, 'Add Kingfisher to Record').click()
    await pane.getByText('Kingfisher is in Record: 324 answers of 27 pupils.').waitFor()
    expectQuiet(stage)
    await page.close()
  })

  it('asks how a sheet is filed that is there already, and says nothing was added where nothing was', async () => {
    const stage = await openStage({ width: 320 })
    const { pane, page } = stage
    await openRecord(stage)
    const add = button(stage, 'Add Kingfisher to Record')
    await pane.getByRole('textbox', { name: 'Class' }).fill('4K')
    await add.click()
    await pane.getByText('336 answers of 1 day.').waitFor()

    await add.click()
    await pane.getByText(/Nothing was added: Record holds these 336 answers of Kingfisher already/).waitFor()

    await page.evaluate(() => {
      window.columnwiseBench?.bench.userEdit('Kingfisher', 'C4:D4', [[9999, 8888]])
    })
    await add.click()
    const asked = pane.getByRole('alert').filter({ hasText: 'Record may hold' })
    await asked.getByText(/^Record may hold Kingfisher already/).waitFor()
    expect(await asked.getByRole('listitem').allTextContents()).toEqual([
      expect.stringMatching(/^To add: Kingfisher, 4K, .*: 336 answers of 28 pupils$/),
      expect.stringMatching(
        /^In Record: Kingfisher, 4K, .*: 336 answers of 28 pupils\. 2 answers changed\.$/,
      ),
    ])
    expect(await asked.evaluate((element) => element === document.activeElement)).toBe(true)
    expect(await axeProblems(pane)).toEqual([])
    await button(stage, 'Leave Record as it is').click()
    expect(await asked.count()).toBe(0)
    await pane.getByText('336 answers of 1 day.').waitFor()

    await pane.getByLabel('Day of the questions').fill('2026-11-06')
    await add.click()
    await asked.getByRole('button', { name: /^Other work: add it beside, under 4K, 6 November 2026/ }).click()
    await pane.getByText('Kingfisher is in Record: 336 answers of 28 pupils.').waitFor()
    await pane.getByText('672 answers of 2 days.').waitFor()

    await pane.getByRole('textbox', { name: 'Class' }).fill('4H')
    await add.click()
    await asked
      .getByRole('button', { name: /^Same work: put it in place of 4K, 6 November 2026, now under 4H/ })
      .waitFor()
    expect(await asked.getByRole('button', { name: /^Same work/ }).count()).toBe(3)
    await asked
      .getByRole('button', {
        name: /^Same work: put it in place of 4K, 6 November 2026, now under 4H, 6 November 2026$/,
      })
      .click()
    await pane
      .getByText(
        /^Kingfisher is in Record under 4H, 6 November 2026, in place of what was there: 336 answers/,
      )
      .waitFor()
    await pane.getByText('672 answers of 2 days.').waitFor()
    expectQuiet(stage)
    await page.close()
  })

  it('writes the week’s page, the reports and the Mastery sheet', async () => {
    const stage = await openStage()
    const { pane, page } = stage
    await openRecord(stage)
    await button(stage, /^This week’s page/).click()
    await pane.getByText('The sheet This week is ready.').waitFor()
    await button(stage, /^A report for every pupil/).click()
    await pane.getByText('The sheet Reports is ready.').waitFor()
    await button(stage, 'Mastery sheet with a chart').click()
    await pane.getByText(/^The Mastery sheet is written/).waitFor()
    const charts = await page.evaluate(() => {
      const bench = window.columnwiseBench?.bench
      return bench?.book.sheet(bench.sheetId('Mastery')).charts.map(({ title }) => title)
    })
    expect(charts).toEqual(['The class by type, in pupils'])
    expectQuiet(stage)
    await page.close()
  })
})
