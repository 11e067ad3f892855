import { areaAddress } from '../../marksheet/layout/matrix'
import type { PrintedSheet } from '../../marksheet/reports/pupilReport'
import { perform, type Done, type Edit } from '../edit/edit'
import { ownSheetEdit, ownSheetFor } from '../workbook/ownSheet'
import type { SheetEntry } from '../workbook/read'
import { UNWATCHED, type Work } from '../edit/work'

/** How a sheet is put on paper: on one page, or as many pages as it takes with breaks before some rows. */
export type Pages = 'one' | 'many'

/** Writes a sheet of our own that is made to be printed, upright on A4 and one page wide; it comes to the front. Throws Problem. */
export async function writePages(
  printed: PrintedSheet,
  pages: Pages,
  sheets: readonly SheetEntry[],
  work: Work = UNWATCHED,
): Promise<Done> {
  const { name } = ownSheetFor(printed.table.name, sheets)
  const edits = [ownSheetEdit(printed.table, sheets), paperEdit(name, printed, pages)]
  return perform(`writing of ${name}`, edits, work)
}

/** Sets the paper for a sheet that an earlier edit lays out. It is nothing to take back: the sheet is emptied or holds another print. */
function paperEdit(name: string, { table, breaks }: PrintedSheet, pages: Pages): Edit {
  return {
    what: `the page setup of ${name}`,
    keep: [],
    check: () => undefined,
    write: () => [
      {
        cells: 1,
        queue: ({ workbook }) => {
          const sheet = workbook.worksheets.getItem(name)
          const area = { top: 0, left: 0, bottom: table.rows.length - 1, right: table.widths.length - 1 }
          const { pageLayout, horizontalPageBreaks } = sheet
          sheet.getRange(areaAddress(area)).format.autofitRows()
          pageLayout.setPrintArea(areaAddress(area))
          pageLayout.orientation = 'Portrait'
          pageLayout.paperSize = 'A4'
          pageLayout.zoom = { horizontalFitToPages: 1, ...(pages === 'one' && { verticalFitToPages: 1 }) }
          horizontalPageBreaks.removePageBreaks()
          for (const row of breaks) horizontalPageBreaks.add(`A${row + 1}`)
          sheet.activate()
        },
      },
    ],
    look: [],
    putBack: () => [],
    left: () => [],
  }
}
