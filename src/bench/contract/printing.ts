import { check, same } from './check'
import type { Check } from './check'

/** How a sheet is printed. */
export const PRINTING: readonly Check[] = [
  check('a whole page set-up is taken and told again', async (sheet, context) => {
    const { pageLayout, horizontalPageBreaks } = sheet
    pageLayout.setPrintArea('A2:Y60')
    pageLayout.orientation = 'Portrait'
    pageLayout.paperSize = 'A4'
    pageLayout.centerHorizontally = true
    pageLayout.topMargin = 36
    pageLayout.bottomMargin = 36
    pageLayout.leftMargin = 30
    pageLayout.rightMargin = 30
    pageLayout.zoom = { horizontalFitToPages: 1 }
    horizontalPageBreaks.removePageBreaks()
    horizontalPageBreaks.add('A30')
    pageLayout.load('orientation, paperSize, centerHorizontally, topMargin, leftMargin, zoom')
    const area = pageLayout.getPrintAreaOrNullObject()
    area.load('address')
    const breaks = horizontalPageBreaks.getCount()
    await context.sync()
    const { orientation, paperSize, centerHorizontally, topMargin, leftMargin, zoom } = pageLayout
    same(
      'page',
      [orientation, paperSize, centerHorizontally, Math.round(topMargin), Math.round(leftMargin)],
      ['Portrait', 'A4', true, 36, 30],
    )
    same('zoom', zoom.horizontalFitToPages, 1)
    same('print area', area.address.replace(/^.*!/, ''), 'A2:Y60')
    same('page breaks', breaks.value, 1)
  }),
]
