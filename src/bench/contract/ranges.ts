import { check, failsWith, same, scratch } from './check'
import type { Check } from './check'

const plain = (address: string) => address.replace(/^.*!/, '')

/** Ranges made from ranges, and what is found in them. */
export const RANGES: readonly Check[] = [
  check('ranges made from a range have the right addresses', async (sheet, context) => {
    const range = sheet.getRange('B2:D5')
    const made = [
      range.getCell(0, 0),
      range.getRow(1),
      range.getColumn(2),
      range.getLastCell(),
      range.getOffsetRange(1, 1),
      range.getResizedRange(1, -1),
      range.getBoundingRect('F1'),
      range.getIntersection('C3:Z9'),
      range.getEntireColumn(),
      range.getEntireRow(),
      sheet.getRangeByIndexes(0, 0, 2, 3),
      sheet.getCell(4, 4),
    ]
    for (const one of made) one.load('address')
    await context.sync()
    same(
      'addresses',
      made.map(({ address }) => plain(address)),
      ['B2', 'B3:D3', 'D2:D5', 'D5', 'C3:E6', 'B2:C6', 'B1:F5', 'C3:D5', 'B:D', '2:5', 'A1:C2', 'E5'],
    )
  }),
  check('ranges that do not meet have no intersection', async (sheet, context) => {
    const none = sheet.getRange('A1:B2').getIntersectionOrNullObject('D4:E5')
    await context.sync()
    same('null object', none.isNullObject, true)
    await failsWith('ItemNotFound', async (other) => {
      scratch(other).getRange('A1:B2').getIntersection('D4:E5').load('address')
      return Promise.resolve()
    })
  }),
  check('an address that is none is refused', async () => {
    await failsWith('InvalidArgument', async (context) => {
      scratch(context).getRange('no such!!').load('values')
      return Promise.resolve()
    })
  }),
  check('an empty sheet has no used range, a written one has', async (sheet, context) => {
    const before = sheet.getUsedRangeOrNullObject(true)
    await context.sync()
    same('empty', before.isNullObject, true)
    sheet.getRange('C3:D4').values = [
      [1, ''],
      ['', 2],
    ]
    const used = sheet.getUsedRange(true)
    const part = sheet.getRange('D:D').getUsedRangeOrNullObject(true)
    used.load('address')
    part.load('address')
    await context.sync()
    same('used', plain(used.address), 'C3:D4')
    same('used of column D', plain(part.address), 'D3:D4')
  }),
  check('rows and columns are hidden and shown', async (sheet, context) => {
    const block = sheet.getRange('B2:C4')
    block.values = [
      [1, 2],
      [3, 4],
      [5, 6],
    ]
    sheet.getRange('3:3').rowHidden = true
    sheet.getRange('C:C').columnHidden = true
    const cell = sheet.getRange('B3')
    const loaded = [block, cell, sheet.getRange('C2')]
    for (const range of loaded) range.load('rowHidden, columnHidden, hidden')
    await context.sync()
    same(
      'rows',
      loaded.map((range) => range.rowHidden),
      [null, true, false],
    )
    same(
      'columns',
      loaded.map((range) => range.columnHidden),
      [null, false, true],
    )
    sheet.getRange('3:3').rowHidden = false
    cell.load('hidden')
    await context.sync()
    same('shown again', cell.hidden, false)
  }),
  check('constants are found, and their absence', async (sheet, context) => {
    sheet.getRange('A1:C1').values = [[1, 'x', '=1+1']]
    const numbers = sheet.getRange('A1:C3').getSpecialCellsOrNullObject('Constants', 'Numbers')
    const formulas = sheet.getRange('A1:C3').getSpecialCells('Formulas')
    const none = sheet.getRange('A2:C3').getSpecialCellsOrNullObject('Constants')
    numbers.load('address')
    formulas.load('address, cellCount')
    await context.sync()
    same('numbers', plain(numbers.address), 'A1')
    same('formulas', [plain(formulas.address), formulas.cellCount], ['C1', 1])
    same('none', none.isNullObject, true)
  }),
  check('a selection is read back', async (sheet, context) => {
    sheet.activate()
    sheet.getRange('B2:C3').select()
    await context.sync()
    const selected = context.workbook.getSelectedRange()
    selected.load('address')
    await context.sync()
    same('selected', plain(selected.address), 'B2:C3')
  }),
  check('properties are read and set cell by cell', async (sheet, context) => {
    const range = sheet.getRange('A1:B1')
    range.setCellProperties([
      [{ format: { fill: { color: '#FF0000' } } }, { format: { font: { bold: true } } }],
    ])
    const got = range.getCellProperties({ format: { fill: { color: true }, font: { bold: true } } })
    await context.sync()
    same(
      'properties',
      got.value.map((line) => line.map(({ format }) => [format?.fill?.color, format?.font?.bold])),
      [
        [
          ['#FF0000', false],
          ['#FFFFFF', true],
        ],
      ],
    )
  }),
]
