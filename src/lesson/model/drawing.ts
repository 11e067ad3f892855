import { headOf } from './heads'
import type { Paper, PaperColumn, PaperRow, Standing } from './paper'

/** A figure of a drawing. `kind` says what it stands for; styles go by it. */
export type Shape =
  | {
      readonly shape: 'line'
      readonly kind: string
      readonly x1: number
      readonly y1: number
      readonly x2: number
      readonly y2: number
    }
  | {
      readonly shape: 'rect'
      readonly kind: string
      readonly x: number
      readonly y: number
      readonly width: number
      readonly height: number
    }
  | {
      readonly shape: 'circle'
      readonly kind: string
      readonly cx: number
      readonly cy: number
      readonly r: number
    }
  | { readonly shape: 'path'; readonly kind: string; readonly d: string }
  | {
      readonly shape: 'text'
      readonly kind: string
      readonly x: number
      readonly y: number
      readonly text: string
    }

/** A drawing of `width` by `height` units, its shapes from the back to the front. */
export interface Drawing {
  readonly width: number
  readonly height: number
  readonly shapes: readonly Shape[]
}

/** The side of a square, in units of the drawing. */
export const SQUARE = 40

/** The plain paper around the squares, in units of the drawing. */
export const MARGIN = 10

/**
 * Draws squared paper: letters over the columns, rows for marks, the top number, the sign and the bottom number, the answer
 * between two lines, and one below it for carried tens that stand there; a square for the sign and one for each digit, with the same margin on all sides.
 */
export function drawPaper(paper: Paper): Drawing {
  const { columns, above, below, current, points, unit } = paper
  const across = columns.length + 1
  const top = above + 1
  const rows = { top, bottom: top + 1, answer: top + 2, carried: below > 0 ? top + 3.4 : top - 0.35 }
  const end = rows.answer + 1
  const down = end + below
  const [width, height] = [across * SQUARE + 2 * MARGIN, down * SQUARE + 2 * MARGIN]
  const left = (index: number) => index + 1
  const working = columns.findIndex(({ place }) => place === current)
  const pointed = (['top', 'bottom', 'answer'] as const).flatMap((row): Shape[] => {
    const index = columns.findIndex(({ place }) => place === points[row])
    return index < 0 ? [] : [point(left(index + 1), rows[row] + 0.75)]
  })
  return {
    width,
    height,
    shapes: [
      { shape: 'rect', kind: 'sheet', x: 0, y: 0, width, height },
      ...(working < 0 ? [] : [band(left(working), down)]),
      ...squares(across, down),
      ...columns.map(({ place }, index) => text('head', left(index) + 0.5, 0.6, headOf(place, unit))),
      text('sign', 0.5, rows.bottom + 0.5, paper.sign),
      ...columns.flatMap((column, index) => columnShapes(column, left(index), rows)),
      ...pointed,
      line('rule', [0, rows.answer], [across, rows.answer]),
      line('rule', [0, end], [across, end]),
    ],
  }
}

type Rows = Readonly<Record<'top' | 'bottom' | 'answer' | 'carried', number>>

function columnShapes(column: PaperColumn, x: number, rows: Rows): Shape[] {
  const kind = (base: string, row: PaperRow) => (column.fresh.includes(row) ? `${base} fresh` : base)
  const middle = x + 0.5
  const levels = column.top.flatMap((level, index) => {
    const isFresh = index === column.top.length - 1 && column.fresh.includes('top')
    return standingShapes(level, x, rows.top - index, index > 0, isFresh)
  })
  const figures = (row: 'bottom' | 'answer') =>
    text(kind(column[row].length > 1 ? 'digit tight' : 'digit', row), middle, rows[row] + 0.5, column[row])
  return [
    ...levels,
    text(kind('carried', 'carried'), middle, rows.carried, column.carried),
    figures('bottom'),
    figures('answer'),
  ].filter((each) => each.shape !== 'text' || each.text !== '')
}

function standingShapes(
  { digit, ten, crossed }: Standing,
  x: number,
  row: number,
  isMark: boolean,
  isFresh: boolean,
): Shape[] {
  const fresh = (is: boolean) => (is ? ' fresh' : '')
  const [from, to] = [x + (ten ? 0.12 : 0.22), x + (ten ? 0.9 : 0.78)]
  return [
    text(
      `${isMark ? 'mark' : 'digit'}${isMark && digit > 9 ? ' tight' : ''}${fresh(isFresh && !ten)}`,
      x + (ten ? 0.6 : 0.5),
      row + (isMark ? 0.6 : 0.5),
      String(digit),
    ),
    ...(ten ? [text(`ten${fresh(isFresh)}`, x + 0.22, row + (isMark ? 0.42 : 0.3), '1')] : []),
    ...(crossed ? [line('cross', [from, row + 0.85], [to, row + 0.15])] : []),
  ]
}

/** Where so many squares from the left or the top are in the drawing. The shapes below are placed in squares. */
function at(squares: number): number {
  return MARGIN + squares * SQUARE
}

/** A text in the middle of a point. */
function text(kind: string, x: number, y: number, content: string): Shape {
  return { shape: 'text', kind, x: at(x), y: at(y), text: content }
}

function point(x: number, y: number): Shape {
  return { shape: 'circle', kind: 'point', cx: at(x), cy: at(y), r: SQUARE * 0.08 }
}

function band(x: number, down: number): Shape {
  return { shape: 'rect', kind: 'current', x: at(x), y: at(0), width: SQUARE, height: down * SQUARE }
}

type Place = readonly [x: number, y: number]

function line(kind: string, [x1, y1]: Place, [x2, y2]: Place): Shape {
  return { shape: 'line', kind, x1: at(x1), y1: at(y1), x2: at(x2), y2: at(y2) }
}

function squares(across: number, down: number): Shape[] {
  return [
    ...Array.from({ length: across + 1 }, (_, i) => line('square', [i, 0], [i, down])),
    ...Array.from({ length: down + 1 }, (_, i) => line('square', [0, i], [across, i])),
  ]
}
