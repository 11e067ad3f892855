import { recordRows } from '../../src/marksheet/record/record'
import { review } from '../../src/marksheet/marking/review'
import { DEFAULT_MASTERY } from '../../src/mastery/settings'
import { markSheet } from '../../src/office/marking/markSheet'
import { readSheet } from '../../src/office/workbook/read'
import { addToRecordSheet, readRecordSheet } from '../../src/office/record/record'
import { peopleInRecord } from '../../taskpane/review/pupils/people'
import { largeSheet } from './reviewing'
import { median, type Result } from './timing'
import { addSheet, megabytes, REQUEST_LIMIT, trafficOf, workbookWith } from './wire'

const [WEEKS, PUPILS, QUESTIONS] = [52, 30, 20]
const CLASS = 'Kingfisher'
/** Milliseconds for the last week's marking and for adding it to Record, and for judging the whole class over all weeks. */
const LIMITS = { marking: 1_000, adding: 3_000, judging: 1_000 } as const

/** A school year in one workbook: every week a sheet marked and added to Record, and at the end the class judged over all weeks. */
export async function weeks(): Promise<Result> {
  const sheetOf = (week: number) => ({ ...largeSheet(PUPILS, QUESTIONS), name: `Week ${week + 1}` })
  const bench = await workbookWith({ name: 'Cover', values: [['Our class']] })
  const traffic = trafficOf(bench)
  const times: { marking: number; adding: number; requests: number }[] = []
  for (let week = 0; week < WEEKS; week++) {
    addSheet(bench, sheetOf(week))
    const before = traffic.requests
    const start = performance.now()
    const reading = await readSheet()
    const reviews = review(reading.matrix)
    await markSheet(reading, reviews, { flags: true, mastery: true })
    const marked = performance.now()
    const date = new Date(Date.UTC(2026, 8, 4 + 7 * week)).toISOString().slice(0, 10)
    const rows = reviews.flatMap((each) => recordRows(each, { date, class: CLASS }))
    await addToRecordSheet(await readRecordSheet(reading.sheets), rows)
    times.push({
      marking: marked - start,
      adding: performance.now() - marked,
      requests: traffic.requests - before,
    })
    await settled()
  }
  const { rows } = await readRecordSheet((await readSheet()).sheets)
  const judging = median(() => peopleInRecord(rows, CLASS, DEFAULT_MASTERY))
  const people = peopleInRecord(rows, CLASS, DEFAULT_MASTERY)
  const last = times.at(-1)
  if (!last || rows.length !== WEEKS * PUPILS * QUESTIONS || people.length !== PUPILS)
    throw new Error('Rows are lost.')
  const line = (week: number) => {
    const time = times[week - 1]
    return `week ${week}: marked in ${time?.marking.toFixed(0)} ms, added to Record in ${time?.adding.toFixed(0)} ms, ${time?.requests} requests`
  }
  const largest = Math.max(traffic.largestAsked, traffic.largestAnswered)
  return {
    name: 'A year of weeks',
    lines: [
      `${WEEKS} sheets of ${PUPILS} × ${QUESTIONS}, ${rows.length.toLocaleString('en-GB')} rows on Record`,
      ...[1, 13, 26, 52].map(line),
      `limits in the last week: ${LIMITS.marking} ms to mark, ${LIMITS.adding} ms to add`,
      `largest request or answer: ${megabytes(largest)} (limit ${megabytes(REQUEST_LIMIT)})`,
      `${PUPILS} pupils judged over ${WEEKS} weeks: ${judging.toFixed(0)} ms (limit ${LIMITS.judging} ms)`,
    ],
    met:
      last.marking < LIMITS.marking &&
      last.adding < LIMITS.adding &&
      largest < REQUEST_LIMIT &&
      judging < LIMITS.judging,
  }
}

/** Lets the client let go of what it no longer needs. */
const settled = () => new Promise((resolve) => setTimeout(resolve, 0))
