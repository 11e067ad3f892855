import { printQuestion, type Question } from '../../arithmetic/question'
import { addToKey, keyRows, planAnswerKey } from '../../marksheet/setting/answerKey'
import { columnWidthFor, planMarksheet } from '../../marksheet/setting/layOut'
import { isEmpty } from '../../marksheet/layout/matrix'
import { cellsEdit } from '../edit/cells'
import { perform, type Done, type Edit } from '../edit/edit'
import { Problem } from '../edit/errors'
import { ownSheetEdit } from '../workbook/ownSheet'
import { askTarget, readSetBook, type Direction, type SetBook, type Target } from './target'
import { marksheetEdit, placeFor } from './marksheet'
import { widthsEdit } from '../edit/columnWidths'
import { UNWATCHED, type Work } from '../edit/work'

/** A set that is to be written: its number or word, what it was made from in words, and whether the Answer key is written too. */
export interface SetToWrite {
  readonly questions: readonly Question[]
  readonly set: string
  readonly recipe: string
  readonly withKey: boolean
}

/** What was written and where; or, where cells are not empty, nothing and which. */
export type Written =
  | { readonly done: Done; readonly sheet: string; readonly target: Target }
  | { readonly done: null; readonly target: Target }

/**
 * Writes questions from the selected cell on, across or down, and widens columns that are too narrow. Cells that are not empty are given
 * back and nothing is written, unless `over` is what was given back so: then they are written over, if they still hold the same.
 * Throws Problem.
 */
export async function writeQuestions(
  wanted: SetToWrite,
  direction: Direction,
  over: Target | null,
  work: Work = UNWATCHED,
): Promise<Written> {
  const asked = over ? null : askTarget(wanted.questions.length, direction)
  const book = await readSetBook(undefined, work, asked ? [asked] : [])
  const target = over ?? asked?.answer()
  if (!target) throw new RangeError('There is no place to write to.')
  if (target.isOwn)
    throw new Problem(
      `${target.sheet.name} is written by Columnwise itself.`,
      'Select a cell on another sheet, then try again.',
    )
  if (!over && target.taken.length > 0) return { done: null, target }
  const { sheet, area } = target
  const texts = wanted.questions.map(printQuestion)
  const rows = direction === 'across' ? [texts] : texts.map((text) => [text])
  const widths = texts.map(columnWidthFor)
  const mayGo = new Set(target.taken.map(({ value }) => value))
  const edits = [
    cellsEdit(sheet, [{ top: area.top, left: area.left, rows }], {
      isFree: (value) => isEmpty(value as string) || mayGo.has(value),
    }),
    widthsEdit(sheet, area.left, direction === 'across' ? widths : [Math.max(...widths)]),
    ...keyEdits(wanted, sheet.name, book),
  ]
  return { done: await perform(`questions on ${sheet.name}`, edits, work), sheet: sheet.name, target }
}

/** Lays out a marksheet for names on the sheet in front where that is empty, else on a new one called `sheet`. Throws Problem. */
export async function layOutMarksheet(
  wanted: SetToWrite,
  on: { readonly sheet: string; readonly title: string; readonly names: readonly string[] },
  book: SetBook,
  work: Work = UNWATCHED,
): Promise<{ readonly done: Done; readonly sheet: string }> {
  const reading = planMarksheet({ title: on.title, names: on.names, questions: wanted.questions })
  if ('problem' in reading) throw new Problem(reading.problem, 'Choose names and questions, then try again.')
  const place = placeFor(on.sheet, book)
  const edits = [marksheetEdit(reading.plan, place, book.front), ...keyEdits(wanted, place.name, book)]
  return { done: await perform(`marksheet ${place.name}`, edits, work), sheet: place.name }
}

function keyEdits(
  { questions, set, recipe, withKey }: SetToWrite,
  sheet: string,
  { key, sheets }: SetBook,
): Edit[] {
  const rows = keyRows(questions, { sheet, set, recipe })
  return withKey ? [ownSheetEdit(planAnswerKey(addToKey(key, rows)), sheets)] : []
}
