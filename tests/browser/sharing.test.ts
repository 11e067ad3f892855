import { describe, expect, it } from 'vitest'
import { expectQuiet, openStage, tabTo, useStage, type Stage } from './stage'

useStage()

const button = ({ pane }: Stage, name: string | RegExp) => pane.getByRole('button', { name })

/** The pane with the part of Review open from which a sheet is shared. */
async function openSharing(): Promise<Stage> {
  const stage = await openStage()
  const { pane } = stage
  await pane.getByRole('tab', { name: 'Review' }).click()
  await pane.getByRole('tab', { name: 'Record', exact: true }).click()
  await pane.getByRole('heading', { name: 'A sheet to share' }).waitFor()
  return stage
}

/** The pane with its settings open. */
async function openSettings(): Promise<Stage> {
  const stage = await openStage()
  await button(stage, 'Settings').click()
  await stage.pane.getByRole('heading', { name: /^Remove everything of Columnwise/ }).waitFor()
  return stage
}

/** What the sheets that can be seen hold, by name, and which of them is in front. */
const sheets = ({ page }: Stage) =>
  page.evaluate(() => {
    const grid = window.columnwiseBench?.bench.grid
    if (!grid) return { front: '', visible: [], cells: {} }
    const all = grid.sheets().filter(({ visible }) => visible)
    const held = all.map(({ id, name }) => {
      const used = grid.used(id, true)
      return [name, used ? grid.values(id, used) : []] as const
    })
    return {
      front: all.find(({ id }) => id === grid.activeSheet())?.name,
      visible: all.map(({ name }) => name),
      cells: Object.fromEntries(held),
    }
  })

describe('a sheet to share', () => {
  it('holds codes in place of names, comes to the front, and Undo takes it away', async () => {
    const stage = await openSharing()
    const { pane, page } = stage
    const before = await sheets(stage)
    const names = (before.cells.Kingfisher ?? []).slice(3).map(([name]) => String(name))
    expect(names).toContain('Amira P')
    await button(stage, 'Make the sheet to share').click()
    await pane.getByText('The sheet To share is ready, with codes in place of names.').waitFor()
    const after = await sheets(stage)
    expect([after.front, after.visible]).toEqual(['To share', ['Kingfisher', 'To share']])
    expect(after.cells.Kingfisher).toEqual(before.cells.Kingfisher)
    const shared = (after.cells['To share'] ?? []).flat().map(String)
    expect(shared.filter((text) => /^Pupil \d\d$/.test(text))).toHaveLength(28)
    expect(names.filter((name) => name !== '' && shared.some((text) => text.includes(name)))).toEqual([])
    await button(stage, 'Undo sheet to share').click()
    await pane.getByText(/^Undone:/).waitFor()
    expect(await sheets(stage)).toEqual({ ...before, front: 'Kingfisher' })
    expectQuiet(stage)
    await page.close()
  })

  it('holds initials where they are chosen, by the keyboard alone, and says what can still be told', async () => {
    const stage = await openSharing()
    const { pane, page } = stage
    await pane.getByText(/which is whose is written down nowhere/).waitFor()
    await pane.getByText(/Answers stay as they were typed: look through them for a name/).waitFor()
    await pane.getByRole('tab', { name: 'Review' }).focus()
    await tabTo(stage, pane.getByRole('radio', { name: /^codes/ }))
    await page.keyboard.press('ArrowDown')
    await pane.getByText(/^Whoever knows the class can tell most children by their initials/).waitFor()
    await tabTo(stage, button(stage, 'Make the sheet to share'))
    await page.keyboard.press('Enter')
    await pane.getByText('The sheet To share is ready, with initials in place of names.').waitFor()
    const shared = ((await sheets(stage)).cells['To share'] ?? []).map(([first]) => String(first))
    expect(shared).toContain('BL')
    expectQuiet(stage)
    await page.close()
  })
})

describe('removing everything of Columnwise', () => {
  it('shows what goes, removes it, and Undo brings back what it can', async () => {
    const stage = await openSettings()
    const { pane, page } = stage
    const before = await sheets(stage)
    await pane.getByRole('tab', { name: 'Mark' }).click()
    await button(stage, 'Mark this sheet').click()
    await pane.getByText('Kingfisher is marked.').waitFor()
    await button(stage, 'Settings').click()
    await pane.getByLabel('Class', { exact: true }).fill('4K')
    await button(stage, /^Keep$/).click()
    await pane.getByText('The settings are kept in this workbook.').waitFor()
    await button(stage, 'Settings').click()
    await button(stage, 'Look what there is').click()
    await pane.getByText('Colours, flags, notes and comments on: Kingfisher.').waitFor()
    await pane.getByText('Sheets that Columnwise laid out: Mastery.').waitFor()
    await pane
      .getByText('What the sheet Mastery holds is deleted, and Undo does not bring it back.')
      .waitFor()
    expect((await sheets(stage)).visible).toEqual(['Kingfisher', 'Mastery'])
    await button(stage, 'Remove all this').click()
    await pane.getByText('Everything of Columnwise’s is out of this workbook.').waitFor()
    expect(await sheets(stage)).toEqual(before)
    expect(await pane.getByLabel('Class', { exact: true }).inputValue()).toBe('')
    expect(await page.evaluate(() => window.columnwiseBench?.bench.book.settings.size)).toBe(0)
    expect(await button(stage, 'Look what there is').evaluate((it) => it === document.activeElement)).toBe(
      true,
    )
    await button(stage, 'Undo removing of Columnwise’s marks').click()
    await pane.getByText(/^Undone:/).waitFor()
    const rules = await page.evaluate(() => {
      const grid = window.columnwiseBench?.bench.grid
      return grid?.conditionalFormats(grid.activeSheet()).length
    })
    expect(rules).toBeGreaterThan(0)
    expectQuiet(stage)
    await page.close()
  })

  it('says so where there is nothing, and asks for nothing', async () => {
    const stage = await openSettings()
    await button(stage, 'Look what there is').click()
    await stage.pane.getByText('There is nothing of Columnwise’s to remove in this workbook.').waitFor()
    expect(await button(stage, 'Remove all this').count()).toBe(0)
    expectQuiet(stage)
    await stage.page.close()
  })

  it('leaves everything where the teacher says so, and by the keyboard', async () => {
    const stage = await openSettings()
    const { pane, page } = stage
    await pane.getByRole('tab', { name: 'Mark' }).click()
    await button(stage, 'Mark this sheet').click()
    await pane.getByText('Kingfisher is marked.').waitFor()
    const before = await sheets(stage)
    await button(stage, 'Settings').focus()
    await page.keyboard.press('Enter')
    const look = button(stage, 'Look what there is')
    await look.waitFor()
    await tabTo(stage, look)
    await page.keyboard.press('Enter')
    const leave = button(stage, 'Leave everything')
    await leave.waitFor()
    await tabTo(stage, leave)
    await page.keyboard.press('Enter')
    await leave.waitFor({ state: 'detached' })
    expect(await look.evaluate((it) => it === document.activeElement)).toBe(true)
    expect(await sheets(stage)).toEqual(before)
    await page.close()
  })
})
