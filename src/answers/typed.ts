import { workOut } from '../arithmetic/columns'
import {
  foldText,
  movePoint,
  readNumeral,
  valueText,
  withoutSeparators,
  type Numeral,
} from '../arithmetic/numeral'
import type { Question, Unit } from '../arithmetic/question'

/** What a cell holds: a text, a number, TRUE or FALSE; null or '' where it is empty. */
export type CellValue = string | number | boolean | null

export type Outcome = 'correct' | 'incorrect' | 'blank' | 'absent' | 'unreadable'

/** A typed answer as read: a number (as `valueText`, in the question's unit), or why there is none. */
export type TypedAnswer =
  { readonly kind: 'number'; readonly value: string } | { readonly kind: 'blank' | 'absent' | 'unreadable' }

/** What a typed answer is compared with: the missing number as `valueText`, and the question's unit. */
export interface AnswerKey {
  readonly value: string
  readonly unit: Unit
  readonly numeral: Numeral
}

const BLANK = new Set(['', '-', '−', '–', '—', '/', 'n/a'])
const ABSENT = new Set(['abs', 'a', 'absent', 'ill'])
/** A whole number without anything to think about, told at once: most of what pupils type. */
const PLAIN = /^\s*0*(\d{1,15})\.?\s*$/
const UNREADABLE: TypedAnswer = { kind: 'unreadable' }

/** The missing number of a question, to mark typed answers by. */
export function answerKey(question: Question): AnswerKey {
  const numeral = workOut(question.calculation).answer
  return { value: valueText(numeral), unit: question.unit, numeral }
}

/**
 * Reads what a pupil typed, for a question in the given unit. White space, separators between groups of three digits, a leading
 * = or £, a unit p and a full stop at the end are no part of the number. Whatever leaves a doubt (two numbers, words, a figure
 * with a question mark) is unreadable, for the teacher to look at.
 */
export function readTyped(typed: CellValue, unit: Unit = ''): TypedAnswer {
  if (typeof typed === 'number') return readNumber(typed)
  if (typed === null) return { kind: 'blank' }
  if (typeof typed === 'boolean') return UNREADABLE
  const [, plain] = PLAIN.exec(typed) ?? []
  if (plain !== undefined) return { kind: 'number', value: plain }
  const text = foldText(typed)
  if (BLANK.has(text)) return { kind: 'blank' }
  if (ABSENT.has(text)) return { kind: 'absent' }
  return readAmount(text, unit)
}

/** How a typed answer compares with the key. Unreadable and absent answers are never counted wrong. */
export function markAnswer(typed: CellValue, key: AnswerKey): Outcome {
  const read = readTyped(typed, key.unit)
  if (read.kind !== 'number') return read.kind
  return read.value === key.value ? 'correct' : 'incorrect'
}

/** A number cell, to the 15 significant digits that a spreadsheet keeps, so that 5.2 − 3.1 worked by the sheet is 2.1. */
function readNumber(value: number): TypedAnswer {
  if (Number.isInteger(value) && Math.abs(value) < 1e15) return { kind: 'number', value: String(value) }
  if (!Number.isFinite(value)) return UNREADABLE
  return { kind: 'number', value: String(Number(value.toPrecision(15))) }
}

const AMOUNT =
  /^(?:= ?)?(?<sign>[-−–]?) ?(?<pounds>£?) ?(?<digits>\d+(?:\.\d*)?|\.\d+) ?(?<suffix>p|[km]?g|[kcm]?m|m?l|)\.?$/

function readAmount(text: string, unit: Unit): TypedAnswer {
  const { sign, pounds, digits = '', suffix = '' } = AMOUNT.exec(withoutSeparators(text))?.groups ?? {}
  const numeral = readNumeral(digits.replace(/\.$/, ''))
  if (!numeral || !goesWith(suffix, unit)) return UNREADABLE
  const typedIn: Unit = pounds ? '£' : suffix === 'p' ? 'p' : unit
  const value = valueText(inUnit(numeral, typedIn, unit))
  return { kind: 'number', value: sign ? `-${value}` : value }
}

/** Whether what stands behind a typed number can: nothing or a p, or the measure that the question is in. */
function goesWith(suffix: string, unit: Unit): boolean {
  return suffix === '' || suffix === 'p' || suffix === unit
}

function inUnit(numeral: Numeral, from: Unit, to: Unit): Numeral {
  if (from === 'p' && to === '£') return movePoint(numeral, 2)
  return from === '£' && to === 'p' ? movePoint(numeral, -2) : numeral
}
