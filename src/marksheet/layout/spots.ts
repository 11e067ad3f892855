import { readQuestion } from '../../arithmetic/question'
import { readTyped } from '../../answers/typed'
import { groupBy } from './groups'
import { range, isEmpty, type CellRef, type View } from './matrix'
import { hasNameWords, isClassHeading, looksLikeName, nameHeading } from './labels'
import type { Steps } from './steps'
import { type Spot } from './marksheet'

const MAY_BE_QUESTION = /[-−–—‐‑‒－⁻➖﹣+＋➕⁺]|subtract|take|minus|add|plus|difference|less|sum of|total of/i

/** Every cell of a sheet that reads as a question, row by row. */
export function* questionSpots(view: View): Steps<Spot[]> {
  const spots: Spot[] = []
  for (let row = 0; row < view.rows; row++) {
    yield
    for (let column = 0; column < view.columns; column++) {
      const value = view.value(row, column)
      if (typeof value !== 'string' || !MAY_BE_QUESTION.test(value) || isSchoolYear(value)) continue
      const reading = readQuestion(value)
      if ('question' in reading) spots.push({ row, column, text: value, question: reading.question })
    }
  }
  return spots
}

/** "2024-25" and "2024-2025" are school years, not questions. */
function isSchoolYear(text: string): boolean {
  const [, from, to] = /^\s*(?:19|20)(\d\d)\s*[-–]\s*(?:19|20)?(\d\d)\s*$/.exec(text) ?? []
  return from !== undefined && (Number(from) + 1) % 100 === Number(to)
}

/** How far below each other two questions of one list may stand (a sub-heading or an empty row between them). */
const WIDEST_GAP = 3

/**
 * Tells questions that head columns from questions that stand in lists below each other. A row of questions belongs to a list
 * where most of its questions have another one above or below with no answer between them.
 */
export function splitByNeighbours(view: View, spots: readonly Spot[]): { heading: Spot[]; blocks: Spot[][] } {
  const listed = new Map<Spot, Spot>()
  const byColumn = groupBy(spots, ({ column }) => column)
  const inList = new Set<Spot>()
  for (const column of byColumn.values()) {
    column.forEach((spot, index) => {
      const above = column[index - 1]
      if (above === undefined || !isSameList(view, above, spot)) return
      listed.set(spot, above)
      inList.add(spot).add(above)
    })
  }
  const heading: Spot[] = []
  const blocks: Spot[][] = []
  for (const row of rowParts(view, spots)) {
    const members = row.filter((spot) => inList.has(spot))
    if (2 * members.length < row.length)
      heading.push(...row.filter((spot) => !inList.has(spot) || !isOfPupilsAcross(view, spot, byColumn)))
    else {
      const aboves = new Set(row.map((spot) => listed.get(spot)))
      const block = blocks.find((each) => each.some((spot) => aboves.has(spot)))
      if (block) block.push(...row)
      else blocks.push([...row])
    }
  }
  return { heading, blocks }
}

/** The questions of each row, parted where a name stands between two of them: what follows is another block's. */
function rowParts(view: View, spots: readonly Spot[]): Spot[][] {
  return [...groupBy(spots, ({ row }) => row).values()].flatMap((row) => {
    const parts: Spot[][] = []
    let previous = -1
    for (const spot of row.toSorted((a, b) => a.column - b.column)) {
      const between = range(previous + 1, spot.column).map((column) => view.text(spot.row, column))
      const isNew = between.some((text) => text !== '' && mayStartBlock(text))
      const part = parts.at(-1)
      if (part && !isNew) part.push(spot)
      else parts.push([spot])
      previous = spot.column
    }
    return parts
  })
}

/** Whether a text may be the name, or the heading of names, with which a block starts. */
export function mayStartBlock(text: string): boolean {
  if (!/\p{L}/u.test(text) || readTyped(text).kind !== 'unreadable') return false
  return (looksLikeName(text) && hasNameWords(text)) || nameHeading(text) !== null || isClassHeading(text)
}

/** Whether a number stands in the cell on the right. */
export function hasNumberBeside(view: View, { row, column }: CellRef): boolean {
  return readTyped(view.value(row, column + 1)).kind === 'number'
}

function isSameList(view: View, above: Spot, below: Spot): boolean {
  if (below.row - above.row > WIDEST_GAP) return false
  for (let row = above.row + 1; row < below.row; row++) {
    const value = view.value(row, above.column)
    if (!isEmpty(value) && readTyped(value).kind !== 'unreadable') return false
  }
  return true
}

/** Whether a list of questions is that of pupils who run across: names stand over two or more columns of numbers on its right. */
export function headsPupilsAcross(view: View, spots: readonly Spot[], next: number): boolean {
  const column = spots[0]?.column ?? 0
  let top = Math.min(...spots.map(({ row }) => row))
  while (isQuestion(view, top - 1, column)) top--
  const named = range(column + 1, next).filter((each) => {
    const text = view.text(top - 1, each)
    const isAnswered = spots.some(({ row }) => readTyped(view.value(row, each)).kind === 'number')
    return looksLikeName(text) && hasNameWords(text) && isAnswered
  })
  return new Set(named.map((each) => view.text(top - 1, each))).size >= 2
}

/** Whether a question that stands in a list among headings is answered on its right: its pupils run across. */
function isOfPupilsAcross(view: View, spot: Spot, byColumn: ReadonlyMap<number, readonly Spot[]>): boolean {
  return hasNumberBeside(view, spot) || headsPupilsAcross(view, byColumn.get(spot.column) ?? [], view.columns)
}

function isQuestion(view: View, row: number, column: number): boolean {
  return row >= 0 && 'question' in readQuestion(view.text(row, column))
}
