import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ADDITION_TYPES, SUBTRACTION_TYPES, type ExchangeType } from '../../src/arithmetic/exchange'
import { STATUSES, type Judgement, type Status } from '../../src/mastery/judge'
import {
  nextType,
  statusSign,
  supportGroups,
  TEACHING_ORDER,
  typesToSupport,
} from '../../src/mastery/support'

function judgement(statuses: Partial<Record<ExchangeType, Status>>, probability = 0.2): Judgement {
  const byType = Object.entries(statuses).map(([type, status]) => ({
    type: type as ExchangeType,
    right: 1,
    tried: 4,
    probability,
    status,
  }))
  return { byType, bySkill: [], needsSupport: byType.some(({ status }) => status === 'needs support') }
}

const judgements = fc
  .dictionary(fc.constantFrom(...TEACHING_ORDER), fc.constantFrom(...STATUSES))
  .map((statuses) => judgement(statuses))

describe('teaching order', () => {
  it('holds every type once', () => {
    expect([...TEACHING_ORDER].sort()).toEqual([...SUBTRACTION_TYPES, ...ADDITION_TYPES].sort())
  })

  it('gives the first type that is not secure as the next', () => {
    expect(
      nextType(
        judgement({
          'through a zero': 'needs support',
          'no exchange': 'secure',
          'one exchange, tens to ones': 'nearly secure',
        }),
      ),
    ).toBe('one exchange, tens to ones')
    expect(nextType(judgement({ 'no exchange': 'not enough seen' }))).toBe('no exchange')
    expect(nextType(judgement({ 'no exchange': 'secure' }))).toBeNull()
  })

  it('is the order of the types to support', () => {
    expect(
      typesToSupport(
        judgement({
          'no exchange': 'secure',
          'through a zero': 'needs support',
          'two exchanges, apart': 'needs support',
        }),
      ),
    ).toEqual(['two exchanges, apart', 'through a zero'])
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
  it('hold every pupil who needs support once, with the easiest type needed, in groups no larger than asked', () => {
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
          for (const pupil of group.pupils) expect(typesToSupport(pupil.judgement)[0]).toBe(group.type)
        }
      }),
    )
  })

  it('come by the number of pupils in need, are split evenly, and start with those furthest from secure', () => {
    const zero: ExchangeType = 'through a zero'
    const pupils = [
      {
        name: 'Ada',
        judgement: judgement({ 'two exchanges, apart': 'needs support', [zero]: 'needs support' }),
      },
      ...[0.4, 0.1, 0.3, 0.2, 0.05].map((probability, index) => ({
        name: `Zed ${index}`,
        judgement: judgement({ [zero]: 'needs support' }, probability),
      })),
      { name: 'Bo', judgement: judgement({ [zero]: 'secure' }, 0.9) },
    ]
    expect(
      supportGroups(pupils, 4).map((group) => [group.type, group.pupils.map(({ name }) => name)]),
    ).toEqual([
      [zero, ['Zed 4', 'Zed 1', 'Zed 3']],
      [zero, ['Zed 2', 'Zed 0']],
      ['two exchanges, apart', ['Ada']],
    ])
  })

  it('are refused a senseless size', () => {
    for (const size of [0, -1, 2.5, NaN])
      expect(() => supportGroups([], size)).toThrow('The size of a group must be a whole number from 1 up.')
  })
})
