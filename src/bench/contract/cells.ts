import { check, failsWith, same, scratch } from './check'
import type { Check } from './check'

const written = (name: string, text: string, value: string | number | boolean, numberFormat: string): Check =>
  check(name, async (sheet, context) => {
    const cell = sheet.getRange('B2')
    cell.values = [[text]]
    cell.load('values, numberFormat')
    await context.sync()
    same('value', cell.values[0]?.[0], value)
    same('number format', cell.numberFormat[0]?.[0], numberFormat)
  })

/** The serial number of a day of this year. */
const dayOfYear = (month: number, day: number): number =>
  Date.UTC(new Date().getFullYear(), month - 1, day) / 86_400_000 + 25_569

/** What is written to cells and read back. */
export const CELLS: readonly Check[] = [
  check('numbers, text, booleans and blanks come back as written', async (sheet, context) => {
    const range = sheet.getRange('B2:C3')
    range.values = [
      [12.5, 'Ada'],
      [true, ''],
    ]
    range.load('values, valueTypes, address, rowCount, columnCount, rowIndex, columnIndex')
    await context.sync()
    same('values', range.values, [
      [12.5, 'Ada'],
      [true, ''],
    ])
    same('value types', range.valueTypes, [
      ['Double', 'String'],
      ['Boolean', 'Empty'],
    ])
    same('address', range.address, "'Contract check'!B2:C3")
    same('bounds', [range.rowIndex, range.columnIndex, range.rowCount, range.columnCount], [1, 1, 2, 2])
  }),
  written('a number in text becomes a number', '475', 475, 'General'),
  written('thousands separators are read', '7,214', 7214, '#,##0'),
  written('a percentage is read', '50%', 0.5, '0%'),
  written('a dollar amount is read', '$4.50', 4.5, '$#,##0.00'),
  written('true in text becomes a boolean', 'true', true, 'General'),
  written('3-4 becomes the 4th of March', '3-4', dayOfYear(3, 4), 'd-mmm'),
  written('12-5 becomes the 5th of December', '12-5', dayOfYear(12, 5), 'd-mmm'),
  written('3/4/2024 becomes a date', '3/4/2024', 45_355, 'm/d/yyyy'),
  written('932-457 stays text', '932-457', '932-457', 'General'),
  written('a calculation with the real minus sign stays text', '932 − 457', '932 − 457', 'General'),
  written('a leading apostrophe keeps text', "'3-4", '3-4', 'General'),
  check('the number format @ keeps text', async (sheet, context) => {
    const range = sheet.getRange('A1:A3')
    range.numberFormat = [['@'], ['@'], ['@']]
    range.values = [['3-4'], ['475'], ['=1+1']]
    range.load('values, text')
    await context.sync()
    same('values', range.values, [['3-4'], ['475'], ['=1+1']])
    same('text', range.text, [['3-4'], ['475'], ['=1+1']])
  }),
  check('null leaves a cell alone, an empty text empties it', async (sheet, context) => {
    const range = sheet.getRange('A1:C1')
    range.values = [[1, 2, 3]]
    range.values = [[null, '', 4]]
    range.load('values')
    await context.sync()
    same('values', range.values, [[1, '', 4]])
  }),
  check('one value fills a range', async (sheet, context) => {
    const range = sheet.getRange('A1:B2')
    Object.assign(range, { values: 7 })
    range.load('values')
    await context.sync()
    same('values', range.values, [
      [7, 7],
      [7, 7],
    ])
  }),
  check('a formula has a value and a text', async (sheet, context) => {
    const range = sheet.getRange('A1:C1')
    range.values = [['=1+1', '=475', '=1/0']]
    range.load('values, formulas, valueTypes')
    await context.sync()
    same('values', range.values, [[2, 475, '#DIV/0!']])
    same('formulas', range.formulas, [['=1+1', '=475', '=1/0']])
    same('value types', range.valueTypes, [['Double', 'Double', 'Error']])
  }),
  check('a matrix of the wrong size is refused', async () => {
    await failsWith('InvalidArgument', async (context) => {
      scratch(context).getRange('A1:B2').values = [[1, 2]]
      return Promise.resolve()
    })
  }),
  check('a broken formula is refused', async () => {
    await failsWith('InvalidArgument', async (context) => {
      scratch(context).getRange('A1').formulas = [['=SUM(1,']]
      return Promise.resolve()
    })
  }),
  check('more cells than the client sends at once arrive whole', async (sheet, context) => {
    const values = Array.from({ length: 1200 }, (_, i) => [i, `n${i}`, -i])
    const range = sheet.getRangeByIndexes(3, 2, 1200, 3)
    range.values = values
    range.load('values')
    await context.sync()
    same('values', range.values, values)
  }),
  check('a whole column gives no values', async (sheet, context) => {
    const column = sheet.getRange('A:A')
    column.load('values, address, rowCount')
    await context.sync()
    same('values', column.values, null)
    same('rows', column.rowCount, 1_048_576)
  }),
  check('the text of a cell follows its number format', async (sheet, context) => {
    const range = sheet.getRange('A1:B1')
    range.values = [[1234.5, 0.25]]
    range.numberFormat = [['#,##0.00', '0%']]
    range.load('text')
    await context.sync()
    same('text', range.text, [['1,234.50', '25%']])
  }),
  check('cells inside a merged block stay empty', async (sheet, context) => {
    const block = sheet.getRange('A1:B2')
    block.merge()
    block.values = [
      [1, 2],
      [3, 4],
    ]
    const merged = sheet.getRange('A1:D4').getMergedAreasOrNullObject()
    merged.load('address')
    block.load('values')
    await context.sync()
    same('values', block.values, [
      [1, ''],
      ['', ''],
    ])
    same('merged', merged.address, "'Contract check'!A1:B2")
    block.unmerge()
    const after = sheet.getRange('A1:D4').getMergedAreasOrNullObject()
    await context.sync()
    same('none left', after.isNullObject, true)
  }),
  check('clearing contents keeps the format', async (sheet, context) => {
    const cell = sheet.getRange('A1')
    cell.values = [[1]]
    cell.format.fill.color = '#FFCC00'
    cell.clear('Contents')
    cell.load('values, format/fill/color')
    await context.sync()
    same('value', cell.values, [['']])
    same('fill', cell.format.fill.color, '#FFCC00')
    cell.clear()
    cell.load('format/fill/color')
    await context.sync()
    same('fill after clearing all', cell.format.fill.color, '#FFFFFF')
  }),
]
