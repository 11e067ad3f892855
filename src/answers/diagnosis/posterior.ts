import type { Question } from '../../arithmetic/question'
import type { Account } from './accounts'
import { chancesFor, type LogChances } from './likelihood'
import type { DiagnosisSettings } from './settings'

/** Probabilities that add up to 1: of each account whatever the care, of which the taught method (account 0) without care. */
export interface Posterior {
  readonly accounts: Float64Array
  readonly careless: number
  readonly unsystematic: number
  /** The logarithm of how likely the answers are under all accounts together. */
  readonly logEvidence: number
}

/** One pupil's canonical answers in the order of the questions; null is no evidence. */
type Typed = readonly (string | null)[]

/** What is worked out of one pupil's answers. */
export interface Posteriors {
  readonly posteriorOf: (typed: Typed) => Posterior
  /**
   * For each account with one fault the logarithm of how likely the answers are, and the fault held, where the pupil works by it on every
   * other question as it comes, else as taught; −Infinity for the other accounts.
   */
  readonly nowAndThen: (typed: Typed) => Float64Array
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
  const right = accounts[0]?.answers ?? []
  const prepared = questions.map((question, index) => {
    const given = accounts.map(({ answers }) => answers[index] ?? '')
    const possible = [...new Set(given)]
    const which = Uint16Array.from(given, (answer) => possible.indexOf(answer))
    return { which, chances: chancesFor(question, possible, settings) }
  })
  const prior = logPrior(accounts, settings)

  function weighed(typed: Typed, from: LogWeights, against: Typed | null): LogWeights {
    const weights = {
      ordinary: from.ordinary.slice(),
      careless: from.careless.slice(),
      unsystematic: from.unsystematic,
    }
    prepared.forEach(({ which, chances }, index) => {
      const [answer, other] = [typed[index] ?? null, against?.[index] ?? null]
      if (answer === other) return
      if (answer !== null) add(weights, chances(answer), which, 1)
      if (other !== null) add(weights, chances(other), which, -1)
    })
    return weights
  }

  // Most answers of most pupils are right: each pupil's weights are those of all right, changed by the others.
  const allRight = weighed(right, prior, null)

  function nowAndThen(typed: Typed): Float64Array {
    const weights = prior.nowAndThen.slice()
    prepared.forEach(({ which, chances }, index) => {
      const answer = typed[index]
      if (answer === null || answer === undefined) return
      const { nowAndThen } = chances(answer)
      for (let account = 0; account < weights.length; account++)
        weights[account] = (weights[account] ?? 0) + (nowAndThen[which[account] ?? 0] ?? 0)
    })
    return weights
  }

  return { posteriorOf: (typed) => normalised(weighed(typed, allRight, right)), nowAndThen }
}

/** Logarithms of how likely the answers so far are under each account, and without a pattern. */
interface LogWeights {
  readonly ordinary: Float64Array
  readonly careless: Float64Array
  unsystematic: number
}

/** Adds what one answer tells, or with −1 takes it away again. `which[k]` is what account k would answer. */
function add(weights: LogWeights, chances: LogChances, which: Uint16Array, sign: 1 | -1): void {
  const { ordinary, careless } = weights
  for (let account = 0; account < which.length; account++) {
    const possible = which[account] ?? 0
    ordinary[account] = (ordinary[account] ?? 0) + sign * (chances.ordinary[possible] ?? 0)
    careless[account] = (careless[account] ?? 0) + sign * (chances.careless[possible] ?? 0)
  }
  weights.unsystematic += sign * chances.unsystematic
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

function normalised({ ordinary, careless, unsystematic }: LogWeights): Posterior {
  let most = unsystematic
  for (let account = 0; account < ordinary.length; account++)
    most = Math.max(most, ordinary[account] ?? -Infinity, careless[account] ?? -Infinity)
  const weightOf = (log: number) => Math.exp(log - most)
  const weights = new Float64Array(ordinary.length)
  let total = weightOf(unsystematic)
  for (let account = 0; account < weights.length; account++) {
    const weight = weightOf(ordinary[account] ?? -Infinity) + weightOf(careless[account] ?? -Infinity)
    weights[account] = weight
    total += weight
  }
  return {
    accounts: weights.map((weight) => weight / total),
    careless: weightOf(careless[0] ?? -Infinity) / total,
    unsystematic: weightOf(unsystematic) / total,
    logEvidence: most + Math.log(total),
  }
}
