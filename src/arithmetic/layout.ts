import { workOut, type Column } from './columns'
import { digitAt, type Numeral } from './numeral'
import type { Question } from './question'

/** What a cell of the layout stands in: the place of its column, or the column of the signs or of the decimal points. */
export type Head = number | 'sign' | 'point'

/**
 * One row. `mark`: what is written over the top digits in a subtraction; `carried`: the tens carried in an addition;
 * `top` and `bottom`: the two numbers; `answer`.
 */
export interface LayoutRow {
  readonly kind: 'mark' | 'carried' | 'top' | 'bottom' | 'answer'
  readonly cells: readonly string[]
}

/** The written layout, from the left: a head for each cell of a row, and the rows from the top. */
export interface Layout {
  readonly heads: readonly Head[]
  readonly rows: readonly LayoutRow[]
}

/** The digit set out in a column: the printed one, or the 0 that fills an empty place after the point; undefined where none stands. */
export function digitSetOut(numeral: Numeral, place: number): number | undefined {
  return digitAt(numeral, place) ?? (place < 0 ? 0 : undefined)
}

/** Whether one of the two numbers has a digit in the column; only a column that an addition carries into anew has none. */
export function hasDigits({ top, bottom }: Column): boolean {
  return top !== undefined || bottom !== undefined
}

/**
 * The finished written layout. Rows from the top: in a subtraction as many rows of marks as the column with most has, its
 * newest on top and all oldest ones just above the top digits; in an addition one row of carried tens where there are any (a
 * ten sent out of the last column is written straight into the answer); then top, bottom with the sign, answer. The zeros
 * of an empty place after the point are written in, zeros in front of the answer are not.
 */
export function layoutRows({ calculation }: Question): Layout {
  const { columns, answer } = workOut(calculation)
  const { operation, top, bottom } = calculation
  const fromLeft = [...columns].reverse()
  const hasPoint = answer.places > 0
  const heads = ['sign' as const, ...fromLeft.flatMap(({ place }) => headsAt(place, hasPoint))]
  const row = (
    kind: LayoutRow['kind'],
    sign: string,
    point: string,
    digit: (column: Column) => number | undefined,
  ) => {
    const digits = new Map(columns.map((column) => [column.place, digit(column)?.toString() ?? '']))
    const cells = heads.map((head) =>
      head === 'sign' ? sign : head === 'point' ? point : (digits.get(head) ?? ''),
    )
    return { kind, cells }
  }
  const marks = Math.max(...columns.map((column) => column.marks.length))
  const markRows = Array.from({ length: marks }, (_, index) =>
    row('mark', '', '', (column) => column.marks[marks - 1 - index]),
  )
  const isCarriedTo = (column: Column) => operation === 'add' && column.receives && hasDigits(column)
  const carriedRows = columns.some(isCarriedTo)
    ? [row('carried', '', '', (column) => (isCarriedTo(column) ? 1 : undefined))]
    : []
  const rows = [
    ...markRows,
    ...carriedRows,
    row('top', '', '.', ({ place }) => digitSetOut(top, place)),
    row('bottom', operation === 'add' ? '+' : '−', '.', ({ place }) => digitSetOut(bottom, place)),
    row('answer', '', '.', ({ place }) => digitAt(answer, place)),
  ]
  return { heads, rows }
}

/** The rows of `layoutRows` as cells of text: first the sign, then one cell for each column and one for the point; '' where empty. */
export function layoutOf(question: Question): readonly (readonly string[])[] {
  return layoutRows(question).rows.map(({ cells }) => cells)
}

function headsAt(place: number, hasPoint: boolean): Head[] {
  return place === 0 && hasPoint ? [place, 'point'] : [place]
}
