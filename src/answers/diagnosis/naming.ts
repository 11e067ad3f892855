import type { FaultId } from '../faults'
import type { Account } from './accounts'
import type { Posterior } from './posterior'
import type { DiagnosisSettings } from './settings'

/**
 * A fault with its evidence. `alsoFits` are faults that give the same answers wherever the pupil answered; the `probability` is
 * that of one of them all. `explains` holds the indices of the wrong answers that are exactly the fault's and that the pupil's
 * other fault, if there is one, does not give.
 */
export interface FaultEvidence {
  readonly fault: FaultId
  readonly alsoFits: readonly FaultId[]
  readonly probability: number
  readonly explains: readonly number[]
}

/** The faults that explain at least one wrong answer of a pupil, likeliest first, those below `least` left out. */
export function faultEvidence(
  typed: readonly (string | null)[],
  accounts: readonly Account[],
  posterior: Posterior,
  least: number,
): FaultEvidence[] {
  const answered = typed.flatMap((answer, index) => (answer === null ? [] : [index]))
  const chance = (account: Account) => posterior.accounts[accounts.indexOf(account)] ?? 0
  const sum = (some: readonly Account[]) => some.reduce((total, account) => total + chance(account), 0)
  const having = (ids: readonly FaultId[]) =>
    accounts.filter((account) => account.ids.some((id) => ids.includes(id)))
  const likeliest = (some: readonly Account[]) => some.reduce((a, b) => (chance(b) > chance(a) ? b : a))

  const singles = [...new Set(accounts.flatMap(({ ids }) => ids))]
    .map((id) => ({
      id,
      marginal: sum(having([id])),
      alone: likeliest(accounts.filter(({ ids }) => ids.length === 1 && ids[0] === id)),
    }))
    .sort((a, b) => b.marginal - a.marginal)
  const found: FaultEvidence[] = []
  const taken = new Set<FaultId>()
  for (const { id, alone } of singles) {
    if (taken.has(id)) continue
    const same = singles.filter((other) =>
      answered.every((index) => other.alone.answers[index] === alone.answers[index]),
    )
    const group = same.map((other) => other.id)
    group.forEach((member) => taken.add(member))
    const probability = sum(having(group))
    if (probability < least) continue
    const account = likeliest(having([id]))
    const simpler = account.without[account.ids.indexOf(id)]
    const explains = answered.filter(
      (index) =>
        typed[index] !== accounts[0]?.answers[index] &&
        typed[index] === account.answers[index] &&
        typed[index] !== simpler?.answers[index],
    )
    if (explains.length > 0)
      found.push({ fault: id, alsoFits: group.filter((other) => other !== id), probability, explains })
  }
  return found.sort((a, b) => b.probability - a.probability)
}

/** Whether the evidence is enough to name the fault to the teacher. */
export function isEnough({ probability, explains }: FaultEvidence, settings: DiagnosisSettings): boolean {
  return probability >= settings.nameFrom && explains.length >= settings.leastExplained
}
