import { isEmpty, type CellRef } from '../../marksheet/layout/matrix'
import { cellsEdit, type Block, type Content, type SheetRef } from '../edit/cells'
import { perform, type Done } from '../edit/edit'
import { UNWATCHED, type Work } from '../edit/work'

/** An answer for a cell. */
export interface AnswerFor {
  readonly cell: CellRef
  readonly content: string | number
}

/**
 * Writes answers into blank cells, and over those cells that still hold what the teacher was shown (`held`, as text). Refuses the whole where
 * a cell holds anything else by now. Throws Problem.
 */
export function writeAnswers(
  sheet: SheetRef,
  blank: readonly AnswerFor[],
  over: readonly (AnswerFor & { readonly held: string })[],
  work: Work = UNWATCHED,
): Promise<Done> {
  const isBlank = (value: unknown, formula: unknown) =>
    isEmpty(value as Content & string) && (formula ?? '') === ''
  const edits = [
    ...(blank.length === 0 ? [] : [cellsEdit(sheet, blocksOf(blank), { isFree: isBlank })]),
    ...over.map((answer) =>
      cellsEdit(sheet, blocksOf([answer]), {
        isFree: (value, formula) => [String(value), String(formula)].includes(answer.held),
      }),
    ),
  ]
  return perform(`collected answers on ${sheet.name}`, edits, work)
}

/** The answers as blocks of cells that stand side by side. */
function blocksOf(answers: readonly AnswerFor[]): Block[] {
  const blocks: { top: number; left: number; rows: [Content[]] }[] = []
  for (const { cell, content } of [...answers].sort(
    (a, b) => a.cell.row - b.cell.row || a.cell.column - b.cell.column,
  )) {
    const last = blocks.at(-1)
    if (last?.top === cell.row && last.left + last.rows[0].length === cell.column) last.rows[0].push(content)
    else blocks.push({ top: cell.row, left: cell.column, rows: [[content]] })
  }
  return blocks
}
