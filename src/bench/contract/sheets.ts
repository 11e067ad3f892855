import { SCRATCH, check, failsWith, same, scratch } from './check'
import type { Check } from './check'

const refusedName = (name: string, code: string): Check =>
  check(`a sheet cannot be called ${JSON.stringify(name)}`, async () => {
    await failsWith(code, async (context) => {
      context.workbook.worksheets.add(name)
      return Promise.resolve()
    })
  })

/** Sheets and their protection. */
export const SHEETS: readonly Check[] = [
  check('a sheet is added at the end, without coming to the front', async (sheet, context) => {
    const { worksheets } = context.workbook
    const active = worksheets.getActiveWorksheet()
    const count = worksheets.getCount()
    sheet.load('name, position, visibility')
    active.load('name')
    await context.sync()
    same('name', sheet.name, SCRATCH)
    same('position', sheet.position, count.value - 1)
    same('visibility', sheet.visibility, 'Visible')
    same('came to the front', active.name === SCRATCH, false)
  }),
  check('a sheet is found in any case, or is a null object', async (_, context) => {
    const { worksheets } = context.workbook
    const found = worksheets.getItem(SCRATCH.toUpperCase())
    const missing = worksheets.getItemOrNullObject('no such sheet')
    found.load('name')
    await context.sync()
    same('found', found.name, SCRATCH)
    same('missing', missing.isNullObject, true)
    await failsWith('ItemNotFound', async (other) => {
      other.workbook.worksheets.getItem('no such sheet').load('name')
      return Promise.resolve()
    })
  }),
  refusedName('with/slash', 'InvalidArgument'),
  refusedName('x'.repeat(32), 'InvalidArgument'),
  refusedName("'quoted'", 'InvalidArgument'),
  refusedName(SCRATCH.toLowerCase(), 'ItemAlreadyExists'),
  check('a sheet is renamed, hidden, shown, coloured and moved', async (sheet, context) => {
    sheet.name = 'Contract renamed'
    sheet.visibility = 'Hidden'
    sheet.tabColor = '#336699'
    sheet.showGridlines = false
    sheet.load('name, visibility, tabColor, showGridlines')
    await context.sync()
    same(
      'changed',
      [sheet.name, sheet.visibility, sheet.tabColor, sheet.showGridlines],
      ['Contract renamed', 'Hidden', '#336699', false],
    )
    sheet.visibility = 'Visible'
    sheet.name = SCRATCH
    sheet.position = 0
    sheet.load('name, visibility, position')
    await context.sync()
    same('back', [sheet.name, sheet.visibility, sheet.position], [SCRATCH, 'Visible', 0])
  }),
  check('rows and columns are frozen and freed', async (sheet, context) => {
    sheet.freezePanes.freezeAt(sheet.getRange('A1:B1'))
    const frozen = sheet.freezePanes.getLocationOrNullObject()
    frozen.load('address')
    await context.sync()
    same('frozen', frozen.address.replace(/^.*!/, ''), 'A1:B1')
    sheet.freezePanes.unfreeze()
    const freed = sheet.freezePanes.getLocationOrNullObject()
    await context.sync()
    same('freed', freed.isNullObject, true)
  }),
  check('a filter hides the rows it leaves out', async (sheet, context) => {
    const list = sheet.getRange('A1:B4')
    list.values = [
      ['Class', 'Mark'],
      ['Kite', 1],
      ['Owl', 2],
      ['Kite', 3],
    ]
    sheet.autoFilter.apply(list, 0, { filterOn: 'Values', values: ['Kite'] })
    const owl = sheet.getRange('A3')
    owl.load('rowHidden')
    sheet.autoFilter.load('enabled, isDataFiltered')
    await context.sync()
    same('hidden', owl.rowHidden, true)
    same('filter', [sheet.autoFilter.enabled, sheet.autoFilter.isDataFiltered], [true, true])
    sheet.autoFilter.remove()
    owl.load('rowHidden')
    await context.sync()
    same('shown again', owl.rowHidden, false)
  }),
  check('a protected sheet refuses locked cells and takes unlocked ones', async (sheet, context) => {
    sheet.getRange('B2').format.protection.locked = false
    sheet.protection.protect()
    sheet.protection.load('protected, options')
    await context.sync()
    same('protected', sheet.protection.protected, true)
    same('formatting allowed', sheet.protection.options.allowFormatCells, false)
    await failsWith('AccessDenied', async (other) => {
      scratch(other).getRange('A1').values = [[1]]
      return Promise.resolve()
    })
    await failsWith('AccessDenied', async (other) => {
      scratch(other).getRange('A1').format.fill.color = '#FF0000'
      return Promise.resolve()
    })
    await failsWith('AccessDenied', async (other) => {
      scratch(other).getRange('A1').conditionalFormats.add('Custom')
      return Promise.resolve()
    })
    const unlocked = sheet.getRange('B2')
    unlocked.values = [[5]]
    unlocked.load('values')
    sheet.protection.unprotect()
    sheet.getRange('A1').values = [[1]]
    sheet.protection.load('protected')
    await context.sync()
    same('unlocked cell', unlocked.values, [[5]])
    same('unprotected', sheet.protection.protected, false)
  }),
]
