import { ADDITION_TYPES, SUBTRACTION_TYPES } from '../../arithmetic/exchange'
import { STATUSES, type Status } from '../../mastery/judge'
import { STATUS_WORDS, statusSign, typesToSupport, type StatusWords } from '../../mastery/support'
import { LOOKS, STATUS_FILLS } from './looks'
import {
  areaAddress,
  isEmpty,
  viewOf,
  type Area,
  type CellRef,
  type Matrix,
  type View,
} from '../layout/matrix'
import { OWN_SHEET } from '../layout/find'
import { valueAt, type Review, type ReviewedPupil } from './review'
import { atOnce, type Steps } from '../layout/steps'
import {
  exceptionRule,
  flagRule,
  lookByMarkRules,
  lookByRules,
  lookOf,
  markRules,
  otherRules,
  rightRule,
  type Rule,
} from './rules'

/** A text to write into a cell, always as text, never as a formula; `upright` where it is to run up the cell. */
export interface TextCell extends CellRef {
  readonly text: string
  readonly upright: boolean
}

/** What marking writes on a sheet: conditional formats, in the order in which they count, and notes into free cells. */
export interface MarkingPlan {
  readonly sheet: string
  readonly rules: readonly Rule[]
  readonly notes: readonly TextCell[]
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

/** What heads the notes, by which they are found again. */
export const NOTES_TITLE = 'Support with · Columnwise'

/** What to write on a sheet whose marksheets have been reviewed. Only empty cells and notes of our own are written to. */
export function planMarking(matrix: Matrix, reviews: readonly Review[]): MarkingPlan {
  return atOnce(planning(matrix, reviews))
}

/** The same, question by question and pupil by pupil. */
export function* planning(matrix: Matrix, reviews: readonly Review[]): Steps<MarkingPlan> {
  let rules: readonly Rule[] = []
  for (const review of reviews) rules = rules.concat(yield* rulesFor(matrix, review))
  yield
  return { sheet: matrix.name, rules, notes: yield* notesFor(matrix, reviews) }
}

function* rulesFor(matrix: Matrix, { questions, pupils }: Review): Steps<Rule[]> {
  const rules = yield* exceptions(matrix, questions, pupils)
  const byQuestion = questions.map((): CellRef[] => [])
  for (const { answers } of pupils) {
    yield
    for (const cell of answers) byQuestion[cell.question]?.push(cell)
  }
  for (const [index, question] of questions.entries()) {
    yield
    const areas = runs(byQuestion[index] ?? [])
    if (!question.marked && areas.length > 0) rules.push(rightRule(areas, question.key))
  }
  const cellsOf = (marked: boolean) => byQuestion.filter((_, index) => questions[index]?.marked === marked)
  const typedAreas = yield* running(cellsOf(false))
  const markedAreas = yield* running(cellsOf(true))
  const flagged = pupils
    .filter(({ judgement }) => judgement.needsSupport)
    .flatMap(({ nameCells }) => nameCells)
  return [
    ...rules,
    ...(typedAreas.length > 0 ? otherRules(typedAreas) : []),
    ...(markedAreas.length > 0 ? markRules(markedAreas) : []),
    ...(flagged.length > 0 ? [flagRule(runs(flagged))] : []),
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
      const rule = shown === look ? null : exceptionRule(cell, value, look)
      if (rule) rules.push(rule)
    })
  }
  return rules
}

/** Rectangles that cover the cells: runs down a column, and columns put together where these match. */
export function runs(cells: readonly CellRef[]): Area[] {
  return atOnce(running([cells]))
}

function* running(lists: readonly (readonly CellRef[])[]): Steps<Area[]> {
  const columns = new Map<number, CellRef[]>()
  for (const cells of lists) {
    yield
    for (const cell of cells) {
      const column = columns.get(cell.column)
      if (column) column.push(cell)
      else columns.set(cell.column, [cell])
    }
  }
  const down: Area[] = []
  for (const [column, own] of [...columns].sort(([one], [other]) => one - other)) {
    yield
    for (const area of runsIn(column, own)) down.push(area)
  }
  down.sort((a, b) => a.top - b.top || a.bottom - b.bottom || a.left - b.left)
  const across: Area[] = []
  for (const area of down) {
    const last = across.at(-1)
    if (last && last.top === area.top && last.bottom === area.bottom && last.right + 1 === area.left)
      across[across.length - 1] = { ...last, right: area.right }
    else across.push(area)
  }
  return across.sort((a, b) => a.top - b.top || a.left - b.left)
}

function runsIn(column: number, cells: readonly CellRef[]): Area[] {
  const rows = cells.map(({ row }) => row).sort((a, b) => a - b)
  const found: Area[] = []
  let top = 0
  rows.forEach((row, index) => {
    if (index === 0 || row !== (rows[index - 1] ?? 0) + 1) top = row
    if (rows[index + 1] !== row + 1) found.push({ top, left: column, bottom: row, right: column })
  })
  return found
}

/** The types to support, beside each marksheet: in a column behind everything in its rows, or in a row below its columns. */
function* notesFor(matrix: Matrix, reviews: readonly Review[]): Steps<TextCell[]> {
  const taken = new Set<number>()
  const all: TextCell[] = []
  for (const review of reviews) {
    yield
    const turned = review.orientation === 'pupils-across'
    const view = viewOf(matrix, turned)
    const toView = (cell: CellRef) => view.ref(cell.row, cell.column)
    const header =
      Math.min(...review.questions.map((question) => toView(question).row)) -
      Number(review.orientation === 'pairs')
    const rows = review.pupils.map(({ nameCells }) => toView(nameCells[0] ?? { row: 0, column: 0 }).row)
    let bottom = 0
    for (const { answers } of review.pupils) {
      yield
      for (const cell of answers) bottom = Math.max(bottom, toView(cell).row)
    }
    const old = ownNotes(view, header, rows, taken)
    const column = old ?? freeColumn(view, Math.max(0, header), bottom, taken)
    taken.add(column)
    const notes: TextCell[] = []
    for (const [index, { judgement }] of review.pupils.entries()) {
      yield
      const text = typesToSupport(judgement).join('; ')
      if (text !== '' || old !== null)
        notes.push({ ...view.ref(rows[index] ?? 0, column), text, upright: turned })
    }
    if (notes.length > 0 && header >= 0)
      all.push({ ...view.ref(header, column), text: NOTES_TITLE, upright: false })
    for (const note of notes) all.push(note)
  }
  return all
}

/** The column of notes from an earlier marking: the title over it, or, where there is no row for a title, nothing but types in it. */
function ownNotes(
  view: View,
  header: number,
  rows: readonly number[],
  taken: ReadonlySet<number>,
): number | null {
  for (let column = 0; column < view.columns; column++) {
    if (taken.has(column)) continue
    if (header >= 0 ? view.text(header, column) === NOTES_TITLE : holdsTypes(view, column, rows))
      return column
  }
  return null
}

function holdsTypes(view: View, column: number, rows: readonly number[]): boolean {
  const texts = rows.map((row) => view.text(row, column)).filter((text) => text !== '')
  return texts.length > 0 && texts.every((text) => text.split('; ').every((part) => TYPES.has(part)))
}

const TYPES: ReadonlySet<string> = new Set([...SUBTRACTION_TYPES, ...ADDITION_TYPES])

/** The first column behind which these rows are empty, with one left free between, so that a table does not grow into it. */
function freeColumn(view: View, top: number, bottom: number, taken: ReadonlySet<number>): number {
  let last = -1
  for (let row = top; row <= bottom; row++) {
    for (let column = view.columns - 1; column > last; column--)
      if (!isEmpty(view.value(row, column))) last = column
  }
  let free = last + 2
  while (taken.has(free)) free++
  return free
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
    rows.push([cell(name, judgement.needsSupport), cell(typesToSupport(judgement).join('; ')), ...cells])
  }
  const counts = types.map((type) => cell(classText(standings.map((each) => each.get(type)?.status))))
  return [
    [],
    [cell(`${sheet} ${areaAddress(area)}, ${asked}`, true)],
    [...['Pupil', 'Needs support with', ...types].map((title) => cell(title, true, LOOKS.absent.fill))],
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
