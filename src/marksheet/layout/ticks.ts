import { foldText } from '../../arithmetic/numeral'
import { readTyped, type CellValue } from '../../answers/typed'
import type { Steps } from './steps'

/** The marks that are read as right and as wrong, in lower case. */
export const MARKS = {
  right: ['1', '✓', '✔', '✅', '☑', '√', 'y', 'yes', 't', 'true'],
  wrong: ['0', '✗', '✘', '✖', '❌', '☒', '×', 'x', 'n', 'no', 'f', 'false'],
} as const

/** No mark, a sign for how it is shown included, is longer. */
const LONGEST = 6
const RIGHT: ReadonlySet<string> = new Set(MARKS.right)
const WRONG: ReadonlySet<string> = new Set(MARKS.wrong)

/** What a cell says as a mark: right (1, ✓, y, TRUE), wrong (0, ✗, x, n, FALSE), or null where it is no mark. */
export function readMark(value: CellValue): boolean | null {
  if (typeof value === 'number') return value === 1 ? true : value === 0 ? false : null
  if (value === null || (typeof value === 'string' && value.trim().length > LONGEST)) return null
  const text = foldText(String(value).replace(/[\ufe0e\ufe0f]/g, ''))
  return RIGHT.has(text) ? true : WRONG.has(text) ? false : null
}

/** One question's cells that hold neither a blank nor an absence, and the question's answer as `valueText`. */
export interface MarkedColumn {
  readonly held: readonly CellValue[]
  readonly answer: string
}

/** From how many marks on a column is taken as marked though most others hold answers. */
const ENOUGH_MARKS = 5
/** The share of marks among a column's readable cells from which it is one, where most columns are. */
const MOST = 0.8

/**
 * Which questions' columns hold marks in place of answers: marks that could not be answers, where most filled columns hold such or
 * the column holds many. Scores of 2 or 3 beside the marks count with them; cells that cannot be read as either spoil nothing. Columns whose
 * answer is itself 1 or 0 follow the others. Column by column.
 */
export function* markedColumns(columns: readonly MarkedColumn[]): Steps<boolean[]> {
  const shares: number[] = []
  for (const column of columns) {
    yield
    shares.push(markShare(column))
  }
  const certain = columns.map(
    ({ held, answer }, index) =>
      shares[index] === 1 && !(/^[01]$/.test(answer) && held.some((value) => /^[01]$/.test(String(value)))),
  )
  const likely = columns.map(({ answer }, index) => (shares[index] ?? 0) >= MOST && !/^[0-3]$/.test(answer))
  const filled = columns.filter(({ held }) => held.length > 0).length
  const most = 2 * likely.filter(Boolean).length > filled
  return columns.map(({ held }, index) =>
    most
      ? (shares[index] ?? 0) >= MOST
      : certain[index] === true && (held.length >= ENOUGH_MARKS || held.every(isSign)),
  )
}

/** Whether a mark is a sign that nobody types for an answer. */
function isSign(value: CellValue): boolean {
  return typeof value === 'string' && /^[^\p{L}\p{N}]+$/u.test(value.trim())
}

/** The share of marks among the cells that could be marks or answers; 0 where there are none. */
function markShare({ held }: MarkedColumn): number {
  let [marks, scores, others] = [0, 0, 0]
  for (const value of held) {
    if (readMark(value) !== null) marks++
    else if (value === 2 || value === 3 || value === '2' || value === '3') scores++
    else if (readTyped(value).kind === 'number') others++
  }
  return marks === 0 ? 0 : (marks + scores) / (marks + scores + others)
}
