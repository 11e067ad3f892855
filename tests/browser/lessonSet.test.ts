import { describe, expect, it } from 'vitest'
import { handoutOf, openLesson, printed, sheetNames } from './lessonStage'
import { axeProblems, expectQuiet, useStage } from './stage'

useStage()

const CHILDREN = 28

describe('the lesson set', () => {
  it('makes a lesson of an objective in one action: sheets to print, answers, letter and marksheet; one Undo takes it back', async () => {
    const stage = await openLesson('Lesson set', { width: 320 })
    const { pane, page } = stage
    await pane.getByText(`${CHILDREN} names in Kingfisher`).last().waitFor()
    expect(await axeProblems(pane)).toEqual([])
    await pane
      .getByRole('combobox', { name: 'Questions', exact: true })
      .selectOption('One exchange, tens to ones')
    await pane.getByText('The objective: 6 questions').click()
    const wanted = await pane.getByRole('list', { name: 'The objective' }).locator('.sum').allTextContents()
    expect(wanted).toHaveLength(6)
    await pane
      .getByRole('textbox', { name: 'One in a line' })
      .fill('I line up the ones.\nI say each step aloud.')
    await pane.getByRole('combobox', { name: 'On the marksheet' }).selectOption('The objective')
    const before = await sheetNames(page)
    await pane.getByRole('button', { name: 'Make the lesson' }).click()
    await pane.getByText(/^Ready to print: .* The marksheet is on Subtraction \d+ \w{3}\./).waitFor()
    const added = (await sheetNames(page)).filter((name) => !before.includes(name))
    expect(added.length).toBeGreaterThanOrEqual(3)
    const front = await page.evaluate(() => {
      const grid = window.columnwiseBench?.bench.grid
      return grid?.values(grid.activeSheet(), { row: 2, col: 0, rows: 2, cols: 7 }) ?? []
    })
    expect(front).toEqual([
      ['Name', ...wanted],
      [expect.any(String), '', '', '', '', '', ''],
    ])
    const texts = await page.evaluate((names) => {
      const grid = window.columnwiseBench?.bench.grid
      return (grid?.sheets() ?? [])
        .filter(({ name }) => names.includes(name))
        .map(({ id }) => JSON.stringify(grid?.values(id, { row: 0, col: 0, rows: 400, cols: 40 })))
    }, added)
    expect(texts.some((text) => text.includes('I say each step aloud.'))).toBe(true)
    await pane.getByRole('button', { name: /^Undo/ }).click()
    await pane.getByText(/^Undone:/).waitFor()
    expect(await sheetNames(page)).toEqual(before)
    expectQuiet(stage)
    await page.close()
  })

  it('prints the lesson with the same questions, and tells them from their answers', async () => {
    const stage = await openLesson('Lesson set')
    await stage.pane.getByText('The way in: 6 questions').click()
    const wanted = await stage.pane
      .getByRole('list', { name: 'The way in' })
      .locator('.sum')
      .allTextContents()
    const { window, watched } = await handoutOf(stage)
    const { pages, text } = await printed(window)
    expect(pages).toBeGreaterThanOrEqual(6)
    for (const question of wanted) expect(text).toContain(question)
    expect(await window.getByRole('heading', { level: 1 }).last().textContent()).toBe(
      'Column subtraction: a letter for families',
    )
    expect(watched).toEqual({ strayRequests: [], errors: [] })
    await stage.page.close()
  })

  it('keeps a lesson that was printed: another is drawn, the first is opened again by its set number', async () => {
    const stage = await openLesson('Lesson set', { width: 320 })
    const { pane, page } = stage
    const number = pane.getByRole('textbox', { name: 'Set number' })
    const questions = async () => {
      const grade = pane.getByRole('list', { name: 'The objective' })
      if (!(await grade.isVisible())) await pane.getByText('The objective: 6 questions').click()
      return await grade.locator('.sum').allTextContents()
    }
    await number.fill('4827')
    const first = await questions()
    const { window } = await handoutOf(stage)
    await window.close()
    const made = pane.getByRole('list', { name: 'Lessons made' }).getByRole('listitem')
    await made.getByText(/through a zero \(set 4827\)$/).waitFor()
    await pane.getByRole('button', { name: 'Another draw' }).click()
    expect(await questions()).not.toEqual(first)
    await pane.getByRole('button', { name: /^Next day: / }).click()
    expect(await number.inputValue()).toBe('4828')
    await pane.getByRole('button', { name: /^Open: / }).click()
    expect(await number.inputValue()).toBe('4827')
    expect(await questions()).toEqual(first)
    expect(await axeProblems(pane)).toEqual([])
    expectQuiet(stage)
    await page.close()
  })

  it('is one lesson for a mixed class: placed by the groups of Review, changed by the teacher, printed in one', async () => {
    const stage = await openLesson('Lesson set', { width: 320 })
    const { pane, page } = stage
    await pane.getByRole('button', { name: 'Place the class' }).click()
    await pane
      .getByText(/^\d+ pupils from Kingfisher: \d+ the way in, \d+ the objective, \d+ deeper\.$/)
      .waitFor()
    await pane.getByText('Who works on what').click()
    const grade = pane.getByRole('combobox', { name: 'Amira P' })
    await grade.selectOption('The way in')
    await pane.getByText('Placed by the teacher.').waitFor()
    expect(await axeProblems(pane)).toEqual([])
    const opening = page.waitForEvent('popup')
    await pane.getByRole('button', { name: 'Print all, by group' }).click()
    const window = await opening
    await window.getByRole('heading', { level: 1, name: 'Amira P. The way in' }).waitFor()
    expect(await window.getByRole('heading', { level: 1, name: /^\S+ \S+\. / }).count()).toBe(CHILDREN)
    expectQuiet(stage)
    await page.close()
  })
})
