/** Cells from a row and column to another, both included, counted from 0. */
export interface Cells {
  readonly top: number
  readonly left: number
  readonly bottom: number
  readonly right: number
}

/** Lines of cells: squared paper, a box around them all, a thick line over them, a thin line under them. */
export type Lines = 'squares' | 'box' | 'over' | 'under'

/** How cells look; what is left out stays as it is on a plain sheet. Size in points. */
export interface Look {
  readonly cells: Cells
  readonly size?: number
  readonly bold?: boolean
  readonly struck?: boolean
  readonly align?: 'centre' | 'right'
  readonly lines?: Lines
}

/** A text in a cell. */
export interface CellText {
  readonly row: number
  readonly column: number
  readonly text: string
}

/**
 * Cells that stay on one page: the heights of their rows in points, texts, and looks, of which a later one is laid over an earlier.
 * `leads` where the piece that follows must stand on the same page.
 */
export interface Piece {
  readonly heights: readonly number[]
  readonly texts: readonly CellText[]
  readonly looks: readonly Look[]
  readonly leads?: boolean
}

/** Empty rows between others. */
export function gap(height: number): Piece {
  return { heights: [height], texts: [], looks: [] }
}

/** One cell. */
export function cell(row: number, column: number): Cells {
  return { top: row, left: column, bottom: row, right: column }
}

/** A piece moved down and to the right. */
export function moved({ texts, looks, ...piece }: Piece, down: number, across: number): Piece {
  return {
    ...piece,
    texts: texts.map((text) => ({ ...text, row: text.row + down, column: text.column + across })),
    looks: looks.map((look) => ({
      ...look,
      cells: {
        top: look.cells.top + down,
        left: look.cells.left + across,
        bottom: look.cells.bottom + down,
        right: look.cells.right + across,
      },
    })),
  }
}

/** Pieces below each other as one. */
export function stacked(pieces: readonly Piece[]): Piece {
  let down = 0
  const all = pieces.map((piece) => {
    const placed = moved(piece, down, 0)
    down += piece.heights.length
    return placed
  })
  return {
    heights: all.flatMap(({ heights }) => heights),
    texts: all.flatMap(({ texts }) => texts),
    looks: all.flatMap(({ looks }) => looks),
    leads: pieces.at(-1)?.leads ?? false,
  }
}

/** Pieces side by side as one, each from a column on; a row is as high as the highest. */
export function beside(pieces: readonly (readonly [column: number, piece: Piece])[]): Piece {
  const rows = Math.max(0, ...pieces.map(([, { heights }]) => heights.length))
  const all = pieces.map(([column, piece]) => moved(piece, 0, column))
  return {
    heights: Array.from({ length: rows }, (_, row) =>
      Math.max(...all.map(({ heights }) => heights[row] ?? 0)),
    ),
    texts: all.flatMap(({ texts }) => texts),
    looks: all.flatMap(({ looks }) => looks),
  }
}

/** The items in rows of so many. */
export function inRows<T>(items: readonly T[], count: number): T[][] {
  return Array.from({ length: Math.ceil(items.length / count) }, (_, row) =>
    items.slice(row * count, (row + 1) * count),
  )
}
