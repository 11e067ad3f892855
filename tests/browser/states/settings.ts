import { button, tab, text, type State } from './steps'

export const SETTINGS: readonly State[] = [
  {
    name: 'as they open',
    open: async (stage) => {
      await button(stage, 'Settings').click()
      await stage.pane.getByRole('heading', { name: 'Settings', exact: true }).waitFor()
    },
  },
  {
    name: 'refused with a sentence',
    open: async (stage) => {
      await stage.pane.getByLabel('Secure from', { exact: true }).fill('20')
      await button(stage, /^Keep$/).click()
      await text(stage, 'The threshold for secure must be above that for needs support.')
    },
  },
  {
    name: 'nothing to remove',
    open: async (stage) => {
      await button(stage, 'Look what there is').click()
      await text(stage, /^There is nothing of Columnwise’s to remove/)
    },
  },
  {
    name: 'what would be removed',
    open: async (stage) => {
      await tab(stage, 'Mark').click()
      await button(stage, 'Mark this sheet').click()
      await text(stage, 'Kingfisher is marked.')
      await button(stage, 'Settings').click()
      await button(stage, 'Look what there is').click()
      await text(stage, /^Colours, flags, notes and comments on/)
    },
  },
  {
    name: 'removed',
    open: async (stage) => {
      await button(stage, 'Remove all this').click()
      await text(stage, 'Everything of Columnwise’s is out of this workbook.')
    },
  },
]
