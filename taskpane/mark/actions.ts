import { areMeeting, marksheetFrom, type Ranges } from '../../src/marksheet/layout/correct'
import { finding, type Marksheet } from '../../src/marksheet/layout/find'
import { leavingOut } from '../../src/marksheet/layout/leftOut'
import { atOnce } from '../../src/marksheet/layout/steps'
import { reviewing, type Review } from '../../src/marksheet/marking/review'
import type { MasterySettings } from '../../src/mastery/settings'
import type { Done } from '../../src/office/edit/edit'
import { Problem } from '../../src/office/edit/errors'
import { markSheet } from '../../src/office/marking/markSheet'
import { readSheet, type SheetReading } from '../../src/office/workbook/read'
import type { Settings } from '../../src/office/workbook/settings'
import { inTurns, type Work } from '../../src/office/edit/work'
import { marksheetsOf } from './found'

/** A sheet as it was last read, what was found on it, the teacher's corrections, and the marksheets that follow from all of them. */
export interface Seen {
  readonly reading: SheetReading
  readonly found: readonly Marksheet[]
  readonly corrections: readonly Ranges[]
  readonly marksheets: readonly Marksheet[]
  /** What was left out of all of them, in sentences. */
  readonly leftOut: readonly string[]
}

/** Reads the sheet in front, or the one with the id. Corrections that no longer make a marksheet are dropped. Throws Problem. */
export async function lookAt(
  id: string | undefined,
  corrections: (id: string) => readonly Ranges[],
  work: Work,
): Promise<Seen> {
  const reading = await readSheet(id, work)
  const { matrix } = reading
  const still = corrections(reading.id).filter((ranges) => !('problem' in marksheetFrom(matrix, ranges)))
  const found = await inTurns(finding(matrix), work)
  const marksheets = marksheetsOf(matrix, found, still)
  const leftOut = await inTurns(leavingOut(matrix, marksheets), work)
  return { reading, found, corrections: still, marksheets, leftOut }
}

/** The reviews of a sheet's marksheets. Throws Problem. */
export async function reviewsOf(
  { reading, marksheets }: Pick<Seen, 'reading' | 'marksheets'>,
  settings: MasterySettings,
  work: Work,
): Promise<Review[]> {
  const reviews: Review[] = []
  for (const marksheet of marksheets)
    reviews.push(await inTurns(reviewing(reading.matrix, marksheet, settings), work))
  return reviews
}

/** Reads a sheet anew, and marks its marksheets. Throws Problem. */
export async function markAgain(
  { reading: { id }, corrections }: Seen,
  settings: Settings,
  work: Work,
): Promise<{ readonly seen: Seen; readonly reviews: readonly Review[]; readonly done: Done }> {
  const seen = await lookAt(id, () => corrections, work)
  const { reading, marksheets } = seen
  if (marksheets.length === 0)
    throw new Problem(
      `There is no marksheet on ${reading.name} any more.`,
      'Check its questions and names, then look again.',
    )
  const reviews = await reviewsOf(seen, settings.mastery, work)
  const choice = { flags: settings.flags, mastery: settings.masterySheet, words: settings.words }
  return { seen, reviews, done: await markSheet(reading, reviews, choice, work) }
}

/** Takes ranges that the teacher has selected for a marksheet, in place of one that was found, or beside them. Throws Problem. */
export function withCorrection(seen: Seen, replaced: Marksheet | null, ranges: Ranges): Seen {
  const { reading, found, corrections } = seen
  const { matrix } = reading
  const others = corrections.filter((each) => {
    const made = marksheetFrom(matrix, each)
    return !('problem' in made) && (replaced === null || !areMeeting(made.area, replaced.area))
  })
  const now = [...others, ranges]
  const marksheets = marksheetsOf(matrix, found, now)
  return { reading, found, corrections: now, marksheets, leftOut: atOnce(leavingOut(matrix, marksheets)) }
}
