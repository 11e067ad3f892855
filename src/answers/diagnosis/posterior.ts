import type { Question } from '../../arithmetic/question'
import type { Account } from './accounts'
import { chancesFor } from './likelihood'
import type { DiagnosisSettings } from './settings'

/** Probabilities that add up to 1: of each account whatever the care, of which the taught method (account 0) without care. */
export interface Posterior {
  readonly accounts: Float64Array
  readonly careless: number
  readonly unsystematic: number
  /** The logarithm of how likely the answers are under all accounts together. */
  readonly logEvidence: number
}

/** What is worked out of one pupil's canonical answers; null is no evidence. */
export interface Posteriors {
  readonly posteriorOf: (typed: readonly (string | null)[]) => Posterior
  /**
   * For each account with one fault the logarithm of how likely the answers are, and the fault held, where the pupil works by it on every
   * other question as it comes, else as taught; −Infinity for the other accounts.
   */
  readonly nowAndThen: (typed: readonly (string | null)[]) => Float64Array
}

/**
 * Prepares the posterior over the accounts. A blank is as likely under one account as under another (an empty cell may be a
 * question not reached, an absence or something unreadable), so that it cancels.
 */
export function posteriorFor(
  questions: readonly Question[],
  accounts: readonly Account[],
  settings: DiagnosisSettings,
): Posteriors {
  const prepared = questions.map((question, index) => {
    const given = accounts.map(({ answers }) => answers[index] ?? '')
    const possible = [...new Set(given)]
    const which = Uint16Array.from(given, (answer) => possible.indexOf(answer))
    return { which, chances: chancesFor(question, possible, settings) }
  })
  const prior = logPrior(accounts, settings)

  function nowAndThen(typed: readonly (string | null)[]): Float64Array {
    const weights = prior.nowAndThen.slice()
    prepared.forEach(({ which, chances }, index) => {
      const answer = typed[index]
      if (answer === null || answer === undefined) return
      const { ordinary } = chances(answer)
      const taught = Math.exp(ordinary[0] ?? -Infinity)
      accounts.forEach(({ ids }, account) => {
        if (ids.length !== 1) return
        const faulty = Math.exp(ordinary[which[account] ?? 0] ?? -Infinity)
        weights[account] = (weights[account] ?? 0) + Math.log((taught + faulty) / 2)
      })
    })
    return weights
  }

  function posteriorOf(typed: readonly (string | null)[]): Posterior {
    const ordinary = prior.ordinary.slice()
    const careless = prior.careless.slice()
    let unsystematic = prior.unsystematic
    prepared.forEach(({ which, chances }, index) => {
      const answer = typed[index]
      if (answer === null || answer === undefined) return
      const found = chances(answer)
      unsystematic += found.unsystematic
      which.forEach((possible, account) => {
        ordinary[account] = (ordinary[account] ?? 0) + (found.ordinary[possible] ?? 0)
        careless[account] = (careless[account] ?? 0) + (found.careless[possible] ?? 0)
      })
    })
    return normalised(ordinary, careless, unsystematic)
  }

  return { posteriorOf, nowAndThen }
}

function logPrior(accounts: readonly Account[], { prior, weight }: DiagnosisSettings) {
  const relative = accounts.map(({ ids }) => {
    const [id] = ids
    return ids.length === 1 && id !== undefined ? (weight[id] ?? 1) : 1
  })
  const mass = (size: number) => [prior.right + prior.careless, prior.fault, prior.pair][size] ?? 0
  const total = (size: number) =>
    accounts.reduce((sum, { ids }, index) => sum + (ids.length === size ? (relative[index] ?? 0) : 0), 0)
  const totals = [total(0), total(1), total(2)]
  const withoutCare = prior.careless / (prior.right + prior.careless)
  const each = accounts.map(
    ({ ids }, index) => (mass(ids.length) * (relative[index] ?? 0)) / (totals[ids.length] ?? 1),
  )
  return {
    ordinary: Float64Array.from(each, (share) => Math.log(share * (1 - withoutCare))),
    careless: Float64Array.from(each, (share) => Math.log(share * withoutCare)),
    unsystematic: Math.log(prior.unsystematic),
    nowAndThen: Float64Array.from(each, (share, index) =>
      accounts[index]?.ids.length === 1 ? Math.log(share * prior.nowAndThen) : -Infinity,
    ),
  }
}

function normalised(ordinary: Float64Array, careless: Float64Array, unsystematic: number): Posterior {
  const most = [ordinary, careless].reduce(
    (high, logs) => logs.reduce((a, b) => Math.max(a, b), high),
    unsystematic,
  )
  const weightOf = (log: number) => Math.exp(log - most)
  const weights = ordinary.map((log, index) => weightOf(log) + weightOf(careless[index] ?? -Infinity))
  const total = weights.reduce((a, b) => a + b, weightOf(unsystematic))
  return {
    accounts: weights.map((weight) => weight / total),
    careless: weightOf(careless[0] ?? -Infinity) / total,
    unsystematic: weightOf(unsystematic) / total,
    logEvidence: most + Math.log(total),
  }
}
