import { findMarksheets, OWN_SHEET } from './find'
import { areaOf, isEmpty, viewOf, type Area, type CellRef, type Matrix, type View } from './matrix'
import { isHeadingLabel, looksLikeName, nameHeading } from './labels'
import { findNameColumns, nameIn } from './names'

/** Pupils' names in the order of the sheet, and the cells in which they stand. */
export interface ClassList {
  readonly names: readonly string[]
  readonly area: Area
}

/** How many rows may stand above the head of a column of names. */
const MOST_ROWS_ABOVE = 10

/** The names on a sheet: those of its first marksheet, else of its column of names (or first name and surname). Null for none. */
export function findClassList(matrix: Matrix): ClassList | null {
  if (String(matrix.values[0]?.[0] ?? '').startsWith(OWN_SHEET)) return null
  const pupils = findMarksheets(matrix)[0]?.pupils
  return pupils
    ? { names: pupils.map(({ name }) => name), area: areaOf(pupils.map(({ nameCells }) => nameCells)) }
    : listOf(viewOf(matrix, false))
}

/** The names in cells that the teacher has selected: one column or row, or columns among which the names are found. Null for none. */
export function classListIn(matrix: Matrix, { top, left, bottom, right }: Area): ClassList | null {
  const turned = top === bottom && right > left
  const values = matrix.values.slice(top, bottom + 1).map((row) => row.slice(left, right + 1))
  const view = viewOf({ name: matrix.name, values }, turned)
  const list = view.columns === 1 ? allIn(view) : listOf(view)
  if (list === null) return null
  const { area } = list
  const rows = { top: top + area.top, bottom: top + area.bottom }
  return { names: list.names, area: { ...rows, left: left + area.left, right: left + area.right } }
}

/** Every text of a single column but headings and sums: the teacher has said that they are names. */
function allIn(view: View): ClassList | null {
  const rows = rowsFrom(view, 0).filter((row) => {
    const text = view.text(row, 0)
    return !isHeadingLabel(text) && nameHeading(text) === null && /[\p{L}\d]/u.test(text)
  })
  return listed(
    rows.map((row) => view.text(row, 0)),
    rows.map((row) => view.ref(row, 0)),
  )
}

function listOf(view: View): ClassList | null {
  const columns = Array.from({ length: view.columns }, (_, column) => column)
  const header = headRow(view)
  const filled = rowsFrom(view, header + 1).filter((row) =>
    columns.some((column) => !isEmpty(view.value(row, column))),
  )
  const found = findNameColumns(view, header, columns, filled)
  if (found === null) return null
  const { first, surname } = found
  const isHeaded = nameHeading(view.text(header, first)) !== null
  const rows = filled.filter((row) => {
    const name = nameIn(view, found, row)
    return !isHeadingLabel(name) && (isHeaded ? /[\p{L}\d]/u.test(name) : looksLikeName(name))
  })
  const own = surname === null ? [first] : [first, surname]
  return listed(
    rows.map((row) => nameIn(view, found, row)),
    rows.flatMap((row) => own.map((column) => view.ref(row, column))),
  )
}

/** The row that heads the names, or −1 where none does. */
function headRow(view: View): number {
  return rowsFrom(view, 0)
    .slice(0, MOST_ROWS_ABOVE)
    .findIndex((row) =>
      Array.from({ length: view.columns }, (_, column) => view.text(row, column)).some(
        (text) => nameHeading(text) !== null,
      ),
    )
}

function rowsFrom(view: View, first: number): number[] {
  return Array.from({ length: Math.max(0, view.rows - first) }, (_, index) => first + index)
}

function listed(names: readonly string[], cells: readonly CellRef[]): ClassList | null {
  return names.length === 0 ? null : { names, area: areaOf([cells]) }
}
