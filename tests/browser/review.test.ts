import { describe, expect, it } from 'vitest'
import { axeProblems, expectQuiet, openStage, tabTo, useStage, type Setting, type Stage } from './stage'

useStage()

const PARTS = ['Pupils', 'Questions', 'Why', 'Groups', 'Record'] as const

const button = ({ pane }: Stage, name: string | RegExp) => pane.getByRole('button', { name })

async function openPart({ pane }: Stage, part: (typeof PARTS)[number]): Promise<void> {
  await pane.getByRole('tab', { name: part, exact: true }).click()
}

/** The bench with the Review area open. */
async function openReview(setting: Setting = {}): Promise<Stage> {
  const stage = await openStage(setting)
  await stage.pane.getByRole('tab', { name: 'Review' }).click()
  await stage.pane.getByRole('heading', { name: 'Pupils by family' }).waitFor()
  return stage
}

const names = ({ pane }: Stage) => pane.locator('.heat tbody th').allTextContents()

/** The sheet in front, and the selected block of it as rows and columns from 0. */
const selection = ({ page }: Stage) =>
  page.evaluate(() => {
    const grid = window.columnwiseBench?.bench.grid
    const { sheetId, area } = grid?.selection() ?? { sheetId: '', area: null }
    return { sheet: grid?.sheets().find(({ id }) => id === sheetId)?.name, area }
  })

/** Whether nothing in the pane is wider than the pane, but for what scrolls in a box of its own. */
const isNarrow = ({ pane }: Stage) =>
  pane.evaluate(() => {
    const main = document.querySelector('main')
    return main !== null && main.scrollWidth <= main.clientWidth
  })

describe('the heat map', () => {
  it('shows signs, evidence and words, by need and by name, and the probability only on asking', async () => {
    const stage = await openReview()
    const { pane } = stage
    const byNeed = await names(stage)
    expect(byNeed).toHaveLength(28)
    const first = pane.locator('.heat tbody tr').first()
    expect(await first.locator('td.status-needs-support').first().innerText()).toMatch(
      /^○ 0 of \d\s+needs support/,
    )
    expect(await pane.getByText(/\d+% secure/).count()).toBe(0)
    await pane.getByRole('checkbox', { name: 'Show how likely' }).check()
    expect(await pane.getByText(/\d+% secure/).count()).toBeGreaterThan(28)
    await pane.getByRole('combobox', { name: 'In order of' }).selectOption('name')
    const byName = await names(stage)
    expect(byName[0]).toBe('Amira P')
    expect(byName.toSorted()).toEqual(byNeed.toSorted())
    expect(byName).not.toEqual(byNeed)
    await pane.getByText('never a verdict on a child').first().waitFor()
    expectQuiet(stage)
    await stage.page.close()
  })

  it('shows all families at once in the narrowest pane, and reaches the table by the keyboard', async () => {
    const stage = await openReview({ width: 320 })
    const { pane, page } = stage
    const box = pane.getByRole('region', { name: 'Table of pupils' })
    await tabTo(stage, box)
    expect(await box.evaluate((element) => element.scrollWidth <= element.clientWidth)).toBe(true)
    expect(await pane.locator('.heat thead th').count()).toBeGreaterThanOrEqual(4)
    expect(await isNarrow(stage)).toBe(true)
    await page.close()
  })

  it('opens a pupil: standing, reason, history, report; a click goes to the cells', async () => {
    const stage = await openReview()
    const { pane } = stage
    await pane.locator('.heat').getByRole('button', { name: 'Bertie L' }).click()
    await pane.getByRole('heading', { name: 'The pupil’s own report' }).waitFor()
    await pane.getByText('Nothing in Record yet under this name and class.').waitFor()
    await button(
      stage,
      /Bertie L Takes the smaller digit from the larger .* explains \d+ of \d+ wrong answers/,
    ).click()
    await expect.poll(async () => (await selection(stage)).area?.row).toBe(4)
    await button(stage, 'Put the report on a sheet to print').click()
    await pane.getByText('The sheet Reports is ready.').waitFor()
    expect((await selection(stage)).sheet).toBe('Reports')
    await pane.getByRole('heading', { name: 'Bertie L' }).waitFor()
    await button(stage, 'All pupils').click()
    await pane.getByRole('heading', { name: 'Pupils by family' }).waitFor()
    expectQuiet(stage)
    await stage.page.close()
  })
})

describe('the class', () => {
  it('by question: who missed it, and what was answered most', async () => {
    const stage = await openReview()
    await openPart(stage, 'Questions')
    const question = stage.pane.getByRole('listitem').filter({ hasText: '932 − 457' })
    await question.getByText('Most often wrong: 525, 3 pupils.').waitFor()
    await question.getByText(/^Missed by/).click()
    await question.getByRole('button', { name: 'Harvey D: 525' }).click()
    await expect
      .poll(() => selection(stage))
      .toEqual({ sheet: 'Kingfisher', area: { row: 10, col: 2, rows: 1, cols: 1 } })
    await stage.page.close()
  })

  it('by fault: each with its pupils, a next set and an example with the faulty working beside the right one', async () => {
    const stage = await openReview()
    const { pane } = stage
    await openPart(stage, 'Why')
    const first = pane.locator('.group').first()
    await first.getByRole('heading', { name: /^Takes the smaller digit from the larger/ }).waitFor()
    expect(await first.locator('.names button').allTextContents()).toEqual(['Bertie L', 'Harvey D', 'Wilf G'])
    const set = await first.locator('.set li').allTextContents()
    expect(set).toHaveLength(6)
    await first.getByText(/^Example to model/).click()
    await first.getByText('A working with a mistake. Where is it?').waitFor()
    expect(await first.locator('svg[role="img"]').count()).toBe(1)
    await first.getByRole('button', { name: 'Show where' }).click()
    await first.getByText(/^✗ With this fault:/).waitFor()
    await first.getByRole('button', { name: 'Show the right working' }).click()
    expect(await first.locator('svg[role="img"]').count()).toBe(2)
    await button(stage, 'Draw other questions').click()
    await expect.poll(() => first.locator('.set li').allTextContents()).not.toEqual(set)
    await pane.getByText('never a verdict on a child').waitFor()
    expectQuiet(stage)
    await stage.page.close()
  })

  it('in groups of the size that the teacher sets, remembered; a set is written, asked about and taken back', async () => {
    const stage = await openReview()
    const { pane, page } = stage
    await openPart(stage, 'Groups')
    await pane.getByRole('spinbutton', { name: 'Most pupils in a group' }).fill('2')
    await expect
      .poll(() =>
        pane
          .locator('.group .names')
          .evaluateAll((lists) => Math.max(...lists.map((list) => list.children.length))),
      )
      .toBe(2)
    await page.evaluate(() => {
      window.columnwiseBench?.bench.select('Kingfisher', 'A3')
    })
    await button(stage, /^Write across from the selected cell: Group 1/).click()
    await pane.getByText(/^Cells A3, B3, C3, D3, E3, F3 on Kingfisher are not empty/).waitFor()
    await button(stage, 'Leave them').click()
    await page.evaluate(() => {
      window.columnwiseBench?.bench.select('Kingfisher', 'A40')
    })
    await button(stage, /^Write across from the selected cell: Group 1/).click()
    await pane.getByText('6 questions written on Kingfisher.').waitFor()
    await button(stage, /^Undo/).click()
    await pane.getByText(/^Undone:/).waitFor()
    expect(
      await page.evaluate(() => window.columnwiseBench?.bench.book.settings.get('columnwise')),
    ).toMatchObject({ groupSize: 2 })
    expectQuiet(stage)
    await page.close()
  })
})

describe('every part of Review', () => {
  it.each<Setting>([{ width: 320 }, { width: 320, dark: true }, { width: 320, forcedColours: true }])(
    'has nothing that axe finds, and fits: %j',
    async (setting) => {
      const stage = await openReview({ ...setting, workbook: 'heron-notes.xlsx' })
      for (const part of PARTS) {
        await openPart(stage, part)
        expect(await axeProblems(stage.pane), part).toEqual([])
        expect(await isNarrow(stage), part).toBe(true)
      }
      await openPart(stage, 'Pupils')
      await stage.pane.locator('.heat tbody th button').first().click()
      await stage.pane.getByRole('heading', { name: 'Over the weeks' }).waitFor()
      expect(await axeProblems(stage.pane), 'a pupil').toEqual([])
      expect(await isNarrow(stage), 'a pupil').toBe(true)
      expectQuiet(stage)
      await stage.page.close()
    },
  )
})
