import { ADDITION_TYPES, SUBTRACTION_TYPES, type ExchangeType } from '../arithmetic/exchange'
import type { FaultId } from '../answers/faults'
import { FAMILIES, familyOf, type Family } from '../arithmetic/families'
import { DEFAULT_MASTERY, settingsProblem, type MasterySettings } from './settings'

/** From the least to the most that can be said for a pupil; `not enough seen` says nothing. */
export const STATUSES = ['not enough seen', 'needs support', 'nearly secure', 'secure'] as const

export type Status = (typeof STATUSES)[number]

/** What an answer tells: true right, false wrong, null nothing (blank, absent, unreadable). */
export type Evidence = boolean | null

/** How many answers were right of those tried. */
export interface Count {
  readonly right: number
  readonly tried: number
}

/** `right` of the `tried` (answered) questions; the probability, from 0 to 1, that the pupil can; the status it gives. */
export interface Standing extends Count {
  readonly probability: number
  readonly status: Status
}

export interface TypeStanding extends Standing {
  readonly type: ExchangeType
}

export interface FamilyStanding extends Standing {
  readonly family: Family
}

/** What a pupil needs, the first that applies: see `needOf`. `sentence` is the evidence, '' where there is none. */
export interface Need {
  readonly kind: 'typing' | 'fault' | 'family' | 'no pattern' | 'slips' | 'none'
  readonly fault: FaultId | null
  readonly family: Family | null
  readonly type: ExchangeType | null
  readonly sentence: string
}

/** Where a pupil stands in every type and family that was asked, by their own counts. */
export interface Standings {
  readonly byType: readonly TypeStanding[]
  readonly byFamily: readonly FamilyStanding[]
}

/** Where a pupil stands and what the pupil needs: the one verdict. `needsSupport`: whether the need is flagged. */
export interface Judgement extends Standings {
  readonly need: Need
  readonly needsSupport: boolean
}

/** A question asked, by its type, and what the answer tells. */
export interface Told {
  readonly type: ExchangeType
  readonly told: Evidence
}

/**
 * The word for a pupil's own count and the probability that it gives: below the fewest tried nothing is said; `nearly secure` takes one
 * more than the fewest.
 */
export function statusOf(tried: number, probability: number, settings: MasterySettings): Status {
  if (tried < settings.fewestTried) return 'not enough seen'
  if (probability >= settings.secure) return 'secure'
  if (probability <= settings.needsSupport) return 'needs support'
  return tried > settings.fewestTried ? 'nearly secure' : 'not enough seen'
}

/**
 * Where a count on one occasion leaves a pupil, by two states, can and cannot: a pupil who can is right with chance 1 − slip, one who
 * cannot with chance `guess`. The same count gives the same word everywhere.
 */
export function standingOf(count: Count, settings: MasterySettings = DEFAULT_MASTERY): Standing {
  return standingOver([count], settings)
}

/**
 * The same over several occasions in time order, counts added up. From one occasion to the next what is above a half fades; where
 * something is answered again the pupil may have learnt in between (Corbett and Anderson 1995, from memory), then the answers weigh in.
 * So time alone makes nothing better, nor worse than a half.
 */
export function standingOver(
  counts: readonly Count[],
  settings: MasterySettings = DEFAULT_MASTERY,
): Standing {
  const { slip, guess, prior, learn, forget } = settings
  let probability = prior
  let right = 0
  let tried = 0
  for (const [occasion, count] of counts.entries()) {
    if (occasion > 0) {
      if (probability > 0.5) probability = 0.5 + (probability - 0.5) * (1 - forget)
      if (count.tried > 0 && tried > 0) probability += (1 - probability) * learn
    }
    const wrong = count.tried - count.right
    const can = probability * (1 - slip) ** count.right * slip ** wrong
    const cannot = (1 - probability) * guess ** count.right * (1 - guess) ** wrong
    if (count.tried > 0) probability = can / (can + cannot)
    right += count.right
    tried += count.tried
  }
  return { right, tried, probability, status: statusOf(tried, probability, settings) }
}

const TYPES: readonly ExchangeType[] = [...SUBTRACTION_TYPES, ...ADDITION_TYPES]

/**
 * Where a pupil stands in each type that was asked (subtraction first, in the order of its list) and each family (in teaching order),
 * after occasions in time order. Throws RangeError with a sentence for senseless settings.
 */
export function standings(
  occasions: readonly (readonly Told[])[],
  settings: MasterySettings = DEFAULT_MASTERY,
): Standings {
  const problem = settingsProblem(settings)
  if (problem !== null) throw new RangeError(problem)
  const counts = occasions.map(countedByType)
  const types = TYPES.filter((type) => counts.some((each) => each.has(type)))
  const families = new Map<Family, ExchangeType[]>()
  for (const type of types) families.set(familyOf(type), [...(families.get(familyOf(type)) ?? []), type])
  const over = (some: readonly ExchangeType[]) =>
    standingOver(
      counts.map((each) => some.reduce((sum, type) => added(sum, each.get(type)), NOTHING)),
      settings,
    )
  return {
    byType: types.map((type) => ({ type, ...over([type]) })),
    byFamily: FAMILIES.flatMap((family) => {
      const own = families.get(family)
      return own === undefined ? [] : [{ family, ...over(own) }]
    }),
  }
}

const NOTHING: Count = { right: 0, tried: 0 }

function added(sum: Count, more: Count = NOTHING): Count {
  return { right: sum.right + more.right, tried: sum.tried + more.tried }
}

function countedByType(all: readonly Told[]): ReadonlyMap<ExchangeType, Count> {
  const counts = new Map<ExchangeType, { right: number; tried: number }>()
  for (const { type, told } of all) {
    let count = counts.get(type)
    if (count === undefined) counts.set(type, (count = { right: 0, tried: 0 }))
    if (told !== null) count.tried++
    if (told === true) count.right++
  }
  return counts
}

/** How many answers were right of those that tell something. */
export function countOf(evidence: readonly Evidence[]): Count {
  const tried = evidence.filter((told) => told !== null)
  return { right: tried.filter((told) => told).length, tried: tried.length }
}
