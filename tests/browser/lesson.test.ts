import type { Locator } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { watch } from '../bench/browser'
import { handoutOf, openLesson, printed } from './lessonStage'
import { axeProblems, expectQuiet, openStage, tabTo, useStage } from './stage'

useStage()

describe('what a lesson needs besides', () => {
  it('prints a lesson with three clicks from the opened pane: its door stands first in Set', async () => {
    const stage = await openStage({ width: 320 })
    const { pane, page } = stage
    let clicks = 0
    const click = async (target: Locator) => {
      clicks += 1
      await target.click()
    }
    await click(pane.getByRole('tab', { name: 'Set' }))
    const print = pane.getByRole('button', { name: 'Look and print' })
    await print.waitFor()
    expect(await pane.locator('#area-set').getByRole('button').first().textContent()).toBe('Look and print')
    expect(await axeProblems(pane)).toEqual([])
    const opening = page.waitForEvent('popup')
    await click(print)
    const window = await opening
    const watched = watch(window)
    await window.getByRole('heading', { level: 1 }).first().waitFor()
    await window.evaluate(() => {
      globalThis.print = () => {
        document.title = 'printed'
      }
    })
    await click(window.locator('#print'))
    expect(await window.title()).toBe('printed')
    expect(clicks).toBe(3)
    const objective = await pane.locator('#area-set').getByText(/^“/).first().textContent()
    expect(await window.getByRole('heading', { level: 1 }).first().textContent()).toContain(
      objective?.replace(/[“”]/g, ''),
    )
    expect(watched).toEqual({ strayRequests: [], errors: [] })
    expectQuiet(stage)
    await page.close()
  })

  it('is reached from Set by its door, and leads back to it', async () => {
    const stage = await openLesson()
    expect(await axeProblems(stage.pane)).toEqual([])
    await stage.pane.getByRole('button', { name: 'Set', exact: true }).click()
    const more = stage.pane.getByRole('button', { name: 'Lesson, starters and puzzles' })
    expect(await more.evaluate((element) => element === document.activeElement)).toBe(true)
    expectQuiet(stage)
    await stage.page.close()
  })

  it('is shown in a window of its own as it is printed, without a word of it in the address', async () => {
    const stage = await openLesson('Dice starter')
    const { window, watched } = await handoutOf(stage)
    expect(await window.getByRole('heading', { level: 1 }).allTextContents()).toEqual([
      'Roll and cover',
      'Roll and cover: answers',
    ])
    expect(await axeProblems(window.mainFrame())).toEqual([])
    const { pathname, search, hash } = new URL(window.url())
    expect([pathname, search, hash]).toEqual(['/handout.html', '', ''])
    const { pages, text } = await printed(window)
    expect(pages).toBe(2)
    expect(text).toContain('Roll two dice and add them.')
    expect(text).not.toContain('This is how it will be printed')
    await window.evaluate(() => {
      globalThis.print = () => {
        document.title = 'printed'
      }
    })
    await window.getByRole('button', { name: 'Print' }).click()
    expect(await window.title()).toBe('printed')
    expect(watched).toEqual({ strayRequests: [], errors: [] })
    expectQuiet(stage)
    await stage.page.close()
  })

  it('offers the dice starter by the length of the game, with a grid that fits the narrow pane', async () => {
    for (const setting of [{}, { dark: true }, { forcedColours: true }]) {
      const stage = await openLesson('Dice starter', { width: 320, ...setting })
      const { pane, page } = stage
      const length = pane.getByRole('combobox', { name: 'Length of the game' })
      await length.waitFor()
      const rolls = (await length.getByRole('option').allTextContents()).map((text) =>
        Number(/^about \d+ minutes?, (\d+) rolls: \d × \d cells$/.exec(text)?.[1]),
      )
      expect(rolls).toEqual(rolls.toSorted((one, other) => one - other))
      const grid = pane.getByRole('group', { name: 'The grid, with answers' })
      expect(await grid.getByRole('cell').count()).toBe(20)
      expect(await grid.evaluate(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth)).toBe(0)
      await length.selectOption('8 × 8')
      await tabTo(stage, grid)
      await page.keyboard.press('ArrowRight')
      await expect.poll(() => grid.evaluate(({ scrollLeft }) => scrollLeft)).toBeGreaterThan(0)
      expect(await axeProblems(pane)).toEqual([])
      expectQuiet(stage)
      await page.close()
    }
  })
})
