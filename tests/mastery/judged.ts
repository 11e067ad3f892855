import fc from 'fast-check'
import type { ExchangeType } from '../../src/arithmetic/exchange'
import type { FaultEvidence } from '../../src/answers/diagnosis'
import { judge } from '../../src/mastery/need'
import { countOf, standings, type Judgement } from '../../src/mastery/standing'
import { TEACHING_ORDER } from '../../src/mastery/support'

/** How many were right of how many tried, by type. */
export type Counts = Partial<Record<ExchangeType, readonly [right: number, tried: number]>>

/** A pupil by counts, on one occasion; nothing was asked where they are left out. */
export function judged(counts: Counts = {}, named: readonly FaultEvidence[] = []): Judgement {
  const told = Object.entries(counts).flatMap(([type, [right, tried]]) =>
    Array.from({ length: tried }, (_, index) => ({ type: type as ExchangeType, told: index < right })),
  )
  return judge(standings([told]), { ...countOf(told.map((each) => each.told)), named, typing: null })
}

const count = fc.tuple(fc.nat(4), fc.nat(4)).map(([right, wrong]) => [right, right + wrong] as const)

/** Counts of any types. */
export const anyCounts: fc.Arbitrary<Counts> = fc.dictionary(fc.constantFrom(...TEACHING_ORDER), count, {
  maxKeys: 8,
})
