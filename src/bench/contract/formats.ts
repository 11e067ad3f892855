import { check, failsWith, same, scratch } from './check'
import type { Check } from './check'

const cellValueRule = async (sheet: Excel.Worksheet, address: string, formula: string, colour: string) => {
  const format = sheet.getRange(address).conditionalFormats.add('Custom')
  format.custom.rule.formula = formula
  format.custom.format.fill.color = colour
  format.load('id, priority, type')
  await sheet.context.sync()
  return format
}

/** How cells look, by themselves and by conditional formats. */
export const FORMATS: readonly Check[] = [
  check('fills, fonts, alignment and wrapping come back', async (sheet, context) => {
    const { format } = sheet.getRange('A1:B2')
    format.fill.color = '#AABBCC'
    format.font.color = '#112233'
    format.font.bold = true
    format.font.size = 14
    format.horizontalAlignment = 'Center'
    format.verticalAlignment = 'Top'
    format.wrapText = true
    const cell = sheet.getRange('B2')
    cell.load(
      'format/fill/color, format/font/color, format/font/bold, format/font/size, format/horizontalAlignment, format/verticalAlignment, format/wrapText',
    )
    await context.sync()
    const { fill, font, horizontalAlignment, verticalAlignment, wrapText } = cell.format
    same(
      'format',
      [fill.color, font.color, font.bold, font.size, horizontalAlignment, verticalAlignment, wrapText],
      ['#AABBCC', '#112233', true, 14, 'Center', 'Top', true],
    )
  }),
  check('what differs within a range is null', async (sheet, context) => {
    sheet.getRange('A1').format.font.bold = true
    const range = sheet.getRange('A1:B1')
    range.load('format/font/bold, format/font/italic')
    await context.sync()
    same('bold', range.format.font.bold, null)
    same('italic', range.format.font.italic, false)
  }),
  check('borders come back by side', async (sheet, context) => {
    const bottom = sheet.getRange('A1:B2').format.borders.getItem('EdgeBottom')
    bottom.style = 'Continuous'
    bottom.weight = 'Thick'
    bottom.color = '#336699'
    const below = sheet.getRange('A2').format.borders.getItem('EdgeBottom')
    const above = sheet.getRange('A1').format.borders.getItem('EdgeTop')
    below.load('style, weight, color')
    above.load('style')
    await context.sync()
    same('bottom', [below.style, below.weight, below.color], ['Continuous', 'Thick', '#336699'])
    same('top', above.style, 'None')
  }),
  check('columns and rows take a size in points', async (sheet, context) => {
    const range = sheet.getRange('B2:C3')
    range.format.columnWidth = 90
    range.format.rowHeight = 30
    range.load('format/columnWidth, format/rowHeight')
    await context.sync()
    same('size', [Math.round(range.format.columnWidth), Math.round(range.format.rowHeight)], [90, 30])
  }),
  check('a conditional format by formula comes back', async (sheet, context) => {
    const made = await cellValueRule(sheet, 'A1:A9', '=A1>3', '#00FF00')
    made.custom.format.font.color = '#003300'
    made.stopIfTrue = true
    const list = sheet.getRange('A1:A9').conditionalFormats
    list.load('items/id, items/type, items/stopIfTrue')
    await context.sync()
    same('count', list.items.length, 1)
    const [got] = list.items
    same('kind', [got?.id === made.id, got?.type, got?.stopIfTrue], [true, 'Custom', true])
    const again = list.getItem(made.id)
    again.load('custom/rule/formula, custom/format/fill/color, custom/format/font/color')
    const range = again.getRange()
    range.load('address')
    await context.sync()
    same(
      'look',
      [again.custom.rule.formula, again.custom.format.fill.color, again.custom.format.font.color],
      ['=A1>3', '#00FF00', '#003300'],
    )
    same('range', range.address.replace(/^.*!/, ''), 'A1:A9')
  }),
  check('a conditional format on a whole sheet comes back', async (sheet, context) => {
    const format = sheet.getRange().conditionalFormats.add('Custom')
    format.custom.rule.formula = '=A1="Columnwise"'
    format.custom.format.font.bold = true
    const list = sheet.getRange('C7').conditionalFormats
    list.load('items/type')
    await context.sync()
    same(
      'kinds',
      list.items.map(({ type }) => type),
      ['Custom'],
    )
    format.load('custom/rule/formula')
    await context.sync()
    same('formula', format.custom.rule.formula, '=A1="Columnwise"')
  }),
  check('a conditional format without a fill tells none', async (sheet) => {
    const { custom } = sheet.getRange('A1:A9').conditionalFormats.add('Custom')
    custom.rule.formula = '=A1>3'
    custom.format.font.bold = true
    custom.load('format/fill/color')
    await sheet.context.sync()
    same('fill', custom.format.fill.color || 'none', 'none')
  }),
  check('a new conditional format comes first, and one can be taken away', async (sheet, context) => {
    const first = await cellValueRule(sheet, 'A1:A9', '=A1>3', '#00FF00')
    const second = await cellValueRule(sheet, 'A1:A9', '=A1>2', '#FF0000')
    first.load('priority')
    second.load('priority')
    await context.sync()
    same('priorities', [second.priority, first.priority], [0, 1])
    first.delete()
    const count = sheet.getRange('A1:A9').conditionalFormats.getCount()
    await context.sync()
    same('left', count.value, 1)
  }),
  check(
    'a formula is the one that was written when asked for through the first of its cells',
    async (sheet, context) => {
      const made = await cellValueRule(sheet, 'C5:C9', '=AND(C5>3,$A$1=2,"C5"<>"")', '#00FF00')
      const own = sheet.getRange().conditionalFormats.getItem(made.id).getRanges().areas.getItemAt(0)
      const { custom } = own.conditionalFormats.getItem(made.id)
      custom.load('rule/formula')
      await context.sync()
      same('formula', custom.rule.formula, '=AND(C5>3,$A$1=2,"C5"<>"")')
    },
  ),
  check('clearing a part cuts conditional formats down', async (sheet, context) => {
    const made = await cellValueRule(sheet, 'A1:A9', '=A1>3', '#00FF00')
    sheet.getRange('A4:A6').conditionalFormats.clearAll()
    const inside = sheet.getRange('A4:A6').conditionalFormats.getCount()
    const ranges = sheet.getRange('A1:A9').conditionalFormats.getItem(made.id).getRanges()
    ranges.load('cellCount')
    await context.sync()
    same('inside', inside.value, 0)
    same('cells left', ranges.cellCount, 6)
    sheet.getRange().conditionalFormats.clearAll()
    const left = sheet.getRange('A1:A9').conditionalFormats.getCount()
    await context.sync()
    same('left', left.value, 0)
  }),
  check('a conditional format with a broken formula is refused', async () => {
    await failsWith('InvalidArgument', async (context) => {
      scratch(context).getRange('A1').conditionalFormats.add('Custom').custom.rule.formula = '=AND(A1>1'
      return Promise.resolve()
    })
  }),
]
