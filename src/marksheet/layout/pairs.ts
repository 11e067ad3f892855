import { readQuestion } from '../../arithmetic/question'
import { readTyped } from '../../answers/typed'
import { areOthersBetween, firstOwnColumn, startsBlock } from './evidence'
import { groupBy } from './groups'
import { isEmpty, range, type CellRef, type View } from './matrix'
import { isHeadingLabel, looksLikeName, nameHeading } from './labels'
import { nameIn } from './names'
import {
  type AnswerCell,
  type Marksheet,
  type Spot,
  cellKey,
  marksheet,
  answerCell,
  foundQuestion,
  nameCells,
  nearestNames,
} from './marksheet'
import { mayStartBlock, hasNumberBeside, headsPupilsAcross } from './spots'

/**
 * A list of questions with a pupil's name on the left of each row, the answer on the right of each question. Rows that follow with the
 * same name, or with none, are the same pupil's.
 */
export function pairsIn(view: View, block: readonly Spot[], all: readonly Spot[]): Marksheet[] {
  return pairedColumns(view, withoutHeadings(view, block)).flatMap((own) => pairsOf(view, own, all))
}

/** A list without the columns that hold other things in as many of its rows as questions: there a question heads another block. */
function withoutHeadings(view: View, block: readonly Spot[]): Spot[] {
  const rows = [...new Set(block.map(({ row }) => row))]
  const isHeaded = new Map(
    [...groupBy(block, ({ column }) => column)].map(([column, { length }]) => {
      const filled = rows.filter((row) => !isEmpty(view.value(row, column))).length
      return [column, 2 * length <= filled]
    }),
  )
  return block.filter(({ column }) => isHeaded.get(column) === false)
}

/** The questions of a list, parted where a column of names stands between two of its columns. */
function pairedColumns(view: View, block: readonly Spot[]): Spot[][] {
  const parts: Spot[][] = []
  let previous: readonly Spot[] = []
  const byColumn = [...groupBy(block, ({ column }) => column)].sort(([a], [b]) => a - b)
  for (const [index, [column, spots]] of byColumn.entries()) {
    if (headsPupilsAcross(view, spots, byColumn[index + 1]?.[0] ?? view.columns)) break
    const last = previous[0]?.column ?? -1
    const header = Math.min(...spots.map(({ row }) => row)) - 1
    const body = spots.map(({ row }) => row)
    const isNew = range(last + 1, column).some(
      (each) => startsBlock(view, header, last, each, body) === 'sure',
    )
    const part = parts.at(-1)
    if (part && !isNew) part.push(...spots)
    else parts.push([...spots])
    previous = spots
  }
  return parts.map((part) => block.filter((spot) => part.includes(spot)))
}

function pairsOf(view: View, block: readonly Spot[], all: readonly Spot[]): Marksheet[] {
  const rows = [...groupBy(block, ({ row }) => row)].sort(([a], [b]) => a - b)
  const firstRow = rows[0]?.[0] ?? 0
  const columns = new Set(block.map(({ column }) => column))
  const left = Math.min(...columns)
  const body = rows.map(([row]) => row)
  const others = all.filter((spot) => !block.includes(spot))
  const from = firstOwnColumn(view, others, left, { first: firstRow, last: body.at(-1) ?? firstRow })
  const names = nearestNames(view, firstRow - 1, range(from, left), body)
  if (!names || names.kind === 'codes' || (names.kind === 'likely' && hasNamesAbove(view, firstRow, columns)))
    return []
  const answerColumn = answerColumns(view, columns, body)
  const isOthers = (column: number) =>
    areOthersBetween(
      view,
      firstRow - 1,
      range(names.first + 1, column).filter((each) => each !== names.surname && !columns.has(each)),
      body,
    )
  const asked = new Set(all.map(cellKey))
  const strange = new Set([...columns].filter(isOthers))
  const answered = block.filter(
    ({ row, column }) => !strange.has(column) && !asked.has(cellKey({ row, column: answerColumn(column) })),
  )
  const pupils: { name: string; nameCells: CellRef[]; answers: AnswerCell[] }[] = []
  for (const [row, spots] of groupBy([...answered.entries()], ([, spot]) => spot.row)) {
    const name = nameIn(view, names, row)
    if (isHeadingLabel(name) || nameHeading(name) !== null) continue
    const last = pupils.at(-1)
    const answers = spots.map(([index, { column }]) => answerCell(view, row, answerColumn(column), index))
    if (last && (name === '' || name === last.name)) last.answers.push(...answers)
    else if (name !== '') pupils.push({ name, nameCells: nameCells(view, names, row), answers })
  }
  return marksheet('pairs', answered.map(foundQuestion(view)), pupils)
}

/**
 * For each question column the column of its answers: the next one, or one behind it that holds more numbers ("=", a working), but none
 * behind names or questions of another block.
 */
function answerColumns(
  view: View,
  questions: ReadonlySet<number>,
  rows: readonly number[],
): (question: number) => number {
  const numbers = (column: number) =>
    rows.filter((row) => readTyped(view.value(row, column)).kind === 'number').length
  const isOthers = (column: number) => {
    const texts = rows
      .filter((row) => readTyped(view.value(row, column)).kind === 'unreadable')
      .map((row) => view.text(row, column))
      .filter((text) => !isHeadingLabel(text))
    const isOne = (text: string) => mayStartBlock(text) || 'question' in readQuestion(text)
    return texts.length >= Math.min(2, rows.length) && texts.every(isOne)
  }
  const found = new Map<number, number>()
  for (const question of questions) {
    const next = range(question + 1, question + 4).filter((_column, index, all) =>
      all.slice(0, index + 1).every((each) => !questions.has(each) && !isOthers(each)),
    )
    found.set(
      question,
      next.reduce((best, column) => (numbers(column) > numbers(best) ? column : best), question + 1),
    )
  }
  return (question) => found.get(question) ?? question + 1
}

/** Whether names of pupils, not headings such as "A1" or "Answer", stand in a row over the columns between questions. */
function hasNamesAbove(view: View, row: number, questions: ReadonlySet<number>): boolean {
  const columns = range(Math.min(...questions) + 1, view.columns).filter((column) => !questions.has(column))
  const isHeading = (text: string) =>
    /^[aq]\.? ?\d|\b(?:ans(?:wers?)?|question|response|working|calculation|sum|mark|typed)\b/i.test(text)
  return [row - 1, row - 2]
    .filter((above) => above >= 0)
    .some((above) => {
      const texts = columns
        .map((column) => view.text(above, column))
        .filter((text) => looksLikeName(text) && !isHeading(text))
      return new Set(texts).size >= 2 && new Set(texts).size === texts.length
    })
}

/**
 * Whether a row by itself can be one pupil's own questions: a number on the right of one of them, or room for an answer on the right of
 * each under a heading of its own.
 */
export function hasRoomBeside(view: View, row: readonly Spot[]): boolean {
  const questions = new Set(row.map(({ column }) => column))
  const beside = row.filter((spot) => !questions.has(spot.column + 1))
  const isRoom = (spot: Spot) =>
    /answer|^a\d/i.test(spot.row > 0 ? view.text(spot.row - 1, spot.column + 1) : '')
  return (
    beside.some((spot) => hasNumberBeside(view, spot)) ||
    (beside.length === row.length && beside.every(isRoom))
  )
}
