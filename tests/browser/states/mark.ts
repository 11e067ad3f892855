import { DEMO } from '../../../src/bench/demo'
import { returnedBy, workbookOf } from '../../home/collect/returned'
import { button, tab, text, type State } from './steps'

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

export const MARK: readonly State[] = [
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
    name: 'marked, with who needs support',
    open: async (stage) => {
      await stage.page.evaluate(() => window.dispatchEvent(new Event('let-go')))
      await text(stage, 'Kingfisher is marked.')
      await stage.pane.getByRole('heading', { name: 'Needs support' }).waitFor()
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
    name: 'a row left out',
    open: async (stage) => {
      await button(stage, 'Close').last().click()
      await stage.page.evaluate(() => {
        const grid = window.columnwiseBench?.bench.grid
        if (!grid) return
        const id = grid.addSheet('Half term')
        grid.write(id, 0, 0, [
          ['Name', '321 − 185', '640 − 218'],
          ['Ada B', 136, 422],
          ['Ben C', '50%', '75%'],
          ['Cai D', 136, 0],
        ])
        grid.activateSheet(id)
        grid.flush()
      })
      await button(stage, 'Look again').click()
      await text(stage, /^A3 “Ben C” is left out: /)
    },
  },
  {
    name: 'no marksheet, its ranges to be chosen',
    open: async (stage) => {
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
