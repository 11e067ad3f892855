import { prepareDiagnosis, type Diagnosis, type PreparedDiagnosis } from '../../answers/diagnosis'
import { typingTrouble, type TypingTrouble } from '../../answers/diagnosis/typing'
import type { FaultId } from '../../answers/faults'
import { readTyped, type AnswerKey } from '../../answers/typed'
import type { MarkedPupil, Review, ReviewedQuestion } from './review'

/**
 * Why a pupil's answers are wrong. `diagnosis` weighs all of them together; `faults[i]` is the likeliest fault behind the i-th answer: one
 * named for the pupil where it explains the answer, else the commonest that gives it, null for none. `typing`: whether right answers
 * look typed into the wrong cells, or all out by one amount.
 */
export interface PupilDiagnosis {
  readonly diagnosis: Diagnosis
  readonly faults: readonly (FaultId | null)[]
  readonly typing: TypingTrouble | null
}

/**
 * Diagnoses one pupil of a marksheet after the other; what they share is made ready once. Marks (ticks, 1 and 0) tell nothing of faults,
 * nor do blanks, absences and what could not be read.
 */
export function diagnoserFor({
  orientation,
  questions,
}: Pick<Review, 'orientation' | 'questions'>): (pupil: MarkedPupil) => PupilDiagnosis {
  const shared = orientation === 'pairs' ? null : prepareDiagnosis(questions.map(({ question }) => question))
  return (pupil) => {
    const asked = shared === null ? askedOf(pupil, questions) : questions
    const prepared = shared ?? prepareDiagnosis(asked.map(({ question }) => question))
    return diagnoseAnswers(
      prepared,
      asked.map(({ key }, index) => ({
        key,
        value: valueTyped(pupil, asked, index),
        isWrong: pupil.outcomes[index] === 'incorrect',
      })),
    )
  }
}

/** An answer to be explained: what was typed as a value ("475"), null where it is none, and whether it is wrong. */
export interface TypedAnswer {
  readonly key: AnswerKey
  readonly value: string | null
  readonly isWrong: boolean
}

const FEWEST_MISTYPED = 3

/** Diagnoses one pupil's answers by what was made ready for their questions. */
export function diagnoseAnswers(
  prepared: PreparedDiagnosis,
  answers: readonly TypedAnswer[],
): PupilDiagnosis {
  const diagnosis = prepared.diagnose(answers.map(({ value }) => value))
  const faults = answers.map(({ value, isWrong }, index) => {
    if (value === null || !isWrong) return null
    const named = diagnosis.named.find(({ explains }) => explains.includes(index))
    return named?.fault ?? prepared.likeliest(index, value)
  })
  return { diagnosis, faults, typing: typingOf(answers, diagnosis) }
}

function typingOf(answers: readonly TypedAnswer[], { named }: Diagnosis): TypingTrouble | null {
  if (answers.filter(({ isWrong }) => isWrong).length < FEWEST_MISTYPED) return null
  return typingTrouble(
    answers.map(({ key, value }) => ({ answer: key.value, value })),
    named.flatMap(({ explains }) => explains),
  )
}

function askedOf({ answers }: MarkedPupil, questions: readonly ReviewedQuestion[]): ReviewedQuestion[] {
  return answers.flatMap(({ question }) => questions[question] ?? [])
}

function valueTyped(
  { outcomes, typed }: MarkedPupil,
  asked: readonly ReviewedQuestion[],
  index: number,
): string | null {
  const question = asked[index]
  if (question === undefined || question.marked) return null
  if (outcomes[index] === 'correct') return question.key.value
  if (outcomes[index] !== 'incorrect') return null
  const read = readTyped(typed[index] ?? '', question.key.unit)
  return read.kind === 'number' ? read.value : null
}
