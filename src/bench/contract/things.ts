import { SCRATCH, check, failsWith, same, scratch } from './check'
import type { Check } from './check'

const makeTable = (sheet: Excel.Worksheet) => {
  sheet.getRange('A1:B3').values = [
    ['Name', 2024],
    ['Ada', 1],
    ['Ben', 2],
  ]
  const table = sheet.tables.add('A1:B3', true)
  table.name = 'ContractTable'
  return table
}

/** Tables, names, settings and what else a workbook holds. */
export const THINGS: readonly Check[] = [
  check('a table is made of a block, its headers become text', async (sheet, context) => {
    const table = makeTable(sheet)
    table.style = 'TableStyleLight9'
    table.showFilterButton = false
    table.load('name, style, showFilterButton, showHeaders')
    const [range, header, body] = [table.getRange(), table.getHeaderRowRange(), table.getDataBodyRange()]
    range.load('address')
    header.load('values')
    body.load('address')
    table.columns.load('items/name')
    table.rows.load('count')
    await context.sync()
    same(
      'table',
      [table.name, table.style, table.showFilterButton, table.showHeaders],
      ['ContractTable', 'TableStyleLight9', false, true],
    )
    same('range', range.address, `'${SCRATCH}'!A1:B3`)
    same('headers', header.values, [['Name', '2024']])
    same('body', body.address, `'${SCRATCH}'!A2:B3`)
    same(
      'columns',
      table.columns.items.map(({ name }) => name),
      ['Name', '2024'],
    )
    same('rows', table.rows.count, 2)
  }),
  check('a table grows by rows and is found from a range', async (sheet, context) => {
    const table = makeTable(sheet)
    table.rows.add(undefined, [['Cy', 3]])
    const found = sheet.getRange('B2').getTables(false)
    const outside = sheet.getRange('D9').getTables(false).getCount()
    const range = table.getRange()
    range.load('address, values')
    found.load('items/name')
    await context.sync()
    same('address', range.address, `'${SCRATCH}'!A1:B4`)
    same('last row', range.values[3], ['Cy', 3])
    same(
      'found',
      found.items.map(({ name }) => name),
      ['ContractTable'],
    )
    same('outside', outside.value, 0)
  }),
  check('a table cannot lie over another, and becomes cells again', async (sheet, context) => {
    const table = makeTable(sheet)
    await context.sync()
    await failsWith('InvalidArgument', async (other) => {
      scratch(other).tables.add('B2:C5', true)
      return Promise.resolve()
    })
    table.convertToRange()
    const count = sheet.tables.getCount()
    const cell = sheet.getRange('A2')
    cell.load('values')
    await context.sync()
    same('tables', count.value, 0)
    same('cells stay', cell.values, [['Ada']])
  }),
  check('settings hold anything JSON can', async (_, context) => {
    const { settings } = context.workbook
    settings.add('contract', { marks: [1, 2], name: 'Ada' })
    await context.sync()
    const setting = settings.getItem('contract')
    const missing = settings.getItemOrNullObject('contract missing')
    setting.load('value')
    await context.sync()
    same('value', setting.value, { marks: [1, 2], name: 'Ada' })
    same('missing', missing.isNullObject, true)
    setting.delete()
    const gone = settings.getItemOrNullObject('contract')
    await context.sync()
    same('gone', gone.isNullObject, true)
  }),
  check('names stand for ranges', async (sheet, context) => {
    const name = context.workbook.names.add('ContractName', sheet.getRange('B2:C3'), 'for a check')
    const range = name.getRange()
    name.load('name, type, comment')
    range.load('address')
    await context.sync()
    same('name', [name.name, name.type, name.comment], ['ContractName', 'Range', 'for a check'])
    same('range', range.address, `'${SCRATCH}'!B2:C3`)
    name.delete()
    const gone = context.workbook.names.getItemOrNullObject('ContractName')
    await context.sync()
    same('gone', gone.isNullObject, true)
  }),
  check('XML parts are kept by namespace', async (_, context) => {
    const parts = context.workbook.customXmlParts
    const part = parts.add('<check xmlns="urn:columnwise:contract"><n>1</n></check>')
    const xml = part.getXml()
    const count = parts.getByNamespace('urn:columnwise:contract').getCount()
    await context.sync()
    same('xml', xml.value.includes('<n>1</n>'), true)
    same('count', count.value, 1)
    part.delete()
    await context.sync()
  }),
  check('page breaks and page layout are kept', async (sheet, context) => {
    sheet.horizontalPageBreaks.add('A5')
    sheet.pageLayout.orientation = 'Landscape'
    const count = sheet.horizontalPageBreaks.getCount()
    sheet.pageLayout.load('orientation')
    await context.sync()
    same('kept', [count.value, sheet.pageLayout.orientation], [1, 'Landscape'])
  }),
]
