import { workOut } from '../../arithmetic/columns'
import { valueText } from '../../arithmetic/numeral'
import type { Question } from '../../arithmetic/question'
import { accountsFor } from './accounts'
import { comesAndGoes } from './comesAndGoes'
import { evidenceFor, isEnough, type FaultEvidence } from './naming'
import { posteriorFor, type Posterior } from './posterior'
import { DIAGNOSIS_SETTINGS, type DiagnosisSettings } from './settings'
import { sentenceFor, type Verdict } from './words'
import { FAULTS, type FaultId } from '../faults'

export { DIAGNOSIS_SETTINGS, type DiagnosisSettings } from './settings'
export type { FaultEvidence } from './naming'
export { faultsOfClass, reachOf, type ClassFault } from './reach'
export type { Verdict } from './words'

/**
 * What explains a pupil: `named` the faults for the teacher, likeliest first; `open` the faults that more questions would settle, where
 * nothing is named.
 */
export interface Diagnosis {
  readonly named: readonly FaultEvidence[]
  readonly open: readonly FaultId[]
  readonly verdict: Verdict
  readonly sentence: string
}

/**
 * A diagnosis made ready for some questions. `likeliest`: as `likeliestFault`, for the question of that index. `unseen`: faults that none of
 * the questions would show.
 */
export interface PreparedDiagnosis {
  readonly likeliest: (index: number, typed: string) => FaultId | null
  readonly diagnose: (typed: readonly (string | null)[]) => Diagnosis
  readonly unseen: readonly FaultId[]
}

/**
 * Makes the diagnosis ready for the questions of a marksheet; the same for every pupil. `typed[i]` is the answer to question i
 * as valueText writes it ("475", "8.6"), null where nothing usable was typed.
 */
export function prepareDiagnosis(
  questions: readonly Question[],
  settings: DiagnosisSettings = DIAGNOSIS_SETTINGS,
): PreparedDiagnosis {
  const accounts = accountsFor(questions)
  const { posteriorOf, nowAndThen } = posteriorFor(questions, accounts, settings)
  const evidenceOf = evidenceFor(questions, accounts, settings)
  const seen = new Set(accounts.flatMap(({ ids }) => ids))
  const operations = new Set(questions.map(({ calculation }) => calculation.operation))
  const asked = FAULTS.filter(({ operation }) => operations.has(operation)).map(({ id }) => id)

  function diagnose(typed: readonly (string | null)[]): Diagnosis {
    const wrong = typed.flatMap((answer, index) =>
      answer !== null && answer !== accounts[0]?.answers[index] ? [index] : [],
    )
    if (wrong.length === 0) {
      const verdict = typed.every((answer) => answer === null) ? 'nothing to go on' : 'right method'
      return { named: [], open: [], verdict, sentence: sentenceFor(verdict, [], [], 0) }
    }
    const posterior = posteriorOf(typed)
    const evidence = evidenceOf(typed, posterior)
    const always = evidence.filter((each) => isEnough(each, settings))
    const partly =
      always.length > 0 ? null : comesAndGoes(typed, accounts, wrong, posterior, nowAndThen, settings)
    const named = partly === null ? always : [partly]
    const open = named.length > 0 ? [] : evidence.flatMap(({ fault, alsoFits }) => [fault, ...alsoFits])
    const verdict = verdictOf(posterior, named.length, open.length)
    return { named, open, verdict, sentence: sentenceFor(verdict, named, open, wrong.length) }
  }
  const byFault = questions.map((question) => lazily(() => answersByFault(question)))
  const likeliest = (index: number, typed: string) => commonestOf(byFault[index]?.() ?? null, typed, settings)
  return { diagnose, likeliest, unseen: [...new Set(asked)].filter((id) => !seen.has(id)) }
}

/** What some wrong answers come to. */
function verdictOf(posterior: Posterior, named: number, open: number): Verdict {
  if (named > 0) return 'fault named'
  if (open > 0) return 'more questions would tell'
  return (posterior.accounts[0] ?? 0) >= 0.5 ? 'slips' : 'no pattern'
}

/**
 * The likeliest fault behind one answer, seen by itself: the commonest fault that gives exactly this wrong answer, of equally
 * common ones the first in the catalogue. Null for a right answer and for one that no fault gives. `typed` as valueText writes
 * it. Where the pupil's diagnosis explains the answer, that goes before this.
 */
export function likeliestFault(
  question: Question,
  typed: string,
  settings: DiagnosisSettings = DIAGNOSIS_SETTINGS,
): FaultId | null {
  return commonestOf(answersByFault(question), typed, settings)
}

/** The right answer to a question, and the answer that each fault gives (null where it gives none). */
interface AnswersByFault {
  readonly right: string
  readonly faulty: readonly { readonly id: FaultId; readonly answer: string | null }[]
}

function answersByFault({ calculation }: Question): AnswersByFault {
  return {
    right: valueText(workOut(calculation).answer),
    faulty: FAULTS.map((fault) => ({ id: fault.id, answer: fault.apply(calculation) })),
  }
}

function commonestOf(
  answers: AnswersByFault | null,
  typed: string,
  { weight }: DiagnosisSettings,
): FaultId | null {
  if (answers === null || typed === answers.right) return null
  let commonest: FaultId | null = null
  for (const { id, answer } of answers.faulty)
    if (answer === typed && (commonest === null || (weight[id] ?? 1) > (weight[commonest] ?? 1)))
      commonest = id
  return commonest
}

function lazily<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null
  return () => (made ??= { value: make() }).value
}
