import { prepareDiagnosis, type Diagnosis, type PreparedDiagnosis } from '../../answers/diagnosis'
import { typingTrouble, type TypedItem, type TypingTrouble } from '../../answers/diagnosis/typing'
import type { FaultId } from '../../answers/faults'
import { readTyped } from '../../answers/typed'
import type { Orientation } from '../layout/marksheet'
import type { MarkedPupil, ReviewedQuestion } from './marked'

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
}: {
  readonly orientation: Orientation
  readonly questions: readonly ReviewedQuestion[]
}): (pupil: MarkedPupil) => PupilDiagnosis {
  const shared = orientation === 'pairs' ? null : prepareDiagnosis(questions.map(({ question }) => question))
  return (pupil) => {
    const asked = shared === null ? askedOf(pupil, questions) : questions
    const prepared = shared ?? prepareDiagnosis(asked.map(({ question }) => question))
    return diagnoseAnswers(
      prepared,
      asked.map((question, index) => ({
        answer: question.key.value,
        value: valueTyped(pupil, question, index),
      })),
    )
  }
}

/** Diagnoses one pupil's answers, in the order of the questions, by what was made ready for these. */
export function diagnoseAnswers(prepared: PreparedDiagnosis, items: readonly TypedItem[]): PupilDiagnosis {
  const diagnosis = prepared.diagnose(items.map(({ value }) => value))
  const faults = items.map(({ answer, value }, index) => {
    if (value === null || value === answer) return null
    const named = diagnosis.named.find(({ explains }) => explains.includes(index))
    return named?.fault ?? prepared.likeliest(index, value)
  })
  const explained = diagnosis.named.flatMap(({ explains }) => explains)
  return { diagnosis, faults, typing: typingTrouble(items, explained) }
}

function askedOf({ answers }: MarkedPupil, questions: readonly ReviewedQuestion[]): ReviewedQuestion[] {
  return answers.flatMap(({ question }) => questions[question] ?? [])
}

function valueTyped(
  { outcomes, typed }: MarkedPupil,
  { key, marked }: ReviewedQuestion,
  index: number,
): string | null {
  if (marked) return null
  if (outcomes[index] === 'correct') return key.value
  if (outcomes[index] !== 'incorrect') return null
  const read = readTyped(typed[index] ?? '', key.unit)
  return read.kind === 'number' ? read.value : null
}
