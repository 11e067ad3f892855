import { check, failsWith, same, scratch } from './check'
import type { Check } from './check'

/** What lies over the cells of a sheet: charts and comments. */
export const OVERLAYS: readonly Check[] = [
  check('a chart is put over a block of cells', async (sheet, context) => {
    sheet.getRange('A1:B3').values = [
      ['Type', 'Pupils'],
      ['one', 1],
      ['two', 2],
    ]
    const chart = sheet.charts.add('BarStacked', sheet.getRange('A1:B3'), 'Columns')
    const column = sheet.getRange('B:B')
    column.load('format/columnWidth')
    chart.name = 'Contract chart'
    chart.title.text = 'Counts'
    chart.setPosition('B2', 'D9')
    const found = sheet.charts.getItem('Contract chart')
    found.load('left, width, title/text')
    await context.sync()
    same('title', found.title.text, 'Counts')
    same('starts behind column A', found.left > 0, true)
    same('covers three columns', found.width > 2 * column.format.columnWidth, true)
    found.delete()
    const count = sheet.charts.getCount()
    await context.sync()
    same('deleted', count.value, 0)
  }),
  check('comments are listed, placed and deleted by their ids', async (sheet, context) => {
    sheet.comments.add(sheet.getRange('B2'), 'Look at the tens')
    sheet.comments.load('items/id, items/content')
    await context.sync()
    const [first] = sheet.comments.items
    same('content', first?.content, 'Look at the tens')
    const comment = sheet.comments.getItem(first?.id ?? '')
    const place = comment.getLocation()
    place.load('address')
    await context.sync()
    same('place', place.address.replace(/^.*!/, ''), 'B2')
    comment.delete()
    const count = sheet.comments.getCount()
    await context.sync()
    same('deleted', count.value, 0)
  }),
  check('a comment takes a full address', async (sheet, context) => {
    const comment = sheet.comments.add("'Contract check'!C3", 'Look at the tens')
    const place = comment.getLocation()
    place.load('address')
    await context.sync()
    same('place', place.address.replace(/^.*!/, ''), 'C3')
  }),
  check('a comment takes no address without its sheet', async () => {
    await failsWith('InvalidArgument', async (context) => {
      scratch(context).comments.add('B2', 'Look at the tens')
      return Promise.resolve()
    })
  }),
]
