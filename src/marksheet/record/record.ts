import { workOut } from '../../arithmetic/columns'
import { exchangesOf, type Exchanges } from '../../arithmetic/exchange'
import { foldText } from '../../arithmetic/numeral'
import { printQuestion, readQuestion, type Question } from '../../arithmetic/question'
import { prepareDiagnosis } from '../../answers/diagnosis'
import { answerKey, markAnswer, readTyped, type CellValue, type Outcome } from '../../answers/typed'
import { judge } from '../../mastery/need'
import { countOf, standings, type Judgement, type Standings, type Told } from '../../mastery/standing'
import { DEFAULT_MASTERY, type MasterySettings } from '../../mastery/settings'
import { OWN_SHEET } from '../layout/find'
import { groupBy } from '../layout/groups'
import type { Matrix } from '../layout/matrix'
import { diagnoseAnswers, type PupilDiagnosis } from '../marking/diagnose'
import type { Review } from '../marking/review'

/** One answer of one pupil, as the Record sheet keeps it. `date` is the day of the marking, as "2026-11-25". */
export interface RecordRow {
  readonly date: string
  readonly class: string
  readonly sheet: string
  readonly pupil: string
  readonly question: string
  readonly typed: string
  readonly outcome: Outcome
  readonly type: string
}

/** What heads the Record sheet's columns. */
export const RECORD_COLUMNS = [
  'Date',
  'Class',
  'Sheet',
  'Pupil',
  'Question',
  'Typed',
  'Outcome',
  'Type',
] as const
export const RECORD_TITLE = `${OWN_SHEET}Record`
/** The row, from 0, that holds the columns' heads; a title and a caution stand above. */
export const RECORD_HEAD = 2

const OUTCOMES: readonly Outcome[] = ['correct', 'incorrect', 'blank', 'absent', 'unreadable']

/**
 * The rows that a marking adds, pupils and questions in the sheet's order. Of an email address in a name or an answer only what stands
 * before its @ is kept.
 */
export function recordRows(
  { sheet, questions, pupils }: Pick<Review, 'sheet' | 'questions' | 'pupils'>,
  occasion: { readonly date: string; readonly class: string },
): RecordRow[] {
  return pupils.flatMap((pupil) =>
    pupil.answers.flatMap((cell, index): RecordRow[] => {
      const asked = questions[cell.question]
      if (asked === undefined) return []
      return [
        {
          date: occasion.date,
          class: occasion.class,
          sheet,
          pupil: withoutEmail(pupil.name),
          question: printQuestion(asked.question),
          typed: withoutEmail(pupil.typed[index] ?? ''),
          outcome: pupil.outcomes[index] ?? 'unreadable',
          type: asked.exchanges.type,
        },
      ]
    }),
  )
}

function withoutEmail(text: string): string {
  return text.replace(/([^\s@]+)@[^\s@]+/g, '$1')
}

/** A line of the Record sheet: its cells in the order of the columns, and the row they make; null where they make none. */
export interface RecordLine {
  readonly row: RecordRow | null
  readonly cells: readonly CellValue[]
}

/** The record without the rows from before a day ("2026-09-01"), for the start of a school year. */
export function clearBefore(record: readonly RecordRow[], date: string): RecordRow[] {
  return record.filter((row) => row.date >= date)
}

/** Whether a sheet is headed as the Record sheet is. */
export function isRecord({ values }: Matrix): boolean {
  return RECORD_COLUMNS.every((title, column) => values[RECORD_HEAD]?.[column] === title)
}

/** The lines of the Record sheet below its heads, empty ones left out. */
export function linesOf({ values }: Matrix): RecordLine[] {
  return values
    .slice(RECORD_HEAD + 1)
    .map((line) => RECORD_COLUMNS.map((_, column) => line[column] ?? ''))
    .filter((cells) => cells.some((value) => value !== ''))
    .map((cells) => ({ row: rowOf(cells), cells }))
}

function rowOf(cells: readonly CellValue[]): RecordRow | null {
  const [day = '', ...texts] = cells
  const [group = '', sheet = '', pupil = '', question = '', typed = '', outcome = '', type = ''] = texts.map(
    (value) => String(value ?? ''),
  )
  const date = typeof day === 'number' ? dayOf(day) : String(day)
  const known = OUTCOMES.find((each) => each === outcome)
  if (!/^\d{4}-\d\d-\d\d$/.test(date) || pupil === '' || known === undefined) return null
  return { date, class: group, sheet, pupil, question, typed, outcome: known, type }
}

/** A date as a spreadsheet counts days, as a day of the record. */
function dayOf(serial: number): string {
  const milliseconds = Date.UTC(1899, 11, 30 + Math.floor(serial))
  return Number.isNaN(milliseconds) ? '' : new Date(milliseconds).toISOString().slice(0, 10)
}

/** The rows of the Record sheet, read back; what a teacher has taken out or spoiled is left aside and counted. */
export function readRecord(matrix: Matrix): { readonly rows: RecordRow[]; readonly leftAside: number } {
  const lines = linesOf(matrix)
  const rows = lines.flatMap(({ row }) => row ?? [])
  return { rows, leftAside: lines.length - rows.length }
}

/** A record's rows as texts, in the order of the columns. */
export function recordLines(record: readonly RecordRow[]): string[][] {
  return record.map(recordLine)
}

/** A row's cells, in the order of the columns. */
export function recordLine(row: RecordRow): string[] {
  return [row.date, row.class, row.sheet, row.pupil, row.question, row.typed, row.outcome, row.type]
}

/** One pupil's rows, one occasion (a day and a sheet) after the other. */
export interface PupilHistory {
  readonly pupil: string
  readonly class: string
  readonly occasions: readonly {
    readonly date: string
    readonly sheet: string
    readonly rows: readonly RecordRow[]
  }[]
}

/** The histories in a record, by class and name; names are the same whatever their case and spaces. Occasions in order of time. */
export function historiesIn(record: readonly RecordRow[]): PupilHistory[] {
  const pupils = groupBy(record, (row) => JSON.stringify([foldText(row.class), foldText(row.pupil)]))
  return [...pupils.values()].map((rows) => {
    const occasions = [...groupBy(rows, ({ date, sheet }) => JSON.stringify([date, sheet])).values()].map(
      (own) => ({
        date: own[0]?.date ?? '',
        sheet: own[0]?.sheet ?? '',
        rows: own,
      }),
    )
    occasions.sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0))
    return { pupil: rows[0]?.pupil ?? '', class: rows[0]?.class ?? '', occasions }
  })
}

/**
 * Where a pupil stands after all occasions, by counts over the weeks. Occasions on which the pupil answered nothing are left out: an
 * absence teaches nothing, and must not take a child off the list.
 */
export function standingsOf(history: PupilHistory, settings: MasterySettings = DEFAULT_MASTERY): Standings {
  return standings(answeredIn(history).map(toldBy), settings)
}

/** The same with what the pupil needs now: faults, typing and slips are seen in the latest occasion's answers. */
export function judgeHistory(history: PupilHistory, settings: MasterySettings = DEFAULT_MASTERY): Judgement {
  const latest = answeredIn(history).at(-1) ?? []
  const { diagnosis, typing } = diagnoseRows(latest)
  return judge(standingsOf(history, settings), {
    ...countOf(toldBy(latest).map(({ told }) => told)),
    named: diagnosis.named,
    typing,
  })
}

function answeredIn({ occasions }: PupilHistory): RecordRow[][] {
  return occasions.map(({ rows }) => rows.filter(isEvidence)).filter((rows) => rows.length > 0)
}

/** Rows of a sheet that held ticks or 1 and 0 do not come out of what was typed; they tell nothing of faults. */
function diagnoseRows(rows: readonly RecordRow[]): PupilDiagnosis {
  const read = rows.flatMap(({ question: text, typed, outcome }) => {
    const reading = readQuestion(text)
    if (!('question' in reading)) return []
    const { question } = reading
    const key = answerKey(question)
    const number = readTyped(typed, key.unit)
    const value = number.kind === 'number' ? number.value : null
    return [{ question, answer: key.value, value, isTyped: markAnswer(typed, key) === outcome }]
  })
  const isMarked = read.some(({ isTyped }) => !isTyped)
  const items = read.map((item) => (isMarked ? { ...item, value: null } : item))
  return diagnoseAnswers(prepareDiagnosis(items.map(({ question }) => question)), items)
}

function isEvidence({ outcome, question }: RecordRow): boolean {
  return (outcome === 'correct' || outcome === 'incorrect') && exchangesFor(question) !== null
}

/** What rows tell, type by type. */
export function toldBy(rows: readonly RecordRow[]): Told[] {
  return rows.filter(isEvidence).flatMap((row) => {
    const exchanges = exchangesFor(row.question)
    return exchanges === null ? [] : [{ type: exchanges.type, told: row.outcome === 'correct' }]
  })
}

/** What has been found of questions, so that those of a class are read once and not for every pupil again. */
const found = new Map<string, Exchanges | null>()
const MOST_FOUND = 10_000

function exchangesFor(text: string): Exchanges | null {
  const known = found.get(text)
  if (known !== undefined) return known
  const reading = readQuestion(text)
  const exchanges = 'question' in reading ? exchangesOf(workOut(reading.question.calculation)) : null
  if (found.size >= MOST_FOUND) found.clear()
  found.set(text, exchanges)
  return exchanges
}

/** The classes in a record, in the order in which they first come up. */
export function classesIn(record: readonly RecordRow[]): string[] {
  return [...new Set(record.map((row) => row.class))]
}

/** The questions of a record, each once, so that they need not be set again. */
export function questionsIn(record: readonly RecordRow[]): Question[] {
  return [...new Set(record.map(({ question }) => question))].flatMap((text) => {
    const reading = readQuestion(text)
    return 'question' in reading ? [reading.question] : []
  })
}

/** A name that stands for several rows (or columns) of a marksheet: the pupils' indices in their order. */
export interface SameName {
  readonly name: string
  readonly pupils: readonly number[]
}

/** Names that stand for more than one row of a marksheet (two children, or a form sent twice), so that the teacher must say which counts. */
export function sameNames({ pupils }: Pick<Review, 'pupils'>): SameName[] {
  const byName = groupBy(
    pupils.map((_, index) => index),
    (index) => foldText(withoutEmail(pupils[index]?.name ?? '')),
  )
  return [...byName.values()]
    .filter((indices) => indices.length > 1)
    .map((indices) => ({ name: pupils[indices[0] ?? 0]?.name ?? '', pupils: indices }))
}
