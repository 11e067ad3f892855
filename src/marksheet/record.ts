import { workOut } from '../arithmetic/columns'
import { exchangesOf, type Exchanges } from '../arithmetic/exchange'
import { foldText } from '../arithmetic/numeral'
import { printQuestion, readQuestion } from '../arithmetic/question'
import type { Outcome } from '../answers/typed'
import { judgeOccasions, type Judgement, type Occasion } from '../mastery/judge'
import { DEFAULT_MASTERY, type MasterySettings } from '../mastery/settings'
import { OWN_SHEET } from './find'
import { groupBy } from './groups'
import type { Matrix } from './matrix'
import type { Review } from './review'

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

/** The rows that a marking adds, pupils and questions in the sheet's order. */
export function recordRows(
  review: Review,
  occasion: { readonly date: string; readonly class: string },
): RecordRow[] {
  return review.pupils.flatMap((pupil) =>
    pupil.answers.flatMap((cell, index): RecordRow[] => {
      const asked = review.questions[cell.question]
      if (asked === undefined) return []
      return [
        {
          date: occasion.date,
          class: occasion.class,
          sheet: review.sheet,
          pupil: pupil.name,
          question: printQuestion(asked.question),
          typed: pupil.typed[index] ?? '',
          outcome: pupil.outcomes[index] ?? 'unreadable',
          type: asked.exchanges.type,
        },
      ]
    }),
  )
}

/**
 * The record with a marking's rows in it. Marking the same questions on the same sheet again replaces the rows and keeps their first
 * date; new questions on it are a new occasion.
 */
export function addToRecord(record: readonly RecordRow[], added: readonly RecordRow[]): RecordRow[] {
  const keyOf = ({ class: group, sheet, question }: RecordRow) => JSON.stringify([group, sheet, question])
  const replaced = new Set(added.map(keyOf))
  const firstDates = new Map<string, string>()
  for (const row of record) {
    const key = keyOf(row)
    if (replaced.has(key) && !firstDates.has(key)) firstDates.set(key, row.date)
  }
  const kept = record.filter((row) => !replaced.has(keyOf(row)))
  return [...kept, ...added.map((row) => ({ ...row, date: firstDates.get(keyOf(row)) ?? row.date }))]
}

/** The record without the rows from before a day ("2026-09-01"), for the start of a school year. */
export function clearBefore(record: readonly RecordRow[], date: string): RecordRow[] {
  return record.filter((row) => row.date >= date)
}

/** The rows of the Record sheet, read back; what a teacher has taken out or spoiled is left aside and counted. */
export function readRecord({ values }: Matrix): { readonly rows: RecordRow[]; readonly leftAside: number } {
  const lines = values
    .slice(RECORD_HEAD + 1)
    .filter((line) => line.some((value) => value !== null && value !== ''))
  const rows = lines.flatMap((line): RecordRow[] => {
    const [
      date = '',
      group = '',
      sheet = '',
      pupil = '',
      question = '',
      typed = '',
      outcome = '',
      type = '',
    ] = line.map((value) => String(value ?? ''))
    const known = OUTCOMES.find((each) => each === outcome)
    if (!/^\d{4}-\d\d-\d\d$/.test(date) || pupil === '' || known === undefined) return []
    return [{ date, class: group, sheet, pupil, question, typed, outcome: known, type }]
  })
  return { rows, leftAside: lines.length - rows.length }
}

/** A record's rows as texts, in the order of the columns. */
export function recordLines(record: readonly RecordRow[]): string[][] {
  return record.map((row) => [
    row.date,
    row.class,
    row.sheet,
    row.pupil,
    row.question,
    row.typed,
    row.outcome,
    row.type,
  ])
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
 * Where a pupil stands after all occasions, skills learnt and forgotten in between. Occasions on which the pupil answered nothing are left
 * out: an absence teaches nothing, and must not take a child off the list.
 */
export function judgeHistory(history: PupilHistory, settings: MasterySettings = DEFAULT_MASTERY): Judgement {
  const answered = history.occasions
    .map(({ rows }) => rows.filter(isEvidence))
    .filter((rows) => rows.length > 0)
  return judgeOccasions(answered.map(occasionOf), settings)
}

function isEvidence({ outcome, question }: RecordRow): boolean {
  return (outcome === 'correct' || outcome === 'incorrect') && 'question' in readQuestion(question)
}

function occasionOf(rows: readonly RecordRow[]): Occasion {
  const known = rows.flatMap((row) => {
    const exchanges = exchangesFor(row.question)
    return exchanges === null ? [] : [{ exchanges, right: row.outcome === 'correct' }]
  })
  return { questions: known.map(({ exchanges }) => exchanges), outcomes: known.map(({ right }) => right) }
}

function exchangesFor(text: string): Exchanges | null {
  const reading = readQuestion(text)
  return 'question' in reading ? exchangesOf(workOut(reading.question.calculation)) : null
}

/** Names that stand for more than one row of a marksheet, so that the teacher must say which counts. */
export function ambiguousNames({ pupils }: Review): string[] {
  const seen = new Map<string, number>()
  for (const { name } of pupils) seen.set(foldText(name), (seen.get(foldText(name)) ?? 0) + 1)
  return [...new Set(pupils.map(({ name }) => name))].filter((name) => (seen.get(foldText(name)) ?? 0) > 1)
}
