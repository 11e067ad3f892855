import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { countsFor, whyNeed, whyStatus, wordsFor } from '../../src/mastery/explain'
import { standingOf, standingOver, STATUSES } from '../../src/mastery/standing'
import { anyCounts, judged } from './judged'

describe('the counts that a word stands for', () => {
  it('are those of the count table', () => {
    expect(STATUSES.map((status) => countsFor(status))).toEqual([
      'fewer than 2 answered, or 1 of 2',
      '0 of 2, 1 of 3, 2 of 4, 2 of 5 right, or worse',
      'between: 2 of 3, 3 of 5',
      '2 of 2, 3 of 3, 3 of 4, 4 of 5 right, or better',
    ])
  })

  it('never hold a count that has another word', () => {
    for (const status of STATUSES)
      for (const [, right, tried] of countsFor(status).matchAll(/(\d) of (\d)/g))
        expect(standingOf({ right: Number(right), tried: Number(tried) }).status).toBe(status)
  })
})

describe('the words that a set allows', () => {
  it('are none for one question, two for two, all from three on', () => {
    expect([0, 1, 2, 3, 4].map((asked) => wordsFor(asked))).toEqual([
      [],
      [],
      ['secure', 'needs support'],
      ['secure', 'nearly secure', 'needs support'],
      ['secure', 'needs support'],
    ])
  })
})

describe('why a count has its word', () => {
  it('tells the count, how likely it makes it, and the limit', () => {
    expect(whyStatus(standingOf({ right: 1, tried: 4 }))).toBe(
      '1 of 4 right: under 1% likely that the pupil can. “needs support” goes up to 25%.',
    )
    expect(whyStatus(standingOf({ right: 2, tried: 2 }))).toBe(
      '2 of 2 right: 95% likely that the pupil can. “secure” begins at 85%.',
    )
    expect(whyStatus(standingOf({ right: 1, tried: 2 }))).toMatch(/One more answer will tell\.$/)
    expect(whyStatus(standingOf({ right: 1, tried: 1 }))).toBe('1 of 1 right: too few answers to say more.')
    expect(whyStatus(standingOf({ right: 0, tried: 0 }))).toBe('Nothing answered.')
  })

  it('says where weeks weigh in', () => {
    const weeks = [
      { right: 1, tried: 4 },
      { right: 3, tried: 3 },
    ]
    expect(whyStatus(standingOver(weeks))).toMatch(
      /^4 of 7 right in all, the latest weighing most: \d+% likely/,
    )
  })
})

describe('why a pupil has a need', () => {
  it('says flagged where it is, and repeats the count of the evidence', () => {
    fc.assert(
      fc.property(anyCounts, (counts) => {
        const judgement = judged(counts)
        const why = whyNeed(judgement)
        expect(why.startsWith('Flagged')).toBe(judgement.needsSupport)
        const count = /\d+ of \d+$/.exec(judgement.need.sentence)?.[0]
        if (judgement.need.kind === 'family') expect(why).toContain(`${count ?? '?'} right`)
      }),
    )
  })
})
