import { workOut } from '../arithmetic/columns'
import { exchangesOf } from '../arithmetic/exchange'
import type { Question } from '../arithmetic/question'
import { takeCensus } from '../items/census'
import { digitChoices, problemOfKind, type Digits, type Kind } from '../items/kind'

/** The three grades of one objective, from easy to hard, as they are headed. */
export const GRADES = ['The way in', 'The objective', 'Deeper'] as const

export type Grade = (typeof GRADES)[number]

/** How many times as many questions as wanted a shorter kind must hold. */
const PLENTY = 8n

/**
 * The kind that leads into another: the same exchanges or carries in shorter numbers, where there are enough of these for so many
 * questions, otherwise a shorter bottom number, otherwise the kind itself. Mixed subtractions cross no zeros.
 */
export function kindOfWayIn(kind: Kind, count: number): Kind {
  const isMixed = kind.type === 'any' && kind.operation === 'subtract'
  const plain: Kind = isMixed ? { ...kind, zerosCrossed: 0 } : kind
  const { topDigits, bottomDigits, answerDigits } = plain
  const answers =
    answerDigits === undefined ? {} : { answerDigits: worthWorking(shorter(answerDigits), kind) }
  const both = { ...plain, topDigits: shorter(topDigits), bottomDigits: shorter(bottomDigits), ...answers }
  const found = [both, { ...plain, bottomDigits: shorter(bottomDigits) }].find(
    (each) => problemOfKind(each) === null && takeCensus(each).count >= PLENTY * BigInt(count),
  )
  return found ?? kind
}

/** Without answers of one whole digit where there are others: these are counted, not worked out. */
function worthWorking(digits: readonly number[], { topDecimals = 0 }: Kind): readonly number[] {
  const longer = digits.filter((each) => each > 1)
  return topDecimals === 0 && longer.length > 0 ? longer : digits
}

function shorter(digits: Digits): number[] {
  const fewer = digitChoices(digits).map((choice) => Math.max(choice - 1, 1))
  return [...new Set(fewer)]
}

/** How hard a question is: tens that change hands, zeros crossed on the way, columns. */
export type Hardness = readonly [tens: number, zeros: number, columns: number]

export function hardness({ calculation }: Question): Hardness {
  const written = workOut(calculation)
  const { places, zerosCrossed } = exchangesOf(written)
  return [places.length, zerosCrossed, written.columns.length]
}

/** Whether a question is in no way harder than the hardest of some others is in that way. */
export function isNoHarder(question: Question, others: readonly Question[]): boolean {
  const sizes = others.map(hardness)
  return hardness(question).every((each, way) => each <= Math.max(0, ...sizes.map((size) => size[way] ?? 0)))
}

/**
 * For each question one of the candidates, none twice, that is no harder in any way and otherwise as hard as can be, so that the
 * way in leads to the objective. Fewer where the candidates run out.
 */
export function noHarderThan(questions: readonly Question[], candidates: readonly Question[]): Question[] {
  const left = candidates.map((question) => ({ question, hard: hardness(question) }))
  const byTens = (a: { hard: readonly number[] }, b: { hard: readonly number[] }) =>
    (b.hard[0] ?? 0) - (a.hard[0] ?? 0)
  left.sort(byTens)
  return questions
    .map(hardness)
    .sort((a, b) => a[0] - b[0] || a[1] - b[1] || a[2] - b[2])
    .flatMap((limit) => {
      const index = left.findIndex(({ hard }) => hard.every((each, way) => each <= (limit[way] ?? 0)))
      return index < 0 ? [] : left.splice(index, 1).map(({ question }) => question)
    })
}
