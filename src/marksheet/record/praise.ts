import { foldText } from '../../arithmetic/numeral'
import { recognise, type Occasion, type PupilWeek, type Recognition } from '../../lesson/recognition'
import { countedNoun } from '../../lesson/words'
import { standings } from '../../mastery/standing'
import { OWN_SHEET } from '../layout/find'
import { LOOKS } from '../marking/looks'
import { bold, plain, type PrintedSheet } from '../reports/pupilReport'
import { historiesIn, toldBy, type PupilHistory, type RecordRow } from './record'

/** What to praise in a class in a week: the pupils of whom counts bear something out, in the order of the alphabet, and how many others. */
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
 * What to praise in a class in the week of a Monday, each pupil beside their own earlier answers; nobody is measured by the answers of
 * others.
 */
export function praiseIn(record: readonly RecordRow[], className: string, monday: string): Praise {
  const histories = historiesIn(ofClass(record, className))
  const named = recognise(histories.map((history) => weekOf(history, monday)))
  return { named, notNamed: histories.length - named.length }
}

function ofClass(record: readonly RecordRow[], className: string): RecordRow[] {
  return record.filter((row) => foldText(row.class) === foldText(className))
}

function weekOf({ pupil, occasions }: PupilHistory, monday: string): PupilWeek {
  const isOfWeek = ({ date }: { readonly date: string }) => mondayOf(date) === monday
  const first = occasions.findIndex(isOfWeek)
  return {
    name: pupil,
    before: occasions.slice(0, Math.max(0, first)).map(countedOn),
    week: occasions.filter(isOfWeek).map(countedOn),
  }
}

function countedOn({ rows }: PupilHistory['occasions'][number]): Occasion {
  return { asked: rows.length, byType: standings([toldBy(rows)]).byType }
}

/** What praise is made from, and what it is not; a sentence each. */
export const PRAISE_NOTES: readonly string[] = [
  'A prompt for your own praise, not a judgement: look at the work, and add what you saw.',
  'Counted from the answers in Record: more right of a type than the time before, all right of two or more, everything answered. Each child is measured by their own answers only; the order is that of the alphabet.',
]

/** How many pupils are not named, and that what to say of them is the teacher's; '' where all are named. */
export function notNamedSentence({ notNamed }: Praise): string {
  if (notNamed === 0) return ''
  const [are, their] = notNamed === 1 ? ['is', 'this child'] : ['are', 'these children']
  return `${countedNoun(notNamed, 'pupil')} of this class in Record ${are} not named: no answer of that week, or nothing that its counts bear out. What to say is left to you; it says nothing about ${their}.`
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
