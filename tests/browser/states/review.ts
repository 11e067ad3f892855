import { button, choice, select, tab, text, type State } from './steps'

export const REVIEW: readonly State[] = [
  {
    name: 'Pupils, with how likely',
    open: async (stage) => {
      await tab(stage, 'Review').click()
      await stage.pane.getByRole('heading', { name: 'Pupils by family' }).waitFor()
      await stage.pane.getByRole('checkbox', { name: 'Show how likely' }).check()
    },
  },
  {
    name: 'a pupil',
    open: async (stage) => {
      await stage.pane.locator('.heat tbody th button').first().click()
      await stage.pane.getByRole('heading', { name: 'Over the weeks' }).waitFor()
    },
  },
  {
    name: 'Questions, who missed one',
    open: async (stage) => {
      await button(stage, 'All pupils').click()
      await tab(stage, 'Questions').click()
      await stage.pane.locator('summary:visible').first().click()
    },
  },
  {
    name: 'Why, an example open',
    open: async (stage) => {
      await tab(stage, 'Why').click()
      await stage.pane
        .getByText(/^Example to model/)
        .first()
        .click()
    },
  },
  {
    name: 'Groups, asking before it writes over cells',
    open: async (stage) => {
      await tab(stage, 'Groups').click()
      await select(stage, 'A3')
      await button(stage, /^Write across from the selected cell: Group 1/).click()
      await text(stage, /are not empty/)
    },
  },
  {
    name: 'Record, empty, and the sheet to share',
    open: async (stage) => {
      await button(stage, 'Leave them').click()
      await tab(stage, 'Record').click()
      await stage.pane.getByRole('heading', { name: 'A sheet to share' }).waitFor()
    },
  },
  {
    name: 'a sheet shared, with initials',
    open: async (stage) => {
      await stage.pane.getByRole('radio', { name: /^initials/ }).check()
      await button(stage, 'Make the sheet to share').click()
      await text(stage, /^The sheet To share is ready/)
    },
  },
  {
    name: 'Record, filled',
    open: async (stage) => {
      await stage.pane.getByRole('textbox', { name: 'Class' }).fill('4K')
      await button(stage, 'Add Kingfisher to Record').click()
      await text(stage, /^336 answers of 1 day/)
    },
  },
  {
    name: 'Record, asking how the same sheet is to be filed',
    open: async (stage) => {
      await stage.page.evaluate(() => {
        window.columnwiseBench?.bench.userEdit('Kingfisher', 'C4:D4', [[9999, 8888]])
      })
      await text(stage, /^Changed since/)
      await button(stage, 'Add Kingfisher to Record').click()
      await text(stage, /^Record may hold Kingfisher already/)
    },
  },
  {
    name: 'Pupils, by Record',
    open: async (stage) => {
      await button(stage, 'Leave Record as it is').click()
      await choice(stage, 'Judge by').selectOption({ label: 'Record: 4K' })
      await tab(stage, 'Pupils').click()
    },
  },
  {
    name: 'a pupil over the weeks',
    open: async (stage) => {
      await stage.pane.locator('.heat').getByRole('button', { name: 'Bertie L' }).click()
      await text(stage, /Kingfisher: 1 of 11/)
    },
  },
]
