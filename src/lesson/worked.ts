import { answerKey } from '../answers/typed'
import { estimate, inverse } from '../arithmetic/check'
import { workOut } from '../arithmetic/columns'
import { exchangesOf, type ExchangeType } from '../arithmetic/exchange'
import { amountText, printQuestion, type Question } from '../arithmetic/question'
import { stepsOf } from '../arithmetic/steps'

/**
 * A question with its full working: as printed, its type, the estimate before it (null where its numbers are round), the answer as
 * printed, how many squares across the working takes, the steps in words, and the calculation that checks it.
 */
export interface WorkedQuestion {
  readonly question: Question
  readonly text: string
  readonly type: ExchangeType
  readonly estimate: string | null
  readonly answer: string
  readonly across: number
  readonly steps: readonly string[]
  readonly check: string
}

/** Works a question out in full. */
export function workedQuestion(question: Question): WorkedQuestion {
  const written = workOut(question.calculation)
  return {
    question,
    text: printQuestion(question),
    type: exchangesOf(written).type,
    estimate: estimate(question)?.text ?? null,
    answer: amountText(answerKey(question).numeral, question.unit),
    across: 1 + written.columns.length + Number(written.answer.places > 0),
    steps: stepsOf(question).map(({ say }) => say),
    check: inverse(question).text,
  }
}

/** A question with its answer, as printed: "273 − 40 = 233". */
export function withAnswer(question: Question): string {
  return `${printQuestion(question)} = ${amountText(answerKey(question).numeral, question.unit)}`
}
