import type { Question } from '../../arithmetic/question'
import type { FaultId } from '../faults'
import type { Account } from './accounts'
import type { Posterior } from './posterior'
import type { DiagnosisSettings } from './settings'
import { slipsOf, writtenPlaces } from './slips'

/**
 * A fault with its evidence. `alsoFits`: faults that give the same answers wherever the pupil answered; the `probability` is that
 * of one of them all. `explains`: indices of the wrong answers that are exactly the fault's and that the pupil's other fault, if
 * there is one, does not give. `explainsButForSlip`: of those that are one slip away from the fault's answer, and not from the
 * answer without the fault.
 */
export interface FaultEvidence {
  readonly fault: FaultId
  readonly alsoFits: readonly FaultId[]
  readonly probability: number
  readonly explains: readonly number[]
  readonly explainsButForSlip: readonly number[]
  /** Whether the fault is held wherever it shows, or comes and goes (VanLehn 1990, from memory). */
  readonly held: 'always' | 'now and then'
}

/** Gives the faults that explain at least one wrong answer exactly and are open or better, likeliest first. */
export type EvidenceOf = (typed: readonly (string | null)[], posterior: Posterior) => FaultEvidence[]

/** Prepares the evidence for the accounts of some questions. */
export function evidenceFor(
  questions: readonly Question[],
  accounts: readonly Account[],
  { openFrom, swapped }: DiagnosisSettings,
): EvidenceOf {
  const ids = [...new Set(accounts.flatMap((account) => account.ids))]
  const indices = accounts.map((_, index) => index)
  const having = (some: readonly FaultId[]) =>
    indices.filter((index) => accounts[index]?.ids.some((id) => some.includes(id)))
  const faults = ids.map((id) => ({
    id,
    having: having([id]),
    alone: having([id]).filter((index) => accounts[index]?.ids.length === 1),
  }))
  const answer = (account: number | undefined, question: number) => accounts[account ?? -1]?.answers[question]

  function isSlip(account: number, question: Question, index: number, typed: string): boolean {
    return slipsOf(answer(account, index) ?? '', writtenPlaces(question), swapped).has(typed)
  }

  function evidenceOf(
    typed: readonly (string | null)[],
    account: number,
    id: FaultId,
  ): Pick<FaultEvidence, 'explains' | 'explainsButForSlip'> {
    const explains: number[] = []
    const explainsButForSlip: number[] = []
    const simpler = accounts[account]?.without[accounts[account].ids.indexOf(id)] ?? 0
    questions.forEach((question, index) => {
      const given = typed[index]
      if (given === null || given === undefined) return
      if (given === answer(0, index) || given === answer(simpler, index)) return
      if (given === answer(account, index)) explains.push(index)
      else if (isSlip(account, question, index, given) && !isSlip(simpler, question, index, given))
        explainsButForSlip.push(index)
    })
    return { explains, explainsButForSlip }
  }

  return (typed, { accounts: chances, unsystematic }) => {
    const chance = (index: number) => chances[index] ?? 0
    if (1 - chance(0) - unsystematic < openFrom) return []
    const sum = (some: readonly number[]) => some.reduce((total, index) => total + chance(index), 0)
    const likeliest = (some: readonly number[]) => some.reduce((a, b) => (chance(b) > chance(a) ? b : a))
    const answered = typed.flatMap((given, index) => (given === null ? [] : [index]))
    const rest = faults
      .map((fault) => ({ ...fault, alone: likeliest(fault.alone), chance: sum(fault.having) }))
      .sort((a, b) => b.chance - a.chance)
    const found: FaultEvidence[] = []
    while (rest.length > 0 && sum(having(rest.map(({ id }) => id))) >= openFrom) {
      const [first] = rest
      if (!first) break
      const fits = rest.filter(({ alone }) =>
        answered.every((index) => answer(alone, index) === answer(first.alone, index)),
      )
      const probability = sum(having(fits.map(({ id }) => id)))
      const evidence = evidenceOf(typed, likeliest(first.having), first.id)
      if (probability >= openFrom && evidence.explains.length > 0) {
        const alsoFits = fits.slice(1).map(({ id }) => id)
        found.push({ fault: first.id, alsoFits, probability, ...evidence, held: 'always' })
      }
      fits.forEach((fault) => rest.splice(rest.indexOf(fault), 1))
    }
    return found.sort((a, b) => b.probability - a.probability)
  }
}

/** Whether the evidence is enough to name the fault to the teacher: likely, and so many answers exactly its own. */
export function isEnough(
  { probability, explains }: FaultEvidence,
  { nameFrom, leastExplained }: DiagnosisSettings,
): boolean {
  return probability >= nameFrom && explains.length >= leastExplained
}
