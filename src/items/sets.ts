import { uniformBigInt } from 'pure-rand/distribution/uniformBigInt'
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator'
import { workOut } from '../arithmetic/columns'
import { exchangesOf, type ExchangeType } from '../arithmetic/exchange'
import { questionOf, type Question, type Unit } from '../arithmetic/question'
import { takeCensus, type Census } from './census'
import { indexOfQuestion, questionAt } from './draw'
import { describeKind, problemOfKind, unitAt, type Kind } from './kind'
import { generatorFrom } from './seed'

/** The most questions that one call draws. */
export const MOST_QUESTIONS = 1000

/** How many questions of a kind are wanted. */
export interface Part {
  readonly kind: Kind
  readonly count: number
}

/** What every set can be told: the seed, and questions that must not come again (those already set, from a record). */
export interface Choice {
  readonly seed: string | number
  readonly avoid?: readonly Question[]
}

/** A set of questions, or the sentence that says why there is none and how many there would have been. */
export type DrawnSet =
  { readonly questions: readonly Question[] } | { readonly problem: string; readonly available: bigint }

/**
 * Draws `count` different questions, 1 to MOST_QUESTIONS, each set of the kind's questions as likely as any other, in random
 * order. The same seed and the same questions to avoid give the same set. 23 + 45 and 45 + 23 count as two questions.
 */
export function drawSet({ kind, count, seed, avoid = [] }: Part & Choice): DrawnSet {
  return drawPart({ kind, count }, generatorFrom(seed), avoid)
}

/**
 * Draws a set from several kinds, no question twice, in order from easy to hard: by type as it is taught, then by the length of
 * the numbers; otherwise as the parts are listed. The problem is that of the first part that cannot be filled.
 */
export function drawGradedSet({
  parts,
  seed,
  avoid = [],
}: Choice & { readonly parts: readonly Part[] }): DrawnSet {
  const generator = generatorFrom(seed)
  const questions: Question[] = []
  for (const part of parts) {
    const drawn = drawPart(part, generator, [...avoid, ...questions])
    if ('problem' in drawn) return drawn
    questions.push(...drawn.questions)
  }
  return { questions: fromEasyToHard(questions) }
}

function drawPart({ kind, count }: Part, generator: RandomGenerator, avoid: readonly Question[]): DrawnSet {
  const problem = problemOfKind(kind)
  if (problem !== null) return { problem, available: 0n }
  const census = takeCensus(kind)
  const used = indicesOf(census, avoid)
  const available = census.count - BigInt(used.length)
  if (!Number.isInteger(count) || count < 1 || count > MOST_QUESTIONS)
    return { problem: `A set holds 1 to ${MOST_QUESTIONS} questions of a kind.`, available }
  if (available < BigInt(count)) return { problem: shortage(census, available), available }
  const questions = sample(available, count, generator).map((index, place) =>
    printable(census, skipping(used, index), unitAt(kind, place)),
  )
  return { questions }
}

function shortage({ kind, count }: Census, available: bigint): string {
  const described = describeKind(kind)
  if (count === 0n) return `No such question exists: ${described}.`
  if (available === 0n) return `All ${count} such questions have been used: ${described}.`
  if (available < count)
    return `Only ${available} of the ${count} such questions ${available === 1n ? 'is' : 'are'} left: ${described}.`
  return `Only ${count} such ${count === 1n ? 'question exists' : 'questions exist'}: ${described}.`
}

/** The numbers of those questions that are of the kind, each once, ascending. */
function indicesOf(census: Census, questions: readonly Question[]): bigint[] {
  const found = questions.map(({ calculation }) => indexOfQuestion(census, calculation))
  return [...new Set(found)].filter((index) => index !== undefined).sort((a, b) => (a < b ? -1 : 1))
}

/** The index-th number from 0 up that is not among the used ones, which ascend. */
function skipping(used: readonly bigint[], index: bigint): bigint {
  return used.reduce((shifted, taken) => (taken <= shifted ? shifted + 1n : shifted), index)
}

/**
 * `count` different numbers below `available` in random order, every choice and order equally likely: the first steps of a
 * Fisher–Yates shuffle of 0 … available − 1, in which only the places that were swapped are kept.
 */
function sample(available: bigint, count: number, generator: RandomGenerator): bigint[] {
  const moved = new Map<bigint, bigint>()
  return Array.from({ length: count }, (_, step) => {
    const here = BigInt(step)
    const chosen = uniformBigInt(generator, here, available - 1n)
    const value = moved.get(chosen) ?? chosen
    moved.set(chosen, moved.get(here) ?? here)
    return value
  })
}

function printable(census: Census, index: bigint, unit: Unit): Question {
  const reading = questionOf(questionAt(census, index), unit)
  if ('problem' in reading) throw new RangeError(reading.problem)
  return reading.question
}

/** Beginnings of types, in the order in which they are taught, additions beside their subtractions (common practice, no source). */
const TAUGHT: readonly (readonly string[])[] = [
  ['no exchange', 'no carry'],
  ['one exchange', 'one carry'],
  ['two exchanges, apart', 'two carries, apart'],
  ['two exchanges, next', 'two carries, next'],
  ['three or more'],
  ['through a zero'],
  ['through two or more zeros'],
]

function rungOf(type: ExchangeType): number {
  return TAUGHT.findIndex((beginnings) => beginnings.some((beginning) => type.startsWith(beginning)))
}

function fromEasyToHard(questions: readonly Question[]): Question[] {
  const graded = questions.map((question) => {
    const { top, bottom } = question.calculation
    return {
      question,
      rung: rungOf(exchangesOf(workOut(question.calculation)).type),
      length: top.digits.length + bottom.digits.length,
    }
  })
  return graded.sort((a, b) => a.rung - b.rung || a.length - b.length).map(({ question }) => question)
}
