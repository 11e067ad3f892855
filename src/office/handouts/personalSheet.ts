import type { PersonalSet } from '../../lesson/personal'
import { planPersonalSheet } from '../../marksheet/setting/personalSheet'
import { perform, type Done } from '../edit/edit'
import { Problem } from '../edit/errors'
import { readSetBook } from '../questions/target'
import { marksheetEdit, placeFor } from '../questions/marksheet'
import { UNWATCHED, type Work } from '../edit/work'

/**
 * Lays personal sets out on a sheet of their own, of the name wanted where it is free, ready for answers to be typed and marked, and
 * brings it to the front. Throws Problem.
 */
export async function writePersonalSets(
  on: { readonly sheet: string; readonly title: string },
  sets: readonly PersonalSet[],
  work: Work = UNWATCHED,
): Promise<{ readonly done: Done; readonly sheet: string }> {
  const reading = planPersonalSheet(on.title, sets)
  if ('problem' in reading) throw new Problem(reading.problem, 'Choose other pupils, then try again.')
  const book = await readSetBook(undefined, work)
  const place = placeFor(on.sheet, book)
  const done = await perform(`sheet ${place.name}`, [marksheetEdit(reading.plan, place, book.front)], work)
  return { done, sheet: place.name }
}
