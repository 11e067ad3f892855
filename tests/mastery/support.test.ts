import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ADDITION_TYPES, SUBTRACTION_TYPES, type ExchangeType } from '../../src/arithmetic/exchange'
import { STATUSES } from '../../src/mastery/standing'
import { nextType, statusSign, supportGroups, TEACHING_ORDER } from '../../src/mastery/support'
import { anyCounts, judged } from './judged'

const judgements = anyCounts.map((counts) => judged(counts))

describe('teaching order', () => {
  it('holds every type once', () => {
    expect([...TEACHING_ORDER].sort()).toEqual([...SUBTRACTION_TYPES, ...ADDITION_TYPES].sort())
  })

  it('gives as next the first type not secure above what is secure, never an easier one', () => {
    expect(
      nextType(
        judged({ 'no exchange': [1, 2], 'one exchange, tens to ones': [4, 4], 'through a zero': [0, 4] }),
      ),
    ).toBe('through a zero')
    expect(nextType(judged({ 'no exchange': [1, 1] }))).toBe('no exchange')
    expect(nextType(judged({ 'no exchange': [3, 3] }))).toBe('one exchange, tens to ones')
    expect(nextType(judged({ 'no exchange': [1, 3], 'through a zero': [3, 3] }))).toBe(
      'through two or more zeros',
    )
    expect(nextType(judged({ 'two exchanges, apart': [0, 0] }))).toBeNull()
    expect(nextType(judged())).toBeNull()
  })

  it('sends nobody who had everything right back to something easier', () => {
    expect(nextType(judged({ 'no exchange': [12, 12] }))).toBe('one exchange, tens to ones')
    const single = Object.fromEntries(SUBTRACTION_TYPES.slice(0, 12).map((type) => [type, [1, 1] as const]))
    const next = nextType(judged(single))
    expect(next === null || TEACHING_ORDER.indexOf(next) > TEACHING_ORDER.indexOf('no exchange')).toBe(true)
  })

  it('keeps to whole numbers of four digits while the class does, as long as there is anything', () => {
    expect(nextType(judged({ 'one exchange, thousands to hundreds': [3, 3] }))).toBe('two exchanges, apart')
    expect(nextType(judged({ 'through two or more zeros': [3, 3] }))).toBe('one exchange, ones to tenths')
    expect(nextType(judged({ 'one exchange, hundredths to thousandths': [3, 3] }))).toBeNull()
  })

  it('is, by plain counts, never below a type that was all right twice or more', () => {
    fc.assert(
      fc.property(anyCounts, (counts) => {
        const next = nextType(judged(counts))
        if (next === null) return
        for (const [type, [right, tried]] of Object.entries(counts))
          if (right === tried && tried >= 2)
            expect(TEACHING_ORDER.indexOf(next)).toBeGreaterThan(
              TEACHING_ORDER.findIndex((each) => each === type),
            )
      }),
    )
  })
})

describe('a status', () => {
  it('has a sign of its own, so that no colour is needed', () => {
    const signs = STATUSES.map(statusSign)
    expect(new Set(signs).size).toBe(STATUSES.length)
    for (const sign of signs) expect(sign).toHaveLength(1)
  })
})

describe('groups', () => {
  it('hold every flagged pupil once, with those of the same need, none larger than asked', () => {
    fc.assert(
      fc.property(fc.array(judgements), fc.integer({ min: 1, max: 8 }), (all, largest) => {
        const pupils = all.map((each, index) => ({ name: `Pupil ${index}`, judgement: each }))
        const groups = supportGroups(pupils, largest)
        const names = groups.flatMap((group) => group.pupils.map(({ name }) => name))
        expect(names.toSorted()).toEqual(
          pupils
            .filter((pupil) => pupil.judgement.needsSupport)
            .map(({ name }) => name)
            .toSorted(),
        )
        for (const group of groups) {
          expect(group.pupils.length).toBeGreaterThanOrEqual(1)
          expect(group.pupils.length).toBeLessThanOrEqual(largest)
          for (const { judgement: own } of group.pupils) {
            expect(own.need.kind).toBe(group.need.kind)
            if (group.need.kind === 'family') expect(own.need.type).toBe(group.need.type)
          }
        }
      }),
    )
  })

  it('come in teaching order and are split evenly', () => {
    const zero: ExchangeType = 'through a zero'
    const pupils = [
      ...[0, 1, 2, 3, 4].map((index) => ({ name: `Zed ${index}`, judgement: judged({ [zero]: [1, 4] }) })),
      { name: 'Ada', judgement: judged({ 'two exchanges, apart': [0, 3], [zero]: [0, 3] }) },
      { name: 'Bo', judgement: judged({ [zero]: [4, 4] }) },
    ]
    expect(
      supportGroups(pupils, 4).map((group) => [group.need.type, group.pupils.map(({ name }) => name)]),
    ).toEqual([
      ['two exchanges, apart', ['Ada']],
      [zero, ['Zed 0', 'Zed 1', 'Zed 2']],
      [zero, ['Zed 3', 'Zed 4']],
    ])
  })

  it('are refused a senseless size', () => {
    for (const size of [0, -1, 2.5, NaN])
      expect(() => supportGroups([], size)).toThrow('The size of a group must be a whole number from 1 up.')
  })
})
