import { foldText } from '../arithmetic/numeral'
import type { CellValue } from '../answers/typed'

const RIGHT = new Set(['1', '✓', '✔', '☑', '√', 'y', 'yes', 'true'])
const WRONG = new Set(['0', '✗', '✘', '☒', '×', 'x', 'n', 'no', 'false'])

/** What a cell says as a mark: right (1, ✓, y, TRUE), wrong (0, ✗, x, n, FALSE), or null where it is no mark. */
export function readMark(value: CellValue): boolean | null {
  const text = foldText(String(value ?? '').replace(/[\ufe0e\ufe0f]/g, ''))
  return RIGHT.has(text) ? true : WRONG.has(text) ? false : null
}

/** One question's cells that hold neither a blank nor an absence, and the question's answer as `valueText`. */
export interface MarkedColumn {
  readonly held: readonly CellValue[]
  readonly answer: string
}

/** From how many marks on a column is taken as marked though most others hold answers. */
const ENOUGH_MARKS = 5

/**
 * Which questions' columns hold marks in place of answers: a column of nothing but marks that could not be answers, where most
 * filled columns are so or the column holds many. Columns whose answer is itself 1 or 0 follow the others.
 */
export function markedColumns(columns: readonly MarkedColumn[]): boolean[] {
  const onlyMarks = columns.map(
    ({ held }) => held.length > 0 && held.every((value) => readMark(value) !== null),
  )
  const certain = columns.map(
    ({ held, answer }, index) =>
      onlyMarks[index] === true &&
      !(/^[01]$/.test(answer) && held.some((value) => /^[01]$/.test(String(value)))),
  )
  const filled = columns.filter(({ held }) => held.length > 0).length
  const most = 2 * certain.filter(Boolean).length > filled
  return columns.map(({ held }, index) =>
    most ? onlyMarks[index] === true : certain[index] === true && held.length >= ENOUGH_MARKS,
  )
}
