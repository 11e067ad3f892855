import { areMeeting, marksheetFrom, type Ranges } from '../../src/marksheet/layout/correct'
import type { Marksheet } from '../../src/marksheet/layout/find'
import type { Matrix } from '../../src/marksheet/layout/matrix'
import { Problem } from '../../src/office/edit/errors'

/** The marksheets of a sheet: those `found` on it, but where the teacher has corrected one by ranges, that. Throws Problem. */
export function marksheetsOf(
  matrix: Matrix,
  found: readonly Marksheet[],
  corrections: readonly Ranges[],
): Marksheet[] {
  const corrected = corrections.map((ranges) => {
    const made = marksheetFrom(matrix, ranges)
    if ('problem' in made)
      throw new Problem(made.problem, 'Select the cells in the sheet and press Use my selection.')
    return made
  })
  const others = found.filter(({ area }) => !corrected.some((one) => areMeeting(one.area, area)))
  return [...corrected, ...others].sort((a, b) => a.area.top - b.area.top || a.area.left - b.area.left)
}
