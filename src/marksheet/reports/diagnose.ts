import {
  likeliestFault,
  prepareDiagnosis,
  type Diagnosis,
  type PreparedDiagnosis,
} from '../../answers/diagnosis'
import type { FaultId } from '../../answers/faults'
import { readTyped } from '../../answers/typed'
import type { Review, ReviewedPupil } from '../marking/review'

/**
 * Why a pupil's answers are wrong. `diagnosis` weighs all of them together; `faults[i]` is the likeliest fault behind the i-th answer: one
 * named for the pupil where it explains the answer, else the commonest that gives it, null for none.
 */
export interface PupilDiagnosis {
  readonly diagnosis: Diagnosis
  readonly faults: readonly (FaultId | null)[]
}

/**
 * Diagnoses every pupil of a reviewed marksheet, in its order. Marks (ticks, 1 and 0) tell nothing of faults, nor do blanks,
 * absences and what could not be read.
 */
export function diagnoseReview(review: Review): PupilDiagnosis[] {
  return review.pupils.map(diagnoserFor(review))
}

/** The same for one pupil of the marksheet after the other; what they share is made ready once. */
export function diagnoserFor({ orientation, questions }: Review): (pupil: ReviewedPupil) => PupilDiagnosis {
  const shared = orientation === 'pairs' ? null : prepareDiagnosis(questions.map(({ question }) => question))
  return (pupil) => diagnosePupil(pupil, questions, shared)
}

function diagnosePupil(
  { answers, outcomes, typed }: ReviewedPupil,
  questions: Review['questions'],
  shared: PreparedDiagnosis | null,
): PupilDiagnosis {
  const asked = answers.flatMap((cell) => questions[cell.question] ?? [])
  const prepared = shared ?? prepareDiagnosis(asked.map(({ question }) => question))
  const values = asked.map(({ key, marked }, index) => {
    const isNumber = outcomes[index] === 'correct' || outcomes[index] === 'incorrect'
    const read = isNumber && !marked ? readTyped(typed[index] ?? '', key.unit) : null
    return read?.kind === 'number' ? read.value : null
  })
  const diagnosis = prepared.diagnose(values)
  const faults = asked.map(({ question }, index) => {
    const value = values[index] ?? null
    if (value === null || outcomes[index] !== 'incorrect') return null
    const named = diagnosis.named.find(({ explains }) => explains.includes(index))
    return named?.fault ?? likeliestFault(question, value)
  })
  return { diagnosis, faults }
}
