import { workOut } from '../../arithmetic/columns'
import { exchangesOf } from '../../arithmetic/exchange'
import { amountText, printQuestion, type Question } from '../../arithmetic/question'
import { OWN_SHEET } from '../layout/find'
import { LOOKS } from '../marking/looks'
import type { Matrix } from '../layout/matrix'
import type { TableCell, TableSheet } from '../marking/plan'

/** A question of a set that was written, with its answer. `set` is the set's number or word, `recipe` what it was made from. */
export interface KeyRow {
  readonly sheet: string
  readonly set: string
  readonly number: string
  readonly question: string
  readonly answer: string
  readonly type: string
  readonly recipe: string
}

export const KEY_NAME = 'Answer key'
export const KEY_TITLE = `${OWN_SHEET}${KEY_NAME}`

const COLUMNS = [
  ['sheet', 'Sheet', 18],
  ['set', 'Set', 10],
  ['number', 'No.', 6],
  ['question', 'Question', 22],
  ['answer', 'Answer', 14],
  ['type', 'Type', 34],
  ['recipe', 'Recipe', 60],
] as const satisfies readonly (readonly [keyof KeyRow, string, number])[]

/** The row, from 0, that holds the columns' heads. */
const HEAD = 2
const CAUTION = 'The newest set comes first. Choose another sheet before you share the screen.'
/** The most rows that the sheet keeps: the oldest sets go. */
const MOST_ROWS = 2000

/** The rows of a set, in its order. */
export function keyRows(
  questions: readonly Question[],
  made: { readonly sheet: string; readonly set: string; readonly recipe: string },
): KeyRow[] {
  return questions.map((question, index) => {
    const written = workOut(question.calculation)
    return {
      ...made,
      number: String(index + 1),
      question: printQuestion(question),
      answer: amountText(written.answer, question.unit),
      type: exchangesOf(written).type,
    }
  })
}

/** The key with a set's rows before those that it held; the same set on the same sheet is there once. */
export function addToKey(before: readonly KeyRow[], added: readonly KeyRow[]): KeyRow[] {
  const keyOf = ({ sheet, set, question }: KeyRow) => JSON.stringify([sheet, set, question])
  const replaced = new Set(added.map(keyOf))
  return [...added, ...before.filter((row) => !replaced.has(keyOf(row)))].slice(0, MOST_ROWS)
}

/** The Answer key sheet. */
export function planAnswerKey(rows: readonly KeyRow[]): TableSheet {
  return {
    name: KEY_NAME,
    rows: [
      [cell(KEY_TITLE, true)],
      [cell(CAUTION)],
      COLUMNS.map(([, title]) => cell(title, true, LOOKS.absent.fill)),
      ...rows.map((row) => COLUMNS.map(([key]) => cell(row[key]))),
    ],
    widths: COLUMNS.map(([, , width]) => width),
  }
}

/** The rows of the Answer key sheet, read back; none from a sheet that is no answer key. */
export function readAnswerKey({ values }: Matrix): KeyRow[] {
  if (values[0]?.[0] !== KEY_TITLE) return []
  return values.slice(HEAD + 1).flatMap((line) => {
    const [sheet = '', set = '', number = '', question = '', answer = '', type = '', recipe = ''] = line.map(
      (value) => String(value ?? ''),
    )
    return question === '' ? [] : [{ sheet, set, number, question, answer, type, recipe }]
  })
}

function cell(text: string, bold = false, fill: string | null = null): TableCell {
  return { text, bold, fill }
}
