import { printQuestion, type Question } from '../arithmetic/question'
import { addressOf, areaAddress, type Area } from '../marksheet/matrix'
import { cellsEdit, type SheetRef } from './cells'
import { perform, type Done } from './edit'
import { problemOf } from './errors'
import { UNWATCHED, type Work } from './work'

/** Which way questions run from the selected cell. */
export type Direction = 'across' | 'down'

/** Where questions are to go, and the cells there that are not empty. */
export interface Target {
  readonly sheet: SheetRef
  readonly area: Area
  readonly taken: readonly string[]
}

/** Looks at the cells from the first selected one on, as many as there are questions. Throws Problem. */
export async function readTarget(count: number, direction: Direction): Promise<Target> {
  try {
    return await Excel.run(async (context) => {
      const first = context.workbook.getSelectedRange().getCell(0, 0)
      const cells = first.getResizedRange(
        direction === 'down' ? count - 1 : 0,
        direction === 'across' ? count - 1 : 0,
      )
      const sheet = context.workbook.worksheets.getActiveWorksheet()
      first.load('rowIndex, columnIndex')
      cells.load('values')
      sheet.load('id, name')
      await context.sync()
      const { rowIndex: top, columnIndex: left } = first
      const values = cells.values as unknown[][]
      const taken = values.flatMap((row, i) =>
        row.flatMap((value, j) => (value === '' ? [] : [addressOf({ row: top + i, column: left + j })])),
      )
      const area = { top, left, bottom: top + values.length - 1, right: left + (values[0]?.length ?? 1) - 1 }
      return { sheet: { id: sheet.id, name: sheet.name }, area, taken }
    })
  } catch (error) {
    throw problemOf(error)
  }
}

/**
 * Writes questions into the cells of a target, as text. Cells that are not empty are written over only where the teacher was asked about
 * them: those of the target's `taken`. Throws Problem.
 */
export async function writeSet(
  questions: readonly Question[],
  { sheet, area, taken }: Target,
  work: Work = UNWATCHED,
): Promise<Done> {
  const texts = questions.map(printQuestion)
  const rows = area.top === area.bottom ? [texts] : texts.map((text) => [text])
  const isFree = taken.length > 0 ? undefined : (value: unknown) => value === ''
  const edit = cellsEdit(sheet, [{ top: area.top, left: area.left, rows }], isFree ? { isFree } : {})
  return perform(`questions in ${areaAddress(area)}`, [edit], work)
}
