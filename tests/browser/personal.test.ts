import { describe, expect, it } from 'vitest'
import { handoutOf, openLesson, printed, sheetNames } from './lessonStage'
import { axeProblems, expectQuiet, useStage } from './stage'

useStage()

const CHILDREN = 28

describe('personal sets', () => {
  it('give each pupil a row of own questions, which Mark reads as it is', async () => {
    const stage = await openLesson('Personal sets', { width: 320 })
    const { pane, page } = stage
    await pane.getByText(`${CHILDREN} pupils: ${6 * CHILDREN} questions`).click()
    expect(await axeProblems(pane)).toEqual([])
    const list = pane.getByRole('list', { name: 'Personal sets' })
    expect(
      await list.evaluate(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth),
    ).toBeLessThanOrEqual(0)
    await pane.getByRole('combobox', { name: 'Questions each' }).selectOption('3')
    await pane.getByText(`${CHILDREN} pupils: ${3 * CHILDREN} questions`).waitFor()
    const before = await sheetNames(page)
    await pane.getByRole('button', { name: 'Lay out the personal sets' }).click()
    await pane.getByText(/^The personal sets are on the sheet Personal sets \d+ \w{3}\./).waitFor()
    const added = (await sheetNames(page)).filter((name) => !before.includes(name))
    expect(added).toEqual([expect.stringMatching(/^Personal sets \d+ \w{3}$/)])
    const [first] = await page.evaluate(() => {
      const { bench } = window.columnwiseBench ?? {}
      const grid = bench?.grid
      const sheet = grid?.activeSheet() ?? ''
      const rows = grid?.values(sheet, { row: 3, col: 0, rows: 1, cols: 7 }) ?? []
      const answers = (rows[0] ?? []).map((text) => {
        const [top, bottom] = String(text).replaceAll(/[£,]/g, '').split(' − ').map(Number)
        return top === undefined || bottom === undefined || Number.isNaN(bottom)
          ? ''
          : (top - bottom).toFixed(2)
      })
      const name = grid?.sheets().find(({ id }) => id === sheet)?.name ?? ''
      bench?.userEdit(name, 'C4', [[answers[1] ?? '']])
      bench?.userEdit(name, 'E4', [['1']])
      return rows
    })
    expect(first?.filter((cell) => String(cell).includes(' − '))).toHaveLength(3)
    await pane.getByRole('tab', { name: 'Mark' }).click()
    await pane
      .getByText(`${CHILDREN} pupils, ${3 * CHILDREN} questions, 2 of ${3 * CHILDREN} answers entered.`)
      .waitFor()
    await pane.getByText(/each pupil’s row holds questions with the answer on the right of each/).waitFor()
    await pane.getByRole('button', { name: 'Mark this sheet' }).click()
    await pane.getByText(/^Personal sets \d+ \w{3} is marked\./).waitFor()
    expect(await pane.locator('.outcome.correct').innerText()).toMatch(/^\D*1\b/)
    expect(await pane.locator('.outcome.incorrect').innerText()).toMatch(/^\D*1\b/)
    expectQuiet(stage)
    await page.close()
  })

  it('are printed two to a page, with the answers apart', async () => {
    const stage = await openLesson('Personal sets')
    await stage.pane.getByText(`${CHILDREN} pupils: ${6 * CHILDREN} questions`).waitFor()
    const { window, watched } = await handoutOf(stage)
    const { pages } = await printed(window)
    expect(pages).toBeLessThan(CHILDREN + 1)
    expect(pages).toBeGreaterThan(CHILDREN / 2)
    expect(new URL(window.url()).search + new URL(window.url()).hash).toBe('')
    expect(watched).toEqual({ strayRequests: [], errors: [] })
    await stage.page.close()
  })

  it('say what to do where nobody’s needs are known', async () => {
    const stage = await openLesson(undefined)
    await stage.page.evaluate(() => {
      const grid = window.columnwiseBench?.bench.grid
      if (!grid) return
      grid.activateSheet(grid.addSheet('Empty'))
      grid.flush()
    })
    await stage.pane.getByRole('combobox', { name: 'What to make' }).selectOption('Personal sets')
    await stage.pane.getByText(/Open the sheet that holds a marked class, or add one to Record/).waitFor()
    expect(await stage.pane.getByRole('button', { name: 'Lay out the personal sets' }).isDisabled()).toBe(
      true,
    )
    expectQuiet(stage)
    await stage.page.close()
  })
})
