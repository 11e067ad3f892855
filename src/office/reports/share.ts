import type { Review } from '../../marksheet/marking/review'
import { planShared, type InPlaceOfNames } from '../../marksheet/reports/share'
import { perform, type Done } from '../edit/edit'
import { Problem } from '../edit/errors'
import { ownSheetEdit } from '../workbook/ownSheet'
import type { SheetEntry } from '../workbook/read'
import { UNWATCHED, type Work } from '../edit/work'

/**
 * Lays out reviewed marksheets on a sheet of their own, with initials or codes in place of the names; the marksheets themselves stay as they
 * are. `seed` shuffles the codes, and may be anything that is new each time. Throws Problem.
 */
export async function writeShared(
  reviews: readonly Review[],
  how: InPlaceOfNames,
  seed: string,
  sheets: readonly SheetEntry[],
  work: Work = UNWATCHED,
): Promise<Done> {
  if (reviews.length === 0)
    throw new Problem(
      'There is no marksheet to share.',
      'Go to the sheet that holds the marksheet, then try again.',
    )
  return perform('sheet to share', [ownSheetEdit(planShared(reviews, how, seed), sheets)], work)
}
