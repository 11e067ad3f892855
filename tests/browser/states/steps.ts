import type { Frame } from 'playwright-core'
import type { Stage } from '../stage'

/** A state of the pane or of a window that it opens, and how to get there from the state before it. */
export type State =
  | { readonly name: string; readonly open: (stage: Stage) => Promise<void> }
  | { readonly name: string; readonly window: (stage: Stage) => Promise<Frame> }

/** States that follow one from another on the demo class. */
export interface Walk {
  readonly area: string
  readonly states: readonly State[]
}

export const button = ({ pane }: Stage, name: string | RegExp) => pane.getByRole('button', { name })
export const tab = ({ pane }: Stage, name: string) => pane.getByRole('tab', { name, exact: true })
export const choice = ({ pane }: Stage, name: string) => pane.getByRole('combobox', { name })
export const text = ({ pane }: Stage, words: string | RegExp) => pane.getByText(words).first().waitFor()

export const select = ({ page }: Stage, address: string) =>
  page.evaluate((cell) => {
    window.columnwiseBench?.bench.select('Kingfisher', cell)
  }, address)

/** Opens a window from the pane and gives its page. */
export async function windowFrom(stage: Stage, name: string): Promise<Frame> {
  const opening = stage.page.waitForEvent('popup')
  await button(stage, name).click()
  const opened = await opening
  await opened.getByRole('heading').first().waitFor()
  return opened.mainFrame()
}
