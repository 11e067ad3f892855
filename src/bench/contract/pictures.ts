import { check, failsWith, same, scratch } from './check'
import type { Check } from './check'

/** A PNG of one pixel. */
const PIXEL =
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg=='

/** Pictures on a sheet, and where cells lie in points. */
export const PICTURES: readonly Check[] = [
  check('a picture is added, placed, sized and deleted', async (sheet, context) => {
    const added = sheet.shapes.addImage(PIXEL)
    added.name = 'Contract picture'
    added.altTextDescription = 'One pixel'
    added.lockAspectRatio = false
    added.left = 50
    added.top = 20
    added.width = 120
    added.height = 90
    added.load('id, name, type, altTextDescription, left, top, width, height')
    await context.sync()
    const { name, type, altTextDescription, left, top, width, height } = added
    same(
      'picture',
      [name, type, altTextDescription, left, top, width, height],
      ['Contract picture', 'Image', 'One pixel', 50, 20, 120, 90],
    )
    sheet.shapes.load('items/id')
    await context.sync()
    same(
      'found',
      sheet.shapes.items.map(({ id }) => id),
      [added.id],
    )
    sheet.shapes.getItem(added.id).delete()
    const count = sheet.shapes.getCount()
    await context.sync()
    same('left', count.value, 0)
  }),
  check('what is no picture is refused', async () => {
    await failsWith('InvalidArgument', async (context) => {
      scratch(context).shapes.addImage('bm8gcGljdHVyZQ==')
      return Promise.resolve()
    })
  }),
  check('a cell lies behind the columns and rows before it', async (sheet, context) => {
    const { format } = sheet.getRange('A1')
    format.load('columnWidth, rowHeight')
    const cell = sheet.getRange('B2')
    cell.load('left, top')
    await context.sync()
    same(
      'place',
      [Math.round(cell.left), Math.round(cell.top)],
      [Math.round(format.columnWidth), Math.round(format.rowHeight)],
    )
  }),
]
