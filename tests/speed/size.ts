import type { Matrix } from '../../src/marksheet/layout/matrix'
import { finding } from '../../src/marksheet/layout/find'
import { planning } from '../../src/marksheet/marking/plan'
import { review, reviewing, type Review } from '../../src/marksheet/marking/review'
import { STATUS_WORDS } from '../../src/mastery/support'
import { Stopped } from '../../src/office/edit/errors'
import { markSheet } from '../../src/office/marking/markSheet'
import { readSheet } from '../../src/office/workbook/read'
import { masteryEditing } from '../../src/office/reports/mastery'
import { inTurns, type Work } from '../../src/office/edit/work'
import { largeSheet } from './reviewing'
import type { Result } from './timing'
import { megabytes, REQUEST_LIMIT, trafficOf, workbookWith } from './wire'

const QUESTIONS = 40
const YEAR_GROUP = 180
const SIZES = [2_500, 5_000, 10_000] as const
const MOST_REQUESTS = 4
/** Milliseconds for which the pane may be busy at a stretch. */
const MOST_BLOCKED = 100
/** How many times as long twice as many pupils may take. */
const MOST_GROWTH = 2.6

/** Marks a year group and the largest sheet that is thought of behind the real client library: requests, bytes, progress, Stop, growth. */
export async function size(): Promise<Result> {
  const year = await mark(YEAR_GROUP)
  const busy = await blockedFor(YEAR_GROUP)
  const beyond = await blockedFor(SIZES[2])
  const sizes = []
  for (const pupils of SIZES) sizes.push(await mark(pupils))
  const [, middle, large] = sizes
  const raw = await writtenRaw(SIZES[2])
  const stopped = await stopWhileMarking(SIZES[2])
  const growth = large && middle ? large.milliseconds / middle.milliseconds : NaN
  const largest = Math.max(
    ...sizes.map(({ traffic }) => Math.max(traffic.largestAsked, traffic.largestAnswered)),
  )
  return {
    name: 'Size',
    lines: [
      `${YEAR_GROUP} × ${QUESTIONS}: ${year.traffic.requests} requests (limit ${MOST_REQUESTS}), ${year.milliseconds.toFixed(0)} ms; the pane's own work at a stretch ${busy.toFixed(0)} ms (limit ${MOST_BLOCKED} ms)`,
      ...sizes.map(
        ({ pupils, milliseconds, traffic, progress }) =>
          `${pupils.toLocaleString('en-GB')} × ${QUESTIONS}: ${traffic.requests} requests, at most ${megabytes(traffic.largestAsked)} asked and ${megabytes(traffic.largestAnswered)} answered, ` +
          `${(milliseconds / 1000).toFixed(1)} s, progress told ${progress} times`,
      ),
      `largest request or answer: ${megabytes(largest)} (limit ${megabytes(REQUEST_LIMIT)})`,
      `twice as many pupils take ${growth.toFixed(2)} times as long (limit ${MOST_GROWTH})`,
      `the client library alone writing as many values in one request: ${(raw / 1000).toFixed(1)} s`,
      `Stop half-way through ${SIZES[2].toLocaleString('en-GB')} pupils: ${stopped.told ? 'stopped' : 'NOT STOPPED'}, ${stopped.left} rules left on the sheet`,
      `the pane's own work at a stretch for ${SIZES[2].toLocaleString('en-GB')} pupils, more than any school has: ${beyond.toFixed(0)} ms (limit ${MOST_BLOCKED} ms)`,
    ],
    met:
      year.traffic.requests <= MOST_REQUESTS &&
      busy <= MOST_BLOCKED &&
      beyond <= MOST_BLOCKED &&
      largest < REQUEST_LIMIT &&
      growth <= MOST_GROWTH &&
      sizes.every(({ progress }) => progress > 1) &&
      stopped.told &&
      stopped.left === 0,
  }
}

/** A marksheet in which one answer in 110 is typed so oddly that it takes a rule of its own; the other odd ones are blank. */
function classOf(pupils: number): Matrix {
  const { name, values } = largeSheet(pupils, QUESTIONS)
  const isOdd = (value: unknown) => typeof value === 'string' && /^ \d+\.$/.test(value)
  return {
    name,
    values: values.map((row, i) => row.map((value, j) => (isOdd(value) && (i + j) % 10 > 0 ? null : value))),
  }
}

async function mark(pupils: number) {
  const bench = await workbookWith(classOf(pupils))
  const traffic = trafficOf(bench)
  let progress = 0
  const work: Work = { signal: new AbortController().signal, progress: () => progress++ }
  const start = performance.now()
  const reading = await readSheet(undefined, work)
  await markSheet(reading, review(reading.matrix), { flags: true, mastery: true }, work)
  return { pupils, milliseconds: performance.now() - start, traffic, progress }
}

/** The longest time, in milliseconds, for which the pane's own work on such a sheet lets nothing else have its turn: the middle of three runs. */
async function blockedFor(pupils: number): Promise<number> {
  const times: number[] = []
  for (let run = 0; run < 3; run++) times.push(await blockedOnce(pupils))
  return times.sort((a, b) => a - b)[1] ?? NaN
}

async function blockedOnce(pupils: number): Promise<number> {
  const sheet = classOf(pupils)
  const reviews: Review[] = []
  let [longest, last] = [0, performance.now()]
  const turn = () => {
    longest = Math.max(longest, performance.now() - last)
    last = performance.now()
  }
  const timer = setInterval(turn, 1)
  const pause = () => new Promise((resolve) => setTimeout(resolve, 2))
  await pause()
  const marksheets = await inTurns(finding(sheet))
  await pause()
  for (const marksheet of marksheets) reviews.push(await inTurns(reviewing(sheet, marksheet)))
  await pause()
  await inTurns(planning(sheet, reviews))
  await pause()
  await inTurns(masteryEditing(reviews, [], STATUS_WORDS))
  await pause()
  clearInterval(timer)
  turn()
  return longest
}

/** Milliseconds in which the client library alone writes such a sheet's values, in one request. */
async function writtenRaw(pupils: number): Promise<number> {
  await workbookWith({ name: 'Raw', values: [['']] })
  const values = classOf(pupils).values.map((row) => row.map((value) => value ?? ''))
  const start = performance.now()
  await Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getActiveWorksheet()
    sheet.getRange('A1').getResizedRange(values.length - 1, QUESTIONS).values = values
    await context.sync()
  })
  return performance.now() - start
}

/** Marks, and stops in the middle of writing. */
async function stopWhileMarking(pupils: number): Promise<{ told: boolean; left: number }> {
  const bench = await workbookWith(classOf(pupils))
  const stop = new AbortController()
  const work: Work = {
    signal: stop.signal,
    progress: (part, words) => {
      if (words === 'Writing' && part > 0.4) stop.abort()
    },
  }
  const reading = await readSheet(undefined, work)
  const told = await markSheet(reading, review(reading.matrix), { flags: true, mastery: true }, work).then(
    () => false,
    (error: unknown) => error instanceof Stopped,
  )
  return { told, left: bench.grid.conditionalFormats(reading.id).length }
}
