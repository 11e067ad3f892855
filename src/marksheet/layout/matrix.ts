import type { CellValue } from '../../answers/typed'

/**
 * What is read of a sheet: its cells from A1, row by row (rows may be of unequal length; what is missing is empty).
 * `formats` are number format codes ('General' where one is missing), `formulas` the formulas with their leading =, where a cell has one
 * ('' elsewhere), and `merges` the areas whose cells are merged; each may be left out. `is1904` where the workbook counts days from 1904.
 */
export interface Matrix {
  readonly name: string
  readonly values: readonly (readonly CellValue[])[]
  readonly formats?: readonly (readonly string[])[]
  readonly formulas?: readonly (readonly string[])[]
  readonly merges?: readonly Area[]
  readonly is1904?: boolean
}

/** A cell by its row and column, both from 0. */
export interface CellRef {
  readonly row: number
  readonly column: number
}

/** A rectangle of cells, first and last row and column included. */
export interface Area {
  readonly top: number
  readonly left: number
  readonly bottom: number
  readonly right: number
}

/** A column's letters: 0 is A, 26 is AA. */
export function columnLetters(column: number): string {
  const last = String.fromCharCode(65 + (column % 26))
  return column < 26 ? last : columnLetters(Math.floor(column / 26) - 1) + last
}

/** A cell's address: row 4, column 1 is "B5". */
export function addressOf({ row, column }: CellRef): string {
  return columnLetters(column) + String(row + 1)
}

/** An area's address: "B5:N33". */
export function areaAddress({ top, left, bottom, right }: Area): string {
  return `${addressOf({ row: top, column: left })}:${addressOf({ row: bottom, column: right })}`
}

/** The smallest area that holds all the cells of some lists; throws RangeError where there are none. */
export function areaOf(lists: Iterable<Iterable<CellRef>>): Area {
  let [top, left, bottom, right] = [Infinity, Infinity, -1, -1]
  for (const cells of lists) {
    for (const { row, column } of cells) {
      top = Math.min(top, row)
      left = Math.min(left, column)
      bottom = Math.max(bottom, row)
      right = Math.max(right, column)
    }
  }
  if (bottom < 0) throw new RangeError('No cells, so no area.')
  return { top, left, bottom, right }
}

/** Whether the cell holds nothing but white space. */
export function isEmpty(value: CellValue | undefined): boolean {
  return value === undefined || value === null || (typeof value === 'string' && value.trim() === '')
}

/** A sheet seen with pupils running down it: as it stands, or turned about its diagonal. */
export interface View {
  readonly rows: number
  readonly columns: number
  value(row: number, column: number): CellValue
  text(row: number, column: number): string
  formula(row: number, column: number): string
  /** The cell of the sheet itself. */
  ref(row: number, column: number): CellRef
}

/** The sheet as it stands, or turned about its diagonal so that what ran across runs down. */
export function viewOf(matrix: Matrix, turned: boolean): View {
  const height = matrix.values.length
  const width = matrix.values.reduce((most, row) => Math.max(most, row.length), 0)
  const ref = (row: number, column: number) => (turned ? { row: column, column: row } : { row, column })
  const value = (row: number, column: number) => {
    const cell = ref(row, column)
    return matrix.values[cell.row]?.[cell.column] ?? null
  }
  return {
    rows: turned ? width : height,
    columns: turned ? height : width,
    value,
    text: (row, column) => {
      const held = value(row, column)
      return isEmpty(held) ? '' : String(held).trim()
    },
    formula: (row, column) => {
      const cell = ref(row, column)
      return matrix.formulas?.[cell.row]?.[cell.column] ?? ''
    },
    ref,
  }
}

/** Whether a number format shows a date or a time ("d-mmm", "dd/mm/yyyy hh:mm"), colours, quoted text and locale marks aside. */
export function isDateFormat(format: string): boolean {
  const bare = format.replace(/"[^"]*"|\\.|_.|\*.|\[(?!h+\]|m+\]|s+\])[^\]]*\]/gi, '')
  return !/^general$/i.test(bare) && /[dmyhs]/i.test(bare)
}

/** The whole numbers from `first` to before `end`; none where `end` is not above it. */
export function range(first: number, end: number): number[] {
  return Array.from({ length: Math.max(0, end - first) }, (_, index) => first + index)
}
