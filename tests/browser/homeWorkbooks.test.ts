import { describe, expect, it } from 'vitest'
import * as XLSX from 'xlsx'
import { openLesson } from './lessonStage'
import { axeProblems, expectQuiet, openStage, useStage, type Stage } from './stage'

useStage()

/** The texts of the first sheet of each workbook that was opened beside the one in front. */
async function opened({ page }: Stage): Promise<string[][]> {
  const files = await page.evaluate(() => window.columnwiseBench?.bench.book.openedBeside ?? [])
  return files.map((file) => {
    const { Sheets, SheetNames } = XLSX.read(file, { type: 'base64' })
    const sheet = Sheets[SheetNames[0] ?? '']
    return sheet ? XLSX.utils.sheet_to_json<string[]>(sheet, { header: 1 }).flat().map(String) : []
  })
}

describe('home workbooks', () => {
  it('are opened for whoever types a name, then for one child after another, from the marksheet in front', async () => {
    const stage = await openStage({ width: 320 })
    const { pane, page } = stage
    await pane.getByText('Home workbooks').click()
    const open = pane.getByRole('button', { name: 'Open as a new workbook' })
    await open.waitFor()
    expect(await axeProblems(pane)).toEqual([])
    await open.click()
    await pane.getByText('The home workbook is open in a window of its own.').waitFor()
    const whose = pane.getByRole('combobox', { name: 'For', exact: true })
    const names = (await whose.locator('option').allTextContents()).slice(1)
    await whose.selectOption({ label: names[0] ?? '' })
    await pane.getByRole('combobox', { name: 'It says' }).selectOption({ index: 2 })
    for (const name of names.slice(0, 2)) {
      await open.click()
      await pane.getByText(`The home workbook for ${name} is open in a window of its own.`).waitFor()
    }
    expect(await whose.locator('option:checked').textContent()).toBe(names[2])
    const [anyone = [], first = [], second = []] = await opened(stage)
    expect(anyone).toContain('Your name')
    const questions = await page.evaluate(() => {
      const grid = window.columnwiseBench?.bench.grid
      return grid?.values(grid.activeSheet(), { row: 0, col: 0, rows: 8, cols: 20 }).flat().map(String) ?? []
    })
    const asked = anyone.filter((text) => / [−+] /.test(text))
    expect(asked.length).toBeGreaterThan(5)
    expect(questions).toEqual(expect.arrayContaining(asked))
    expect(first.filter((text) => asked.includes(text))).toEqual(asked)
    const codes = [first, second].map((texts) => /child (C\w{6})/.exec(texts.join(' '))?.[1])
    expect(new Set(codes).size).toBe(2)
    expectQuiet(stage)
    await page.close()
  })

  it('hold each child’s own questions where sets are personal', async () => {
    const stage = await openLesson('Personal sets')
    const { pane, page } = stage
    await pane.locator('summary:visible').filter({ hasText: 'Home workbooks' }).click()
    await pane.getByRole('button', { name: 'Open as a new workbook' }).click()
    await pane.getByText(/^The home workbook for .+ is open in a window of its own\./).waitFor()
    const [first = []] = await opened(stage)
    expect(first.filter((text) => /\d [−+] £?\d/.test(text))).toHaveLength(6)
    expectQuiet(stage)
    await page.close()
  })
})
