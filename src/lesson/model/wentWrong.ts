import { FAULTS, type Fault } from '../../answers/faults'
import { workOut } from '../../arithmetic/columns'
import { readNumeral, valueText } from '../../arithmetic/numeral'
import { amountText, type Question } from '../../arithmetic/question'

/** A fault that leads to a wrong answer to a question, and that answer as a pupil would write it. */
export interface WrongAnswer {
  readonly fault: Fault
  readonly answer: string
}

/** The faults that lead to a wrong answer to a question, in the order of the catalogue. */
export function wrongAnswers(question: Question): WrongAnswer[] {
  const right = workOut(question.calculation).answer
  return FAULTS.flatMap((fault) => {
    const answer = fault.apply(question.calculation)
    if (answer === null || answer === valueText(right)) return []
    return [{ fault, answer: asWritten(answer, right.places, question) }]
  })
}

/** With zeros behind, so that £8.60 is not written £8.6. */
function asWritten(value: string, places: number, { unit }: Question): string {
  const [whole = '', decimals = ''] = value.split('.')
  const padded = places === 0 ? value : `${whole}.${decimals.padEnd(places, '0')}`
  const numeral = readNumeral(padded)
  return numeral ? amountText(numeral, unit) : value
}
