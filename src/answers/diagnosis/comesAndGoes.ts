import type { Account } from './accounts'
import type { FaultEvidence } from './naming'
import type { Posterior, Posteriors } from './posterior'
import type { DiagnosisSettings } from './settings'

/**
 * The fault that a pupil holds now and then, or from a point on, where that is likelier than everything else together: at least three
 * answers are exactly the fault's own, and these are at least two thirds of the wrong ones. Slips and chance are weighed against it. Null
 * where there is none. `wrong`: the indices of the wrong answers.
 */
export function comesAndGoes(
  typed: readonly (string | null)[],
  accounts: readonly Account[],
  wrong: readonly number[],
  { accounts: chances, logEvidence }: Posterior,
  nowAndThen: Posteriors['nowAndThen'],
  { nameFrom, leastNowAndThen, shareNowAndThen }: DiagnosisSettings,
): FaultEvidence | null {
  const fewest = Math.max(leastNowAndThen, shareNowAndThen * wrong.length)
  if (wrong.length < fewest) return null
  const explainedBy = (account: number) =>
    wrong.filter((index) => typed[index] === accounts[account]?.answers[index])
  const singles = accounts.flatMap(({ ids }, account) => (ids.length === 1 ? [account] : []))
  if (!singles.some((account) => explainedBy(account).length >= fewest)) return null

  const logWeights = nowAndThen(typed)
  const most = logWeights.reduce((high, weight) => Math.max(high, weight), logEvidence)
  const partly = logWeights.map((weight) => Math.exp(weight - most))
  const always = Math.exp(logEvidence - most)
  const total = partly.reduce((sum, weight) => sum + weight, always)
  const chanceOf = (account: number) => ((partly[account] ?? 0) + always * (chances[account] ?? 0)) / total
  const [best] = singles.toSorted((one, other) => chanceOf(other) - chanceOf(one))
  const fault = accounts[best ?? -1]?.ids[0]
  if (best === undefined || fault === undefined) return null
  const explains = explainedBy(best)
  if (explains.length < fewest) return null
  const same = singles.filter((account) => explainedBy(account).join() === explains.join())
  const probability = same.reduce((sum, account) => sum + chanceOf(account), 0)
  if (probability < nameFrom) return null
  const others = same.filter((account) => account !== best).flatMap((account) => accounts[account]?.ids ?? [])
  const alsoFits = [...new Set(others)].filter((id) => id !== fault)
  return { fault, alsoFits, probability, explains, explainsButForSlip: [], held: 'now and then' }
}
