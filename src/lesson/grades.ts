import { workOut } from '../arithmetic/columns'
import { exchangesOf } from '../arithmetic/exchange'
import { amountText, printQuestion, type Operation, type Question } from '../arithmetic/question'
import { takeCensus } from '../items/census'
import { digitChoices, problemOfKind, type Digits, type Kind } from '../items/kind'
import { generatorFrom } from '../items/seed'
import { drawInverseChecks } from './checks'
import { pickFrom } from './random'

/** The three grades of one objective, from easy to hard, as they are headed. */
export const GRADES = ['The way in', 'The objective', 'Deeper'] as const

export type Grade = (typeof GRADES)[number]

/** Something to explain in words, and what a good answer says. */
export interface Task {
  readonly text: string
  readonly answer: string
}

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
  const answers = answerDigits === undefined ? {} : { answerDigits: shorter(answerDigits) }
  const both = { ...plain, topDigits: shorter(topDigits), bottomDigits: shorter(bottomDigits), ...answers }
  const found = [both, { ...plain, bottomDigits: shorter(bottomDigits) }].find(
    (each) => problemOfKind(each) === null && takeCensus(each).count >= PLENTY * BigInt(count),
  )
  return found ?? kind
}

function shorter(digits: Digits): number[] {
  const fewer = digitChoices(digits).map((choice) => Math.max(choice - 1, 1))
  return [...new Set(fewer)]
}

/** How hard a question is: tens that change hands, zeros crossed on the way, columns. */
export function hardness({ calculation }: Question): readonly [tens: number, zeros: number, columns: number] {
  const written = workOut(calculation)
  const { places, zerosCrossed } = exchangesOf(written)
  return [places.length, zerosCrossed, written.columns.length]
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

/** What there is to explain in the deepest grade: a mistake to find, and a sentence that holds always, sometimes or never. */
export function deeperTasks(kind: Kind, seed: string | number, avoid: readonly Question[]): readonly Task[] {
  const drawn = drawInverseChecks({ kind, count: 2, seed: `${seed} mistake`, avoid })
  const mistakes = 'problem' in drawn ? [] : drawn.checks.filter(({ isRight }) => !isRight)
  return [
    ...mistakes.map(({ question, claimed }) => mistake(question, claimed)),
    pickFrom(CLAIMS[kind.operation], generatorFrom(`${seed} claim`)),
  ]
}

function mistake(question: Question, claimed: string): Task {
  const asked = printQuestion(question)
  const right = amountText(workOut(question.calculation).answer, question.unit)
  return {
    text: `${asked} = ${claimed} is wrong. Find the mistake. What would you tell somebody who made it?`,
    answer: `${asked} = ${right}, not ${claimed}. The explanation names the column that went wrong and what to do there.`,
  }
}

const CLAIMS: Readonly<Record<Operation, readonly Task[]>> = {
  subtract: [
    claim(
      'If the top number has a 0 in it, the subtraction needs an exchange.',
      'Sometimes. 403 − 128 needs one, 403 − 102 does not.',
    ),
    claim(
      'If the last digit on top is smaller than the last digit below it, that column needs an exchange.',
      'Always. There is not enough in that column to subtract from.',
    ),
    claim(
      'The answer to a subtraction is smaller than the number that you started with.',
      'Sometimes. It is not where 0 is subtracted: 52 − 0 = 52.',
    ),
  ],
  add: [
    claim(
      'Two three-digit numbers add up to a four-digit number.',
      'Sometimes. 600 + 500 = 1,100 has four digits, 200 + 300 = 500 has three.',
    ),
    claim(
      'When you add two numbers, you can carry 2 into the next column.',
      'Never. The most that a column can make is 9 + 9 + 1 = 19, so at most 1 is carried.',
    ),
    claim(
      'If you swap the two numbers in an addition, the answer changes.',
      'Never. 46 + 30 and 30 + 46 are both 76.',
    ),
  ],
}

function claim(says: string, answer: string): Task {
  return { text: `Always, sometimes or never true? ${says} Give an example.`, answer }
}
