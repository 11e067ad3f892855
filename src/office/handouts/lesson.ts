import { lessonWorksheets } from '../../lesson/cells/worksheet'
import type { Making } from '../../lesson/handout'
import type { Lesson } from '../../lesson/lessonSet'
import { planMarksheet } from '../../marksheet/setting/layOut'
import type { Question } from '../../arithmetic/question'
import { perform, type Done } from '../edit/edit'
import { Problem } from '../edit/errors'
import { handoutEdit } from './sheets'
import type { SetBook } from '../questions/target'
import { marksheetEdit, placeFor } from '../questions/marksheet'
import { UNWATCHED, type Work } from '../edit/work'

/** The marksheet of a lesson: what its sheet is to be called, what heads it, the names and the questions. */
export interface LessonMarksheet {
  readonly sheet: string
  readonly title: string
  readonly names: readonly string[]
  readonly questions: readonly Question[]
}

/** The sheets on which a lesson stands: those to print, and the marksheet's, where one was wanted. */
export interface LessonWritten {
  readonly done: Done
  readonly printed: readonly string[]
  readonly marksheet: string | null
}

/**
 * Writes a lesson as one action: its sheets to print, answers and letter, and its marksheet, which comes to the front; without one, the
 * sheets to print do. Throws Problem.
 */
export async function writeLesson(
  lesson: Lesson,
  making: Making,
  marksheet: LessonMarksheet | null,
  book: SetBook,
  work: Work = UNWATCHED,
): Promise<LessonWritten> {
  const printed = lessonWorksheets(lesson, making).map((worksheet, index) =>
    handoutEdit(worksheet, book.sheets, marksheet === null && index === 0),
  )
  const laidOut = marksheet && layOut(marksheet, book)
  const edits = [...printed, ...(laidOut ? [laidOut.edit] : [])]
  const done = await perform('the lesson', edits, work)
  return { done, printed: printed.map((edit) => edit.name()), marksheet: laidOut?.name ?? null }
}

function layOut(marksheet: LessonMarksheet, book: SetBook) {
  const reading = planMarksheet(marksheet)
  if ('problem' in reading) throw new Problem(reading.problem, 'Choose fewer questions for the marksheet.')
  const place = placeFor(marksheet.sheet, book)
  return { name: place.name, edit: marksheetEdit(reading.plan, place, book.front) }
}
