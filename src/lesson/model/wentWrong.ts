import { FAULTS, workWith, type Fault, type FaultId, type WorkedColumn } from '../../answers/faults'
import { workOut } from '../../arithmetic/columns'
import { readNumeral, valueText, type Numeral } from '../../arithmetic/numeral'
import { wordsFor } from '../../arithmetic/places'
import { amountText, type Question } from '../../arithmetic/question'

/** A fault that leads to a wrong answer to a question, and that answer as a pupil would write it, as printed and as a number. */
export interface WrongAnswer {
  readonly fault: Fault
  readonly answer: string
  readonly numeral: Numeral
}

/**
 * The faults that lead to a wrong answer to a question, in the order of the catalogue, one for each answer; answers that no child would
 * write are left out. `shown` is a fault that a pupil has shown: it stands for its answer, whatever that is.
 */
export function wrongAnswers(question: Question, shown: FaultId | null = null): WrongAnswer[] {
  const right = workOut(question.calculation).answer
  const wrong = FAULTS.flatMap((fault): WrongAnswer[] => {
    const value = fault.apply(question.calculation)
    if (value === null || value === valueText(right)) return []
    const numeral = filledTo(value, right.places)
    return [{ fault, answer: amountText(numeral, question.unit), numeral }]
  })
  const taken = new Set(wrong.filter(({ fault }) => fault.id === shown).map(({ answer }) => answer))
  return wrong.filter(({ fault, answer, numeral }) => {
    if (fault.id === shown) return true
    if (taken.has(answer) || isAbsurd(numeral, fault, question)) return false
    taken.add(answer)
    return true
  })
}

/** How many digits an addition's wrong answer may have more than the right one. */
const MOST_LONGER = 2

/** Whether an answer is longer than a child would write: in a subtraction, longer than the number it began with, unless it added; more places than the numbers have. */
function isAbsurd({ digits, places }: Numeral, { id }: Fault, { calculation }: Question): boolean {
  const whole = digits.length - places
  const { operation, top } = calculation
  const { answer } = workOut(calculation)
  if (places > answer.places) return true
  if (operation === 'subtract') return id !== 'wrong-operation' && whole > top.digits.length - top.places
  return whole > answer.digits.length - answer.places + MOST_LONGER
}

/** Where a working goes wrong: the column, null where it is none of them, and the sentence that says so. */
export interface Mistake {
  readonly place: number | null
  readonly say: string
}

/** Where a working with a fault first departs from the written method: at the sign, in the setting out, or in a column. */
export function mistakeIn(fault: Fault, { calculation, unit }: Question): Mistake {
  if (fault.moment === 'operation') return { place: null, say: 'It goes wrong at the sign.' }
  if (fault.moment === 'lining up')
    return { place: null, say: 'It goes wrong in the setting out, before the first column.' }
  const right = workWith([], calculation)
  const first = workWith([fault], calculation).find((column, index) => !isSame(column, right[index]))
  if (!first) return { place: null, say: 'Nothing goes wrong in this question.' }
  return { place: first.place, say: `It first goes wrong in the ${wordsFor(unit).placeName(first.place)}.` }
}

function isSame(one: WorkedColumn, other: WorkedColumn | undefined): boolean {
  return (
    one.written === other?.written && one.carried === other.carried && one.marks.join() === other.marks.join()
  )
}

/** A value with zeros behind, so that £8.60 is not written £8.6. */
function filledTo(value: string, places: number): Numeral {
  const [whole = '', decimals = ''] = value.split('.')
  const numeral = readNumeral(places === 0 ? value : `${whole}.${decimals.padEnd(places, '0')}`)
  if (!numeral) throw new RangeError(`${value} is not a number.`)
  return numeral
}
