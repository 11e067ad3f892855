import type { RandomGenerator } from 'pure-rand/types/RandomGenerator'
import { inverse } from '../arithmetic/check'
import { workOut } from '../arithmetic/columns'
import { compareNumerals, type Numeral } from '../arithmetic/numeral'
import { amountText, printQuestion, type Question } from '../arithmetic/question'
import { generatorFrom } from '../items/seed'
import { drawSet, type Choice, type DrawnSet, type Part } from '../items/sets'
import { CHILDREN } from './children'
import { wrongAnswers, type WrongAnswer } from './model/wentWrong'
import { pickFrom, shuffled, wholeBetween } from './random'

/**
 * Missing-number questions whose finding calculations are of a kind, so that their types are what was asked for: a subtraction
 * finds □ + 46 = 76, 30 + □ = 76 and 76 − □ = 46, an addition finds □ − 46 = 30. The forms take turns.
 */
export function drawMissingNumbers(part: Part & Choice): DrawnSet {
  const drawn = drawSet({ ...part, seed: `${part.seed} missing` })
  if ('problem' in drawn) return drawn
  return { questions: drawn.questions.map(withMissing) }
}

const SUBTRACTION_FORMS: readonly Pick<Question, 'sign' | 'missing'>[] = [
  { sign: 'add', missing: 'second' },
  { sign: 'subtract', missing: 'second' },
  { sign: 'add', missing: 'first' },
]

function withMissing(question: Question, index: number): Question {
  const form = SUBTRACTION_FORMS[index % SUBTRACTION_FORMS.length]
  if (question.calculation.operation === 'add' || form === undefined)
    return { ...question, sign: 'subtract', missing: 'first' }
  return { ...question, ...form }
}

/**
 * A worked calculation to be checked by the inverse. `claimed` is what a child found, as printed; `inverse` the calculation
 * that checks it, and `found` its answer; `answer` says whether the child is right, and what is.
 */
export interface InverseCheck {
  readonly text: string
  readonly question: Question
  readonly claimed: string
  readonly inverse: Question
  readonly found: string
  readonly isRight: boolean
  readonly answer: string
}

/**
 * Questions that are checked by the inverse. How many of the children are right is drawn too, so that it cannot be told from the others; of
 * three or more at least one is right and one is wrong. The wrong ones have a systematic fault or, where none shows that the inverse could
 * check, as in additions without a carry, a slip.
 */
export function drawInverseChecks(
  part: Part & Choice,
): { readonly checks: readonly InverseCheck[] } | { readonly problem: string; readonly available: bigint } {
  const seed = `${part.seed} inverse`
  const drawn = drawSet({ ...part, seed })
  if ('problem' in drawn) return drawn
  const generator = generatorFrom(seed)
  const children = shuffled(CHILDREN, generator)
  const count = drawn.questions.length
  const mixed = count >= 3 ? 1 : 0
  const howMany = wholeBetween(mixed, count - mixed, generator)
  const right = shuffled(
    drawn.questions.map((_, index) => index < howMany),
    generator,
  )
  return {
    checks: drawn.questions.map((question, index) =>
      checkOf(question, children[index % children.length] ?? '', right[index] === true, generator),
    ),
  }
}

function checkOf(
  question: Question,
  child: string,
  isRight: boolean,
  generator: RandomGenerator,
): InverseCheck {
  const { calculation, unit } = question
  const right = workOut(calculation).answer
  const made = isRight ? { numeral: right, why: '' } : pickFrom(wrongClaims(question), generator)
  const claim = made.numeral
  const check = inverse(question, claim)
  const text = (numeral: Numeral) => amountText(numeral, unit)
  const [asked, claimed] = [printQuestion(question), text(claim)]
  const how = calculation.operation === 'add' ? 'a subtraction' : 'an addition'
  return {
    text: `${child} works out ${asked} = ${claimed}. Check it with ${how}. Is ${child} right?`,
    question,
    claimed,
    inverse: check.question,
    found: text(check.answer),
    isRight,
    answer: isRight
      ? `${check.text}, so ${child} is right.`
      : `${check.text}, not ${text(calculation.top)}, so ${child} is not right. ${asked} = ${text(right)}. ${made.why}`,
  }
}

/** What a child could claim that the inverse can check: nothing below what an inverse subtraction takes away. */
function wrongClaims(question: Question): { readonly numeral: Numeral; readonly why: string }[] {
  const { operation, bottom } = question.calculation
  const faulty = wrongAnswers(question)
    .filter(({ numeral }) => operation === 'subtract' || compareNumerals(numeral, bottom) >= 0)
    .map(({ numeral, fault }) => ({ numeral, why: fault.sentence }))
  const slip = { numeral: slipIn(workOut(question.calculation).answer), why: 'The last digit is out by one.' }
  return faulty.length > 0 ? faulty : [slip]
}

/** The number with its last digit one too many, or one too few where it is 9. */
function slipIn({ digits: [last = 0, ...others], places }: Numeral): Numeral {
  return { digits: [last === 9 ? 8 : last + 1, ...others], places }
}

/** Questions worked with a fault, for pupils to find the mistake. */
export function drawMistakes(
  part: Part & Choice,
): { readonly mistakes: readonly Mistaken[] } | { readonly problem: string; readonly available: bigint } {
  const seed = `${part.seed} mistakes`
  const drawn = drawSet({ ...part, seed })
  if ('problem' in drawn) return drawn
  const generator = generatorFrom(seed)
  return {
    mistakes: drawn.questions.flatMap((question) => {
      const wrong = wrongAnswers(question).filter(({ fault }) => fault.moment !== 'operation')
      return wrong.length > 0 ? [{ question, wrong: pickFrom(wrong, generator) }] : []
    }),
  }
}

/** A question and the wrong answer that a fault leads to. */
export interface Mistaken {
  readonly question: Question
  readonly wrong: WrongAnswer
}
