import { answerKey, markAnswer, readTyped, type AnswerKey, type CellValue } from '../../src/answers/typed'
import { foldText, numeralText, valueText } from '../../src/arithmetic/numeral'
import { printQuestion, readQuestion } from '../../src/arithmetic/question'
import { workOut } from '../../src/arithmetic/columns'
import { exchangesOf } from '../../src/arithmetic/exchange'
import { addressOf, isEmpty, type CellRef, type Matrix } from '../../src/marksheet/layout/matrix'
import { NOTES_TITLE } from '../../src/marksheet/marking/notes'
import { planMarking, planMastery } from '../../src/marksheet/marking/plan'
import { reviewJson } from '../../src/marksheet/reports/json'
import { review, type Review } from '../../src/marksheet/marking/review'
import { lookByRules, lookOf } from '../../src/marksheet/marking/rules'

/** What does not hold of a text read as a question, a sentence each. */
export function questionProblems(text: string): string[] {
  const reading = readQuestion(text)
  if ('problem' in reading) return /^[A-Z].*\.$/.test(reading.problem) ? [] : ['The problem is no sentence.']
  const { question } = reading
  const { calculation } = question
  const again = readQuestion(printQuestion(question))
  const written = workOut(calculation)
  const places = Math.max(calculation.top.places, calculation.bottom.places)
  const scaled = (of: typeof calculation.top) =>
    BigInt(numeralText(of).replace('.', '')) * 10n ** BigInt(places - of.places)
  const [top, bottom] = [scaled(calculation.top), scaled(calculation.bottom)]
  const answer = calculation.operation === 'add' ? top + bottom : top - bottom
  exchangesOf(written)
  return [
    ...('question' in again && answerKey(again.question).value === answerKey(question).value
      ? []
      : [`Printed as ${printQuestion(question)}, it is read otherwise.`]),
    ...(scaled(written.answer) === answer ? [] : [`Worked out as ${valueText(written.answer)}.`]),
  ]
}

const CANONICAL = /^-?(?:0|[1-9]\d*)(?:\.\d*[1-9])?$/

/** What does not hold of something typed for an answer, a sentence each. */
export function typedProblems(value: CellValue, key: AnswerKey): string[] {
  const read = readTyped(value, key.unit)
  const outcome = markAnswer(value, key)
  const isHeld = typeof value !== 'number' || Number.isFinite(value)
  const look = isHeld ? lookByRules(value, key) : null
  const problems =
    look === null || look === lookOf(outcome) ? [] : [`The rules show ${look}, marking says ${outcome}.`]
  if (typeof value !== 'string' || read.kind !== 'number') return problems
  if (!CANONICAL.test(read.value)) problems.push(`Read as ${read.value}.`)
  const plain = foldText(value)
  if (/[^\d\s.,£p=−–kgcml-]/.test(plain))
    problems.push(`Read as ${read.value} in spite of what else stands there.`)
  const digits = plain.replace(/[^\d.]/g, '').replace(/\.$/, '')
  const isSame =
    key.unit !== '' ||
    Number(digits) === Math.abs(Number(read.value)) ||
    plain.startsWith('£') ||
    plain.endsWith('p')
  return isSame ? problems : [...problems, `Read as ${read.value}.`]
}

/** What does not hold of a sheet that is reviewed, planned for, diagnosed and told as data, a sentence each. */
export function sheetProblems(matrix: Matrix): string[] {
  const reviews = review(matrix)
  const answers = reviews.flatMap(({ pupils }) => pupils.flatMap((pupil) => pupil.answers))
  const places = answers.map(addressOf)
  const twice = places.filter((place, index) => places.indexOf(place) !== index)
  return [
    ...twice.map((place) => `${place} is an answer twice.`),
    ...reviews.flatMap((each) => reviewProblems(matrix, each)),
    ...planProblems(matrix, reviews),
  ]
}

function reviewProblems({ values }: Matrix, each: Review): string[] {
  const { orientation, questions, pupils } = each
  const asked = new Set(questions.map(addressOf))
  const names = new Set(pupils.flatMap(({ nameCells }) => nameCells.map(addressOf)))
  const told = reviewJson(each)
  const isShare = (share: number) => share >= 0 && share <= 1
  const problems = pupils.flatMap((pupil, index) => {
    const { name, answers, typed, outcomes, judgement } = pupil
    return [
      ...(name.trim() === '' ? ['A pupil has no name.'] : []),
      ...(typed.length === answers.length && outcomes.length === answers.length
        ? []
        : [`${name} has lost an answer.`]),
      ...(orientation === 'pairs' || answers.length === questions.length
        ? []
        : [`${name} lacks a question.`]),
      ...(told.pupils[index]?.answers.length === answers.length ? [] : [`${name} is not told in full.`]),
      ...([...judgement.byType, ...judgement.byFamily].every(({ probability }) => isShare(probability))
        ? []
        : [`${name}: a share is none.`]),
      ...answers.flatMap((cell, at) =>
        answerProblems(values[cell.row]?.[cell.column] ?? null, cell, typed[at] ?? '', asked, names),
      ),
    ]
  })
  return [...problems, ...(JSON.parse(JSON.stringify(told)) === null ? ['It cannot be told.'] : [])]
}

function answerProblems(
  value: CellValue,
  cell: CellRef,
  typed: string,
  asked: ReadonlySet<string>,
  names: ReadonlySet<string>,
): string[] {
  const place = addressOf(cell)
  return [
    ...(asked.has(place) ? [`${place} is a question and an answer.`] : []),
    ...(names.has(place) ? [`${place} is a name and an answer.`] : []),
    ...(isEmpty(value) || typed !== '' ? [] : [`What was typed in ${place} is lost.`]),
  ]
}

/** The longest formula of a conditional format, and the sheet's last row and column. */
const [LONGEST, ROWS, COLUMNS] = [255, 1_048_576, 16_384]

function planProblems(matrix: Matrix, reviews: readonly Review[]): string[] {
  const { rules, notes } = planMarking(matrix, reviews)
  const areas = rules.flatMap((rule) => rule.areas)
  const mastery = planMastery(reviews)
  return [
    ...rules
      .filter(({ formula }) => formula.length > LONGEST)
      .map(({ formula }) => `A formula is too long: ${formula}`),
    ...areas
      .filter(
        ({ top, left, bottom, right }) =>
          !(top >= 0 && left >= 0 && top <= bottom && left <= right && bottom < ROWS && right < COLUMNS),
      )
      .map((area) => `No such area: ${JSON.stringify(area)}`),
    ...notes
      .filter(
        ({ row, column }) =>
          !isEmpty(matrix.values[row]?.[column]) && matrix.values[row]?.[column] !== NOTES_TITLE,
      )
      .filter(({ text, row, column }) => text !== '' && matrix.values[row]?.[column] !== text)
      .map((note) => `A note is written over ${addressOf(note)}.`),
    ...(mastery.rows.length < 3 ? ['The Mastery sheet is not laid out.'] : []),
  ]
}

/** The cells of a known marksheet that are not exactly once among the answers, and what was typed and is told otherwise. */
export function lostCells(matrix: Matrix, typed: readonly CellRef[]): string[] {
  const answers = review(matrix).flatMap(({ pupils }) =>
    pupils.flatMap((pupil) => pupil.answers.map(addressOf)),
  )
  const count = new Map<string, number>()
  for (const place of answers) count.set(place, (count.get(place) ?? 0) + 1)
  return typed.map(addressOf).filter((place) => count.get(place) !== 1)
}
