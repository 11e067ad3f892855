import type { Page } from 'playwright-core'
import { watch, type Watch } from '../bench/browser'
import { openStage, type Setting, type Stage } from './stage'

/** The bench with the lesson's page open, and one of its parts chosen. */
export async function openLesson(part?: string, setting: Setting = {}): Promise<Stage> {
  const stage = await openStage(setting)
  await stage.pane.getByRole('tab', { name: 'Set' }).click()
  await stage.pane.getByRole('button', { name: 'Lesson, starters and puzzles' }).click()
  const choice = stage.pane.getByRole('combobox', { name: 'What to make' })
  await choice.waitFor()
  if (part !== undefined) await choice.selectOption(part)
  return stage
}

/** The window that shows a hand-out, once it has it. */
export async function handoutOf({ page, pane }: Stage): Promise<{ window: Page; watched: Watch }> {
  const opening = page.waitForEvent('popup')
  await pane.getByRole('button', { name: 'Look and print', exact: true }).click()
  const window = await opening
  const watched = watch(window)
  await window.getByRole('heading', { level: 1 }).first().waitFor()
  return { window, watched }
}

/** How many pages a window prints, and the text that is on them. */
export async function printed(window: Page): Promise<{ pages: number; text: string }> {
  const pdf = (await window.pdf({ preferCSSPageSize: true })).toString('latin1')
  await window.emulateMedia({ media: 'print' })
  const text = await window.locator('body').innerText()
  await window.emulateMedia({ media: 'screen' })
  return { pages: pdf.match(/\/Type\s*\/Page\b/g)?.length ?? 0, text }
}

/** The names of the sheets in sight. */
export function sheetNames(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    (window.columnwiseBench?.bench.grid.sheets() ?? [])
      .filter(({ visible }) => visible)
      .map(({ name }) => name),
  )
}
