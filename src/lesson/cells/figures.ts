import type { Room, Working } from '../handout'
import type { Stage } from '../stages'
import { gridOf, type PaperLine } from '../model/grid'
import type { Paper } from '../model/paper'
import { COLUMNS, HALF, lineHeight, linesOf, SECOND, SIDE, widthOf, type Sizes } from './paper'
import { beside, cell, gap, inRows, stacked, type CellText, type Look, type Piece } from './piece'

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

/** Rooms of squared paper, two or three beside each other, each row of them a piece. */
export function roomPieces(rooms: readonly Room[], { text: size }: Sizes, across: 2 | 3 = 2): Piece[] {
  const apart = across === 3 ? COLUMNS / 3 : SECOND
  const width = across === 3 ? apart - 1 : HALF
  return inRows(rooms, across).map((pair) => {
    const captions = pair.map((room) => captionPiece(room, width, size))
    const rows = Math.max(...captions.map(({ heights }) => heights.length))
    return stacked([
      beside(
        pair.map((room, index) => {
          const caption = captions[index] ?? gap(0)
          const missing = rows - caption.heights.length
          const above = Array.from({ length: missing }, () => gap(lineHeight(size)))
          return [index * apart, stacked([caption, ...above, roomPiece(room, size)])]
        }),
      ),
      gap(ROOM_GAP),
    ])
  })
}

function roomPiece({ columns, rows, above, line, given }: Room, size: number): Piece {
  const squares: Piece = {
    heights: Array<number>(rows).fill(SIDE),
    texts: [],
    looks: [{ cells: { top: 0, left: 0, bottom: rows - 1, right: columns - 1 }, lines: 'squares' }],
  }
  return stacked([
    ...(above === '' ? [] : [fieldsPiece([above], size, columns), gap(4)]),
    given ? linesPiece(given, size) : squares,
    ...(line === '' ? [] : [fieldsPiece([line], size, columns)]),
  ])
}

/** A number and a text over a figure; no row where both are empty. */
export function captionPiece(
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
export function writtenPiece(paper: Paper, size: number, height = SIDE): Piece {
  return linesPiece(gridOf(paper), size, height)
}

/** Lines of a written working, begun or finished, one sign in a cell. */
function linesPiece(rows: readonly PaperLine[], size: number, height = SIDE): Piece {
  const right = (rows[0]?.cells.length ?? 1) - 1
  const isSmall = (kind: string) => kind === 'mark' || kind === 'carried' || kind === 'heads'
  const all = { top: 0, left: 0, bottom: rows.length - 1, right }
  return {
    heights: rows.map(() => height),
    texts: rows.flatMap(({ cells }, row) =>
      cells.flatMap(({ text }, column): CellText[] => (text === '' ? [] : [{ row, column, text }])),
    ),
    looks: [
      { cells: all, size, align: 'centre', lines: 'squares' },
      ...rows.flatMap(({ kind, cells }, row): Look[] => [
        ...(isSmall(kind) ? [{ cells: { ...all, top: row, bottom: row }, size: size - 3 }] : []),
        ...(kind === 'answer'
          ? [{ cells: { ...all, top: row, bottom: row }, bold: true, lines: 'over' as const }]
          : []),
        ...(kind === 'boxes'
          ? cells.flatMap((_, column): Look[] =>
              column === 0 ? [] : [{ cells: cell(row, column), lines: 'box' }],
            )
          : []),
        ...cells.flatMap(({ crossed }, column): Look[] =>
          crossed ? [{ cells: cell(row, column), struck: true }] : [],
        ),
      ]),
    ],
  }
}

/** One working, large. */
export function workedPiece({ paper }: Working): Piece {
  return stacked([writtenPiece(paper, 13), gap(8)])
}

/** Height of a square in the pictures of a working, in points. */
const STAGE_SIDE = 17

/** A working in pictures, one below the other, each with its number and what is said of it. */
export function stagePieces(stages: readonly Stage[], { small }: Sizes): Piece[] {
  return stages.map(({ paper, says }, index) => {
    const from = acrossOf(paper) + 2
    const number: Piece = {
      heights: [STAGE_SIDE],
      texts: [{ row: 0, column: 0, text: `${index + 1}` }],
      looks: [{ cells: cell(0, 0), size: small, bold: true }],
    }
    return stacked([
      beside([
        [0, number],
        [1, writtenPiece(paper, 11, STAGE_SIDE)],
        [0, stacked(says.map((say) => textPiece(say, small, { from })))],
      ]),
      gap(8),
    ])
  })
}

/** Workings beside each other, small, each with its number, question and answer. */
export function workingPieces(workings: readonly Working[], { text: size, small }: Sizes): Piece[] {
  const across = workings.map(({ text, paper }) =>
    Math.max(acrossOf(paper) + 1, 1 + Math.ceil((widthOf(text, size) + 8) / SIDE)),
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
            writtenPiece(working.paper, size, lineHeight(size)),
            textPiece(working.answer, size, { bold: true, columns: apart }),
            ...working.notes.map((note) => textPiece(note, small, { columns: apart - 1 })),
          ]),
        ]),
      ),
      gap(8),
    ]),
  )
}

/** How many cells a working is wide. */
function acrossOf(paper: Paper): number {
  return gridOf(paper)[0]?.cells.length ?? 0
}
