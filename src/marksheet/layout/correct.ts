import { readQuestion } from '../../arithmetic/question'
import type { AnswerCell, FoundPupil, FoundQuestion, Marksheet, Orientation } from './find'
import { areaAddress, areaOf, viewOf, type Area, type CellRef, type Matrix, type View } from './matrix'
import { isHeadingLabel } from './labels'
import { gathered, spreadAgain } from './spread'
import { questionSpots } from './spots'
import { atOnce } from './steps'
import { findNameColumns, nameIn, type NameColumns } from './names'

/** Where the parts of a marksheet stand. Where questions and answers come in pairs their areas overlap. */
export interface Ranges {
  readonly names: Area
  readonly questions: Area
  readonly answers: Area
}

/** Where the parts of a marksheet stand that has been found. */
export function rangesOf({ questions, pupils }: Marksheet): Ranges {
  return {
    names: areaOf(pupils.map(({ nameCells }) => nameCells)),
    questions: areaOf(questions.map((question): readonly CellRef[] => question.parts ?? [question])),
    answers: areaOf(pupils.map(({ answers }) => answers)),
  }
}

/**
 * A marksheet from ranges that a teacher has selected. Pupils run down where the questions stand above the names, across where they stand
 * on the left of the names; questions beside the names are taken for pairs with the answer on the right of each. A row (or column) belongs
 * to a pupil where the names' range and the answers' both reach it and it holds a name; a question counts where it can be read. Gives a
 * sentence where that makes no marksheet.
 */
export function marksheetFrom(matrix: Matrix, ranges: Ranges): Marksheet | { readonly problem: string } {
  const { names, questions } = ranges
  const { matrix: whole, parts } = gathered(matrix, atOnce(questionSpots(viewOf(matrix, false))))
  const made = (marksheet: Marksheet | { readonly problem: string }) =>
    'problem' in marksheet ? marksheet : spreadAgain(marksheet, parts)
  if (questions.bottom < names.top) return made(grid(whole, ranges, 'pupils-down'))
  if (questions.right < names.left) return made(grid(whole, ranges, 'pupils-across'))
  if (names.right < questions.left && overlap(names, questions, 'top', 'bottom'))
    return made(pairs(whole, ranges))
  return {
    problem:
      `The questions in ${areaAddress(questions)} must stand above the pupils’ names in ${areaAddress(names)}, ` +
      'or on their left where the names run along the top.',
  }
}

function grid(
  matrix: Matrix,
  ranges: Ranges,
  orientation: Orientation,
): Marksheet | { readonly problem: string } {
  const turned = orientation === 'pupils-across'
  const view = viewOf(matrix, turned)
  const names = turned ? transposed(ranges.names) : ranges.names
  const asked = turned ? transposed(ranges.questions) : ranges.questions
  const answers = turned ? transposed(ranges.answers) : ranges.answers
  const header = span(asked.top, asked.bottom)
  const columns = span(Math.max(asked.left, answers.left), Math.min(asked.right, answers.right))
  const asks = columns.flatMap((column) =>
    header
      .flatMap((row) => questionAt(view, row, column).map((question) => ({ column, question })))
      .slice(0, 1),
  )
  const questions = asks.map(({ question }) => question)
  if (questions.length === 0) return { problem: noQuestion(ranges) }
  const pupils = pupilsIn(view, names, answers, (row) =>
    asks.map(({ column }, question): AnswerCell => ({ ...view.ref(row, column), question })),
  )
  return whole(orientation, questions, pupils, ranges)
}

function pairs(matrix: Matrix, ranges: Ranges): Marksheet | { readonly problem: string } {
  const view = viewOf(matrix, false)
  const { names, questions: asked, answers } = ranges
  const questions: FoundQuestion[] = []
  const pupils = pupilsIn(view, names, answers, (row) =>
    span(asked.left, asked.right).flatMap((column) =>
      questionAt(view, row, column).map((question): AnswerCell => {
        questions.push(question)
        return { row, column: column + 1, question: questions.length - 1 }
      }),
    ),
  )
  if (questions.length === 0) return { problem: noQuestion(ranges) }
  return whole('pairs', questions, pupils, ranges)
}

function whole(
  orientation: Orientation,
  questions: readonly FoundQuestion[],
  pupils: readonly FoundPupil[],
  { names, answers }: Ranges,
): Marksheet | { readonly problem: string } {
  if (pupils.length === 0)
    return {
      problem: `The names in ${areaAddress(names)} and the answers in ${areaAddress(answers)} have no pupil in common.`,
    }
  const area = areaOf([
    questions,
    ...pupils.map(({ nameCells }) => nameCells),
    ...pupils.map((pupil) => pupil.answers),
  ])
  return { orientation, area, questions, pupils }
}

function pupilsIn(
  view: View,
  names: Area,
  answers: Area,
  answersIn: (row: number) => readonly AnswerCell[],
): FoundPupil[] {
  const rows = span(Math.max(names.top, answers.top), Math.min(names.bottom, answers.bottom))
  const columns = nameColumns(view, names, rows)
  return rows.flatMap((row): FoundPupil[] => {
    const name = nameIn(view, columns, row)
    if (name === '' || isHeadingLabel(name)) return []
    const nameCells = span(names.left, Math.min(names.right, names.left + 1)).map((column) =>
      view.ref(row, column),
    )
    return [{ name, nameCells, answers: answersIn(row) }]
  })
}

/** One column of names; of two, the headings tell first name from surname, else they are read as they stand. */
function nameColumns(view: View, { top, left, right }: Area, rows: readonly number[]): NameColumns {
  if (left === right) return { first: left, surname: null, kind: 'headed' }
  const found = findNameColumns(view, top - 1, [left, left + 1], rows)
  return found && found.surname !== null ? found : { first: left, surname: left + 1, kind: 'headed' }
}

function questionAt(view: View, row: number, column: number): FoundQuestion[] {
  const text = String(view.value(row, column) ?? '')
  const reading = readQuestion(text)
  return 'question' in reading ? [{ ...view.ref(row, column), text, question: reading.question }] : []
}

function noQuestion({ questions, answers }: Ranges): string {
  return (
    `No question such as 7,214 − 86 can be read in ${areaAddress(questions)} ` +
    `that has answers in ${areaAddress(answers)}.`
  )
}

function overlap(one: Area, other: Area, first: 'top' | 'left', last: 'bottom' | 'right'): boolean {
  return one[first] <= other[last] && other[first] <= one[last]
}

function transposed({ top, left, bottom, right }: Area): Area {
  return { top: left, left: top, bottom: right, right: bottom }
}

function span(first: number, last: number): number[] {
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => first + index)
}

/** Whether two areas share a cell. */
export function areMeeting(one: Area, other: Area): boolean {
  return overlap(one, other, 'top', 'bottom') && overlap(one, other, 'left', 'right')
}
