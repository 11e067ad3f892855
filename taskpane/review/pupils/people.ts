import { foldText } from '../../../src/arithmetic/numeral'
import { readQuestion, type Question } from '../../../src/arithmetic/question'
import type { DiagnosedPupil } from '../../../src/marksheet/reports/needs'
import {
  historiesIn,
  judgeHistory,
  type PupilHistory,
  type RecordRow,
} from '../../../src/marksheet/record/record'
import type { Judgement } from '../../../src/mastery/standing'
import type { MasterySettings } from '../../../src/mastery/settings'

/** A pupil as Review shows one: from the sheet in front (`found`), from Record over weeks, or from both. */
export interface Person {
  readonly key: string
  readonly name: string
  readonly judgement: Judgement
  readonly found: DiagnosedPupil | null
  readonly history: PupilHistory | null
  readonly asked: readonly Question[]
}

/** The pupils of a sheet. A history is a pupil's where class and name are the same and the name stands on the sheet once. */
export function peopleOnSheet(
  pupils: readonly DiagnosedPupil[],
  record: readonly RecordRow[],
  className: string,
): Person[] {
  const histories = new Map(
    historiesIn(ofClass(record, className)).map((each) => [foldText(each.pupil), each]),
  )
  const counts = new Map<string, number>()
  for (const { name } of pupils) counts.set(foldText(name), (counts.get(foldText(name)) ?? 0) + 1)
  return pupils.map((found) => ({
    key: `${found.review} ${found.index}`,
    name: found.name,
    judgement: found.judgement,
    found,
    history: counts.get(foldText(found.name)) === 1 ? (histories.get(foldText(found.name)) ?? null) : null,
    asked: found.questions,
  }))
}

/** The pupils of a class in Record, judged over all weeks. */
export function peopleInRecord(
  record: readonly RecordRow[],
  className: string,
  settings: MasterySettings,
): Person[] {
  return historiesIn(ofClass(record, className)).map((history) => ({
    key: history.pupil,
    name: history.pupil,
    judgement: judgeHistory(history, settings),
    found: null,
    history,
    asked: history.occasions.flatMap(({ rows }) =>
      rows.flatMap(({ question }) => {
        const reading = readQuestion(question)
        return 'question' in reading ? [reading.question] : []
      }),
    ),
  }))
}

function ofClass(record: readonly RecordRow[], className: string): RecordRow[] {
  return record.filter((row) => foldText(row.class) === foldText(className))
}

/** An occasion of a pupil in a line: how many were right of those tried, and what was missed. */
export interface OccasionLine {
  readonly date: string
  readonly sheet: string
  readonly right: number
  readonly tried: number
  readonly missed: readonly RecordRow[]
}

/** A pupil's occasions, the latest first. */
export function occasionLines({ occasions }: PupilHistory): OccasionLine[] {
  return occasions
    .map(({ date, sheet, rows }) => {
      const missed = rows.filter(({ outcome }) => outcome === 'incorrect')
      const right = rows.filter(({ outcome }) => outcome === 'correct').length
      return { date, sheet, right, tried: right + missed.length, missed }
    })
    .toReversed()
}
