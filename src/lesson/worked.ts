import { answerKey } from '../answers/typed'
import { workOut } from '../arithmetic/columns'
import { exchangesOf, type ExchangeType } from '../arithmetic/exchange'
import { layoutRows, type Layout } from '../arithmetic/layout'
import { amountText, printQuestion, type Question } from '../arithmetic/question'
import { stepsOf } from '../arithmetic/steps'

/** A question with its full working: as printed, its type, the answer as printed, the written layout and the steps in words. */
export interface WorkedQuestion {
  readonly question: Question
  readonly text: string
  readonly type: ExchangeType
  readonly answer: string
  readonly layout: Layout
  readonly steps: readonly string[]
}

/** Works a question out in full. */
export function workedQuestion(question: Question): WorkedQuestion {
  return {
    question,
    text: printQuestion(question),
    type: exchangesOf(workOut(question.calculation)).type,
    answer: amountText(answerKey(question).numeral, question.unit),
    layout: layoutRows(question),
    steps: stepsOf(question).map(({ say }) => say),
  }
}
