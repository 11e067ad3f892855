import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Outcome } from '../../../src/answers/typed'
import {
  mondayOf,
  notNamedSentence,
  planPraise,
  PRAISE_NOTES,
  praiseIn,
  praiseText,
  weeksOf,
} from '../../../src/marksheet/record/praise'
import type { RecordRow } from '../../../src/marksheet/record/record'

const MONDAY = '2026-11-23'
const BEFORE = '2026-11-17'

/** Questions that go through a zero. */
const THROUGH_ZERO = ['305 − 128', '402 − 157', '604 − 236', '503 − 147', '706 − 419', '801 − 365']

function answers(
  pupil: string,
  outcomes: readonly Outcome[],
  date = '2026-11-25',
  group = '4K',
  questions = THROUGH_ZERO,
): RecordRow[] {
  return outcomes.map((outcome, index) => ({
    date,
    class: group,
    sheet: date,
    pupil,
    question: questions[index % questions.length] ?? '',
    typed: '',
    outcome,
    type: 'through a zero',
  }))
}

const right = (count: number) => Array<Outcome>(count).fill('correct')
const wrong = (count: number) => Array<Outcome>(count).fill('incorrect')
const praise = (rows: readonly RecordRow[], monday = MONDAY) => praiseIn(rows, '4K', monday)

describe('the weeks of a record', () => {
  it('begin on a Monday, at most six days before', () => {
    fc.assert(
      fc.property(
        fc.date({ min: new Date('2000-01-01'), max: new Date('2099-12-31'), noInvalidDate: true }),
        (date) => {
          const day = date.toISOString().slice(0, 10)
          const monday = mondayOf(day) ?? ''
          expect(new Date(monday).getUTCDay()).toBe(1)
          const days = (Date.parse(day) - Date.parse(monday)) / 86_400_000
          expect([0, 1, 2, 3, 4, 5, 6]).toContain(days)
        },
      ),
    )
    expect([mondayOf('2026-11-23'), mondayOf('2026-11-29'), mondayOf('2026-11-30')]).toEqual([
      '2026-11-23',
      '2026-11-23',
      '2026-11-30',
    ])
    expect(mondayOf('2026-13-45')).toBeNull()
  })

  it('are those of the class, the latest first, each once', () => {
    const rows = [
      ...answers('Amina K', right(2), BEFORE),
      ...answers('Amina K', right(2)),
      ...answers('Bryn T', right(1), '2026-11-27'),
      ...answers('Caris W', right(1), '2026-12-04', '4J'),
      ...answers('Amina K', right(1), '2026-13-45'),
    ]
    expect(weeksOf(rows, '4k')).toEqual(['2026-11-23', '2026-11-16'])
  })
})

describe('praise from Record', () => {
  it('counts the answers of the week only, beside those of the time before it', () => {
    const rows = [...answers('Amina K', wrong(4), BEFORE), ...answers('Amina K', right(6))]
    expect(praise(rows).named).toEqual([
      {
        name: 'Amina K',
        says: [
          'More right than the time before in subtraction through a zero: 6 of 6, after 0 of 4.',
          'Answered 6 questions, all of them right.',
        ],
      },
    ])
    expect(praise(rows, '2026-11-16').named[0]?.says).toEqual(['Answered every one of the 4 questions.'])
  })

  it('tells no progress where there is none', () => {
    const rows = [...answers('Amina K', right(6), BEFORE), ...answers('Amina K', [...right(5), ...wrong(1)])]
    expect(praise(rows).named[0]?.says).toEqual(['Answered every one of the 6 questions.'])
  })

  it('puts several days of a week together, and leaves other weeks and classes out', () => {
    const rows = [
      ...answers('Amina K', right(2), '2026-11-24'),
      ...answers('Amina K', right(1), '2026-11-26'),
      ...answers('Amina K', wrong(5), '2026-11-30'),
      ...answers('Amina K', wrong(5), '2026-11-24', '4J'),
    ]
    expect(praise(rows).named[0]?.says.at(-1)).toBe('Answered 3 questions, all of them right.')
  })

  it('is in the order of the alphabet and does not depend on what others did', () => {
    const outcomes = fc.array(fc.constantFrom<Outcome>('correct', 'incorrect', 'blank', 'absent'), {
      maxLength: 6,
    })
    fc.assert(
      fc.property(outcomes, outcomes, outcomes, (own, others, before) => {
        const alone = [...answers('Nia P', before, BEFORE), ...answers('Nia P', own)]
        const all = [...answers('Zac B', others), ...alone, ...answers('Ben A', others)]
        const names = praise(all).named.map(({ name }) => name)
        expect(names).toEqual(['Ben A', 'Nia P', 'Zac B'].filter((name) => names.includes(name)))
        expect(praise(all).named.filter(({ name }) => name === 'Nia P')).toEqual(praise(alone).named)
      }),
      { numRuns: 40 },
    )
  })

  it('names nobody of whom the counts bear out nothing, and says that this says nothing about them', () => {
    const rows = [
      ...answers('Amina K', right(3)),
      ...answers('Bryn T', ['absent', 'absent']),
      ...answers('Caris W', right(3), BEFORE),
      ...answers('Dilys O', ['blank', 'unreadable']),
      ...answers('Ewan R', [...wrong(11), ...right(1), 'blank']),
    ]
    const found = praise(rows)
    expect(found.named.map(({ name }) => name)).toEqual(['Amina K'])
    expect(found.notNamed).toBe(4)
    expect(notNamedSentence(found)).toBe(
      '4 pupils of this class in Record are not named: no answer of that week, or nothing that its counts bear out. What to say is left to you; it says nothing about these children.',
    )
    expect(notNamedSentence({ named: [], notNamed: 1 })).toMatch(
      /^1 pupil .* is not named: .* about this child\.$/,
    )
    expect(notNamedSentence({ named: [], notNamed: 0 })).toBe('')
  })

  it('is taken out as text and as a page, with every pupil, the cautions, and who is not named', () => {
    const found = praise([...answers('Amina K', right(3)), ...answers('Bryn T', ['absent'])])
    const text = praiseText(found, '4K, week from Monday 23 November 2026')
    expect(text.split('\n')).toEqual([
      '4K, week from Monday 23 November 2026',
      `Amina K: ${found.named[0]?.says.join(' ') ?? ''}`,
      notNamedSentence(found),
    ])
    const { table } = planPraise(found, 'the heading')
    const cells = table.rows.flat().map((cell) => cell.text)
    expect(cells).toEqual(
      expect.arrayContaining([...PRAISE_NOTES, 'the heading', 'Amina K', notNamedSentence(found)]),
    )
    expect(cells).not.toContain('Bryn T')
    expect(
      planPraise({ ...found, notNamed: 0 }, '')
        .table.rows.flat()
        .map(({ text: each }) => each),
    ).not.toContain('Not named')
  })
})
