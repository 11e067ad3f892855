import type { GridCell, TriangleFigure } from '../handout'
import { amountShown, type Bar, type Piece as BarPiece, type Shown } from '../stories/bars'
import { captionPiece } from './figures'
import { COLUMNS, HALF, lineHeight, SECOND, SIDE, widthOf, type Sizes } from './paper'
import { beside, cell, gap, inRows, stacked, type CellText, type Look, type Piece } from './piece'

/** The column in whose middle a text stands centred between two columns; it runs over the empty cells beside it. */
const middle = (left: number, right: number) => Math.floor((left + right) / 2)

/** The width of a space, as a part of the size of letters. */
const SPACE = 0.3

/** A text in the middle of some columns: where their number is even, spaces as wide as a column move it half a column to the right. */
function centred(text: string, row: number, left: number, right: number, size: number): CellText {
  const isBetween = (left + right) % 2 === 1 && text !== ''
  const spaces = isBetween ? ' '.repeat(Math.round(SIDE / (SPACE * size))) : ''
  return { row, column: middle(left, right), text: `${spaces}${text}` }
}

/** The heights of a grid's cells in points, for pupils to cover and for adults to read. */
const GRID_HEIGHT = { most: 90, all: 500, adult: 40 } as const

/** A grid of boxes, each row of them a piece. */
export function gridPieces(
  rows: readonly (readonly GridCell[])[],
  reader: 'pupil' | 'adult',
  sizes: Sizes,
): Piece[] {
  const columns = Math.floor(COLUMNS / Math.max(1, ...rows.map((row) => row.length)))
  const texts = rows.flatMap((row) => row.map(({ text }) => text))
  const widest = Math.max(...texts.map((text) => widthOf(text, 1)))
  const free = (columns % 2 === 1 ? columns : columns - 1) * SIDE - 4
  const size = Math.min(reader === 'pupil' ? sizes.title : sizes.text, Math.floor(free / widest))
  const height =
    reader === 'adult' ? GRID_HEIGHT.adult : Math.min(GRID_HEIGHT.most, GRID_HEIGHT.all / rows.length)
  const sizeIn = (line: number) => (line === 0 ? size : Math.min(size, sizes.small))
  return rows.map((row) =>
    beside(
      row.map(({ text, note }, index) => {
        const lines = note === '' ? [text] : [text, note]
        const right = columns - 1
        return [
          index * columns,
          {
            heights: lines.map(() => Math.round(height / lines.length)),
            texts: lines.map((line, at) => centred(line, at, 0, right, sizeIn(at))),
            looks: [
              ...lines.map((_, at): Look => ({
                cells: cell(at, middle(0, right)),
                size: sizeIn(at),
                align: 'centre',
              })),
              { cells: { top: 0, left: 0, bottom: lines.length - 1, right }, lines: 'box' },
            ],
          },
        ]
      }),
    ),
  )
}

/** Where the nine boxes of a triangle stand, by column and row, from the top corner clockwise, and where its total does. */
const BOXES: readonly (readonly [number, number])[] = [
  [5, 0],
  [7, 2],
  [8, 4],
  [10, 6],
  [7, 6],
  [3, 6],
  [0, 6],
  [2, 4],
  [3, 2],
]
const TOTAL = [5, 4] as const

/** Number triangles of boxes, two beside each other. */
export function trianglePieces(triangles: readonly TriangleFigure[], sizes: Sizes): Piece[] {
  return inRows(triangles, 2).map((pair) =>
    stacked([
      beside(
        pair.map((figure, index) => [
          index === 0 ? 0 : SECOND,
          stacked([captionPiece({ label: '', text: figure.label }, HALF, sizes.text), trianglePiece(figure)]),
        ]),
      ),
      gap(30),
    ]),
  )
}

function trianglePiece({ total, numbers }: TriangleFigure): Piece {
  const [column, row] = TOTAL
  const given = BOXES.flatMap(([x, y], place): CellText[] => {
    const number = numbers[place] ?? null
    return number === null ? [] : [{ row: y, column: x, text: String(number) }]
  })
  return {
    heights: Array<number>(7).fill(SIDE + 4),
    texts: [...given, { row, column, text: String(total) }],
    looks: [
      ...BOXES.map(([x, y]): Look => ({ cells: cell(y, x), size: 14, align: 'centre', lines: 'box' })),
      { cells: cell(row, column), size: 18, bold: true, align: 'centre' },
    ],
  }
}

/** Where bars are cut that show no amounts. */
const BLANK_SHARE = 0.6
/** The fewest columns of a part of a bar, so that its amount can be read and written. */
const NARROWEST = 3

/** Bar models, two beside each other: the whole above its two parts; a difference has no box. */
export function barPieces(bars: readonly Bar[], shown: Shown, { small, text }: Sizes): Piece[] {
  return inRows(bars, 2).map((pair) =>
    stacked([
      beside(pair.map((bar, index) => [index === 0 ? 0 : SECOND, barPiece(bar, shown, small, text)])),
      gap(8),
    ]),
  )
}

function barPiece(
  { compares, whole, parts: [first, second] }: Bar,
  shown: Shown,
  small: number,
  size: number,
): Piece {
  const share = Math.round(shown === 'nothing' ? BLANK_SHARE * HALF : (HALF * first.length) / whole.length)
  const split = Math.min(Math.max(share, NARROWEST), HALF - NARROWEST)
  const difference = compares ? second : null
  const boxes: readonly (readonly [BarPiece, row: number, left: number, right: number])[] = [
    [whole, 1, 0, HALF - 1],
    [first, 2, 0, split - 1],
    [second, 2, split, HALF - 1],
  ]
  return {
    heights: [lineHeight(small), SIDE + 2, SIDE + 2, lineHeight(small)],
    texts: [
      { row: 0, column: 0, text: whole.label },
      ...boxes.map(([piece, row, left, right]) => centred(amountShown(piece, shown), row, left, right, size)),
      { row: 3, column: 0, text: first.label },
      { row: 3, column: HALF - 1, text: second.label },
    ],
    looks: [
      { cells: cell(0, 0), size: small },
      ...boxes.flatMap(([piece, row, left, right]): Look[] => [
        ...(piece === difference
          ? []
          : [{ cells: { top: row, left, bottom: row, right }, lines: 'box' } as const]),
        { cells: cell(row, middle(left, right)), size, align: 'centre' },
      ]),
      { cells: cell(3, 0), size: small },
      { cells: cell(3, HALF - 1), size: small, align: 'right' },
    ],
  }
}
