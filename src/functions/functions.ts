import type { Outcome } from '../answers/typed'
import { workOut } from '../arithmetic/columns'
import {
  ADDITION_TYPES,
  exchangesOf,
  SUBTRACTION_TYPES,
  type ExchangeType,
  type Exchanges,
} from '../arithmetic/exchange'
import { MOST_WHOLE_DIGITS } from '../arithmetic/numeral'
import { printQuestion, type Question } from '../arithmetic/question'
import { stepsOf } from '../arithmetic/steps'
import { strategyFor } from '../arithmetic/strategy'
import { problemOfKind, type Kind } from '../items/kind'
import { drawSet, MOST_QUESTIONS } from '../items/sets'
import { layoutOf } from '../lesson/model/grid'
import type { Standing } from '../mastery/standing'
import {
  askedIn,
  giveFor,
  nothingToGive,
  thrownIfAlone,
  unusable,
  type AskedQuestion,
  type Given,
} from './cells'
import { outcomeOf, prepareJudging, whyWrong } from './evidence'
import { anyText, isTrue, oneOf, wholeNumber } from './parameters'
import { classIn, listed, pairsIn, pairsOfPupil, questionsIn, transposed, type Range } from './shapes'

/** How many digits of a number a spreadsheet keeps. */
const SPREADSHEET_DIGITS = 15

/**
 * The answer to each question, as a number.
 * @customfunction ANSWER
 * @param question A question such as 7,214 − 86, or a range of questions.
 * @returns The answers, in the shape of the range.
 */
export function answer(question: unknown[][]): unknown[][] {
  return forEach(question, ({ key }) =>
    key.value.replace(/\D|0+$/g, '').length > SPREADSHEET_DIGITS
      ? nothingToGive(`The answer has more than the ${SPREADSHEET_DIGITS} digits that a spreadsheet keeps.`)
      : Number(key.value),
  )
}

/**
 * How many exchanges each subtraction, or carries each addition, needs.
 * @customfunction EXCHANGES
 * @param question A question such as 7,214 − 86, or a range of questions.
 * @returns The counts, in the shape of the range.
 */
export function exchanges(question: unknown[][]): unknown[][] {
  return forEach(question, ({ question }) => exchangesIn(question).places.length)
}

/**
 * The exchange or carry type of each question, such as “through a zero”.
 * @customfunction TYPE
 * @param question A question such as 7,214 − 86, or a range of questions.
 * @returns The types, in the shape of the range.
 */
export function type(question: unknown[][]): unknown[][] {
  return forEach(question, ({ question }) => exchangesIn(question).type)
}

/**
 * The skills that each question demands, such as “subtract.through-zero”.
 * @customfunction SKILLS
 * @param question A question such as 7,214 − 86, or a range of questions.
 * @returns The skills, joined by semicolons, in the shape of the range.
 */
export function skills(question: unknown[][]): unknown[][] {
  return forEach(question, ({ question }) => exchangesIn(question).skills.join('; '))
}

/**
 * The way to work out each question (count on, count back, round and adjust, in the head, or written method), with the reason.
 * @customfunction STRATEGY
 * @param question A question such as 7,214 − 86, or a range of questions.
 * @returns The ways, in the shape of the range.
 */
export function strategy(question: unknown[][]): unknown[][] {
  return forEach(question, ({ question }) => {
    const { name, reason } = strategyFor(question)
    return `${name}: ${reason}`
  })
}

/**
 * The worked steps of the written method, as a teacher says them, one to a row.
 * @customfunction STEPS
 * @param question One question, such as 7,214 − 86.
 * @returns The steps, from setting out to the check.
 */
export function steps(question: unknown): string[][] {
  return modelled(question, (asked) => stepsOf(asked).map(({ say }) => [say]))
}

/**
 * The finished written layout, a digit to a cell: exchange marks or carried tens, top number, bottom number, answer.
 * @customfunction LAYOUT
 * @param question One question, such as 7,214 − 86.
 * @returns The rows of the layout.
 */
export function layout(question: unknown): string[][] {
  return modelled(question, (asked) => layoutOf(asked))
}

/**
 * Marks typed answers: TRUE right, FALSE wrong, or the words blank, absent or unreadable.
 * @customfunction MARK
 * @param questions The questions: one row over the answers, one column beside them, or a range of the same size.
 * @param typed What the pupils typed. Pass range&"" so that an empty cell is never taken for 0.
 * @returns The marks, in the shape of the answers.
 */
export function mark(questions: unknown[][], typed: unknown[][]): unknown[][] {
  return forEachTyped(questions, typed, ({ key }, cell) => MARKS[outcomeOf(cell, key)])
}

/**
 * What the pupil most likely does who typed each wrong answer, judged by all of the pupil's answers together.
 * @customfunction WHY
 * @param questions The questions: one row over the answers, one column beside them, or a range of the same size.
 * @param typed What the pupils typed. Pass range&"" so that an empty cell is never taken for 0.
 * @returns The likeliest fault in words, in the shape of the answers; an empty text where there is none.
 */
export function why(questions: unknown[][], typed: unknown[][]): unknown[][] {
  const pairs = pairsIn(questions, typed)
  const isAcross =
    questions.length > 1 && questions.every((row) => row.length === 1) && typed.length === questions.length
  const lines = isAcross ? transposed(pairs) : pairs
  const reasons = lines.map((line) =>
    whyWrong(
      line.map(({ asked }) => asked),
      line.map((pair) => pair.typed),
    ),
  )
  const placed = isAcross ? transposed(reasons) : reasons
  return thrownIfAlone(
    pairs.map((row, r) => row.map(({ asked }, c) => giveFor(asked, () => placed[r]?.[c] ?? ''))),
  )
}

const BY = oneOf(
  ['type', 'family', 'skill'],
  () => 'The third argument must be "type", "family" or "skill".',
  'type',
)

/**
 * How one pupil stands: a row for each type, family or skill with how many were right, how many were tried, and the status.
 * @customfunction MASTERY
 * @param questions The pupil's questions, in one row, one column or a range.
 * @param typed What the pupil typed, in the same order. Pass range&"" so that an empty cell is never taken for 0.
 * @param [by] "type" (if left out), "family" or "skill".
 * @returns Rows of four cells: type, family or skill, right, tried, status.
 */
export function mastery(questions: unknown[][], typed: unknown[][], by?: string): unknown[][] {
  const pairs = pairsOfPupil(questions, typed)
  const { judgement, skills } = prepareJudging(pairs.map(({ asked }) => asked)).judge(
    pairs.map((pair) => pair.typed),
  )
  const row = (what: string, { right, tried, status }: Standing) => [what, right, tried, status]
  const rowsBy = {
    type: () => judgement.byType.map((standing) => row(standing.type, standing)),
    family: () => judgement.byFamily.map((standing) => row(standing.family, standing)),
    skill: () => skills().map((standing) => row(standing.skill, standing)),
  }
  const rows = rowsBy[BY(by)]()
  if (rows.length === 0)
    throw nothingToGive('These questions have nothing to show: there are none, or they demand no skill.')
  return rows
}

/**
 * What each pupil needs, with its evidence, where that is flagged: a prompt for your own judgement, never a verdict on a child.
 * @customfunction SUPPORT
 * @param questions The questions: one row over the answers, or one column beside them where each pupil has a column.
 * @param typed What the pupils typed. Pass range&"" so that an empty cell is never taken for 0.
 * @returns The need of each pupil in words; an empty text where nothing is flagged.
 */
export function support(questions: unknown[][], typed: unknown[][]): string[][] {
  const { asked, pupils, isAcross } = classIn(questions, typed)
  const judging = prepareJudging(asked)
  return listed(
    pupils.map((pupil) => {
      const { need, needsSupport } = judging.judge(pupil).judgement
      return needsSupport ? need.sentence : ''
    }),
    isAcross,
  )
}

const TYPE = oneOf<ExchangeType>(
  [...SUBTRACTION_TYPES, ...ADDITION_TYPES],
  (word) =>
    `There is no type called “${word}”. TYPE gives the words, such as “no exchange” or “through a zero”.`,
)
const digits = (which: string) =>
  wholeNumber(1, MOST_WHOLE_DIGITS, `The ${which} number must have 1 to ${MOST_WHOLE_DIGITS} digits.`)
const TOP_DIGITS = digits('top')
const BOTTOM_DIGITS = digits('bottom')
const COUNT = wholeNumber(
  1,
  MOST_QUESTIONS,
  `The count must be a whole number from 1 to ${MOST_QUESTIONS}.`,
  10,
)
const SEED = anyText('1')
const ACROSS = isTrue

/**
 * Fresh questions of one type. The same seed gives the same questions.
 * @customfunction QUESTIONS
 * @param type The type, in the words that TYPE gives, such as “through a zero”.
 * @param topDigits How many digits the top number has, 1 to 15.
 * @param bottomDigits How many digits the bottom number has, 1 to 15.
 * @param [count] How many questions, 1 to 1000; 10 if left out.
 * @param [seed] Any number or text that names the set; 1 if left out.
 * @param [across] TRUE to lay the questions in a row; down a column if left out.
 * @returns The questions, down a column or across a row.
 */
export function questions(
  type: string,
  topDigits: number,
  bottomDigits: number,
  count?: number,
  seed?: unknown,
  across?: boolean,
): string[][] {
  const kind = kindOf(TYPE(type), TOP_DIGITS(topDigits), BOTTOM_DIGITS(bottomDigits))
  const drawn = drawSet({ kind, count: COUNT(count), seed: SEED(seed) })
  if ('problem' in drawn) throw nothingToGive(drawn.problem)
  return listed(drawn.questions.map(printQuestion), ACROSS(across))
}

const MARKS: Readonly<Record<Outcome, Given>> = {
  correct: true,
  incorrect: false,
  blank: 'blank',
  absent: 'absent',
  unreadable: 'unreadable',
}

function forEach(questions: Range, give: (asked: AskedQuestion) => Given): Given[][] {
  return thrownIfAlone(questionsIn(questions).map((row) => row.map((asked) => giveFor(asked, give))))
}

function forEachTyped(
  questions: Range,
  typed: Range,
  give: (asked: AskedQuestion, typed: unknown) => Given,
): Given[][] {
  const pairs = pairsIn(questions, typed)
  return thrownIfAlone(
    pairs.map((row) => row.map((pair) => giveFor(pair.asked, (asked) => give(asked, pair.typed)))),
  )
}

/** Rows about one question; one empty text for an empty cell. Throws #VALUE! for anything else. */
function modelled(question: unknown, rowsFor: (question: Question) => string[][]): string[][] {
  const asked = askedIn(question)
  if (asked === null) return [['']]
  if ('problem' in asked) throw unusable(asked.problem)
  return rowsFor(asked.question)
}

function exchangesIn(question: Question): Exchanges {
  return exchangesOf(workOut(question.calculation))
}

function kindOf(type: ExchangeType, topDigits: number, bottomDigits: number): Kind {
  const operation = ADDITION_TYPES.some((one) => one === type) ? 'add' : 'subtract'
  const kind: Kind = { operation, type, topDigits, bottomDigits }
  const problem = problemOfKind(kind)
  if (problem !== null) throw unusable(problem)
  return kind
}
