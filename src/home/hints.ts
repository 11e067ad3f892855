import { likeliestFault } from '../answers/diagnosis'
import { FAULTS } from '../answers/faults'
import { answerKey } from '../answers/typed'
import { digitAt, readNumeral, type Numeral } from '../arithmetic/numeral'
import { placeName } from '../arithmetic/places'
import type { Question } from '../arithmetic/question'

/** A wrong answer that a known fault gives (as `valueText`), and what to say to a child who gave it. */
export interface Hint {
  readonly answer: string
  readonly says: string
}

const OTHER_CALCULATION = 'Which calculation finds the missing number?'

/** The hints for a question: one for each wrong answer of a known fault, of the commonest where several give the same. */
export function hintsFor(question: Question): Hint[] {
  const { value, numeral } = answerKey(question)
  const wrong = FAULTS.map((fault) => fault.apply(question.calculation)).filter(
    (answer) => answer !== null && answer !== value,
  )
  return [...new Set(wrong)].flatMap((answer): Hint[] => {
    const given = answer === null ? null : readNumeral(answer)
    const id = answer === null ? null : likeliestFault(question, answer)
    const fault = FAULTS.find((each) => each.id === id && each.operation === question.calculation.operation)
    if (!answer || !given || !fault) return []
    if (id === 'wrong-operation' && question.missing !== 'result')
      return [{ answer, says: OTHER_CALCULATION }]
    return [{ answer, says: fault.hint.replace('{column}', placeName(firstDifference(given, numeral))) }]
  })
}

/** The places that have a name, from the last decimal to the front. */
const NAMED = { last: -3, front: 15 } as const

/** The first column from the right in which two numbers differ, as far as it has a name. */
function firstDifference(one: Numeral, other: Numeral): number {
  let place: number = NAMED.last
  while (place < NAMED.front && (digitAt(one, place) ?? 0) === (digitAt(other, place) ?? 0)) place++
  return place
}
