import { workOut } from '../../arithmetic/columns'
import { exchangesOf } from '../../arithmetic/exchange'
import { answerKey, markAnswer, readTyped, type CellValue, type Outcome } from '../../answers/typed'
import { judge } from '../../mastery/need'
import { standings, type Evidence, type Judgement, type Told } from '../../mastery/standing'
import { DEFAULT_MASTERY, type MasterySettings } from '../../mastery/settings'
import { findMarksheets, type Marksheet } from '../layout/find'
import { markedColumns, readMark } from '../layout/ticks'
import { isDateFormat, isEmpty, type CellRef, type Matrix } from '../layout/matrix'
import { atOnce, type Steps } from '../layout/steps'
import { diagnoserFor, type PupilDiagnosis } from './diagnose'
import type { MarkedPupil, ReviewedQuestion } from './marked'

export type { MarkedPupil, ReviewedQuestion } from './marked'

/** A marked pupil with why answers are wrong and where the pupil stands: the one verdict that everything shows. */
export interface ReviewedPupil extends MarkedPupil, PupilDiagnosis {
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
  return atOnce(reviewing(matrix, marksheet, settings))
}

/** The same, pupil by pupil. */
export function* reviewing(
  matrix: Matrix,
  marksheet: Marksheet,
  settings: MasterySettings = DEFAULT_MASTERY,
): Steps<Review> {
  const questions = yield* reviewQuestions(matrix, marksheet)
  yield
  const diagnose = diagnoserFor({ orientation: marksheet.orientation, questions })
  const pupils: ReviewedPupil[] = []
  for (const pupil of marksheet.pupils) {
    yield
    const outcomes = pupil.answers.map((cell) => outcomeOf(matrix, cell, questions[cell.question]))
    const typed = pupil.answers.map((cell) => typedText(matrix, cell))
    const marked = { ...pupil, typed, outcomes }
    const why = diagnose(marked)
    pupils.push({ ...marked, ...why, judgement: judgementOf(marked, why, questions, settings) })
  }
  const { orientation, area } = marksheet
  const marked =
    questions.some((question) => question.marked) && !hasTypedAnswers(matrix, marksheet, questions)
  return { sheet: matrix.name, orientation, area, marked, questions, pupils }
}

function* reviewQuestions(matrix: Matrix, { questions, pupils }: Marksheet): Steps<ReviewedQuestion[]> {
  const keys = questions.map(({ question }) => answerKey(question))
  const held = questions.map((): CellValue[] => [])
  for (const { answers } of pupils) {
    yield
    for (const cell of answers) {
      const value = valueAt(matrix, cell)
      if (!isGap(value)) held[cell.question]?.push(value)
    }
  }
  const columns = keys.map(({ value }, index) => ({ held: held[index] ?? [], answer: value }))
  const marked = yield* markedColumns(columns)
  return questions.map((found, index) => ({
    ...found,
    key: keys[index] ?? answerKey(found.question),
    exchanges: exchangesOf(workOut(found.question.calculation)),
    marked: marked[index] === true,
  }))
}

function judgementOf(
  pupil: MarkedPupil,
  { diagnosis, typing }: PupilDiagnosis,
  questions: readonly ReviewedQuestion[],
  settings: MasterySettings,
): Judgement {
  const told: Told[] = []
  let [right, tried] = [0, 0]
  for (const [index, { question }] of pupil.answers.entries()) {
    const type = questions[question]?.exchanges.type
    const evidence = evidenceOf(pupil.outcomes[index] ?? 'blank')
    if (type !== undefined) told.push({ type, told: evidence })
    if (evidence !== null) tried++
    if (evidence === true) right++
  }
  return judge(standings([told], settings), {
    right,
    tried,
    named: diagnosis.named,
    typing,
  })
}

/** What an outcome tells of the pupil: nothing where it is blank, absent or unreadable. */
export function evidenceOf(outcome: Outcome): Evidence {
  return outcome === 'correct' ? true : outcome === 'incorrect' ? false : null
}

function outcomeOf(matrix: Matrix, cell: CellRef, question: ReviewedQuestion | undefined): Outcome {
  const value = valueAt(matrix, cell)
  if (question === undefined || isReshaped(matrix, cell, value)) return 'unreadable'
  return question.marked ? markOutcome(value) : markAnswer(value, question.key)
}

/** What a cell of a marked column says; anything but a mark, a blank or an absence is left for the teacher. */
function markOutcome(value: CellValue): Outcome {
  const mark = readMark(value)
  if (mark !== null) return mark ? 'correct' : 'incorrect'
  const { kind } = readTyped(value)
  return kind === 'number' ? 'unreadable' : kind
}

function hasTypedAnswers(
  matrix: Matrix,
  { pupils }: Marksheet,
  questions: readonly ReviewedQuestion[],
): boolean {
  return pupils.some(({ answers }) =>
    answers.some((cell) => questions[cell.question]?.marked === false && !isGap(valueAt(matrix, cell))),
  )
}

/** Whether a cell says nothing of the answer: blank, or the pupil absent. */
function isGap(value: CellValue): boolean {
  return isEmpty(value) || (typeof value === 'string' && /^(?:blank|absent)$/.test(readTyped(value).kind))
}

/** What a cell holds; null beyond the sheet's edge. */
export function valueAt({ values }: Matrix, { row, column }: CellRef): CellValue {
  return values[row]?.[column] ?? null
}

/** Whether the spreadsheet shows a number as something else than was typed: as a date, a time or a percentage. */
function isReshaped(matrix: Matrix, cell: CellRef, value: CellValue): boolean {
  return (
    typeof value === 'number' && (isDateFormat(formatAt(matrix, cell)) || /%/.test(formatAt(matrix, cell)))
  )
}

function formatAt({ formats }: Matrix, { row, column }: CellRef): string {
  return formats?.[row]?.[column] ?? 'General'
}

/** What the cell holds, as text; a number with a date format as the day and month that the sheet shows. */
function typedText(matrix: Matrix, cell: CellRef): string {
  const value = valueAt(matrix, cell)
  if (value === null) return ''
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE'
  if (typeof value !== 'number' || !isDateFormat(formatAt(matrix, cell))) return String(value)
  const days = Math.floor(value)
  const day = new Date(matrix.is1904 === true ? Date.UTC(1904, 0, 1 + days) : Date.UTC(1899, 11, 30 + days))
  return day.toLocaleDateString('en-GB', { day: 'numeric', month: 'short', timeZone: 'UTC' })
}
