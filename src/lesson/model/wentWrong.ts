import { FAULTS, workWith, type Fault, type WorkedColumn } from '../../answers/faults'
import { workOut } from '../../arithmetic/columns'
import { readNumeral, valueText } from '../../arithmetic/numeral'
import { placeName } from '../../arithmetic/places'
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

/** Where a working goes wrong: the column, null where it is none of them, and the sentence that says so. */
export interface Mistake {
  readonly place: number | null
  readonly say: string
}

/** Where a working with a fault first departs from the written method: at the sign, in the setting out, or in a column. */
export function mistakeIn(fault: Fault, { calculation }: Question): Mistake {
  if (fault.moment === 'operation') return { place: null, say: 'It goes wrong at the sign.' }
  if (fault.moment === 'lining up')
    return { place: null, say: 'It goes wrong in the setting out, before the first column.' }
  const right = workWith([], calculation)
  const first = workWith([fault], calculation).find((column, index) => !isSame(column, right[index]))
  if (!first) return { place: null, say: 'Nothing goes wrong in this question.' }
  return { place: first.place, say: `It first goes wrong in the ${placeName(first.place)}.` }
}

function isSame(one: WorkedColumn, other: WorkedColumn | undefined): boolean {
  return (
    one.written === other?.written && one.carried === other.carried && one.marks.join() === other.marks.join()
  )
}

/** With zeros behind, so that £8.60 is not written £8.6. */
function asWritten(value: string, places: number, { unit }: Question): string {
  const [whole = '', decimals = ''] = value.split('.')
  const padded = places === 0 ? value : `${whole}.${decimals.padEnd(places, '0')}`
  const numeral = readNumeral(padded)
  return numeral ? amountText(numeral, unit) : value
}
