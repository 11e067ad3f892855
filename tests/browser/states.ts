import type { Frame } from 'playwright-core'
import { DEMO } from '../../src/bench/demo'
import { returnedBy, workbookOf } from '../home/collect/returned'
import type { Stage } from './stage'

/** A state of the pane or of a window that it opens, and how to get there from the state before it. */
export type State =
  | { readonly name: string; readonly open: (stage: Stage) => Promise<void> }
  | { readonly name: string; readonly window: (stage: Stage) => Promise<Frame> }

/** States that follow one from another on the demo class. */
export interface Walk {
  readonly area: string
  readonly states: readonly State[]
}

const button = ({ pane }: Stage, name: string | RegExp) => pane.getByRole('button', { name })
const tab = ({ pane }: Stage, name: string) => pane.getByRole('tab', { name, exact: true })
const choice = ({ pane }: Stage, name: string) => pane.getByRole('combobox', { name })
const text = ({ pane }: Stage, words: string | RegExp) => pane.getByText(words).first().waitFor()

const select = ({ page }: Stage, address: string) =>
  page.evaluate((cell) => {
    window.columnwiseBench?.bench.select('Kingfisher', cell)
  }, address)

/** Home workbooks of the demo class that came back: one for blank cells, one for filled ones, one without a name, one damaged. */
async function cameBack() {
  const [, , head = [], ...pupils] = DEMO.cells
  const room = { names: pupils.map(([name]) => String(name)), questions: head.slice(1).map(String) }
  const answers = room.questions.map((_, at) => 100 + at)
  const came = [
    [
      'bertie.xlsx',
      returnedBy(room, 'Bertie L', { answers: answers.map((answer, at) => (at === 11 ? answer : null)) }),
    ],
    ['amira with a long name of its file.xlsx', returnedBy(room, 'Amira P', { answers })],
    ['no name.xlsx', returnedBy(room, null, { answers })],
  ] as const
  const mimeType = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet'
  return Promise.all([
    ...came.map(async ([name, sheets]) => ({
      name,
      mimeType,
      buffer: Buffer.from(await workbookOf(sheets)),
    })),
    { name: 'broken.xlsx', mimeType, buffer: Buffer.from('no workbook') },
  ])
}

/** Opens a window from the pane and gives its page. */
async function windowFrom(stage: Stage, name: string): Promise<Frame> {
  const opening = stage.page.waitForEvent('popup')
  await button(stage, name).click()
  const opened = await opening
  await opened.getByRole('heading').first().waitFor()
  return opened.mainFrame()
}

const SET: readonly State[] = [
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

const MODEL: readonly State[] = [
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

const MARK: readonly State[] = [
  { name: 'as it opens', open: (stage) => button(stage, 'Mark this sheet').waitFor() },
  {
    name: 'at work, with Stop',
    open: async (stage) => {
      await stage.page.evaluate(() => {
        const { transport } = window.columnwiseBench?.bench ?? {}
        const { endpoint } = transport ?? {}
        if (!transport || !endpoint) return
        const { execute } = endpoint
        const held = new Promise<void>((resolve) => {
          window.addEventListener('let-go', () => {
            resolve()
          })
        })
        endpoint.execute = async (body) => {
          await held
          return execute(body)
        }
      })
      await button(stage, 'Mark this sheet').click()
      await button(stage, 'Stop').waitFor()
    },
  },
  {
    name: 'marked, with the reasons',
    open: async (stage) => {
      await stage.page.evaluate(() => window.dispatchEvent(new Event('let-go')))
      await text(stage, 'Kingfisher is marked.')
      await stage.pane.getByRole('heading', { name: 'Likeliest reasons' }).waitFor()
    },
  },
  {
    name: 'flags hidden',
    open: async (stage) => {
      await stage.pane.getByRole('switch', { name: 'Flags on names' }).click()
      await text(stage, /^Names are hidden here/)
    },
  },
  {
    name: 'a problem told',
    open: async (stage) => {
      await stage.page.evaluate(() => {
        const bench = window.columnwiseBench?.bench
        if (bench) bench.host.editing = true
      })
      await button(stage, 'Mark again').click()
      await stage.pane.getByRole('alert').waitFor()
    },
  },
  {
    name: 'quick entry, what to enter',
    open: async (stage) => {
      await stage.page.evaluate(() => {
        const bench = window.columnwiseBench?.bench
        if (bench) bench.host.editing = false
      })
      await button(stage, 'Quick entry').click()
      await button(stage, /^Start, /).waitFor()
    },
  },
  {
    name: 'quick entry, an answer',
    open: async (stage) => {
      await button(stage, /^Start, /).click()
      await stage.pane.getByRole('textbox').waitFor()
      await stage.page.keyboard.press('Enter')
      await stage.page.keyboard.press('a')
      await text(stage, /^Answer 3 of .*all safe in the sheet/)
    },
  },
  {
    name: 'quick entry, an answer that cannot be read',
    open: async (stage) => {
      await stage.pane.getByRole('textbox').fill('five hundred')
      await text(stage, /^This cannot be read as an answer/)
    },
  },
  {
    name: 'quick entry, all done',
    open: async (stage) => {
      await stage.pane.getByRole('textbox').fill('')
      const done = stage.pane.getByText(/^All done: /)
      while ((await done.count()) === 0) await button(stage, /go on, as it is/).click()
    },
  },
  {
    name: 'collect, files',
    open: async (stage) => {
      await button(stage, 'Close').last().click()
      await button(stage, 'Collect answers').click()
      await stage.pane.getByLabel('Files that came back').waitFor()
    },
  },
  {
    name: 'collect, what came in',
    open: async (stage) => {
      await stage.pane.getByLabel('Files that came back').setInputFiles(await cameBack())
      await stage.pane.getByRole('heading', { name: 'Left for you' }).waitFor()
      await stage.pane.locator('summary:visible').first().click()
    },
  },
  {
    name: 'collect, a message',
    open: async (stage) => {
      await button(stage, 'Back, write nothing').click()
      await tab(stage, 'Message').click()
      await stage.pane.getByLabel('What the message says').fill('12) 5001\nLove Bertie')
      await button(stage, 'Bertie L').click()
    },
  },
  {
    name: 'collect, a form',
    open: async (stage) => {
      await tab(stage, 'Form').click()
      await button(stage, 'Copy the questions').waitFor()
    },
  },
  {
    name: 'no marksheet, its ranges to be chosen',
    open: async (stage) => {
      await button(stage, 'Close').last().click()
      await stage.page.evaluate(() => {
        const grid = window.columnwiseBench?.bench.grid
        if (!grid) return
        const id = grid.addSheet('A sheet of the teacher’s with a long name')
        grid.write(id, 0, 0, [['plans for the week'], ['first'], ['second']])
        grid.activateSheet(id)
        grid.flush()
      })
      await button(stage, 'Look again').click()
      await stage.pane.getByRole('heading', { name: 'No marksheet here' }).waitFor()
    },
  },
  {
    name: 'ranges that make no marksheet',
    open: async (stage) => {
      for (const part of ['Names', 'Questions', 'Answers'])
        await button(stage, `${part}: use my selection`).click()
      await stage.pane.getByRole('alert').waitFor()
    },
  },
]

const REVIEW: readonly State[] = [
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

const SETTINGS: readonly State[] = [
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

const PRIVACY: readonly State[] = [
  {
    name: 'the page',
    open: async ({ pane }) => {
      await pane.goto(new URL('privacy.html', pane.url()).href)
    },
  },
]

/** Every area with its states. The lesson's parts are read off its list, so that each new one is walked too. */
export const WALKS: readonly Walk[] = [
  { area: 'Set', states: SET },
  { area: 'Model', states: MODEL },
  { area: 'Mark', states: MARK },
  { area: 'Review', states: REVIEW },
  { area: 'Settings', states: SETTINGS },
  { area: 'Privacy', states: PRIVACY },
]

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
