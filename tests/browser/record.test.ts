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
