import { readTyped } from '../../answers/typed'
import { readQuestion } from '../../arithmetic/question'
import {
  hasNameWords,
  isClassHeading,
  isHeadingLabel,
  isOpenHeading,
  isWholeName,
  looksLikeName,
} from './labels'
import { isEmpty, range, type CellRef, type View } from './matrix'
import { hasNameHeading, hasNames } from './names'

/** Rows of a view, the last one included. */
export interface Rows {
  readonly first: number
  readonly last: number
}

/** Whether answers stand under a question within the rows, so that its block reaches into them. */
export function hasAnswersIn(view: View, { row, column }: CellRef, { first, last }: Rows): boolean {
  let [numbers, texts] = [0, 0]
  for (let below = Math.max(row + 1, first); below <= last; below++) {
    const value = view.value(below, column)
    if (isEmpty(value)) continue
    if (readTyped(value).kind === 'unreadable') texts++
    else numbers++
  }
  return numbers > 0 && numbers >= texts
}

/** Whether a question of another block stands beside the rows: in one of them, or above them with answers that reach into them. */
export function isBeside(view: View, other: CellRef, rows: Rows): boolean {
  if (other.row > rows.last) return false
  return other.row < rows.first ? hasAnswersIn(view, other, rows) : !isAmongNames(view, other, rows)
}

/** Whether a text that reads as a question stands among names, as one such as "1-2" does: most texts of its column look like names. */
function isAmongNames(view: View, { row, column }: CellRef, { first, last }: Rows): boolean {
  if (row <= first) return false
  const texts = range(first + 1, last + 1)
    .map((each) => view.text(each, column))
    .filter((text) => text !== '' && readTyped(text).kind === 'unreadable')
  return 2 * texts.filter((text) => 'problem' in readQuestion(text)).length > texts.length
}

/**
 * The first column in which the names of a block can stand that begins at the column `left` and fills the rows: behind every question of
 * another block beside it, for no names reach across another block.
 */
export function firstOwnColumn(view: View, others: readonly CellRef[], left: number, rows: Rows): number {
  return others
    .filter(({ column }) => column < left)
    .reduce(
      (first, other) => (other.column >= first && isBeside(view, other, rows) ? other.column + 1 : first),
      0,
    )
}

/** Columns in groups without an empty column between them, the group nearest to the questions first. */
export function nearestFirst(
  view: View,
  header: number,
  columns: readonly number[],
  body: readonly number[],
): number[][] {
  const groups: number[][] = [[]]
  for (const column of columns)
    if (isGap(view, header, column, body)) groups.unshift([])
    else groups[0]?.push(column)
  return groups.filter((group) => group.length > 0)
}

/** Whether a column is empty in the header and in all rows of the body. */
export function isGap(view: View, header: number, column: number, body: readonly number[]): boolean {
  return view.text(header, column) === '' && body.every((row) => isEmpty(view.value(row, column)))
}

/** Whether at least half of a column's texts stand in one of the other columns too, as the names of children tested again do. */
export function areRepeated(
  view: View,
  column: number,
  others: readonly number[],
  body: readonly number[],
): boolean {
  const texts = body.map((row) => view.text(row, column)).filter((text) => text !== '')
  return others.some((other) => {
    const known = new Set(body.map((row) => view.text(row, other)))
    return texts.length > 0 && 2 * texts.filter((text) => known.has(text)).length >= texts.length
  })
}

/** Whether most texts of a column are two words or more with capitals: "Ada B", "Ben Cole". */
export function areWholeNames(view: View, column: number, body: readonly number[]): boolean {
  const texts = body.map((row) => view.text(row, column)).filter((text) => text !== '')
  return texts.length > 0 && 2 * texts.filter(isWholeName).length > texts.length
}

/**
 * Whether a column between two questions holds the names of a block that starts with it. 'sure': its heading says so; or names stand in it
 * under a class's name or no heading; or under any other heading, but behind an empty column, or the names repeat, or are whole ones.
 * 'unsure': texts that could be names or remarks. `previous` is the column of the question before.
 */
export function startsBlock(
  view: View,
  header: number,
  previous: number,
  column: number,
  body: readonly number[],
): 'sure' | 'unsure' | 'no' {
  if (hasNameHeading(view, header, column, body)) return 'sure'
  const heading = view.text(header, column)
  if (!isOpenHeading(heading) || !hasNames(view, column, body, 0.8)) return 'no'
  const between = range(previous + 1, column)
  const before = range(0, previous)
  return isClassHeading(heading) ||
    between.some((each) => isGap(view, header, each, body)) ||
    areRepeated(view, column, before, body) ||
    areWholeNames(view, column, body)
    ? 'sure'
    : 'unsure'
}

/**
 * Whether names of others stand between a child's name and an answer: in a column between the two, under no heading that says otherwise, most
 * texts beside the rows are whole names or differ as names do. Then the answer may be another child's.
 */
export function areOthersBetween(
  view: View,
  header: number,
  columns: readonly number[],
  body: readonly number[],
): boolean {
  return columns.some((column) => {
    const texts = body
      .map((row) => view.text(row, column))
      .filter((text) => text !== '' && !isHeadingLabel(text))
    if (texts.length < 2 || !isOpenHeading(view.text(header, column))) return false
    const names = texts.filter((text) => looksLikeName(text) && hasNameWords(text))
    return 5 * names.length >= 3 * texts.length && 4 * new Set(names).size >= 3 * names.length
  })
}

/**
 * The row before which a block ends whose questions stand in the `columns` of the row `header`: `bottom`, or the first row in which a question
 * stands under the names, with the row of names over it, where the block underneath runs the other way.
 */
export function endOfNames(
  view: View,
  header: number,
  questions: readonly CellRef[],
  columns: readonly number[],
  bottom: number,
): number {
  const left = columns[0] ?? 0
  const ends = questions
    .filter(({ row, column }) => row > header && row < bottom && column < left)
    .filter(({ row, column }) => {
      const above = range(header + 1, row).filter((each) => view.text(each, column) !== '')
      const isNearest = !range(column + 1, left).some((each) => hasNames(view, each, above, 0.6))
      return isNearest && hasNames(view, column, above, 0.6)
    })
  const end = Math.min(bottom, ...ends.map(({ row }) => row))
  const isWords = (row: number) => {
    const values = columns.map((column) => view.value(row, column)).filter((value) => !isEmpty(value))
    return values.length > 0 && values.every((value) => readTyped(value).kind === 'unreadable')
  }
  if (end === bottom) return bottom
  return end - [1, 2].filter((up) => range(end - up, end).every(isWords)).length
}
