import type { RandomGenerator } from 'pure-rand/types/RandomGenerator'
import { workOut, type Column } from '../arithmetic/columns'
import type { Numeral } from '../arithmetic/numeral'
import { placeName } from '../arithmetic/places'
import {
  amountText,
  printQuestion,
  questionOf,
  type Calculation,
  type Operation,
  type Question,
} from '../arithmetic/question'
import { claimsFor } from './claims'
import { missingDigits } from './missingDigits'
import type { PaperLine } from './model/grid'
import { mistakeIn, wrongAnswers } from './model/wentWrong'
import { pickFrom } from './random'
import { inSeries } from './words'
import { withAnswer } from './worked'
import type { Kind } from '../items/kind'

/** What the deepest grade asks for besides missing numbers, in this order. */
export const TASKS = ['Missing digits', 'Find the mistake', 'Always, sometimes or never?', 'Explain'] as const

/** Something to work out and explain: what it asks, digits to fill in where there are any, and what a good answer says. */
export interface Task {
  readonly name: (typeof TASKS)[number]
  readonly text: string
  readonly given: readonly PaperLine[] | null
  readonly answer: string
}

/** How many questions the tasks are made of. */
export const QUESTIONS_FOR_TASKS = 3

/** The tasks of a kind, one of each, made of QUESTIONS_FOR_TASKS of its questions. */
export function tasksFrom(
  kind: Kind,
  [digits, wrong, told]: readonly Question[],
  generator: RandomGenerator,
): Task[] {
  return [
    ...(digits ? [fillIn(digits, generator)] : []),
    ...(wrong ? [mistake(wrong, generator)] : []),
    claim(kind, generator),
    ...(told ? [explain(told)] : []),
  ]
}

function fillIn(question: Question, generator: RandomGenerator): Task {
  return {
    name: 'Missing digits',
    text: 'Write the missing digits. Which did you find first?',
    given: missingDigits(question, generator),
    answer: `${withAnswer(question)}. Each column tells its digit, from the right, with what was exchanged or carried.`,
  }
}

function claim(kind: Kind, generator: RandomGenerator): Task {
  const { says, answer } = pickFrom(claimsFor(kind), generator)
  return { name: 'Always, sometimes or never?', text: `${says} Give an example.`, given: null, answer }
}

/** A wrong answer that a habit leads to, where one does; otherwise one with a slip in a column. */
function mistake(question: Question, generator: RandomGenerator): Task {
  const right = workOut(question.calculation).answer
  const isLikely = (answer: string) =>
    answer.replace(/[^\d]/g, '').length <= right.digits.length && answer !== amountText(right, question.unit)
  const habits = wrongAnswers(question).filter(
    ({ fault, answer }) => fault.moment !== 'operation' && isLikely(answer),
  )
  const made =
    habits.length > 0
      ? pickFrom(
          habits.map(({ fault, answer }) => ({
            answer,
            why: `${mistakeIn(fault, question).say} The habit behind it: “${fault.sentence}”`,
          })),
          generator,
        )
      : slip(question)
  return {
    name: 'Find the mistake',
    text: `${printQuestion(question)} = ${made.answer} is wrong. Find the mistake. What would you tell somebody who made it?`,
    given: null,
    answer: `${withAnswer(question)}. ${made.why}`,
  }
}

function slip({ calculation, unit }: Question): { readonly answer: string; readonly why: string } {
  const { answer, columns } = workOut(calculation)
  const at = columns.length > 1 ? 1 : 0
  const { place = 0, result = 0 } = columns[at] ?? {}
  const wrong = result === 9 ? 8 : result + 1
  return {
    answer: amountText(withDigit(answer, at, wrong), unit),
    why: `The ${placeName(place)} are ${result}, not ${wrong}.`,
  }
}

function explain(question: Question): Task {
  const { columns } = workOut(question.calculation)
  const { operation } = question.calculation
  const moves = columns.filter(({ receives, lends }) => (operation === 'add' ? lends : receives))
  const asked = printQuestion(question)
  const what = operation === 'add' ? 'make 10 or more' : 'need an exchange'
  if (moves.length === 0) return changeOne(question)
  const told = moves.map((column) => `the ${placeName(column.place)} (${reasonFor(column, operation)})`)
  return {
    name: 'Explain',
    text: `Look at ${asked}. Which columns ${what}? How can you tell before you work it out?`,
    given: null,
    answer: `${startingLarge(inSeries(told))}.`,
  }
}

function reasonFor({ place, top = 0, bottom = 0, receives, lends }: Column, operation: Operation): string {
  if (operation === 'add') {
    const total = top + bottom + Number(receives)
    const digits = [top, bottom].filter((digit) => digit > 0).join(' + ')
    return receives ? `${digits} and the 1 carried make ${total}` : `${digits} = ${total}`
  }
  if (!lends) return `${top} is less than ${bottom}`
  if (top === 0) return `0 has nothing to give to the ${placeName(place - 1)}`
  return `${top} gives 1 away, and ${top - 1} is less than ${bottom}`
}

/** For a question in which nothing is exchanged or carried: a digit to change so that something is. */
function changeOne(question: Question): Task {
  const { operation } = question.calculation
  const wanted = operation === 'add' ? 'makes 10 or more' : 'needs an exchange'
  const found = changedDigit(question)
  return {
    name: 'Explain',
    text: `Change one digit of ${printQuestion(question)} so that exactly one column ${wanted}. How do you know that it does?`,
    given: null,
    answer: found ?? 'The explanation names a column and its two digits.',
  }
}

function changedDigit({ calculation, unit }: Question): string | null {
  const { operation, top } = calculation
  for (const { place, bottom: below = 0 } of workOut(calculation).columns) {
    if (below === 0) continue
    const digit = operation === 'add' ? 10 - below : below - 1
    const changed: Calculation = { ...calculation, top: withDigit(top, place + top.places, digit) }
    const reading = questionOf(changed, unit)
    if ('problem' in reading || (changed.top.digits.at(-1) === 0 && changed.top.places === 0)) continue
    const { columns } = workOut(changed)
    if (columns.filter(({ receives, lends }) => (operation === 'add' ? lends : receives)).length !== 1)
      continue
    const why =
      operation === 'add' ? `${digit} + ${below} = ${digit + below}` : `${digit} is less than ${below}`
    return `For example ${printQuestion(reading.question)}: in the ${placeName(place)}, ${why}.`
  }
  return null
}

function withDigit({ digits, places }: Numeral, index: number, digit: number): Numeral {
  return { digits: digits.map((each, at) => (at === index ? digit : each)), places }
}

const startingLarge = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)
