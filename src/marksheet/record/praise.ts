import { foldText } from '../../arithmetic/numeral'
import { recognise, type PupilWeek, type Recognition, type TypeOnOccasion } from '../../lesson/recognition'
import { countedNoun } from '../../lesson/words'
import type { Standings } from '../../mastery/standing'
import type { MasterySettings } from '../../mastery/settings'
import { OWN_SHEET } from '../layout/find'
import { LOOKS } from '../marking/looks'
import { bold, plain, type PrintedSheet } from '../reports/pupilReport'
import { historiesIn, standingsOf, type PupilHistory, type RecordRow } from './record'

/** What to praise in a class in a week: the pupils who answered, in the order of the alphabet, and how many did not. */
export interface Praise {
  readonly named: readonly Recognition[]
  readonly notNamed: number
}

const DAY = 24 * 60 * 60 * 1000

/** The Monday of the week that a day of the record lies in ("2026-11-23"); null where it is no day of the calendar. */
export function mondayOf(date: string): string | null {
  const time = Date.parse(`${date}T00:00:00Z`)
  if (Number.isNaN(time)) return null
  const sinceMonday = (new Date(time).getUTCDay() + 6) % 7
  return new Date(time - sinceMonday * DAY).toISOString().slice(0, 10)
}

/** The weeks in which a class has answers in the record, by their Mondays, the latest first. */
export function weeksOf(record: readonly RecordRow[], className: string): string[] {
  const mondays = ofClass(record, className).flatMap(({ date }) => mondayOf(date) ?? [])
  return [...new Set(mondays)].sort().reverse()
}

/**
 * What to praise in a class in the week of a Monday. A pupil's occasions before that week say where the pupil stood, each
 * occasion of the week what changed; nobody is measured by the answers of others.
 */
export function praiseIn(
  record: readonly RecordRow[],
  className: string,
  monday: string,
  settings: MasterySettings,
): Praise {
  const histories = historiesIn(ofClass(record, className))
  const named = recognise(histories.map((history) => weekOf(history, monday, settings)))
  return { named, notNamed: histories.length - named.length }
}

function ofClass(record: readonly RecordRow[], className: string): RecordRow[] {
  return record.filter((row) => foldText(row.class) === foldText(className))
}

function weekOf(history: PupilHistory, monday: string, settings: MasterySettings): PupilWeek {
  const { pupil, occasions } = history
  const standing = (count: number) =>
    standingsOf({ ...history, occasions: occasions.slice(0, count) }, settings)
  return {
    name: pupil,
    occasions: occasions.flatMap(({ date }, index) =>
      mondayOf(date) === monday ? [changeBetween(standing(index), standing(index + 1))] : [],
    ),
  }
}

/** What an occasion added to the counts of each type, and the statuses before and after it. */
function changeBetween(before: Standings, after: Standings): TypeOnOccasion[] {
  return after.byType.map(({ type, right, tried, status }) => {
    const earlier = before.byType.find((each) => each.type === type)
    return {
      type,
      right: right - (earlier?.right ?? 0),
      tried: tried - (earlier?.tried ?? 0),
      before: earlier?.status ?? null,
      after: status,
    }
  })
}

/** What praise is made from, and what it is not; a sentence each. */
export const PRAISE_NOTES: readonly string[] = [
  'A prompt for your own praise, not a judgement: look at the work, and add what you saw.',
  'Counted from the answers of that week in Record, right and wrong ones. “Now secure” means: not yet so before that week. Each child is measured by their own answers only; the order is that of the alphabet.',
]

/** How many pupils are not named, and that this says nothing about them; '' where all are named. */
export function notNamedSentence({ notNamed }: Praise): string {
  if (notNamed === 0) return ''
  const [are, their] = notNamed === 1 ? ['is', 'this child'] : ['are', 'these children']
  return `${countedNoun(notNamed, 'pupil')} of this class in Record ${are} not named: there is no answer of that week to go by. It says nothing about ${their}.`
}

/** The praise as plain text, a line for each pupil; `heading` says which class and week. */
export function praiseText(praise: Praise, heading: string): string {
  const lines = praise.named.map(({ name, says }) => `${name}: ${says.join(' ')}`)
  return [heading, ...lines, notNamedSentence(praise)].filter((line) => line !== '').join('\n')
}

/** The praise as a sheet to print, a row for each pupil; `heading` says which class and week. */
export function planPraise(praise: Praise, heading: string): PrintedSheet {
  const last = notNamedSentence(praise)
  return {
    table: {
      name: 'To praise',
      rows: [
        [bold(`${OWN_SHEET}To praise`)],
        [plain(heading)],
        ...PRAISE_NOTES.map((note, index) => [plain(index === 0 ? 'Please note' : ''), plain(note)]),
        [],
        [bold('Pupil', LOOKS.absent.fill), bold('What to praise', LOOKS.absent.fill)],
        ...praise.named.map(({ name, says }) => [plain(name), plain(says.join(' '))]),
        ...(last === '' ? [] : [[], [plain('Not named'), plain(last)]]),
      ],
      widths: [26, 80],
    },
    breaks: [],
  }
}
