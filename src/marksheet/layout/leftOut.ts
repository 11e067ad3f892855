import { groupBy } from './groups'
import { hasNameWords, looksLikeName } from './labels'
import { cellKey, type Marksheet } from './marksheet'
import { addressOf, areaAddress, areaOf, isEmpty, viewOf, type Matrix } from './matrix'
import { gathered } from './spread'
import { questionSpots } from './spots'
import type { Steps } from './steps'
import { rowLabel } from './words'

/** How many rows of questions a sentence names. */
const MOST_NAMED = 4
/** How far behind the last pupil a row is looked at. */
const BEHIND = 3

/**
 * What was left out when the marksheets of a sheet were read, a sentence each: questions that belong to no pupils for sure, rows that look like
 * a pupil's and are none by what stands in them, names that two pupils share.
 */
export function* leavingOut(matrix: Matrix, marksheets: readonly Marksheet[]): Steps<string[]> {
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
  return [
    ...questionsLeft(free),
    ...marksheets.flatMap((each) => [...rowsLeft(matrix, each), ...shared(each)]),
  ]
}

function questionsLeft(spots: readonly { readonly row: number; readonly column: number }[]): string[] {
  const rows = [...groupBy(spots, ({ row }) => row).values()].map((row) => areaAddress(areaOf([row])))
  if (rows.length === 0) return []
  const named = rows.slice(0, MOST_NAMED).map((area) => area.replace(/^([A-Z]+\d+):\1$/, '$1'))
  const more = rows.length - named.length
  return [
    `Questions in ${named.join(', ')}${more > 0 ? ` and ${more} more ${more === 1 ? 'row' : 'rows'}` : ''} are left out: it is not sure which pupils they belong to.`,
  ]
}

/** Rows (or columns) with a name and answers that were not read, near those that were. */
function rowsLeft(matrix: Matrix, { orientation, pupils }: Marksheet): string[] {
  const view = viewOf(matrix, orientation === 'pupils-across')
  const seen = pupils.map(({ nameCells, answers }) => ({
    at: nameCells.slice(0, 1).map(({ row, column }) => view.ref(row, column))[0],
    answers: answers.map(({ row, column }) => view.ref(row, column)),
  }))
  const rows = new Set(seen.map(({ at }) => at?.row))
  const [first, last] = [seen[0]?.at, seen.at(-1)?.at]
  if (first === undefined || last === undefined) return []
  const columns = (seen[0]?.answers ?? []).map(({ column }) => column)
  const told: string[] = []
  for (let row = first.row; row <= last.row + BEHIND; row++) {
    const text = view.text(row, first.column)
    if (rows.has(row) || !looksLikeName(text) || !hasNameWords(text) || rowLabel(text) === 'nobody') continue
    if (columns.every((column) => isEmpty(view.value(row, column)))) continue
    told.push(
      `${addressOf(view.ref(row, first.column))} “${text}” is left out: what stands beside it reads as counts, shares or words, not as a pupil’s answers.`,
    )
  }
  return told
}

function shared({ pupils }: Marksheet): string[] {
  return [...groupBy(pupils, ({ name }) => name.toLowerCase()).values()].flatMap((same) => {
    const cells = same.flatMap(({ nameCells }) => nameCells.slice(0, 1)).map(addressOf)
    const [one] = same
    return one && same.length > 1
      ? [`${cells.join(' and ')} hold the same name, ${one.name}: give them different ones.`]
      : []
  })
}
