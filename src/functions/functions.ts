import { markAnswer, type Outcome } from '../answers/typed'
import { workOut } from '../arithmetic/columns'
import { exchangesOf } from '../arithmetic/exchange'
import { cellOf, nothingToGive, unusable, type Asked, type AskedQuestion, type Given } from './cells'
import { questionsIn, questionsOver } from './shapes'

/** The digits that a spreadsheet keeps of a number. */
const SPREADSHEET_DIGITS = 15

function eachQuestion(
  questions: readonly (readonly Asked[])[],
  give: (asked: AskedQuestion) => Given,
): Given[][] {
  return questions.map((row) => row.map((asked) => giveFor(asked, give)))
}

function giveFor(asked: Asked, give: (asked: AskedQuestion) => Given): Given {
  if (asked === null) return ''
  return 'problem' in asked ? unusable(asked.problem) : give(asked)
}

/**
 * The answer to each question, as a number. Empty cells give an empty text.
 * @customfunction ANSWER
 * @param question A question such as "7,214 − 86", or a range of questions.
 * @returns The answers, in the shape of the range.
 */
export function answer(question: unknown[][]): unknown[][] {
  return eachQuestion(questionsIn(question), ({ key }) =>
    key.value.replace(/\D|0+$/g, '').length > SPREADSHEET_DIGITS
      ? nothingToGive(`The answer has more than the ${SPREADSHEET_DIGITS} digits that a spreadsheet keeps.`)
      : Number(key.value),
  )
}

/**
 * How many exchanges (in a subtraction) or carries (in an addition) each question needs.
 * @customfunction EXCHANGES
 * @param question A question such as "7,214 − 86", or a range of questions.
 * @returns The counts, in the shape of the range.
 */
export function exchanges(question: unknown[][]): unknown[][] {
  return eachQuestion(
    questionsIn(question),
    ({ question }) => exchangesOf(workOut(question.calculation)).places.length,
  )
}
