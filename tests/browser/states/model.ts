import { button, select, tab, text, windowFrom, type State } from './steps'

export const MODEL: readonly State[] = [
  {
    name: 'as it opens',
    open: async (stage) => {
      await tab(stage, 'Model').click()
      await stage.pane.getByLabel('An addition or subtraction').waitFor()
    },
  },
  {
    name: 'a text that is no question',
    open: async ({ pane }) => {
      await pane.getByLabel('An addition or subtraction').fill('17 - 52')
      await pane.getByLabel('An addition or subtraction').press('Enter')
      await pane.getByText(/^The number taken away is greater/).waitFor()
    },
  },
  {
    name: 'before the first step',
    open: async (stage) => {
      await stage.pane.getByLabel('An addition or subtraction').fill('40003 - 15678')
      await stage.pane.getByLabel('An addition or subtraction').press('Enter')
      await button(stage, 'Next').waitFor()
    },
  },
  {
    name: 'half-way',
    open: async (stage) => {
      for (let step = 0; step < 4; step++) await button(stage, 'Next').click()
    },
  },
  {
    name: 'half-way, counters and a number line beside it',
    open: async ({ pane }) => {
      await pane.getByRole('switch', { name: 'Counters' }).check()
      await pane.getByRole('switch', { name: 'Number line' }).check()
      await pane.getByRole('button', { name: 'Next jump' }).click()
    },
  },
  {
    name: 'worked, a wrong answer beside it',
    open: async (stage) => {
      await button(stage, 'Whole answer').click()
      await stage.pane.getByLabel('The pupil’s answer').selectOption({ index: 1 })
      await button(stage, 'Show where').click()
      await button(stage, 'Show the right working').click()
    },
  },
  {
    name: 'asking before it writes over cells',
    open: async (stage) => {
      await select(stage, 'A3')
      await button(stage, 'Finished layout into cells').click()
      await text(stage, /are not empty/)
    },
  },
  { name: 'the large window', window: (stage) => windowFrom(stage, 'Large window') },
  {
    name: 'the large window, what went wrong',
    window: async (stage) => {
      const window = await windowFrom(stage, 'Large window')
      await window.getByRole('switch', { name: 'What went wrong here?' }).click()
      await window.getByRole('button', { name: 'Show where' }).click()
      await window.getByRole('button', { name: 'Show the right working' }).click()
      return window
    },
  },
]
