import type { Review } from '../marksheet/review'
import { planShared, type InPlaceOfNames } from '../marksheet/share'
import { perform, type Done } from './edit'
import { Problem } from './errors'
import { ownSheetEdit } from './ownSheet'
import type { SheetEntry } from './read'
import { UNWATCHED, type Work } from './work'

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
