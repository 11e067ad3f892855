import { SCRATCH, cleanUp, scratch } from './check'

/** A check in which a person takes part. */
export interface Step {
  readonly name: string
  /** What the person is to do, in sentences. */
  readonly ask: string
  /** Makes ready what the person works on. */
  readonly prepare: () => Promise<void>
  /** What was found, as a sentence; rejects with one where Excel did otherwise than the add-in relies on. */
  readonly judge: () => Promise<string>
}

async function freshSheet(fill: (sheet: Excel.Worksheet) => void): Promise<void> {
  await cleanUp()
  await Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.add(SCRATCH)
    fill(sheet)
    sheet.activate()
    await context.sync()
  })
}

const codeOf = (error: unknown) => (error instanceof OfficeExtension.Error ? error.code : String(error))

/** How many of the sheet's conditional formats can be read by themselves. */
async function readableFormats(count: number): Promise<number> {
  let readable = 0
  for (let index = 0; index < count; index++)
    await Excel.run(async (context) => {
      const format = scratch(context).getRange().conditionalFormats.getItemAt(index)
      format.load('id, type, custom/rule/formula')
      await context.sync()
      readable++
    }).catch(() => undefined)
  return readable
}

const RULES: Step = {
  name: 'rules made and duplicated in the rules manager',
  ask:
    'On the sheet Contract check, select A1 to A9. Choose Home, Conditional Formatting, New Rule, Use a formula: make one rule with =A1>3 ' +
    'and one with =A1>6, each with a fill. Then choose Manage Rules, duplicate one of them and press OK. Then press Done here.',
  prepare: () =>
    freshSheet((sheet) => {
      sheet.getRange('A1:A9').values = Array.from({ length: 9 }, (_, index) => [index + 1])
    }),
  judge: async () => {
    const count = await Excel.run(async (context) => {
      const asked = scratch(context).getRange().conditionalFormats.getCount()
      await context.sync()
      return asked.value
    })
    const together = await Excel.run(async (context) => {
      scratch(context).getRange().conditionalFormats.load('items/id, items/type')
      await context.sync()
      return 'can be read'
    }).catch((error: unknown) => `cannot be read (${codeOf(error)})`)
    const found = `${count} formats; together they ${together}; one by one ${await readableFormats(count)} can be read.`
    if (count < 3) throw new Error(`Three were expected. ${found}`)
    return found
  },
}

const TYPING: Step = {
  name: 'typing before the add-in writes',
  ask: 'Type 475 into cell B2 of the sheet Contract check and press Enter. Then press Done here.',
  prepare: () =>
    freshSheet((sheet) => {
      sheet.getRange('A2').values = [['Ada K.']]
      sheet.getRange('B2').select()
    }),
  judge: async () => {
    const mergeUndoGroup = Office.context.requirements.isSetSupported('ExcelApi', '1.20')
    const typed = await Excel.run({ mergeUndoGroup }, async (context) => {
      const sheet = scratch(context)
      const cell = sheet.getRange('B2')
      cell.load('values')
      await context.sync()
      sheet.getRange('D2').values = [['written']]
      await context.sync()
      const rule = sheet.getRange('B2').conditionalFormats.add('Custom')
      rule.custom.rule.formula = '=B2=475'
      rule.custom.format.fill.color = '#DCEAF7'
      await context.sync()
      return cell.values as unknown[][]
    })
    if (typed[0]?.[0] !== 475) throw new Error(`B2 holds ${JSON.stringify(typed[0]?.[0])}, not 475.`)
    return mergeUndoGroup
      ? 'Three requests were merged into one step.'
      : 'This Excel cannot merge requests into one step.'
  },
}

const UNDOING: Step = {
  name: 'Ctrl+Z once takes back what the add-in wrote, and no more',
  ask: 'Click into the sheet Contract check and press Ctrl+Z once. Then press Done here.',
  prepare: () => Promise.resolve(),
  judge: async () => {
    const { values, count } = await Excel.run(async (context) => {
      const cells = scratch(context).getRange('B2:D2')
      cells.load('values')
      const asked = scratch(context).getRange().conditionalFormats.getCount()
      await context.sync()
      return { values: cells.values as unknown[][], count: asked.value }
    })
    const [typed, , written] = values[0] ?? []
    const found = `B2 holds ${JSON.stringify(typed)}, D2 ${JSON.stringify(written)}; conditional formats: ${count}.`
    if (typed !== 475 || written !== '' || count !== 0) throw new Error(found)
    return found
  },
}

/** How often, and after how many milliseconds, the second window is asked for while the first is closing. */
const TRIES = 30
const PAUSE = 100
const STILL_OPEN = 12007

function openWindow(): Promise<Office.Dialog | number> {
  const address = new URL('privacy.html', location.href).href
  return new Promise((resolve) => {
    Office.context.ui.displayDialogAsync(address, { width: 40, height: 40 }, ({ status, value, error }) => {
      resolve(status === Office.AsyncResultStatus.Succeeded ? value : error.code)
    })
  })
}

const WINDOWS: Step = {
  name: 'two windows in a row',
  ask: 'Press Done: two windows open one after another and close by themselves. Where Excel asks whether it may, allow it.',
  prepare: () => Promise.resolve(),
  judge: async () => {
    const first = await openWindow()
    if (typeof first === 'number') throw new Error(`The first window did not open: ${first}.`)
    first.close()
    let tries = 1
    let second = await openWindow()
    while (second === STILL_OPEN && tries < TRIES) {
      await new Promise((resolve) => setTimeout(resolve, PAUSE))
      second = await openWindow()
      tries++
    }
    if (typeof second === 'number')
      throw new Error(`The second window did not open: ${second}, after ${tries} tries.`)
    second.close()
    return `The second window opened at try ${tries}.`
  },
}

/** The checks that need a person, in the order in which they are asked. */
export const STEPS: readonly Step[] = [RULES, TYPING, UNDOING, WINDOWS]
