import { groupBy } from './groups'
import { hasNameWords, looksLikeName } from './labels'
import { cellKey, type Marksheet } from './marksheet'
import { addressOf, areaAddress, areaOf, isEmpty, viewOf, type CellRef, type Matrix } from './matrix'
import { OWN_SHEET } from './find'
import { withoutNotes } from './ownNotes'
import { gathered } from './spread'
import { questionSpots } from './spots'
import type { Steps } from './steps'
import { rowLabel } from './words'

/** How many rows of questions a sentence names. */
const MOST_NAMED = 4
const LIST = new Intl.ListFormat('en-GB')
/** How far behind the last pupil a row is looked at. */
const BEHIND = 3

/**
 * What was left out when the marksheets of a sheet were read, a sentence each: questions that belong to no pupils for sure, and rows that
 * look like a pupil's and are none by what stands in them.
 */
export function* leavingOut(sheet: Matrix, marksheets: readonly Marksheet[]): Steps<string[]> {
  if (String(sheet.values[0]?.[0] ?? '').startsWith(OWN_SHEET)) return []
  const matrix = withoutNotes(sheet)
  const { spots, parts } = gathered(matrix, yield* questionSpots(viewOf(matrix, false)))
  const used = new Set(marksheets.flatMap(({ questions }) => questions.map(cellKey)))
  for (const { pupils } of marksheets) {
    yield
    for (const { answers } of pupils) for (const cell of answers) used.add(cellKey(cell))
  }
  const free = spots.filter((spot) => {
    const [first] = parts.get(cellKey(spot)) ?? [spot]
    return !used.has(cellKey(spot)) && first !== undefined && !used.has(cellKey(first))
  })
  yield
  const read = new Set(
    marksheets.flatMap(({ pupils }) => pupils.flatMap(({ nameCells }) => nameCells.map(cellKey))),
  )
  return [...questionsLeft(free), ...marksheets.flatMap((each) => rowsLeft(matrix, each, read))]
}

function questionsLeft(spots: readonly CellRef[]): string[] {
  const rows = [...groupBy(spots, ({ row }) => row).values()].map((row) =>
    row.length === 1 ? row.map(addressOf).join() : areaAddress(areaOf([row])),
  )
  if (rows.length === 0) return []
  const named = rows.slice(0, MOST_NAMED)
  const more = rows.length - named.length
  const places = more > 0 ? [...named, `${more} more ${more === 1 ? 'row' : 'rows'}`] : named
  const [what, are, they] =
    spots.length === 1 ? ['question', 'is', 'it belongs'] : ['questions', 'are', 'they belong']
  return [`The ${what} in ${LIST.format(places)} ${are} left out: it is unclear which pupils ${they} to.`]
}

/** Rows (or columns) with a name and answers, near the pupils of a marksheet, of which no name is among the keys of those `read`. */
function rowsLeft(matrix: Matrix, { orientation, pupils }: Marksheet, read: ReadonlySet<string>): string[] {
  const view = viewOf(matrix, orientation === 'pupils-across')
  const seen = pupils.map(({ nameCells, answers }) => ({
    at: nameCells.slice(0, 1).map(({ row, column }) => view.ref(row, column))[0],
    answers: answers.map(({ row, column }) => view.ref(row, column)),
  }))
  const [first, last] = [seen[0]?.at, seen.at(-1)?.at]
  if (first === undefined || last === undefined) return []
  const columns = (seen[0]?.answers ?? []).map(({ column }) => column)
  const told: string[] = []
  for (let row = first.row; row <= last.row + BEHIND; row++) {
    const text = view.text(row, first.column)
    const cell = view.ref(row, first.column)
    if (read.has(cellKey(cell)) || !looksLikeName(text) || !hasNameWords(text)) continue
    if (rowLabel(text) === 'nobody') continue
    if (columns.every((column) => isEmpty(view.value(row, column)))) continue
    told.push(
      `${addressOf(cell)} “${text}” is left out: what stands beside it reads as counts, shares or words, not as a pupil’s answers.`,
    )
  }
  return told
}
