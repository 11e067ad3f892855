import type { Question } from '../../arithmetic/question'
import { finishedPaper, type Paper, type PaperColumn } from './paper'

/** One cell of a written layout: its text ('' where empty), and whether another value has taken its place. */
export interface PaperCell {
  readonly text: string
  readonly crossed: boolean
}

/**
 * One row. `mark`: what is written over the top digits; `carried`: the tens carried; the two numbers; the answer. For pupils to fill in:
 * `heads` over the columns, and empty `boxes` for marks or carried tens.
 */
export interface PaperLine {
  readonly kind: 'mark' | 'carried' | 'top' | 'bottom' | 'answer' | 'heads' | 'boxes'
  readonly cells: readonly PaperCell[]
}

/** The small 1 beside a digit that received a ten. */
const SMALL_ONE = '¹'
const EMPTY: PaperCell = { text: '', crossed: false }

/** What stands on paper as rows of cells: the sign, then one cell for each column and one for each decimal point. */
export function gridOf({ sign, columns, points, above, below, notation }: Paper): PaperLine[] {
  const pointed = new Set(Object.values(points))
  const row = (
    kind: PaperLine['kind'],
    cellIn: (column: PaperColumn) => PaperCell,
    point: number | null = null,
    first = '',
  ): PaperLine => ({
    kind,
    cells: [
      { text: first, crossed: false },
      ...columns.flatMap((column) => [
        cellIn(column),
        ...(pointed.has(column.place)
          ? [column.place === point ? { text: '.', crossed: false } : EMPTY]
          : []),
      ]),
    ],
  })
  const written = (text: string): PaperCell => ({ text, crossed: false })
  const level = (index: number) => (column: PaperColumn) => {
    const standing = column.top[index]
    if (!standing) return EMPTY
    return { text: `${standing.ten ? SMALL_ONE : ''}${standing.digit}`, crossed: standing.crossed }
  }
  const carried = row('carried', (column) => written(column.carried))
  const isCarriedAbove = notation.carry === 'above' && columns.some((column) => column.carried !== '')
  const over = isCarriedAbove
    ? Array.from({ length: above }, () => carried)
    : Array.from({ length: above }, (_, index) => row('mark', level(above - index)))
  return [
    ...over,
    row('top', level(0), points.top),
    row('bottom', (column) => written(column.bottom), points.bottom, sign),
    row('answer', (column) => written(column.answer), points.answer),
    ...Array.from({ length: below }, () => carried),
  ]
}

/**
 * The finished written layout as cells of text, a digit to a cell, for the function LAYOUT, which knows no settings: changed numbers
 * written above, the newest on top, and carried tens above the top number.
 */
export function layoutOf(question: Question): string[][] {
  const paper = finishedPaper(question, { exchange: 'above', carry: 'above' })
  return gridOf(paper).map(({ cells }) => cells.map(({ text }) => text))
}
