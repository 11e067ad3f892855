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

const HEADS = ['O', 'T', 'H', 'Th', 'TTh', 'HTh', 'M', 'TM', 'HM']
const DECIMAL_HEADS = ['t', 'h', 'th']

/** The letters over a column as primary books print them: O, T, H, Th, and t, h, th after the point; '' beyond hundreds of millions. */
export function headOf(place: number): string {
  return (place < 0 ? DECIMAL_HEADS[-place - 1] : HEADS[place]) ?? ''
}

/**
 * Draws squared paper: letters over the columns, rows for marks, the top number, the sign and the bottom number, the answer
 * between two lines; a digit to a square, one empty square on the right.
 */
export function drawPaper(paper: Paper): Drawing {
  const { columns, above, current, points } = paper
  const across = columns.length + 2
  const top = above + 1
  const rows = { top, bottom: top + 1, answer: top + 2 }
  const [width, height] = [across * SQUARE, (rows.answer + 1) * SQUARE]
  const left = (index: number) => (index + 1) * SQUARE
  const at = columns.findIndex(({ place }) => place === current)
  const pointed = (['top', 'bottom', 'answer'] as const).flatMap((row): Shape[] => {
    const index = columns.findIndex(({ place }) => place === points[row])
    return index < 0 ? [] : [point(left(index + 1), (rows[row] + 0.75) * SQUARE)]
  })
  return {
    width,
    height,
    shapes: [
      { shape: 'rect', kind: 'sheet', x: 0, y: 0, width, height },
      ...(at < 0 ? [] : [band(left(at), height)]),
      ...squares(across, rows.answer + 1),
      ...columns.map(({ place }, index) => text('head', left(index) + SQUARE / 2, 0.6, headOf(place))),
      text('sign', SQUARE / 2, rows.bottom + 0.5, paper.sign),
      ...columns.flatMap((column, index) => columnShapes(column, left(index), rows)),
      ...pointed,
      rule(rows.answer * SQUARE, width),
      rule((rows.answer + 1) * SQUARE - 1, width),
    ],
  }
}

type Rows = Readonly<Record<'top' | 'bottom' | 'answer', number>>

function columnShapes(column: PaperColumn, x: number, rows: Rows): Shape[] {
  const kind = (base: string, row: PaperRow) => (column.fresh.includes(row) ? `${base} fresh` : base)
  const middle = x + SQUARE / 2
  const levels = column.top.flatMap((level, index) => {
    const isFresh = index === column.top.length - 1 && column.fresh.includes('top')
    return standingShapes(level, x, rows.top - index, index > 0, isFresh)
  })
  const figures = (row: 'bottom' | 'answer') =>
    text(kind(column[row].length > 1 ? 'digit tight' : 'digit', row), middle, rows[row] + 0.5, column[row])
  return [
    ...levels,
    text(kind('carried', 'carried'), middle, rows.top - 0.35, column.carried),
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
  const y = row * SQUARE
  const across = x + SQUARE * (ten ? 0.6 : 0.5)
  const [from, to] = [x + SQUARE * (ten ? 0.12 : 0.22), x + SQUARE * (ten ? 0.9 : 0.78)]
  return [
    text(
      `${isMark ? 'mark' : 'digit'}${fresh(isFresh && !ten)}`,
      across,
      row + (isMark ? 0.6 : 0.5),
      String(digit),
    ),
    ...(ten ? [text(`ten${fresh(isFresh)}`, x + SQUARE * 0.22, row + (isMark ? 0.42 : 0.3), '1')] : []),
    ...(crossed
      ? [
          {
            shape: 'line' as const,
            kind: 'cross',
            x1: from,
            y1: y + SQUARE * 0.85,
            x2: to,
            y2: y + SQUARE * 0.15,
          },
        ]
      : []),
  ]
}

/** A text in the middle of a point; `row` in squares from the top. */
function text(kind: string, x: number, row: number, content: string): Shape {
  return { shape: 'text', kind, x, y: row * SQUARE, text: content }
}

function point(cx: number, cy: number): Shape {
  return { shape: 'circle', kind: 'point', cx, cy, r: SQUARE * 0.08 }
}

function band(x: number, height: number): Shape {
  return { shape: 'rect', kind: 'current', x, y: 0, width: SQUARE, height }
}

function rule(y: number, width: number): Shape {
  return { shape: 'line', kind: 'rule', x1: SQUARE * 0.1, y1: y, x2: width - SQUARE * 0.6, y2: y }
}

function squares(across: number, down: number): Shape[] {
  const line = (x1: number, y1: number, x2: number, y2: number): Shape => ({
    shape: 'line',
    kind: 'square',
    x1: x1 * SQUARE,
    y1: y1 * SQUARE,
    x2: x2 * SQUARE,
    y2: y2 * SQUARE,
  })
  return [
    ...Array.from({ length: across + 1 }, (_, i) => line(i, 0, i, down)),
    ...Array.from({ length: down + 1 }, (_, i) => line(0, i, across, i)),
  ]
}
