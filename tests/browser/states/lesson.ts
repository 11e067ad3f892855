import type { Stage } from '../stage'
import { button, choice, tab, windowFrom, type State } from './steps'

/** The page for a lesson and each of its parts, as the pane lists them. */
export async function lessonStates(stage: Stage): Promise<readonly State[]> {
  await tab(stage, 'Set').click()
  await button(stage, 'Lesson, starters and puzzles').click()
  const parts = choice(stage, 'What to make')
  await parts.waitFor()
  const names = await parts.locator('option').allTextContents()
  return names.flatMap((name): State[] => [
    {
      name,
      open: async () => {
        await parts.selectOption({ label: name })
        await stage.pane.getByText(/^Opening /).waitFor({ state: 'detached' })
      },
    },
    { name: `${name}, as it is printed`, window: () => windowFrom(stage, 'Look and print') },
  ])
}
