import type { RandomGenerator } from 'pure-rand/types/RandomGenerator'
import { FAULTS } from '../answers/faults'
import { inverse } from '../arithmetic/check'
import { workOut } from '../arithmetic/columns'
import { compareNumerals, readNumeral, valueText, type Numeral } from '../arithmetic/numeral'
import { amountText, printQuestion, type Calculation, type Question } from '../arithmetic/question'
import { generatorFrom } from '../items/seed'
import { drawSet, type Choice, type DrawnSet, type Part } from '../items/sets'
import { CHILDREN } from './children'
import { pickFrom, shuffled } from './random'

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
 * Questions that are checked by the inverse. Half of the children, as nearly as can be, are right; the others made a slip in the
 * last digit or a systematic fault.
 */
export function drawInverseChecks(
  part: Part & Choice,
): { readonly checks: readonly InverseCheck[] } | { readonly problem: string; readonly available: bigint } {
  const seed = `${part.seed} inverse`
  const drawn = drawSet({ ...part, seed })
  if ('problem' in drawn) return drawn
  const generator = generatorFrom(seed)
  const children = shuffled(CHILDREN, generator)
  const right = shuffled(
    drawn.questions.map((_, index) => index % 2 === 0),
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
  const claim = isRight ? right : pickFrom(wrongAnswers(calculation), generator)
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
      : `${check.text}, not ${text(calculation.top)}, so ${child} is not right. ${asked} = ${text(right)}.`,
  }
}

/** Wrong answers that a child could give: about as long as the right one, not below what an inverse subtraction takes away. */
function wrongAnswers(calculation: Calculation): Numeral[] {
  const right = workOut(calculation).answer
  const given = FAULTS.map(({ apply }) => apply(calculation)).filter((value) => value !== null)
  const values = new Set(given.filter((value) => value !== valueText(right)))
  const faulty = [...values]
    .flatMap((value) => readNumeral(value) ?? [])
    .map((found) => filled(found, right.places))
  return [slipIn(right), ...faulty].filter(
    (wrong) =>
      wrong.places === right.places &&
      wrong.digits.length <= right.digits.length + 1 &&
      (calculation.operation === 'subtract' || compareNumerals(wrong, calculation.bottom) >= 0),
  )
}

/** The number with its last digit one too many, or one too few where it is 9. */
function slipIn({ digits: [last = 0, ...others], places }: Numeral): Numeral {
  return { digits: [last === 9 ? 8 : last + 1, ...others], places }
}

/** The number with zeros up to so many places, as printed in a calculation with as many. */
function filled({ digits, places }: Numeral, wanted: number): Numeral {
  return {
    digits: [...Array<number>(Math.max(0, wanted - places)).fill(0), ...digits],
    places: Math.max(places, wanted),
  }
}
