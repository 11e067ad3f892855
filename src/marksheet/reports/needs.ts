import { faultsOfClass, reachOf, type FaultEvidence } from '../../answers/diagnosis'
import type { FaultId } from '../../answers/faults'
import type { Outcome } from '../../answers/typed'
import { printQuestion, type Question } from '../../arithmetic/question'
import type { ExchangeType } from '../../arithmetic/exchange'
import { wrongAnswers } from '../../lesson/model/wentWrong'
import { workedQuestion, type WorkedQuestion } from '../../lesson/worked'
import { prepareMastery, type Evidence, type Judgement, type TypeStanding } from '../../mastery/judge'
import { DEFAULT_MASTERY, type MasterySettings } from '../../mastery/settings'
import { diagnoserFor, type PupilDiagnosis } from './diagnose'
import { nextSetAgainst, nextSetFor, type NextSet, type SetWish } from '../setting/nextSet'
import type { Review, ReviewedPupil } from '../marking/review'
import { atOnce, type Steps } from '../layout/steps'

/** Where a pupil stands when the types that a named fault reaches are judged by it; `types` are those whose status that changes. */
export interface ReachJudgement {
  readonly judgement: Judgement
  readonly types: readonly ExchangeType[]
  /** What the fault reaches and how the rest went, for the teacher. */
  readonly sentence: string
}

/** A pupil of a marksheet with where the pupil stands and why answers are wrong. `review` and `index` tell where the pupil is found. */
export interface DiagnosedPupil extends PupilDiagnosis {
  readonly name: string
  readonly review: number
  readonly index: number
  readonly pupil: ReviewedPupil
  readonly questions: readonly Question[]
  /** By the reach of the named faults where there are any. */
  readonly judgement: Judgement
  readonly reach: ReachJudgement | null
}

/** The pupils of a sheet's marksheets, diagnosed, in the sheet's order. */
export function diagnosedPupils(
  reviews: readonly Review[],
  settings: MasterySettings = DEFAULT_MASTERY,
): DiagnosedPupil[] {
  return atOnce(diagnosing(reviews, settings))
}

/** The same, pupil by pupil. */
export function* diagnosing(
  reviews: readonly Review[],
  settings: MasterySettings = DEFAULT_MASTERY,
): Steps<DiagnosedPupil[]> {
  const pupils: DiagnosedPupil[] = []
  for (const [at, review] of reviews.entries()) {
    const diagnose = diagnoserFor(review)
    for (const [index, pupil] of review.pupils.entries()) {
      yield
      const found = diagnose(pupil)
      const { named } = found.diagnosis
      const reach = named.length > 0 ? judgeByReach(review, pupil, named, settings) : null
      const questions = pupil.answers.flatMap((cell) => review.questions[cell.question]?.question ?? [])
      const judgement = reach?.judgement ?? pupil.judgement
      pupils.push({ ...found, name: pupil.name, review: at, index, pupil, questions, judgement, reach })
    }
  }
  return pupils
}

const TELLS: Readonly<Record<Outcome, Evidence>> = {
  correct: true,
  incorrect: false,
  blank: null,
  absent: null,
  unreadable: null,
}

/**
 * Judges a pupil for whom faults are named: what was answered within their reach tells of the faults, not of the types. A type of which
 * every answer lies within reach, and some are wrong, needs support, as likely as the fault; any other type is judged by the answers
 * outside. Counts stay those of all answers.
 */
export function judgeByReach(
  { questions: asked }: Pick<Review, 'questions'>,
  { answers, outcomes, judgement }: Pick<ReviewedPupil, 'answers' | 'outcomes' | 'judgement'>,
  named: readonly FaultEvidence[],
  settings: MasterySettings = DEFAULT_MASTERY,
): ReachJudgement {
  const own = answers.flatMap((cell, index) => {
    const found = asked[cell.question]
    return found ? [{ ...found, told: TELLS[outcomes[index] ?? 'blank'] }] : []
  })
  const reached = new Set(
    reachOf(
      named.map(({ fault }) => fault),
      own.map(({ question }) => question),
    ),
  )
  const outside = own.map(({ told }, index) => (reached.has(index) ? null : told))
  const { judge } = prepareMastery(
    own.map(({ exchanges }) => exchanges),
    settings,
  )
  const beyond = new Map(judge(outside).byType.map((standing) => [standing.type, standing]))
  const likely = Math.max(...named.map(({ probability }) => probability))
  const byType = judgement.byType.map((standing): TypeStanding => {
    const { type, right, tried } = standing
    const rest = beyond.get(type)
    if (tried === 0 || rest === undefined || (rest.tried === 0 && right === tried)) return standing
    if (rest.tried > 0) return { ...standing, probability: rest.probability, status: rest.status }
    const probability = Math.min(standing.probability, 1 - likely)
    return { ...standing, probability, status: 'needs support' }
  })
  const needsSupport = byType.some(({ status }) => status === 'needs support')
  const types = byType.flatMap(({ type, status }, index) =>
    status === judgement.byType[index]?.status ? [] : [type],
  )
  const triedOutside = outside.filter((told) => told !== null)
  const rightOutside = triedOutside.filter((told) => told === true).length
  const rest =
    triedOutside.length === 0
      ? 'nothing was answered outside it'
      : `outside it ${rightOutside} of ${triedOutside.length} are right`
  return {
    judgement: { ...judgement, byType, needsSupport },
    types,
    sentence: `Judged by its reach: it touches ${reached.size} of ${own.length} questions; ${rest}.`,
  }
}

/** What a group works at: a modelled example, with the answer that the group's fault leads to, and questions; or why there are none. */
export interface GroupWork {
  readonly example: WorkedQuestion | null
  readonly faulty: string | null
  readonly questions: readonly Question[]
  readonly problem: string | null
}

/** Work at a type; the example is one more such question. */
export function workAtType(type: ExchangeType, wish: SetWish): GroupWork {
  return work(nextSetFor(type, { ...wish, count: wish.count + 1 }), null)
}

/** Work against a fault: a pupil who has it gets every one of the questions wrong, and the example meets it. */
export function workAgainst(fault: FaultId, wish: SetWish): GroupWork {
  const seed = `${wish.seed} ${fault}`
  return work(nextSetAgainst(fault, { ...wish, seed, count: wish.count + 1 }), fault)
}

function work(drawn: NextSet, fault: FaultId | null): GroupWork {
  if ('problem' in drawn) return { example: null, faulty: null, questions: [], problem: drawn.problem }
  const [first, ...questions] = drawn.questions
  if (first === undefined) return { example: null, faulty: null, questions, problem: null }
  const wrong = wrongAnswers(first).find((each) => each.fault.id === fault)
  return {
    example: workedQuestion(first),
    faulty: wrong?.answer ?? null,
    questions,
    problem: null,
  }
}

/** Pupils for whom the same fault is named, and the questions (as printed) that show it. */
export interface FaultGroup {
  readonly fault: FaultId
  readonly pupils: readonly DiagnosedPupil[]
  readonly shownBy: readonly string[]
}

/** The faults named in a class, the one with most pupils first. A pupil with two faults is in both groups. */
export function faultGroups(pupils: readonly DiagnosedPupil[]): FaultGroup[] {
  const questions = new Map(pupils.flatMap((each) => each.questions.map((one) => [printQuestion(one), one])))
  const asked = [...questions.values()]
  return faultsOfClass(
    pupils.map(({ diagnosis }) => diagnosis.named),
    asked,
  ).map((found) => ({
    fault: found.fault,
    pupils: found.pupils.flatMap((index) => pupils[index] ?? []),
    shownBy: found.shownBy.flatMap((index) => asked.slice(index, index + 1).map(printQuestion)),
  }))
}
