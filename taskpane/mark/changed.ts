import type { Marksheet } from '../../src/marksheet/find'
import type { Matrix } from '../../src/marksheet/matrix'
import { valueAt } from '../../src/marksheet/review'

/** How many answers of marksheets a sheet holds otherwise than it did before. */
export function changedAnswers(before: Matrix, now: Matrix, marksheets: readonly Marksheet[]): number {
  const cells = marksheets.flatMap(({ pupils }) => pupils.flatMap(({ answers }) => answers))
  return cells.filter((cell) => (valueAt(before, cell) ?? '') !== (valueAt(now, cell) ?? '')).length
}
