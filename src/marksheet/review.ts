import { workOut } from '../arithmetic/columns'
import { exchangesOf, type Exchanges } from '../arithmetic/exchange'
import {
  answerKey,
  markAnswer,
  readTyped,
  type AnswerKey,
  type CellValue,
  type Outcome,
} from '../answers/typed'
import { prepareMastery, type Evidence, type Judgement } from '../mastery/judge'
import { DEFAULT_MASTERY, type MasterySettings } from '../mastery/settings'
import { findMarksheets, type AnswerCell, type FoundPupil, type FoundQuestion, type Marksheet } from './find'
import { markedColumns, readMark } from './marks'
import { isDateFormat, isEmpty, type CellRef, type Matrix } from './matrix'

/** A question with what its answers are compared with and the exchanges it holds. */
export interface ReviewedQuestion extends FoundQuestion {
  readonly key: AnswerKey
  readonly exchanges: Exchanges
}

/** A pupil with what was typed (as text), how it came out (both in the order of `answers`) and where the pupil stands. */
export interface ReviewedPupil extends FoundPupil {
  readonly typed: readonly string[]
  readonly outcomes: readonly Outcome[]
  readonly judgement: Judgement
}

/** A marksheet, marked. `marked` is true where its cells held marks (ticks, 1 and 0) in place of answers. */
export interface Review {
  readonly sheet: string
  readonly orientation: Marksheet['orientation']
  readonly area: Marksheet['area']
  readonly marked: boolean
  readonly questions: readonly ReviewedQuestion[]
  readonly pupils: readonly ReviewedPupil[]
}

/** Finds the marksheets on a sheet and marks every answer in them; an empty list where the sheet holds none. */
export function review(matrix: Matrix, settings: MasterySettings = DEFAULT_MASTERY): Review[] {
  return findMarksheets(matrix).map((marksheet) => reviewMarksheet(matrix, marksheet, settings))
}

/** Marks one marksheet, found or laid out by the teacher, and judges where each pupil stands. */
export function reviewMarksheet(
  matrix: Matrix,
  marksheet: Marksheet,
  settings: MasterySettings = DEFAULT_MASTERY,
): Review {
  const questions = marksheet.questions.map(reviewQuestion)
  const isMarked = marksFor(matrix, marksheet, questions)
  const judgeRow = rowJudge(marksheet, questions, settings)
  const pupils = marksheet.pupils.map((pupil): ReviewedPupil => {
    const outcomes = pupil.answers.map((cell) => outcomeOf(matrix, cell, questions, isMarked))
    const typed = pupil.answers.map((cell) => typedText(matrix, cell))
    return { ...pupil, typed, outcomes, judgement: judgeRow(pupil, outcomes.map(evidenceOf)) }
  })
  const { orientation, area } = marksheet
  const marked = isMarked.some(Boolean) && !hasTypedAnswers(matrix, marksheet, isMarked)
  return { sheet: matrix.name, orientation, area, marked, questions, pupils }
}

function reviewQuestion(found: FoundQuestion): ReviewedQuestion {
  const { calculation } = found.question
  return { ...found, key: answerKey(found.question), exchanges: exchangesOf(workOut(calculation)) }
}

/** Judges a pupil's answers; where every pupil has the same questions the model is prepared once for all. */
function rowJudge(
  { orientation }: Marksheet,
  questions: readonly ReviewedQuestion[],
  settings: MasterySettings,
): (pupil: FoundPupil, evidence: readonly Evidence[]) => Judgement {
  const demands = questions.map(({ exchanges }) => exchanges)
  if (orientation !== 'pairs') {
    const { judge } = prepareMastery(demands, settings)
    return (_pupil, evidence) => judge(evidence)
  }
  return ({ answers }, evidence) => {
    const own = answers.flatMap(({ question }) => demands[question] ?? [])
    return prepareMastery(own, settings).judge(evidence)
  }
}

function evidenceOf(outcome: Outcome): Evidence {
  return outcome === 'correct' ? true : outcome === 'incorrect' ? false : null
}

function outcomeOf(
  matrix: Matrix,
  cell: AnswerCell,
  questions: readonly ReviewedQuestion[],
  isMarked: readonly boolean[],
): Outcome {
  const value = valueAt(matrix, cell)
  const key = questions[cell.question]?.key
  if (key === undefined || isDate(matrix, cell, value)) return 'unreadable'
  const mark = isMarked[cell.question] === true ? readMark(value) : null
  return mark === null ? markAnswer(value, key) : mark ? 'correct' : 'incorrect'
}

/** For each question, whether its cells hold marks in place of answers. */
function marksFor(matrix: Matrix, marksheet: Marksheet, questions: readonly ReviewedQuestion[]): boolean[] {
  const held = questions.map((): CellValue[] => [])
  for (const cell of marksheet.pupils.flatMap(({ answers }) => answers)) {
    const value = valueAt(matrix, cell)
    if (!isGap(value)) held[cell.question]?.push(value)
  }
  return markedColumns(questions.map(({ key }, index) => ({ held: held[index] ?? [], answer: key.value })))
}

function hasTypedAnswers(matrix: Matrix, { pupils }: Marksheet, isMarked: readonly boolean[]): boolean {
  return pupils.some(({ answers }) =>
    answers.some((cell) => isMarked[cell.question] !== true && !isGap(valueAt(matrix, cell))),
  )
}

/** Whether a cell says nothing of the answer: blank, or the pupil absent. */
function isGap(value: CellValue): boolean {
  return isEmpty(value) || (typeof value === 'string' && /^(?:blank|absent)$/.test(readTyped(value).kind))
}

function valueAt({ values }: Matrix, { row, column }: CellRef): CellValue {
  return values[row]?.[column] ?? null
}

function isDate({ formats }: Matrix, { row, column }: CellRef, value: CellValue): boolean {
  return typeof value === 'number' && isDateFormat(formats?.[row]?.[column] ?? 'General')
}

/** What the cell holds, as text; a number with a date format as the day and month that the sheet shows. */
function typedText(matrix: Matrix, cell: CellRef): string {
  const value = valueAt(matrix, cell)
  if (value === null) return ''
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE'
  if (!isDate(matrix, cell, value)) return String(value)
  const day = new Date(Date.UTC(1899, 11, 30 + Math.floor(Number(value))))
  return day.toLocaleDateString('en-GB', { day: 'numeric', month: 'short', timeZone: 'UTC' })
}
