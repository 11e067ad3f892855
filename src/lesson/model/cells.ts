import { layoutRows, type LayoutRow } from '../../arithmetic/layout'
import type { Question } from '../../arithmetic/question'

/** One cell of a written layout: its text ('' where empty), its row's kind, and whether another value has taken its place. */
export interface LayoutCell {
  readonly text: string
  readonly kind: LayoutRow['kind']
  readonly crossed: boolean
}

/** The finished written layout as cells, rows from the top. In a column of exchange marks all but the newest are crossed out. */
export function layoutCells(question: Question): LayoutCell[][] {
  const { rows } = layoutRows(question)
  const isAbove = (above: LayoutRow, column: number) => above.kind === 'mark' && above.cells[column] !== ''
  return rows.map(({ kind, cells }, index) =>
    cells.map((text, column) => ({
      text,
      kind,
      crossed:
        (kind === 'mark' || kind === 'top') &&
        text !== '' &&
        rows.slice(0, index).some((above) => isAbove(above, column)),
    })),
  )
}
