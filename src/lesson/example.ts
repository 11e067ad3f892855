import { uniformInt } from 'pure-rand/distribution/uniformInt'
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator'
import { workOut, type Column } from '../arithmetic/columns'
import type { Numeral } from '../arithmetic/numeral'
import { questionOf, type Calculation, type Question } from '../arithmetic/question'
import { strategyFor } from '../arithmetic/strategy'
import { takeCensus } from '../items/census'
import { indexOfQuestion } from '../items/draw'
import type { Kind } from '../items/kind'
import { generatorFrom } from '../items/seed'

/** A modelled example, and a question of its structure for partners. */
export interface Example {
  readonly model: Question
  readonly partner: Question
}

/** How often digits are drawn for a partner before the next question is tried as the example. */
const MOST_TRIES = 2000

/**
 * The first of the candidates, all of a kind, that has a partner question, with that partner; those that show the method best
 * come first. Null where none has one.
 */
export function exampleFrom(
  kind: Kind,
  candidates: readonly Question[],
  seed: string | number,
): Example | null {
  const generator = generatorFrom(`${seed} partner`)
  const census = takeCensus(kind)
  for (const model of bestFirst(candidates)) {
    for (let tries = 0; tries < MOST_TRIES; tries++) {
      const partner = withOtherDigits(model, generator)
      if (
        partner !== null &&
        isLike(model, partner) &&
        indexOfQuestion(census, partner.calculation) !== undefined
      )
        return { model, partner }
    }
  }
  return null
}

function bestFirst(questions: readonly Question[]): Question[] {
  const merit = (question: Question) => 2 * Number(isWritten(question)) + Number(isTelling(question))
  return [...questions].sort((a, b) => merit(b) - merit(a))
}

function isWritten(question: Question): boolean {
  return strategyFor(question).name === 'written method'
}

/** Whether every column has something to write: not 718 − 218, most of which can be read off. */
function isTelling({ calculation }: Question): boolean {
  return !workOut(calculation).answer.digits.includes(0)
}

/** The question with another digit for each that is not 0; null where that makes no question. */
function withOtherDigits({ calculation, unit }: Question, generator: RandomGenerator): Question | null {
  const { operation, top, bottom } = calculation
  const other = ({ digits, places }: Numeral): Numeral => ({
    digits: digits.map((digit) => (digit === 0 ? 0 : otherDigit(digit, generator))),
    places,
  })
  const reading = questionOf({ operation, top: other(top), bottom: other(bottom) }, unit)
  return 'problem' in reading ? null : reading.question
}

function otherDigit(digit: number, generator: RandomGenerator): number {
  return ((digit - 1 + uniformInt(generator, 1, 8)) % 9) + 1
}

/** Whether two questions have exchanges or carries in the same columns, and as good a claim to the written method. */
function isLike(one: Question, other: Question): boolean {
  return (
    tensIn(one.calculation) === tensIn(other.calculation) &&
    isWritten(one) === isWritten(other) &&
    isTelling(one) === isTelling(other)
  )
}

function tensIn(calculation: Calculation): string {
  const moved = ({ receives, lends }: Column) => [receives, lends]
  return JSON.stringify(workOut(calculation).columns.map(moved))
}
