import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ADDITION_TYPES, SUBTRACTION_TYPES, type ExchangeType } from '../../src/arithmetic/exchange'
import { judge } from '../../src/mastery/need'
import { countOf, standings, STATUSES, type Judgement } from '../../src/mastery/standing'
import { nextType, statusSign, supportGroups, TEACHING_ORDER } from '../../src/mastery/support'

/** A pupil by how many were right of how many tried, of each type. */
function judgement(counts: Partial<Record<ExchangeType, readonly [number, number]>>): Judgement {
  const told = Object.entries(counts).flatMap(([type, [right, tried]]) =>
    Array.from({ length: tried }, (_, index) => ({ type: type as ExchangeType, told: index < right })),
  )
  return judge(standings([told]), { ...countOf(told.map((each) => each.told)), named: [], typing: null })
}

const counts = fc.tuple(fc.nat(4), fc.nat(4)).map(([right, wrong]) => [right, right + wrong] as const)
const judgements = fc.dictionary(fc.constantFrom(...TEACHING_ORDER), counts).map(judgement)

describe('teaching order', () => {
  it('holds every type once', () => {
    expect([...TEACHING_ORDER].sort()).toEqual([...SUBTRACTION_TYPES, ...ADDITION_TYPES].sort())
  })

  it('gives as next the first type not secure above what is secure, never an easier one', () => {
    expect(
      nextType(
        judgement({ 'no exchange': [1, 2], 'one exchange, tens to ones': [4, 4], 'through a zero': [0, 4] }),
      ),
    ).toBe('through a zero')
    expect(nextType(judgement({ 'no exchange': [1, 1] }))).toBe('no exchange')
    expect(nextType(judgement({ 'no exchange': [3, 3] }))).toBeNull()
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
      ...[0, 1, 2, 3, 4].map((index) => ({ name: `Zed ${index}`, judgement: judgement({ [zero]: [1, 4] }) })),
      { name: 'Ada', judgement: judgement({ 'two exchanges, apart': [0, 3], [zero]: [0, 3] }) },
      { name: 'Bo', judgement: judgement({ [zero]: [4, 4] }) },
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
