import { describe, expect, it } from 'vitest'
import type { CellValue } from '../../../src/answers/typed'
import {
  clearBefore,
  historiesIn,
  judgeHistory,
  linesOf,
  questionsIn,
  readRecord,
  recordLines,
  recordRows,
  sameNames,
  type RecordRow,
} from '../../../src/marksheet/record/record'
import { addToLines, addToRecord, filingsFor, metIn } from '../../../src/marksheet/record/filing'
import { review, type Review } from '../../../src/marksheet/marking/review'

const QUESTIONS = [
  ['682 − 347', '871 − 456', '593 − 128', '764 − 239'],
  ['452 − 137', '683 − 268', '791 − 356', '542 − 218'],
  ['364 − 129', '875 − 548', '981 − 663', '473 − 258'],
]
const answerOf = (question: string) => {
  const [top = 0, bottom = 0] = question.split(' − ').map(Number)
  return top - bottom
}
/** A week's marksheet: Amina answers so many right, Bryn the same every week. */
function week(index: number, right: Readonly<Record<string, number | null>>): Review {
  const questions = QUESTIONS[index] ?? []
  const rows = Object.entries(right).map(([name, count]): CellValue[] => [
    name,
    ...questions.map((question, i) => (count === null ? 'abs' : answerOf(question) + (i < count ? 0 : 10))),
  ])
  const [one] = review({ name: `Week ${index + 1}`, values: [['Name', ...questions], ...rows] })
  if (!one) throw new Error('a marksheet')
  return one
}
const DATES = ['2026-11-06', '2026-11-13', '2026-11-20']
const recordOf = (...weeks: Review[]) =>
  weeks.reduce<RecordRow[]>(
    (record, each, index) =>
      addToRecord(record, recordRows(each, { date: DATES[index] ?? '', class: 'Kingfisher' })),
    [],
  )

describe('the record', () => {
  it('keeps a row for every answer, and reads back what it writes', () => {
    const record = recordOf(week(0, { 'Amina K': 1, 'Bryn T': null }))
    expect(record[0]).toEqual({
      date: '2026-11-06',
      class: 'Kingfisher',
      sheet: 'Week 1',
      pupil: 'Amina K',
      question: '682 − 347',
      typed: '335',
      outcome: 'correct',
      type: 'one exchange, tens to ones',
    })
    const sheet = {
      name: 'Record',
      values: [['title'], ['caution'], ['heads'], ...recordLines(record), [], ['spoilt']],
    }
    expect(readRecord(sheet)).toEqual({ rows: record, leftAside: 1 })
  })

  const at = (review: Review, date: string, group = 'Kingfisher') =>
    recordRows(review, { date, class: group })
  const [FIRST = '', SECOND = ''] = DATES

  it('replaces just the occasion that it is told to', () => {
    const first = at(week(0, { 'Amina K': 1 }), FIRST)
    const later = at(week(0, { 'Amina K': 0 }), SECOND)
    const again = at(week(0, { 'Amina K': 4, 'Bryn T': 2 }), FIRST)
    const record = addToRecord(addToRecord([], first), later)
    expect(record).toEqual([...first, ...later])
    expect(addToRecord(record, again, first[0])).toEqual([...again.slice(0, 4), ...later, ...again.slice(4)])
    expect(addToRecord(record, at(week(1, { 'Amina K': 4 }), SECOND, 'Plover')).length).toBe(12)
  })

  it('says what may be the same work: as it is, changed, on another day, in another class, under a name used again', () => {
    const rows = at(week(0, { 'Amina K': 1, 'Bryn T': 2 }), FIRST)
    const told = (now: RecordRow[]) =>
      metIn(rows, now).map(({ same, shared, changed, gone, added }) => [same, shared, changed, gone, added])
    expect(metIn([], rows)).toEqual([])
    expect(told(rows)).toEqual([[true, 4, 0, [], []]])
    expect(told(at(week(0, { 'Amina K': 3, 'Cai R': 2 }), FIRST))).toEqual([
      [false, 4, 2, ['Bryn T'], ['Cai R']],
    ])
    expect(told(at(week(0, { 'Amina K': 1, 'Bryn T': 2 }), SECOND))).toEqual([[false, 4, 0, [], []]])
    expect(told(at(week(0, { 'Amina K': 1, 'Bryn T': 2 }), FIRST, 'Plover'))).toEqual([[false, 4, 0, [], []]])
    expect(told(at({ ...week(1, { 'Amina K': 1 }), sheet: 'week 1' }, SECOND))).toEqual([
      [false, 0, 0, ['Bryn T'], []],
    ])
    expect(told(at(week(1, { 'Amina K': 1, 'Bryn T': 2 }), SECOND))).toEqual([])
    const renamed = at({ ...week(0, { 'Amina K': 1, 'Bryn T': 2 }), sheet: 'Friday' }, SECOND)
    expect(told(renamed)).toEqual([[false, 4, 0, [], []]])
  })

  it('files the same work in its place with either day, and other work beside it, but never two of one day', () => {
    const rows = at(week(0, { 'Amina K': 1 }), FIRST)
    const place = { class: 'Kingfisher', date: FIRST, sheet: 'Week 1' }
    const ways = (now: RecordRow[]) => filingsFor(metIn(rows, now), now)
    expect(ways(at(week(0, { 'Amina K': 2 }), SECOND))).toEqual([
      { instead: place, date: FIRST },
      { instead: place, date: SECOND },
      { instead: null, date: SECOND },
    ])
    expect(ways(at(week(0, { 'Amina K': 2 }), FIRST))).toEqual([{ instead: place, date: FIRST }])
    expect(ways(at({ ...week(1, { 'Amina K': 2 }), sheet: 'Week 1' }, SECOND))).toEqual([
      { instead: null, date: SECOND },
    ])
  })

  it('takes a pupil who learns off the list over three weeks, and keeps one who does not', () => {
    const record = recordOf(
      week(0, { 'Amina K': 0, 'Bryn T': 0 }),
      week(1, { 'Amina K': 3, 'Bryn T': 0 }),
      week(2, { 'amina  k': 4, 'Bryn T': 1 }),
    )
    const histories = historiesIn(record)
    expect(histories.map(({ pupil, occasions }) => [pupil, occasions.length])).toEqual([
      ['Amina K', 3],
      ['Bryn T', 3],
    ])
    expect(histories.map((history) => judgeHistory(history).needsSupport)).toEqual([false, true])
    expect(judgeHistory(histories[0] ?? { pupil: '', class: '', occasions: [] }).byType[0]).toMatchObject({
      right: 7,
      tried: 12,
    })
  })

  it('lets no absence take a child off the list', () => {
    const missed = recordOf(
      week(0, { 'Bryn T': 0 }),
      week(1, { 'Bryn T': null }),
      week(2, { 'Bryn T': null }),
    )
    const [bryn] = historiesIn(missed)
    const [once] = historiesIn(recordOf(week(0, { 'Bryn T': 0 })))
    expect(bryn && judgeHistory(bryn)).toEqual(once && judgeHistory(once))
  })

  it('is cleared for a new school year', () => {
    const record = recordOf(week(0, { 'Amina K': 1 }), week(1, { 'Amina K': 1 }))
    expect(clearBefore(record, '2026-11-10').map(({ date }) => date)).toEqual(Array(4).fill('2026-11-13'))
  })

  it('asks about names that stand for two rows', () => {
    const [one] = review({
      name: 'S',
      values: [
        ['Name', '932 − 457'],
        ['Maya I', 475],
        ['Bryn T', 1],
        ['maya  I', 9],
      ],
    })
    expect(one && sameNames(one)).toEqual([{ name: 'Maya I', pupils: [0, 2] }])
  })

  it('keeps rows where they stand when they are replaced, and lines that make no row', () => {
    const [first, second] = [
      recordOf(week(0, { 'Amina K': 1, 'Bryn T': 2 })),
      recordOf(week(1, { 'Amina K': 1 })),
    ]
    const spoilt = ['last week', '', '', '', '', '', '', '']
    const lines = linesOf({
      name: 'Record',
      values: [['title'], ['caution'], ['heads'], ...recordLines(first), spoilt, ...recordLines(second)],
    })
    const again = recordRows(week(0, { 'Amina K': 4 }), { date: '2026-11-06', class: 'Kingfisher' })
    const now = addToLines(lines, again, first[0])
    expect(now.map(({ row }) => row && [row.pupil, row.date, row.sheet])).toEqual([
      ...again.map(() => ['Amina K', '2026-11-06', 'Week 1']),
      null,
      ...second.map(() => ['Amina K', '2026-11-06', 'Week 2']),
    ])
    expect(now[again.length]?.cells).toEqual(spoilt)
    expect(now.slice(0, 4).every(({ row }) => row?.outcome === 'correct')).toBe(true)
  })

  it('reads a date that a spreadsheet has made a number of', () => {
    const [line] = recordLines(recordOf(week(0, { 'Amina K': 1 })))
    // 6 November 2026 is day 46332 when 1 January 1900 is day 1 and 29 February 1900 is counted, as spreadsheets do.
    const values = [[''], [''], [''], [46332, ...(line ?? []).slice(1)], [1e30, ...(line ?? []).slice(1)]]
    expect(readRecord({ name: 'Record', values })).toMatchObject({
      rows: [{ date: '2026-11-06' }],
      leftAside: 1,
    })
  })

  it('holds no email address', () => {
    const [one] = review({
      name: 'S',
      values: [
        ['Name', '932 − 457', '874 − 523'],
        ['Maya I', 475, 'ask maya@school.example'],
        ['Bryn T', 1, 2],
      ],
    })
    if (!one) throw new Error('a marksheet')
    const named = { ...one, pupils: one.pupils.map((pupil) => ({ ...pupil, name: 'maya.i@school.example' })) }
    const rows = recordRows(named, { date: '2026-11-06', class: 'Kingfisher' })
    expect(JSON.stringify(rows)).not.toContain('@')
    expect(rows[0]?.pupil).toBe('maya.i')
  })

  it('lists its questions once each', () => {
    const record = recordOf(week(0, { 'Amina K': 1, 'Bryn T': 2 }))
    expect(questionsIn(record).length).toBe(4)
  })
})
