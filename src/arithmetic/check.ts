import { workOut } from './columns'
import { movePoint, scaledValue, type Numeral } from './numeral'
import { amountText, printQuestion, questionOf, type Question, type Unit } from './question'

/** A calculation in the head that tells what an answer is close to: with both numbers rounded, and its answer. */
export interface Estimate {
  readonly question: Question
  readonly answer: Numeral
  /** As printed: "4,000 − 2,000 = 2,000". */
  readonly text: string
}

/** The calculation that undoes another, and what it must come to where the answer is right. */
export interface Inverse {
  readonly question: Question
  readonly answer: Numeral
  /** As printed: "2,436 + 1,567 = 4,003". */
  readonly text: string
}

/** How many steps of the rounding two numbers must be apart for their difference to be a fair estimate. */
const STEPS_APART = 2n

/**
 * The estimate before a calculation. Both numbers are rounded, halves up, to the place of the smaller one's first digit; where that
 * leaves a subtraction's numbers less than two steps apart, to the next place on the right, and so on, but never to the last place that
 * is printed. Null where rounding changes neither number. A missing-number question has the estimate of the calculation that finds it.
 * To estimate and to check by the inverse is in the programme of study of Year 4 (National curriculum in England, Department for
 * Education, 2013; from memory); how to round is common practice, no source.
 */
export function estimate({ calculation, unit }: Question): Estimate | null {
  const { operation, top, bottom } = calculation
  const places = Math.max(top.places, bottom.places)
  const [a, b] = [scaledValue(top, places), scaledValue(bottom, places)]
  const apart = (step: bigint) => (roundedTo(a, step) - roundedTo(b, step)) / step
  let step = firstPlace(a < b ? a : b)
  while (operation === 'subtract' && step > 10n && apart(step) < STEPS_APART) step /= 10n
  const [nearA, nearB] = [roundedTo(a, step), roundedTo(b, step)]
  if (nearA === a && nearB === b) return null
  const printed = (value: bigint) => shortened(value, places, step, unit)
  const question: Question = {
    sign: operation,
    missing: 'result',
    unit,
    calculation: { operation, top: printed(nearA), bottom: printed(nearB) },
  }
  const answer = printed(operation === 'add' ? nearA + nearB : nearA - nearB)
  return { question, answer, text: withAnswer(question, answer) }
}

/**
 * The check after a calculation: adding back what was subtracted, or subtracting what was added. `answer` is the one to check, the right
 * one where left out. RangeError where an addition's answer is below the number added.
 */
export function inverse(
  { calculation, unit }: Question,
  answer: Numeral = workOut(calculation).answer,
): Inverse {
  const operation = calculation.operation === 'add' ? 'subtract' : 'add'
  const reading = questionOf({ operation, top: answer, bottom: calculation.bottom }, unit)
  if ('problem' in reading) throw new RangeError(reading.problem)
  const { question } = reading
  const back = workOut(question.calculation).answer
  return { question, answer: back, text: withAnswer(question, back) }
}

function withAnswer(question: Question, answer: Numeral): string {
  return `${printQuestion(question)} = ${amountText(answer, question.unit)}`
}

/** The value of 1 in the place of a number's first digit, 10 at least. */
function firstPlace(value: bigint): bigint {
  const power = 10n ** BigInt(String(value).length - 1)
  return power < 10n ? 10n : power
}

function roundedTo(value: bigint, step: bigint): bigint {
  return ((value + step / 2n) / step) * step
}

/** A rounded value without the places that rounding emptied; pounds keep none or both of their places. */
function shortened(value: bigint, places: number, step: bigint, unit: Unit): Numeral {
  const emptied = Math.min(places, String(step).length - 1)
  const without = unit === '£' && emptied < places ? 0 : emptied
  const digits = Array.from(String(value / 10n ** BigInt(without)), Number).reverse()
  return movePoint({ digits, places: 0 }, places - without)
}
