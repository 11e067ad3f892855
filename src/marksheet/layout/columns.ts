import { answerKey } from '../../answers/typed'
import { areOthersBetween, endOfNames, firstOwnColumn, isBeside, startsBlock, type Rows } from './evidence'
import { groupBy } from './groups'
import { range, type View } from './matrix'
import { findNameColumns, nameIn, type NameColumns } from './names'
import { pupilRows } from './rows'
import type { Steps } from './steps'
import {
  type Orientation,
  type FoundPupil,
  type Marksheet,
  type Spot,
  cellKey,
  marksheet,
  answerCell,
  foundQuestion,
  nameCells,
  filledRows,
  nearestNames,
} from './marksheet'

/** Rows of questions with pupils' names on the left of the rows below; a name column between questions starts a new marksheet. */
export function* pupilsBelow(
  view: View,
  spots: readonly Spot[],
  all: readonly Spot[],
  orientation: Orientation,
): Steps<Marksheet[]> {
  const headers = [...groupBy(spots, ({ row }) => row)].sort(([a], [b]) => a - b)
  const found: Marksheet[] = []
  for (const [header, row] of headers) {
    const sorted = row.toSorted((a, b) => a.column - b.column)
    for (const { from, spots: own } of segments(view, headers, header, sorted)) {
      yield
      const end = nextHeader(headers, header, own) ?? view.rows
      found.push(...(yield* belowHeader(view, header, own, all, from, end, orientation)))
    }
  }
  return found
}

function nextHeader(
  headers: readonly [number, Spot[]][],
  header: number,
  own: readonly Spot[],
): number | undefined {
  const columns = new Set(own.map(({ column }) => column))
  return headers.find(([row, spots]) => row > header && spots.some(({ column }) => columns.has(column)))?.[0]
}

/**
 * The questions of a header row, parted where a column of names stands between two of them. `from` is the first free column. Questions
 * behind a column that may be names or remarks are left out: they could be another child's.
 */
function segments(
  view: View,
  headers: readonly [number, Spot[]][],
  header: number,
  row: readonly Spot[],
): { from: number; spots: Spot[] }[] {
  const parts: { from: number; spots: Spot[]; isUnsure: boolean }[] = []
  let previous = -1
  for (const spot of row) {
    const end = nextHeader(headers, header, [spot]) ?? view.rows
    const starts = range(previous + 1, spot.column).map((column) =>
      startsBlock(view, header, previous, column, filledRows(view, header + 1, end, [column, spot.column])),
    )
    const part = parts.at(-1)
    const isUnsure = !starts.includes('sure') && starts.includes('unsure')
    if (part && !starts.includes('sure') && !isUnsure) part.spots.push(spot)
    else parts.push({ from: previous + 1, spots: [spot], isUnsure: part !== undefined && isUnsure })
    previous = spot.column
  }
  return parts.filter(({ isUnsure }) => !isUnsure)
}

function* belowHeader(
  view: View,
  header: number,
  spots: readonly Spot[],
  all: readonly Spot[],
  from: number,
  bottom: number,
  orientation: Orientation,
): Steps<Marksheet[]> {
  const columns = spots.map(({ column }) => column)
  const end = endOfNames(view, header, all, columns, bottom)
  const filled = filledRows(view, header + 1, end, columns)
  const rows = { first: header, last: filled.at(-1) ?? header }
  const asked = new Set(spots.map(cellKey))
  const others = all.filter((spot) => !asked.has(cellKey(spot)) && spot.row < end)
  const candidates = range(
    Math.max(from, firstOwnColumn(view, others, columns[0] ?? 0, rows)),
    columns[0] ?? 0,
  )
  const body = filled.length > 0 ? filled : filledRows(view, header + 1, end, candidates)
  const names =
    nearestNames(view, header, candidates, body) ??
    headedOnTheRight(view, header, (columns.at(-1) ?? 0) + 1, body, others, rows)
  if (!names) return []
  yield
  const between = (column: number) =>
    range(Math.min(names.first, column) + 1, Math.max(names.first, column)).filter(
      (each) => each !== names.surname && !columns.includes(each),
    )
  const own = spots.filter(({ column }) => !areOthersBetween(view, header, between(column), body))
  if (own.length === 0) return []
  const keyed = own.map(({ column, question }) => ({ column, key: answerKey(question) }))
  const pupils: FoundPupil[] = []
  for (const row of yield* pupilRows(view, names, keyed, header + 1, end)) {
    yield
    const answers = own.map(({ column }, question) => answerCell(view, row, column, question))
    pupils.push({ name: nameIn(view, names, row), nameCells: nameCells(view, names, row), answers })
  }
  return marksheet(orientation, own.map(foundQuestion(view)), pupils)
}

/**
 * Name columns on the right of the questions, where a heading says so (a form that asks for the name last) and no other block stands
 * there, whose names they could be.
 */
function headedOnTheRight(
  view: View,
  header: number,
  first: number,
  body: readonly number[],
  others: readonly Spot[],
  rows: Rows,
): NameColumns | null {
  if (others.some((other) => other.column >= first && isBeside(view, other, rows))) return null
  const names = findNameColumns(view, header, range(first, view.columns), body)
  return names?.kind === 'headed' ? names : null
}
