import { STATUSES, type Status } from '../../mastery/standing'
import { STATUS_WORDS, statusSign, type StatusWords } from '../../mastery/support'
import { LOOKS, STATUS_FILLS } from './looks'
import { areaAddress, type CellRef, type Matrix } from '../layout/matrix'
import { OWN_SHEET } from '../layout/find'
import { areasOf, findingAreas } from './areas'
import { planFlags } from './flags'
import { planningNotes, type TextCell } from './notes'
import { valueAt, type Review, type ReviewedPupil } from './review'
import { atOnce, type Steps } from '../layout/steps'
import {
  exceptionRule,
  lookByMarkRules,
  lookByRules,
  lookOf,
  markRules,
  otherRules,
  rightRule,
  wrongRules,
  type Rule,
} from './rules'

/** What marking writes on a sheet: conditional formats, in the order in which they count, and notes into free cells. */
export interface MarkingPlan {
  readonly sheet: string
  readonly rules: readonly Rule[]
  readonly notes: readonly TextCell[]
  /** What the teacher should know about it, in sentences. */
  readonly told: readonly string[]
}

/** A cell of a sheet that the add-in lays out itself. `fill` is six hexadecimal digits. */
export interface TableCell {
  readonly text: string
  readonly bold: boolean
  readonly fill: string | null
}

/** A sheet that the add-in lays out: its rows from A1, and the columns' widths in characters. */
export interface TableSheet {
  readonly name: string
  readonly rows: readonly (readonly TableCell[])[]
  readonly widths: readonly number[]
}

/** What to write on a sheet whose marksheets have been reviewed. Only empty cells and notes of our own are written to. */
export function planMarking(matrix: Matrix, reviews: readonly Review[]): MarkingPlan {
  return atOnce(planning(matrix, reviews))
}

/** The same, question by question and pupil by pupil. */
export function* planning(matrix: Matrix, reviews: readonly Review[]): Steps<MarkingPlan> {
  let rules: readonly Rule[] = []
  for (const review of reviews) rules = rules.concat(yield* rulesFor(matrix, review))
  yield
  const flags = planFlags(matrix, reviews)
  const { notes, told } = yield* planningNotes(matrix, reviews)
  return { sheet: matrix.name, rules: [...rules, ...flags.rules], notes, told: [...flags.told, ...told] }
}

function* rulesFor(matrix: Matrix, { questions, pupils }: Review): Steps<Rule[]> {
  const rules = yield* exceptions(matrix, questions, pupils)
  const wrong: Rule[] = []
  const byQuestion = questions.map((): CellRef[] => [])
  for (const { answers } of pupils) {
    yield
    for (const cell of answers) byQuestion[cell.question]?.push(cell)
  }
  for (const [index, question] of questions.entries()) {
    yield
    const areas = areasOf(byQuestion[index] ?? [])
    if (question.marked || areas.length === 0) continue
    rules.push(rightRule(areas, question.key, question))
    for (const rule of wrongRules(areas, question)) wrong.push(rule)
  }
  const cellsOf = (marked: boolean) => byQuestion.filter((_, index) => questions[index]?.marked === marked)
  const typedAreas = yield* findingAreas(cellsOf(false))
  const markedAreas = yield* findingAreas(cellsOf(true))
  return [
    ...rules,
    ...(typedAreas.length > 0 ? otherRules(typedAreas) : []),
    ...wrong,
    ...(markedAreas.length > 0 ? markRules(markedAreas) : []),
  ]
}

/** A rule for each answer that the others would show otherwise than the review has it: it could read more, or knows a date. */
function* exceptions(
  matrix: Matrix,
  questions: Review['questions'],
  pupils: readonly ReviewedPupil[],
): Steps<Rule[]> {
  const rules: Rule[] = []
  for (const { answers, outcomes } of pupils) {
    yield
    answers.forEach((cell, index) => {
      const question = questions[cell.question]
      const look = lookOf(outcomes[index] ?? 'blank')
      const value = valueAt(matrix, cell)
      if (question === undefined || look === null) return
      const shown = question.marked ? lookByMarkRules(value) : lookByRules(value, question.key)
      const rule = shown === look ? null : exceptionRule(cell, value, look, question)
      if (rule) rules.push(rule)
    })
  }
  return rules
}

const CAUTION =
  'A flag is a prompt for your own judgement, never a verdict on a child: look at the working before you act on it. ' +
  'This sheet holds pupils’ personal data; keep and share it as your school’s policy says.'

/** The Mastery sheet: for each marksheet every pupil by exchange type, evidence first, and the class below; statuses in these words. */
export function planMastery(reviews: readonly Review[], words: StatusWords = STATUS_WORDS): TableSheet {
  return atOnce(planningMastery(reviews, words))
}

/** The same, pupil by pupil. */
export function* planningMastery(reviews: readonly Review[], words: StatusWords): Steps<TableSheet> {
  let rows: readonly TableCell[][] = []
  for (const review of reviews) rows = rows.concat(yield* masteryRows(review, words))
  const types = (review: Review) => review.pupils[0]?.judgement.byType.length ?? 0
  const columns = Math.max(0, ...reviews.map(types))
  return {
    name: 'Mastery',
    rows: [
      [cell(`${OWN_SHEET}Mastery`, true)],
      [cell(CAUTION)],
      [
        cell(
          STATUSES.toReversed()
            .map((status) => `${statusSign(status)} ${words[status]}`)
            .join('    '),
        ),
      ],
      ...rows,
    ],
    widths: [22, 34, ...Array.from({ length: columns }, () => 24)],
  }
}

function* masteryRows({ sheet, area, questions, pupils }: Review, words: StatusWords): Steps<TableCell[][]> {
  const types = [...new Set(pupils.flatMap(({ judgement }) => judgement.byType.map(({ type }) => type)))]
  const standings = pupils.map(
    ({ judgement }) => new Map(judgement.byType.map((standing) => [standing.type, standing])),
  )
  const asked = `${questions.length} ${questions.length === 1 ? 'question' : 'questions'}`
  const rows: TableCell[][] = []
  for (const [index, { name, judgement }] of pupils.entries()) {
    yield
    const cells = types.map((type): TableCell => {
      const standing = standings[index]?.get(type)
      if (standing === undefined || standing.tried === 0) return cell('')
      const { right, tried, status } = standing
      return cell(
        `${statusSign(status)} ${right} of ${tried} · ${words[status]}`,
        status === 'needs support',
        STATUS_FILLS[status],
      )
    })
    rows.push([
      cell(name, judgement.needsSupport),
      cell(judgement.needsSupport ? judgement.need.sentence : ''),
      ...cells,
    ])
  }
  const counts = types.map((type) => cell(classText(standings.map((each) => each.get(type)?.status))))
  return [
    [],
    [cell(`${sheet} ${areaAddress(area)}, ${asked}`, true)],
    [...['Pupil', 'Needs support', ...types].map((title) => cell(title, true, LOOKS.absent.fill))],
    ...rows,
    [cell('Class', true), cell(''), ...counts],
  ]
}

function classText(statuses: readonly (Status | undefined)[]): string {
  const count = (wanted: Status) => statuses.filter((status) => status === wanted).length
  return (['secure', 'nearly secure', 'needs support'] as const)
    .map((status) => `${statusSign(status)} ${count(status)}`)
    .join('  ')
}

function cell(text: string, bold = false, fill: string | null = null): TableCell {
  return { text, bold, fill }
}
