import type { CellValue } from '../../answers/typed'
import type { Question } from '../../arithmetic/question'
import { nearestFirst } from './evidence'
import { range, areaOf, isEmpty, type Area, type CellRef, type View } from './matrix'
import { findNameColumns, type NameColumns } from './names'

/** How pupils and questions stand to each other. */
export type Orientation = 'pupils-down' | 'pupils-across' | 'pairs'

/** One of the cells over which a question is spread, with what it holds. */
export interface Part extends CellRef {
  readonly value: CellValue
}

/** A cell that holds a question, or begins it: then `parts` are all the cells over which it is spread. */
export interface FoundQuestion extends CellRef {
  readonly text: string
  readonly question: Question
  readonly parts?: readonly Part[]
}

/** A cell in which a pupil answers a question, given by its index among the marksheet's questions. */
export interface AnswerCell extends CellRef {
  readonly question: number
}

/** A pupil: the cells that hold the name (where they are two, the first is the left or upper one) and those for the answers. */
export interface FoundPupil {
  readonly name: string
  readonly nameCells: readonly CellRef[]
  readonly answers: readonly AnswerCell[]
}

/** A marksheet found on a sheet. `area` reaches from the first name or question to the last answer. */
export interface Marksheet {
  readonly orientation: Orientation
  readonly area: Area
  readonly questions: readonly FoundQuestion[]
  readonly pupils: readonly FoundPupil[]
}

/** A cell whose text reads as a question, wherever it stands. */
export interface Spot extends CellRef {
  readonly text: string
  readonly question: Question
}

/** A key for a cell, to look it up by. */
export const cellKey = ({ row, column }: CellRef) => `${row},${column}`

/** A list of one marksheet, or of none where it has no pupils. */
export function marksheet(
  orientation: Orientation,
  questions: FoundQuestion[],
  pupils: FoundPupil[],
): Marksheet[] {
  if (pupils.length === 0) return []
  const area = areaOf([
    questions,
    ...pupils.map(({ nameCells }) => nameCells),
    ...pupils.map(({ answers }) => answers),
  ])
  return [{ orientation, area, questions, pupils }]
}

/** The cell of an answer on the sheet itself, to the question of that index. */
export function answerCell(view: View, row: number, column: number, question: number): AnswerCell {
  const cell = view.ref(row, column)
  return { row: cell.row, column: cell.column, question }
}

/** A question where it stands on the sheet itself. */
export const foundQuestion =
  (view: View) =>
  ({ row, column, text, question }: Spot): FoundQuestion => ({ ...view.ref(row, column), text, question })

/** The cells of a pupil's name, in the order in which they stand on the sheet. */
export function nameCells(view: View, { first, surname }: NameColumns, row: number): CellRef[] {
  const columns = surname === null ? [first] : [first, surname].sort((a, b) => a - b)
  return columns.map((column) => view.ref(row, column))
}

/** The rows, from `first` to before `end`, that hold something in any of the columns. */
export function filledRows(view: View, first: number, end: number, columns: readonly number[]): number[] {
  return range(first, end).filter((row) => columns.some((column) => !isEmpty(view.value(row, column))))
}

/** The name columns nearest to the questions; `columns` begin behind the block on the left where there is one. */
export function nearestNames(
  view: View,
  header: number,
  columns: readonly number[],
  body: readonly number[],
): NameColumns | null {
  for (const group of nearestFirst(view, header, columns, body)) {
    const names = findNameColumns(view, header, group, body, (columns[0] ?? 0) > 0)
    if (names) return names
  }
  return null
}
