import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { FaultEvidence } from '../../src/answers/diagnosis'
import { isFlaggedSentence, judge } from '../../src/mastery/need'
import { countOf, standings, type Told } from '../../src/mastery/standing'
import { TEACHING_ORDER } from '../../src/mastery/support'

const told = fc.array(
  fc.record({ type: fc.constantFrom(...TEACHING_ORDER), told: fc.constantFrom(true, false, null) }),
  { maxLength: 40 },
)

const judged = (answers: readonly Told[], others: Partial<Parameters<typeof judge>[1]> = {}) =>
  judge(standings([answers]), {
    ...countOf(answers.map((each) => each.told)),
    named: [],
    typing: null,
    ...others,
  })

const named: FaultEvidence[] = [
  {
    fault: 'no-reduction',
    probability: 0.9,
    alsoFits: [],
    explains: [0, 1, 2],
    explainsButForSlip: [],
    held: 'always',
  },
]
const wrong = (type: Told['type'], count: number): Told[] =>
  Array.from({ length: count }, () => ({ type, told: false }))

describe('what a pupil needs', () => {
  it('is flagged for a fault, a family or no pattern, and never on all right or on slips', () => {
    fc.assert(
      fc.property(told, (answers) => {
        const { need, needsSupport } = judged(answers)
        expect(needsSupport).toBe(['fault', 'family', 'no pattern'].includes(need.kind))
        const { right, tried } = countOf(answers.map((each) => each.told))
        if (right === tried) expect(need.kind).toBe('none')
        if (needsSupport) expect(isFlaggedSentence(need.sentence)).toBe(true)
      }),
    )
  })

  it('is the first that applies: typing, fault, family, no pattern, slips, none', () => {
    const answers = wrong('through a zero', 4)
    const typing = { kind: 'moved', by: 1, count: 3, tried: 4 } as const
    expect(judged(answers, { named, typing }).need.kind).toBe('typing')
    expect(judged(answers, { named, typing }).needsSupport).toBe(false)
    expect(judged(answers, { named }).need).toMatchObject({
      kind: 'fault',
      fault: 'no-reduction',
      type: null,
    })
    expect(judged(answers).need).toEqual({
      kind: 'family',
      fault: null,
      family: 'through zeros',
      type: 'through a zero',
      sentence: 'through zeros: 0 of 4',
    })
    const apart = TEACHING_ORDER.filter((_, index) => [0, 1, 6, 12, 13].includes(index))
    expect(judged(apart.flatMap((type) => wrong(type, 1))).need.kind).toBe('no pattern')
    expect(judged(wrong('no carry', 1)).need).toMatchObject({ kind: 'slips', sentence: '1 of 1 wrong' })
    expect(judged([]).need).toMatchObject({ kind: 'none', sentence: '' })
  })

  it('takes a type that needs support though its family does not, with the count of the type', () => {
    const right = Array.from({ length: 8 }, (): Told => ({ type: 'one exchange, tens to ones', told: true }))
    const { need } = judged([...right, ...wrong('one exchange, hundreds to tens', 2)])
    expect(need).toMatchObject({
      family: 'one exchange',
      type: 'one exchange, hundreds to tens',
      sentence: 'one exchange, hundreds to tens: 0 of 2',
    })
  })
})
