import type { Locator } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { handoutOf, openLesson, printed } from './lessonStage'
import { axeProblems, expectQuiet, tabTo, useStage, type Stage } from './stage'

useStage()

const NARROW = { width: 320 } as const

/** Opens every fold of the part that is shown, with the keyboard. */
async function unfold({ page }: Stage, folds: Locator): Promise<void> {
  for (const fold of await folds.all()) {
    await fold.focus()
    await page.keyboard.press('Enter')
  }
}

const isWithinWidth = ({ pane }: Stage) =>
  pane.evaluate(() =>
    [...document.querySelectorAll('main')].every((main) => main.scrollWidth <= main.clientWidth),
  )

/** Sets the set number, so that what is drawn is known. */
const setNumber = ({ pane }: Stage, number: string) =>
  pane.locator('.number').getByRole('textbox', { name: 'Set number' }).last().fill(number)

describe('number triangles', () => {
  it('are drawn by grade and number, with hint and solution folded away, and printed apart', async () => {
    const stage = await openLesson('Number triangles', NARROW)
    const { pane, page } = stage
    const drawings = pane.getByRole('img', { name: /^Every side makes/ })
    await drawings.first().waitFor()
    await setNumber(stage, '4827')
    await pane.getByRole('combobox', { name: 'Grade' }).selectOption('3: no corner given')
    await pane.getByRole('combobox', { name: 'How many' }).selectOption('4')
    expect(await drawings.count()).toBe(4)
    for (const drawing of await drawings.all())
      expect((await drawing.getAttribute('aria-label'))?.match(/empty/g)).toHaveLength(6)
    await unfold(stage, pane.getByText(/^(?:Hint for|Solution of) Triangle \d$/))
    expect(await drawings.count()).toBe(8)
    await pane
      .getByText(/^That is \d+ more than 45/)
      .first()
      .waitFor()
    expect(await axeProblems(pane)).toEqual([])
    expect(await isWithinWidth(stage)).toBe(true)
    const { window, watched } = await handoutOf(stage)
    const { pages, text } = await printed(window)
    expect(pages).toBe(3)
    expect(text).toContain('Hints, to give one at a time')
    expect(await window.locator('section').first().locator('circle').count()).toBe(36)
    expect(await axeProblems(window.mainFrame())).toEqual([])
    expect(watched).toEqual({ strayRequests: [], errors: [] })
    expectQuiet(stage)
    await page.close()
  })

  it('are the same again by the set number', async () => {
    const stage = await openLesson('Number triangles', { ...NARROW, dark: true })
    const { pane, page } = stage
    const drawing = pane.getByRole('img', { name: /^Every side makes/ }).first()
    const shown = () => drawing.getAttribute('aria-label')
    await drawing.waitFor()
    await setNumber(stage, '1')
    const first = await shown()
    await setNumber(stage, '2')
    expect(await shown()).not.toBe(first)
    await setNumber(stage, '1')
    expect(await shown()).toBe(first)
    await tabTo(stage, pane.getByRole('button', { name: 'Another draw' }).last())
    await page.keyboard.press('Enter')
    expect(await axeProblems(pane)).toEqual([])
    expectQuiet(stage)
    await page.close()
  })
})

describe('two-step stories', () => {
  it('have the types chosen; answer and bars are folded away, and printed on a sheet of their own', async () => {
    const stage = await openLesson('Two-step stories', NARROW)
    const { pane, page } = stage
    await pane.getByRole('heading', { name: 'Story 2' }).waitFor()
    await setNumber(stage, '4827')
    await pane.getByRole('combobox', { name: 'Size' }).selectOption('up to 9,999')
    await pane.getByRole('combobox', { name: 'First step' }).selectOption('through a zero')
    await pane.getByRole('combobox', { name: 'How many' }).selectOption('3')
    expect(
      await pane
        .getByText(/^First step: /)
        .first()
        .isVisible(),
    ).toBe(false)
    await unfold(stage, pane.getByText(/^Answer to Story \d$/))
    expect(await pane.getByText(/^First step: [\d,£.]+ − [\d,£.]+ = [\d,£.]+$/).count()).toBe(3)
    expect(await pane.getByRole('img', { name: /^The (?:whole|larger): / }).count()).toBe(6)
    expect(await axeProblems(pane)).toEqual([])
    expect(await isWithinWidth(stage)).toBe(true)
    const { window, watched } = await handoutOf(stage)
    await window.emulateMedia({ media: 'print' })
    const bars = window.locator('section').first().locator('rect')
    expect(await bars.count()).toBe(18)
    for (const bar of await bars.all()) expect(await bar.isVisible()).toBe(true)
    const { pages, text } = await printed(window)
    expect(pages).toBeGreaterThanOrEqual(3)
    expect(pages).toBeLessThanOrEqual(4)
    expect(text).toContain('Two-step stories: answers')
    expect(await axeProblems(window.mainFrame())).toEqual([])
    expect(watched).toEqual({ strayRequests: [], errors: [] })
    expectQuiet(stage)
    await page.close()
  })

  it('say so where no story has both types, and nothing can be printed then', async () => {
    const stage = await openLesson('Two-step stories', { ...NARROW, forcedColours: true })
    const { pane, page } = stage
    await pane.getByRole('heading', { name: 'Story 2' }).waitFor()
    await pane.getByRole('combobox', { name: 'Numbers' }).selectOption('kg, m and l, one decimal place')
    await pane.getByRole('combobox', { name: 'Size' }).selectOption('up to 9.9')
    await pane.getByRole('combobox', { name: 'First step' }).selectOption('no carry')
    await pane.getByRole('combobox', { name: 'Second step' }).selectOption('through a zero')
    await pane
      .getByRole('alert')
      .getByText(/^! No story\. There is no story with 2-digit numbers/)
      .waitFor()
    expect(await pane.getByRole('button', { name: 'Look and print' }).last().isDisabled()).toBe(true)
    expect(await axeProblems(pane)).toEqual([])
    await pane.getByRole('button', { name: 'As the lesson’s objective' }).click()
    await pane.getByRole('heading', { name: 'Story 2' }).waitFor()
    expectQuiet(stage)
    await page.close()
  })
})

describe('missing numbers and checks', () => {
  it('are of the recipe chosen, as many of each as wanted, with answers folded away', async () => {
    const stage = await openLesson('Missing numbers and checks', NARROW)
    const { pane, page } = stage
    await pane.getByRole('list', { name: 'Missing numbers' }).waitFor()
    await setNumber(stage, '4827')
    await pane.getByRole('combobox', { name: 'Numbers', exact: true }).last().selectOption('Pounds and pence')
    await pane.getByRole('combobox', { name: 'Missing numbers' }).selectOption('6')
    await pane.getByRole('combobox', { name: 'Checks' }).selectOption('3')
    const missing = await pane
      .getByRole('list', { name: 'Missing numbers' })
      .getByRole('listitem')
      .allTextContents()
    expect(missing).toHaveLength(6)
    for (const question of missing) expect(question).toMatch(/^(?=.*□)(?=.*£).* = /)
    const checks = pane.getByRole('list', { name: 'Checks with the inverse' }).getByRole('listitem')
    for (const check of await checks.allTextContents())
      expect(check).toMatch(/Check it with an addition\. Is \w+ right\?$/)
    await unfold(stage, pane.getByText(/^(?:The missing numbers found|Who is right)$/))
    expect(await axeProblems(pane)).toEqual([])
    expect(await isWithinWidth(stage)).toBe(true)
    const { window, watched } = await handoutOf(stage)
    const { text } = await printed(window)
    for (const question of missing) expect(text).toContain(question)
    expect(await axeProblems(window.mainFrame())).toEqual([])
    expect(watched).toEqual({ strayRequests: [], errors: [] })
    expectQuiet(stage)
    await page.close()
  })

  it('may be one of them only, not none', async () => {
    const stage = await openLesson('Missing numbers and checks', { ...NARROW, dark: true })
    const { pane, page } = stage
    await pane.getByRole('list', { name: 'Missing numbers' }).waitFor()
    await pane.getByRole('combobox', { name: 'Missing numbers' }).selectOption('0')
    expect(await pane.getByRole('list', { name: 'Missing numbers' }).count()).toBe(0)
    const { window } = await handoutOf(stage)
    expect((await printed(window)).text).not.toContain('Find the missing numbers')
    await window.close()
    await pane.getByRole('combobox', { name: 'Checks' }).selectOption('0')
    await pane.getByRole('combobox', { name: 'Mistakes to find' }).selectOption('0')
    await pane.getByText('Choose at least one missing number, one check or one mistake.').waitFor()
    expect(await axeProblems(pane)).toEqual([])
    expectQuiet(stage)
    await page.close()
  })
})
