import type { AnswerKey, Outcome } from '../../answers/typed'
import type { Exchanges } from '../../arithmetic/exchange'
import type { FoundPupil, FoundQuestion } from '../layout/marksheet'

/**
 * A question with what its answers are compared with, the exchanges it holds, and whether its cells hold marks (ticks, 1 and 0)
 * in place of answers.
 */
export interface ReviewedQuestion extends FoundQuestion {
  readonly key: AnswerKey
  readonly exchanges: Exchanges
  readonly marked: boolean
}

/** A pupil with what was typed (as text) and how it came out, both in the order of `answers`. */
export interface MarkedPupil extends FoundPupil {
  readonly typed: readonly string[]
  readonly outcomes: readonly Outcome[]
}
