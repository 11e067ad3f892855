import { SCRATCH, check, cleanUp, failsWith, same, scratch, until } from './check'
import type { Check } from './check'

/** Batches, errors and events. */
export const BATCHES: readonly Check[] = [
  check('what a failed batch did before its error stays done', async (sheet, context) => {
    await failsWith('ItemNotFound', async (other) => {
      scratch(other).getRange('A1').values = [[1]]
      other.workbook.worksheets.getItem('no such sheet').getRange('A1').values = [[1]]
      scratch(other).getRange('A2').values = [[2]]
      return Promise.resolve()
    })
    const range = sheet.getRange('A1:A2')
    range.load('values')
    await context.sync()
    same('values', range.values, [[1], ['']])
  }),
  check('an error says where it happened', async () => {
    let where = ''
    try {
      await Excel.run(async (context) => {
        scratch(context).getRange('A1:B2').values = [[1]]
        await context.sync()
      })
    } catch (error) {
      if (error instanceof OfficeExtension.Error) where = error.debugInfo.errorLocation ?? ''
    }
    same('location', where, 'Range.values')
  }),
  check('what was not loaded cannot be read', async (sheet) => {
    let code = ''
    try {
      same('never read', sheet.getRange('A1').values, null)
    } catch (error) {
      if (error instanceof OfficeExtension.Error) code = error.code
    }
    same('code', code, 'PropertyNotLoaded')
    return Promise.resolve()
  }),
  {
    name: 'a tracked range can be used in a later batch',
    run: async () => {
      const kept = await Excel.run(async (context) => {
        const cell = context.workbook.worksheets.add(SCRATCH).getRange('B2')
        cell.values = [[42]]
        context.trackedObjects.add(cell)
        await context.sync()
        return cell
      })
      try {
        await Excel.run(kept, async (context) => {
          kept.load('values')
          await context.sync()
          context.trackedObjects.remove(kept)
          await context.sync()
        })
        same('value', kept.values, [[42]])
      } finally {
        await cleanUp()
      }
    },
  },
  check('drawing and calculation can be held back until the next sync', async (sheet, context) => {
    context.application.suspendScreenUpdatingUntilNextSync()
    context.application.suspendApiCalculationUntilNextSync()
    const cell = sheet.getRange('A1')
    cell.values = [['=2+3']]
    await context.sync()
    cell.load('values')
    await context.sync()
    same('value', cell.values, [[5]])
  }),
  check("a change is told, the add-in's own too, until the handler is removed", async (sheet, context) => {
    const told: Excel.WorksheetChangedEventArgs[] = []
    const handler = sheet.onChanged.add(async (change) => {
      told.push(change)
      return Promise.resolve()
    })
    await context.sync()
    sheet.getRange('C3').values = [['changed']]
    await context.sync()
    await until('the change event', () => told.length > 0)
    same('address', told[0]?.address, 'C3')
    same('kind', [told[0]?.changeType, told[0]?.triggerSource], ['RangeEdited', 'ThisLocalAddin'])
    await Excel.run(async (other) => {
      const range = told[0]?.getRange(other)
      range?.load('values')
      await other.sync()
      same('range', range?.values, [['changed']])
    })
    handler.remove()
    await context.sync()
    const before = told.length
    sheet.getRange('C4').values = [['quiet']]
    await context.sync()
    await new Promise((resolve) => setTimeout(resolve, 100))
    same('told after removal', told.length, before)
  }),
  check('a selection is told', async (sheet, context) => {
    const told: string[] = []
    const handler = sheet.onSelectionChanged.add(async ({ address }) => {
      told.push(address)
      return Promise.resolve()
    })
    sheet.activate()
    await context.sync()
    sheet.getRange('D4:E5').select()
    await context.sync()
    await until('the selection event', () => told.includes('D4:E5'))
    handler.remove()
    await context.sync()
  }),
  check('an added sheet is told', async (_, context) => {
    const added: string[] = []
    const handler = context.workbook.worksheets.onAdded.add(async ({ worksheetId }) => {
      added.push(worksheetId)
      return Promise.resolve()
    })
    await context.sync()
    const sheet = context.workbook.worksheets.add(`${SCRATCH} 2`)
    sheet.load('id')
    await context.sync()
    await until('the event', () => added.length > 0)
    same('sheet', added, [sheet.id])
    sheet.delete()
    handler.remove()
    await context.sync()
  }),
]
