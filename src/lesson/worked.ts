import { answerKey } from '../answers/typed'
import { workOut } from '../arithmetic/columns'
import { exchangesOf, type ExchangeType } from '../arithmetic/exchange'
import { amountText, printQuestion, type Question } from '../arithmetic/question'
import { stepsOf } from '../arithmetic/steps'

/**
 * A question with its full working: as printed, its type, the answer as printed, how many squares across the working takes, and the steps
 * in words.
 */
export interface WorkedQuestion {
  readonly question: Question
  readonly text: string
  readonly type: ExchangeType
  readonly answer: string
  readonly across: number
  readonly steps: readonly string[]
}

/** Works a question out in full. */
export function workedQuestion(question: Question): WorkedQuestion {
  const written = workOut(question.calculation)
  return {
    question,
    text: printQuestion(question),
    type: exchangesOf(written).type,
    answer: amountText(answerKey(question).numeral, question.unit),
    across: 1 + written.columns.length + Number(written.answer.places > 0),
    steps: stepsOf(question).map(({ say }) => say),
  }
}
