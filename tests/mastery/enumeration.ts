import type { Skill } from '../../src/arithmetic/exchange'
import type { MasteryQuestion } from '../../src/mastery/judge'
import type { Evidence } from '../../src/mastery/standing'
import type { MasterySettings } from '../../src/mastery/settings'

/**
 * The chance that a pupil has all of `wanted` after the last occasion, by writing out every history of skill profiles (one
 * profile an occasion) with its full probability. Independent of the model's transforms and logarithms. `skills` are all
 * that occur; the histories number 2^(skills × occasions).
 */
export function chanceByEnumeration(
  wanted: readonly Skill[],
  skills: readonly Skill[],
  occasions: readonly (readonly MasteryQuestion[])[],
  outcomes: readonly (readonly Evidence[])[],
  settings: MasterySettings,
): number {
  const profiles = subsetsOf(skills)
  let all = 0
  let wantedOnly = 0
  const follow = (occasion: number, before: ReadonlySet<Skill> | null, probability: number): void => {
    for (const profile of profiles) {
      const reached =
        probability *
        product(skills, (skill) => chanceOfHolding(profile.has(skill), before?.has(skill), settings)) *
        product(occasions[occasion] ?? [], (question, index) =>
          chanceOfAnswer(outcomes[occasion]?.[index] ?? null, question, profile, settings),
        )
      if (occasion + 1 < occasions.length) follow(occasion + 1, profile, reached)
      else {
        all += reached
        if (wanted.every((skill) => profile.has(skill))) wantedOnly += reached
      }
    }
  }
  follow(0, null, 1)
  return wantedOnly / all
}

function subsetsOf(skills: readonly Skill[]): ReadonlySet<Skill>[] {
  return skills.reduce<Set<Skill>[]>(
    (subsets, skill) => [...subsets, ...subsets.map((subset) => new Set([...subset, skill]))],
    [new Set()],
  )
}

function chanceOfHolding(holds: boolean, held: boolean | undefined, settings: MasterySettings): number {
  const { prior, learn, forget } = settings
  const chance = held === undefined ? prior : held ? 1 - forget : learn
  return holds ? chance : 1 - chance
}

function chanceOfAnswer(
  outcome: Evidence,
  { skills }: MasteryQuestion,
  profile: ReadonlySet<Skill>,
  { slip, guess }: MasterySettings,
): number {
  if (outcome === null) return 1
  const right = skills.every((skill) => profile.has(skill)) ? 1 - slip : guess
  return outcome ? right : 1 - right
}

function product<T>(items: readonly T[], factor: (item: T, index: number) => number): number {
  return items.reduce((result, item, index) => result * factor(item, index), 1)
}
