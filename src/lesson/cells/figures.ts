import type { Layout } from '../../arithmetic/layout'
import type { GridCell, Room, TriangleFigure, Working } from '../handout'
import type { Bar, Piece as BarPiece } from '../stories/bars'
import { COLUMNS, lineHeight, linesOf, SIDE, widthOf, type Sizes } from './paper'
import { beside, cell, gap, inRows, stacked, type CellText, type Look, type Piece } from './piece'

/** The widest figure of which two stand side by side, in columns. */
const HALF = 11
const SECOND = COLUMNS - HALF

/** The column in whose middle a text stands centred between two columns; it runs over the empty cells beside it. */
const middle = (left: number, right: number) => Math.floor((left + right) / 2)

/** A line or more of text from a column of its own piece, in letters of a size. */
export function textPiece(
  text: string,
  size: number,
  { bold = false, columns = COLUMNS, from = 0 }: { bold?: boolean; columns?: number; from?: number } = {},
): Piece {
  const lines = linesOf(text, (columns - from) * SIDE - 4, size, bold)
  return {
    heights: lines.map(() => lineHeight(size)),
    texts: lines.map((line, row) => ({ row, column: from, text: line })),
    looks: [{ cells: { top: 0, left: from, bottom: lines.length - 1, right: from }, size, bold }],
  }
}

/** Lines to fill in, each behind its name, over so many columns. */
export function fieldsPiece(names: readonly string[], size: number, columns = COLUMNS): Piece {
  const each = Math.floor(columns / names.length)
  const fields = names.map((name, index) => {
    const left = index * each
    const line = left + Math.ceil((widthOf(name, size) + 4) / SIDE)
    const right = Math.max(line, left + each - (index < names.length - 1 ? 2 : 1))
    return { name, left, line, right }
  })
  return {
    heights: [26],
    texts: fields.map(({ name, left }) => ({ row: 0, column: left, text: name })),
    looks: fields.flatMap(({ left, line, right }): Look[] => [
      { cells: cell(0, left), size },
      { cells: { top: 0, left: line, bottom: 0, right }, lines: 'under' },
    ]),
  }
}

/** Below a room, in points; a page that holds nothing else has five rooms of six squares below each other. */
const ROOM_GAP = 8

/** Rooms of squared paper, two beside each other, each row of them a piece. */
export function roomPieces(rooms: readonly Room[], { text: size }: Sizes): Piece[] {
  return inRows(rooms, 2).map((pair) => {
    const captions = pair.map((room) => captionPiece(room, HALF, size))
    const rows = Math.max(...captions.map(({ heights }) => heights.length))
    return stacked([
      beside(
        pair.map((room, index) => {
          const caption = captions[index] ?? gap(0)
          const missing = rows - caption.heights.length
          const above = Array.from({ length: missing }, () => gap(lineHeight(size)))
          return [index === 0 ? 0 : SECOND, stacked([caption, ...above, roomPiece(room, size)])]
        }),
      ),
      gap(ROOM_GAP),
    ])
  })
}

function roomPiece({ columns, rows, line }: Room, size: number): Piece {
  const squares: Piece = {
    heights: Array<number>(rows).fill(SIDE),
    texts: [],
    looks: [{ cells: { top: 0, left: 0, bottom: rows - 1, right: columns - 1 }, lines: 'squares' }],
  }
  return line === '' ? squares : stacked([squares, fieldsPiece([line], size, columns)])
}

/** A number and a text over a figure; no row where both are empty. */
function captionPiece(
  { label, text }: { readonly label: string; readonly text: string },
  columns: number,
  size: number,
): Piece {
  if (label === '' && text === '') return { heights: [], texts: [], looks: [] }
  const from = label === '' ? 0 : 1
  const words = textPiece(text, size, { columns, from })
  if (label === '') return words
  return {
    ...words,
    texts: [{ row: 0, column: 0, text: label }, ...words.texts],
    looks: [...words.looks, { cells: cell(0, 0), size, bold: true }],
  }
}

/** A written working, one sign in a cell; digits that were changed are crossed out. */
export function writtenPiece({ rows }: Layout, size: number, height = SIDE): Piece {
  const right = (rows[0]?.cells.length ?? 1) - 1
  const isSmall = (kind: string) => kind === 'mark' || kind === 'carried'
  const marks = rows.map(({ kind }) => kind === 'mark')
  const all = { top: 0, left: 0, bottom: rows.length - 1, right }
  return {
    heights: rows.map(() => height),
    texts: rows.flatMap(({ cells }, row) =>
      cells.flatMap((text, column): CellText[] => (text === '' ? [] : [{ row, column, text }])),
    ),
    looks: [
      { cells: all, size, align: 'centre', lines: 'squares' },
      ...rows.flatMap(({ kind, cells }, row): Look[] => [
        ...(isSmall(kind) ? [{ cells: { ...all, top: row, bottom: row }, size: size - 3 }] : []),
        ...(kind === 'answer'
          ? [{ cells: { ...all, top: row, bottom: row }, bold: true, lines: 'over' as const }]
          : []),
        ...(kind === 'mark' || kind === 'top'
          ? cells.flatMap((text, column): Look[] =>
              text !== '' &&
              rows.slice(0, row).some((above, index) => marks[index] && above.cells[column] !== '')
                ? [{ cells: cell(row, column), struck: true }]
                : [],
            )
          : []),
      ]),
    ],
  }
}

/** One working, large, with its steps beside it. */
export function workedPiece({ layout }: Working, steps: readonly string[], sizes: Sizes): Piece {
  const written = writtenPiece(layout, 13)
  const from = layout.heads.length + 1
  const told = steps.map((step, index) => {
    const lines = textPiece(step, sizes.small, { from: from + 1 })
    return {
      ...lines,
      texts: [{ row: 0, column: from, text: `${index + 1}.` }, ...lines.texts],
      looks: [...lines.looks, { cells: cell(0, from), size: sizes.small }],
    }
  })
  return stacked([
    beside([
      [0, written],
      [0, stacked(told)],
    ]),
    gap(8),
  ])
}

/** Workings beside each other, small, each with its number, question and answer. */
export function workingPieces(workings: readonly Working[], { text: size }: Sizes): Piece[] {
  const across = workings.map(({ text, layout }) =>
    Math.max(layout.heads.length + 1, 1 + Math.ceil((widthOf(text, size) + 8) / SIDE)),
  )
  const each = Math.max(...across)
  const count = Math.max(1, Math.floor((COLUMNS + 1) / each))
  const apart = Math.floor((COLUMNS + 1) / count)
  return inRows(workings, count).map((row) =>
    stacked([
      beside(
        row.map((working, index) => [
          index * apart,
          stacked([
            captionPiece(working, apart, size),
            writtenPiece(working.layout, size, lineHeight(size)),
            textPiece(working.answer, size, { bold: true, columns: apart }),
          ]),
        ]),
      ),
      gap(8),
    ]),
  )
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
  return rows.map((row) =>
    beside(
      row.map(({ text, note }, index) => {
        const lines = note === '' ? [text] : [text, note]
        const right = columns - 1
        return [
          index * columns,
          {
            heights: lines.map(() => Math.round(height / lines.length)),
            texts: lines.map((line, at) => ({ row: at, column: middle(0, right), text: line })),
            looks: [
              ...lines.map((_, at): Look => ({
                cells: cell(at, middle(0, right)),
                size: at === 0 ? size : Math.min(size, sizes.small),
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

/** The fewest columns of a part of a bar, so that its amount can be read and written. */
const NARROWEST = 3

/** Bar models, two beside each other: the whole above its two parts. */
export function barPieces(bars: readonly Bar[], isComplete: boolean, { small, text }: Sizes): Piece[] {
  return inRows(bars, 2).map((pair) =>
    stacked([
      beside(pair.map((bar, index) => [index === 0 ? 0 : SECOND, barPiece(bar, isComplete, small, text)])),
      gap(8),
    ]),
  )
}

function barPiece(
  { whole, parts: [first, second] }: Bar,
  isComplete: boolean,
  small: number,
  size: number,
): Piece {
  const share = Math.round((HALF * first.length) / whole.length)
  const split = Math.min(Math.max(share, NARROWEST), HALF - NARROWEST)
  const boxes: readonly (readonly [BarPiece, row: number, left: number, right: number])[] = [
    [whole, 1, 0, HALF - 1],
    [first, 2, 0, split - 1],
    [second, 2, split, HALF - 1],
  ]
  return {
    heights: [lineHeight(small), SIDE + 2, SIDE + 2, lineHeight(small)],
    texts: [
      { row: 0, column: 0, text: whole.label },
      ...boxes.map(([piece, row, left, right]) => ({
        row,
        column: middle(left, right),
        text: amountIn(piece, isComplete),
      })),
      { row: 3, column: 0, text: first.label },
      { row: 3, column: HALF - 1, text: second.label },
    ],
    looks: [
      { cells: cell(0, 0), size: small },
      ...boxes.flatMap(([, row, left, right]): Look[] => [
        { cells: { top: row, left, bottom: row, right }, lines: 'box' },
        { cells: cell(row, middle(left, right)), size, align: 'centre' },
      ]),
      { cells: cell(3, 0), size: small },
      { cells: cell(3, HALF - 1), size: small, align: 'right' },
    ],
  }
}

function amountIn({ amount, role }: BarPiece, isComplete: boolean): string {
  if (isComplete || role === 'told') return amount
  return role === 'asked' ? '?' : ''
}
