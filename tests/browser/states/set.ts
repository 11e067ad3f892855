import { button, choice, select, tab, text, type State } from './steps'

export const SET: readonly State[] = [
  {
    name: 'as it opens',
    open: async (stage) => {
      await tab(stage, 'Set').click()
      await stage.pane.getByRole('list', { name: 'Questions drawn' }).waitFor()
    },
  },
  {
    name: 'to find out why, with what it cannot tell',
    open: async (stage) => {
      await choice(stage, 'Questions').selectOption({ label: 'Find out why answers go wrong' })
      await stage.pane.getByText('What it can and cannot tell').click()
    },
  },
  {
    name: 'both operations, own numbers, pounds and pence',
    open: async (stage) => {
      await choice(stage, 'Operation').selectOption('both')
      await choice(stage, 'Numbers').selectOption({ label: 'My own choice of numbers' })
      await choice(stage, 'Written as').selectOption({ label: 'Pounds and pence' })
      await choice(stage, 'Top digits').selectOption('5')
      await choice(stage, 'Questions').selectOption({ index: 0 })
    },
  },
  {
    name: 'one type, with its objective',
    open: async (stage) => {
      await choice(stage, 'Operation').selectOption('subtract')
      await choice(stage, 'Numbers').selectOption({ index: 0 })
      await choice(stage, 'Questions').selectOption({ index: 3 })
    },
  },
  {
    name: 'a set that cannot be',
    open: async (stage) => {
      await stage.pane.getByRole('spinbutton', { name: 'How many' }).fill('41')
      await text(stage, 'Choose 1 to 40 questions.')
    },
  },
  {
    name: 'asking before it writes over cells',
    open: async (stage) => {
      await stage.pane.getByRole('spinbutton', { name: 'How many' }).fill('12')
      await select(stage, 'A1')
      await button(stage, 'Write down').click()
      await text(stage, /are not empty/)
    },
  },
  {
    name: 'written, with Undo',
    open: async (stage) => {
      await button(stage, 'Leave them').click()
      await button(stage, 'Lay out a marksheet').click()
      await text(stage, /^The marksheet is on the sheet/)
    },
  },
  {
    name: 'home workbooks, one opened',
    open: async (stage) => {
      await stage.pane.locator('#area-set').getByText('Home workbooks').first().click()
      await button(stage, 'Open as a new workbook').click()
      await text(stage, 'The home workbook is open in a window of its own.')
    },
  },
]
