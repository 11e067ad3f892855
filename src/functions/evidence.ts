import { likeliestFault } from '../answers/diagnosis'
import { FAULTS } from '../answers/faults'
import { markAnswer, readTyped, type AnswerKey, type Outcome } from '../answers/typed'
import { workOut } from '../arithmetic/columns'
import { exchangesOf } from '../arithmetic/exchange'
import { prepareMastery, type Evidence, type Judgement } from '../mastery/judge'
import { cellOf, unusable, type Asked, type AskedQuestion } from './cells'

/** Marks what a host passed for a typed answer. The number 0 may be an empty cell: it is blank unless the answer is 0. */
export function outcomeOf(typed: unknown, key: AnswerKey): Outcome {
  const cell = cellOf(typed)
  return cell === 0 && key.value !== '0' ? 'blank' : markAnswer(cell, key)
}

/**
 * Prepares the questions of a row of cells, empty ones left out, for judging pupils by their rows of typed answers. Throws
 * #VALUE! where a cell holds something else than a question.
 */
export function prepareJudging(asked: readonly Asked[]): { judge(typed: readonly unknown[]): Judgement } {
  const questions = asked.flatMap((one, index) => (one === null ? [] : [{ index, ...questionOf(one) }]))
  const mastery = prepareMastery(questions.map(({ question }) => exchangesOf(workOut(question.calculation))))
  return {
    judge: (typed) =>
      mastery.judge(questions.map(({ index, key }) => evidenceOf(outcomeOf(typed[index], key)))),
  }
}

function questionOf(asked: NonNullable<Asked>): AskedQuestion {
  if ('problem' in asked) throw unusable(asked.problem)
  return asked
}

function evidenceOf(outcome: Outcome): Evidence {
  if (outcome === 'correct') return true
  return outcome === 'incorrect' ? false : null
}

/** What the pupil most likely does who typed this wrong answer, as a sentence; '' where it is not wrong or no fault gives it. */
export function whyWrong({ question, key }: AskedQuestion, typed: unknown): string {
  const read = readTyped(cellOf(typed), key.unit)
  if (outcomeOf(typed, key) !== 'incorrect' || read.kind !== 'number') return ''
  const likeliest = likeliestFault(question, read.value)
  const { operation } = question.calculation
  return FAULTS.find(({ id, operation: of }) => id === likeliest && of === operation)?.sentence ?? ''
}
