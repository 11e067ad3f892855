import {
  hasNameWords,
  isCodeHeading,
  isHeadingLabel,
  isOpenHeading,
  looksLikeName,
  nameHeading,
  type NameHeading,
} from './labels'
import { readTyped } from '../../answers/typed'
import { range, type View } from './matrix'

/** The columns of a view that hold pupils' names: one, or first name and surname. `kind`: a heading says so, the texts look like names, or codes stand for them. */
export interface NameColumns {
  readonly first: number
  readonly surname: number | null
  readonly kind: 'headed' | 'likely' | 'codes'
}

/** In how many rows above and below the questions the heading of a name column may stand. */
const HEADING_ROWS = { above: 2, below: 1 } as const

/**
 * The name columns among `columns` of a view whose questions stand in the row `header`, for the rows of `body`. A heading that says so
 * decides; then a column whose texts look like names and differ, the leftmost first; then codes. Behind another block, whose remarks may
 * end it, the rightmost first.
 */
export function findNameColumns(
  view: View,
  header: number,
  columns: readonly number[],
  body: readonly number[],
  isBehindBlock = false,
): NameColumns | null {
  const headed = columns.map((column) => ({ column, heading: headingOf(view, header, column) }))
  const under = (wanted: NameHeading) => {
    const columnsOf = headed.filter(({ heading }) => heading === wanted).map(({ column }) => column)
    return (
      columnsOf.find((column) => isVaried(view, column, body)) ??
      columnsOf.find((column) => isFilled(view, column, body))
    )
  }
  const [surname, first, full] = [under('surname'), under('first'), under('full')]
  const given = first ?? full
  if (surname !== undefined) {
    return given === undefined
      ? { first: surname, surname: null, kind: 'headed' }
      : { first: given, surname, kind: 'headed' }
  }
  const one = full ?? first
  if (one !== undefined) return { first: one, surname: null, kind: 'headed' }
  const inOrder = isBehindBlock ? columns.toReversed() : columns
  const mayBe = inOrder.filter(
    (column) => isOpenHeading(view.text(header, column)) && hasNames(view, column, body, 0.6),
  )
  const likely = mayBe.find((column) => !mayBe.some((other) => areNumbersBetween(view, column, other, body)))
  if (likely !== undefined) return { first: likely, surname: null, kind: 'likely' }
  const codes = columns.find(
    (column) => isCodeHeading(view.text(header, column)) && isFilled(view, column, body),
  )
  return codes === undefined ? null : { first: codes, surname: null, kind: 'codes' }
}

/** Whether numbers fill a column between names and other names further right, as the answers of another block do. */
function areNumbersBetween(view: View, column: number, other: number, body: readonly number[]): boolean {
  return range(column + 1, other).some((each) => {
    const filled = body.filter((row) => view.text(row, each) !== '')
    const numbers = filled.filter((row) => readTyped(view.value(row, each)).kind === 'number')
    return numbers.length >= 2 && 2 * numbers.length > filled.length
  })
}

/** Whether a column is headed as names, and filled. */
export function hasNameHeading(view: View, header: number, column: number, body: readonly number[]): boolean {
  return headingOf(view, header, column) !== null && isFilled(view, column, body)
}

/** Whether the texts of a row are headings of name columns and not a pupil's name. */
export function isHeadingRow(view: View, { first, surname }: NameColumns, row: number): boolean {
  const columns = surname === null ? [first] : [first, surname]
  return columns.every((column) => nameHeading(view.text(row, column)) !== null)
}

/** The pupil's name in a row, first name before surname, or '' where there is none. (An empty cell linked to is shown as 0.) */
export function nameIn(view: View, { first, surname }: NameColumns, row: number): string {
  const parts = surname === null ? [view.text(row, first)] : [view.text(row, first), view.text(row, surname)]
  return parts.filter((part) => part !== '' && part !== '0').join(' ')
}

function headingOf(view: View, header: number, column: number): NameHeading | null {
  for (let row = header - HEADING_ROWS.above; row <= header + HEADING_ROWS.below; row++) {
    const heading = row < 0 ? null : nameHeading(view.text(row, column))
    if (heading !== null) return heading
  }
  return null
}

/** Whether a headed column is filled for a fair part of the rows. */
function isFilled(view: View, column: number, body: readonly number[]): boolean {
  const filled = body.filter((row) => view.text(row, column) !== '').length
  return filled > 0 && filled >= 0.3 * body.length
}

/** Whether it is filled, and not with one text throughout ("anonymous"). */
function isVaried(view: View, column: number, body: readonly number[]): boolean {
  const texts = new Set(body.map((row) => view.text(row, column)).filter((text) => text !== ''))
  return isFilled(view, column, body) && (texts.size > 1 || body.length === 1)
}

/**
 * Whether nearly all filled cells differ and, to at least the given share of the rows, look like names. Rows with a label that is nobody's, a sum
 * or an aim, count neither way.
 */
export function hasNames(view: View, column: number, body: readonly number[], share: number): boolean {
  const texts = body
    .map((row) => view.text(row, column))
    .filter((text) => text === '' || !isHeadingLabel(text))
  const names = texts.filter((text) => looksLikeName(text))
  const distinct = new Set(names.map((name) => name.toLowerCase())).size
  const capital = names.filter(hasNameWords).length
  const isVaried = distinct >= 0.75 * names.length
  return names.length > 0 && names.length >= share * texts.length && isVaried && 2 * capital >= names.length
}
