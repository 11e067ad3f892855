import type { Marksheet } from '../../src/marksheet/layout/find'
import type { Matrix } from '../../src/marksheet/layout/matrix'
import { valueAt } from '../../src/marksheet/marking/review'

/** How many answers of marksheets a sheet holds otherwise than it did before. */
export function changedAnswers(before: Matrix, now: Matrix, marksheets: readonly Marksheet[]): number {
  const cells = marksheets.flatMap(({ pupils }) => pupils.flatMap(({ answers }) => answers))
  return cells.filter((cell) => (valueAt(before, cell) ?? '') !== (valueAt(now, cell) ?? '')).length
}
