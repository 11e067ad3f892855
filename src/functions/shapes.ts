import { askedIn, unusable, type Asked } from './cells'

/** A range as a host passes it: rows of cells, all of one length, at least one cell. */
export type Range = readonly (readonly unknown[])[]

/** Rows and columns of a range. */
function sizeOf(range: Range): { rows: number; columns: number } {
  return { rows: range.length, columns: range[0]?.length ?? 0 }
}

/** How many cells a range has. */
export function cellsIn(range: Range): number {
  const { rows, columns } = sizeOf(range)
  return rows * columns
}

/** A range read as rows of questions. */
export function questionsIn(range: Range): Asked[][] {
  return range.map((row) => row.map(askedIn))
}

const DO_NOT_FIT =
  'The questions must be one row as wide as the answers, one column as tall, or a range of the same size.'

/**
 * Lays questions over typed answers: a row of questions stands over every row of answers, a column of questions beside every
 * column, a range of the same size cell on cell. The result has the shape of the answers. Throws #VALUE! where they do not fit.
 */
export function questionsOver(questions: Range, typed: Range): Asked[][] {
  const asked = questionsIn(questions)
  const { rows, columns } = sizeOf(questions)
  const wanted = sizeOf(typed)
  const rowFits = rows === 1 || rows === wanted.rows
  const columnFits = columns === 1 || columns === wanted.columns
  const isOneCellForMany = rows < wanted.rows && columns < wanted.columns
  if (!rowFits || !columnFits || isOneCellForMany) throw unusable(DO_NOT_FIT)
  return typed.map((row, r) => row.map((_, c) => asked[rows === 1 ? 0 : r]?.[columns === 1 ? 0 : c] ?? null))
}

/** The range with rows and columns exchanged. */
export function transposed<T>(range: readonly (readonly T[])[]): T[][] {
  return (range[0] ?? []).map((_, column) => range.flatMap((row) => row.slice(column, column + 1)))
}
