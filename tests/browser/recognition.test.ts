import { describe, expect, it } from 'vitest'
import { axeProblems, expectQuiet, openStage, tabTo, useStage, type Setting, type Stage } from './stage'

useStage()

/** The Record part of Review, with the demo class in Record. */
async function openPraise(setting: Setting = {}): Promise<Stage> {
  const stage = await openStage({ width: 320, ...setting })
  const { pane } = stage
  await pane.getByRole('tab', { name: 'Review' }).click()
  await pane.getByRole('tab', { name: 'Record', exact: true }).click()
  await pane.getByRole('textbox', { name: 'Class' }).fill('4K')
  await pane.getByLabel('Day of the questions').fill('2026-11-25')
  await pane.getByRole('button', { name: 'Add Kingfisher to Record' }).click()
  await pane.getByRole('heading', { name: 'What to praise this week' }).waitFor()
  await pane.getByText(/^The list: \d+ pupils$/).click()
  return stage
}

const list = ({ pane }: Stage) => pane.getByRole('list', { name: 'What to praise' }).getByRole('listitem')

describe('what to praise this week', () => {
  it('lists the pupils of whom there is something to say, in the order of the alphabet, and says what it is', async () => {
    const stage = await openPraise()
    const { pane, page } = stage
    const names = await list(stage).locator('strong').allTextContents()
    expect(names.length).toBeGreaterThan(20)
    expect(names).toEqual(names.toSorted((one, other) => one.localeCompare(other, 'en-GB')))
    for (const line of await list(stage).allTextContents()) expect(line).toMatch(/\.$/)
    await pane.getByText('not a judgement').waitFor()
    await pane.getByText('Counted from the answers in Record').waitFor()
    await pane.getByText(/not named: no answer of that week/).waitFor()
    expect(await pane.getByRole('combobox', { name: 'Week from' }).inputValue()).toBe('2026-11-23')
    expect(await axeProblems(pane)).toEqual([])
    expectQuiet(stage)
    await page.close()
  })

  it('is copied as text with the keyboard, and selected where copying is refused', async () => {
    const stage = await openPraise()
    const { pane, page } = stage
    const copy = pane.getByRole('button', { name: 'Copy as text' })
    await pane.evaluate(() => {
      Object.defineProperty(navigator, 'clipboard', {
        configurable: true,
        value: {
          writeText: (text: string) => {
            document.body.dataset.copied = text
            return Promise.resolve()
          },
        },
      })
    })
    await pane.getByRole('combobox', { name: 'Week from' }).focus()
    await tabTo(stage, copy)
    await page.keyboard.press('Enter')
    await pane.getByText(/^Copied\./).waitFor()
    const copied = await pane.evaluate(() => document.body.dataset.copied ?? '')
    expect(copied).toMatch(/^4K, week from Monday 23 November 2026\n/)
    expect(copied.split('\n')).toHaveLength((await list(stage).count()) + 2)
    await pane.evaluate(() => {
      Object.defineProperty(navigator, 'clipboard', {
        configurable: true,
        value: { writeText: () => Promise.reject(new DOMException('No.', 'NotAllowedError')) },
      })
    })
    await copy.click()
    const field = pane.getByRole('textbox', { name: 'What to praise, as text' })
    await field.waitFor()
    await expect
      .poll(() =>
        field.evaluate((element) => {
          const { value, selectionStart, selectionEnd } = element as HTMLTextAreaElement
          return document.activeElement === element && value.slice(selectionStart, selectionEnd)
        }),
      )
      .toBe(copied)
    expect(await axeProblems(pane)).toEqual([])
    expectQuiet(stage)
    await page.close()
  })

  it('is written onto a page of its own, which Undo takes away', async () => {
    const stage = await openPraise({ dark: true })
    const { pane, page } = stage
    await pane.getByRole('button', { name: 'Onto a page to print' }).click()
    await pane.getByText('The sheet To praise is ready.').waitFor()
    const column = await page.evaluate(() => {
      const bench = window.columnwiseBench?.bench
      const area = { row: 0, col: 0, rows: 12, cols: 1 }
      return bench?.grid.values(bench.sheetId('To praise'), area).flat()
    })
    expect(column?.[0]).toBe('Columnwise · To praise')
    expect(column?.[1]).toBe('4K, week from Monday 23 November 2026')
    expect(await axeProblems(pane)).toEqual([])
    await pane.getByRole('button', { name: /^Undo/ }).click()
    await pane.getByText(/^Undone:/).waitFor()
    expectQuiet(stage)
    await page.close()
  })
})
