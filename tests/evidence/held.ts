import { uniformInt } from 'pure-rand/distribution/uniformInt'
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator'
import { prepareDiagnosis } from '../../src/answers/diagnosis'
import { answerWith, FAULTS, type Fault } from '../../src/answers/faults'
import type { Operation, Question } from '../../src/arithmetic/question'
import { generatorFrom } from '../../src/items/seed'
import { answersOf, chance, sheetOf } from './pupils'

export const WAYS = ['always', 'from a point on', 'now and then'] as const
export type Way = (typeof WAYS)[number]

/** A pupil's fault counts as showing where it gives so many of the wrong answers. */
const SHOWS = 3

/** How many of some pupils came out as told. */
export interface Tally {
  readonly pupils: number
  readonly hits: number
}

/** Pupils whose fault shows: how many are named a fault, and how many have theirs named first or told as fitting as well. */
export interface Recovery {
  readonly any: Tally
  readonly first: Tally
  /** How many have theirs in the first place itself. */
  readonly foremost: Tally
}

const sheet = (generator: RandomGenerator, operations: readonly Operation[], count: number) =>
  operations.flatMap((operation) => sheetOf(generator, operation, count / operations.length))

/** What a pupil types who has a fault in this way: at a rate of 60 to 70 in 100 where it is held now and then. */
function answersHeld(
  generator: RandomGenerator,
  questions: readonly Question[],
  fault: Fault,
  way: Way,
  slip: number,
): string[] {
  const from = way === 'from a point on' ? uniformInt(generator, 1, questions.length - 1) : 0
  const rate = way === 'now and then' ? 0.6 + 0.1 * chance(generator) : 1
  return questions.flatMap((question, index) =>
    answersOf(generator, [question], index >= from && chance(generator) < rate ? [fault] : [], slip),
  )
}

/** Pupils with each fault in turn, held in this way, on sheets of `count` questions. */
export function recovery(
  way: Way,
  operations: readonly Operation[],
  count: number,
  slip: number,
  sheets: number,
): Recovery {
  const generator = generatorFrom(`held ${way} ${operations.join()} ${count} ${slip}`)
  const tally = { pupils: 0, any: 0, first: 0, foremost: 0 }
  for (let index = 0; index < sheets; index += 1) {
    const questions = sheet(generator, operations, count)
    const { diagnose } = prepareDiagnosis(questions)
    for (const fault of FAULTS.filter(({ operation }) => operations.includes(operation)))
      for (let pupil = 0; pupil < 3; pupil += 1) {
        const typed = answersHeld(generator, questions, fault, way, slip)
        const shown = questions.filter(
          ({ calculation }, at) =>
            typed[at] !== answerWith([], calculation) && typed[at] === answerWith([fault], calculation),
        )
        if (shown.length < SHOWS) continue
        const [first] = diagnose(typed).named
        tally.pupils += 1
        tally.any += Number(first !== undefined)
        tally.first += Number(first !== undefined && [first.fault, ...first.alsoFits].includes(fault.id))
        tally.foremost += Number(first?.fault === fault.id)
      }
  }
  const of = (hits: number): Tally => ({ pupils: tally.pupils, hits })
  return { any: of(tally.any), first: of(tally.first), foremost: of(tally.foremost) }
}

/** Pupils who use the right method and slip at this rate: how many are named a fault all the same. */
export function falselyNamed(
  operations: readonly Operation[],
  count: number,
  slip: number,
  sheets: number,
): Tally {
  const generator = generatorFrom(`falsely ${operations.join()} ${count} ${slip}`)
  let hits = 0
  for (let index = 0; index < sheets; index += 1) {
    const questions = sheet(generator, operations, count)
    const { diagnose } = prepareDiagnosis(questions)
    for (let pupil = 0; pupil < 20; pupil += 1)
      hits += Number(diagnose(answersOf(generator, questions, [], slip)).named.length > 0)
  }
  return { pupils: sheets * 20, hits }
}

const SHEETS = 25

/** The tables of faults that come and go: recovery by the way in which they are held, and right pupils named a fault. */
export function heldTables(): string[] {
  const share = ({ hits, pupils }: Tally) => `${((100 * hits) / pupils).toFixed(1)}%`
  const lines = [
    'operations | questions | held | pupils | named any fault | named first | right method named, 5% and 20% slips',
  ]
  for (const operations of [['subtract'], ['add'], ['subtract', 'add']] as const)
    for (const count of [10, 12, 20])
      for (const way of WAYS) {
        const { any, first } = recovery(way, operations, count, 0.05, SHEETS)
        const falsely = [0.05, 0.2]
          .map((slip) => share(falselyNamed(operations, count, slip, SHEETS)))
          .join(', ')
        lines.push(
          [operations.join(' and '), count, way, any.pupils, share(any), share(first), falsely].join(' | '),
        )
      }
  return lines
}
