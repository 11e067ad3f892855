import { digitSetOut, hasDigits, workOut, type Column, type Written } from './columns'
import { digitAt, wholeDigits, type Numeral } from './numeral'
import { wordsFor, type PlaceWords } from './places'
import { amountText, printQuestion, type Operation, type Question } from './question'
import { columnStrategy } from './strategy'

/**
 * One thing written down, or rubbed out where `value` is null. A `mark` stands over the top digit (or over the mark before it), which is
 * crossed out.
 */
export interface Change {
  readonly row: 'top' | 'bottom' | 'mark' | 'carried' | 'answer'
  readonly place: number
  readonly value: number | null
}

export type StepKind = 'set-out' | 'look' | 'exchange' | 'subtract' | 'add' | 'carry' | 'answer' | 'check'

/**
 * One action of the written method. `say` is the sentence that a teacher says; `place` the column it happens in, for an
 * exchange the one that receives, null where it is about the whole calculation; `changes` what is written, in order.
 */
export interface Step {
  readonly kind: StepKind
  readonly place: number | null
  readonly say: string
  readonly changes: readonly Change[]
}

/** What stands in one column at some moment; undefined where nothing is written yet. `marks` oldest first. */
export interface ColumnState {
  readonly place: number
  readonly top: number | undefined
  readonly bottom: number | undefined
  readonly marks: readonly number[]
  readonly carried: number | undefined
  readonly answer: number | undefined
}

/** The paper after a step: that step (null before the first), and the columns from the right. */
export interface State {
  readonly step: Step | null
  readonly columns: readonly ColumnState[]
}

/** The steps of the written method, in the words of a primary classroom, from setting out to the check by the inverse. */
export function stepsOf(question: Question): readonly Step[] {
  const written = workOut(question.calculation)
  const columnSteps = question.calculation.operation === 'add' ? additionSteps : subtractionSteps
  const words = wordsFor(question.unit)
  return [
    ...setOutSteps(question, written, words),
    ...columnSteps(written, words),
    ...closingSteps(question, written),
  ]
}

/** The paper after the first n steps, 0 to all of them; RangeError for any other n. */
export function stateAfter(question: Question, n: number): State {
  const steps = stepsOf(question)
  if (!Number.isInteger(n) || n < 0 || n > steps.length)
    throw new RangeError(`There are ${steps.length} steps, so there is no moment after step ${n}.`)
  const changes = steps.slice(0, n).flatMap((step) => step.changes)
  const columns = workOut(question.calculation).columns.map(({ place }) => {
    const inRow = (row: Change['row']) =>
      changes
        .filter((change) => change.place === place && change.row === row)
        .flatMap(({ value }) => (value === null ? [] : [value]))
    const last = changes.findLast((change) => change.place === place && change.row === 'answer')
    return {
      place,
      top: inRow('top')[0],
      bottom: inRow('bottom')[0],
      marks: inRow('mark'),
      carried: inRow('carried')[0],
      answer: last?.value ?? undefined,
    }
  })
  return { step: steps[n - 1] ?? null, columns }
}

function step(kind: StepKind, place: number | null, say: string, changes: readonly Change[] = []): Step {
  return { kind, place, say, changes }
}

function setOutSteps(question: Question, written: Written, { placeName }: PlaceWords): Step[] {
  const { calculation, unit } = question
  const { top, bottom } = calculation
  const { columns, answer } = written
  const changes = [...digitsOf(top, 'top', columns), ...digitsOf(bottom, 'bottom', columns)]
  const isPrinted = ({ row, place }: SetOut) => digitAt(calculation[row], place) !== undefined
  const shortest = Math.min(wholeDigits(top), wholeDigits(bottom))
  const pointed = answer.places > 0 ? ', with the points lined up' : ''
  const under = (place: number) => `${placeName(place)} under ${placeName(place)}`
  const aligned = shortest > 1 && !isMoney(unit) ? `${under(0)} and ${under(1)}` : under(0)
  const say = `Write ${amountText(bottom, unit)} under ${amountText(top, unit)}, ${aligned}${pointed}.`
  return [
    ...(question.missing === 'result' ? [] : [step('set-out', null, whyThis(question))]),
    step('set-out', null, say, changes.filter(isPrinted)),
    ...[top, bottom]
      .filter(({ places }) => places < answer.places)
      .map((short) => {
        const filled = filledTo(short, answer.places)
        const filling = `write ${amountText(short, unit)} as ${amountText(filled, unit)}`
        const zeros = changes.filter((change) => !isPrinted(change))
        return step('set-out', null, `Fill the empty places after the point with 0: ${filling}.`, zeros)
      }),
    ...(isMoney(unit) && columns.length > 1 ? [step('set-out', null, coinsIn(columns, placeName))] : []),
  ]
}

type SetOut = Change & { readonly row: 'top' | 'bottom' }

function digitsOf(numeral: Numeral, row: SetOut['row'], columns: readonly Column[]): SetOut[] {
  return columns.flatMap(({ place }) => {
    const value = digitSetOut(numeral, place)
    return value === undefined ? [] : [{ row, place, value }]
  })
}

function filledTo({ digits, places }: Numeral, wanted: number): Numeral {
  return { digits: [...Array<number>(wanted - places).fill(0), ...digits], places: wanted }
}

function isMoney(unit: Question['unit']): boolean {
  return unit === '£' || unit === 'p'
}

/** What the columns of money hold, from the left. */
function coinsIn(columns: readonly Column[], placeName: PlaceWords['placeName']): string {
  const names = columns
    .filter(hasDigits)
    .map(({ place }) => placeName(place))
    .reverse()
  return `From the left, the columns hold ${names.slice(0, -1).join(', ')} and ${names.at(-1)}.`
}

/** Why the calculation finds the missing number. */
function whyThis({ sign, missing, unit, calculation }: Question): string {
  const top = amountText(calculation.top, unit)
  const bottom = amountText(calculation.bottom, unit)
  const take = `subtract ${bottom} from ${top} to find it`
  if (sign === 'add') {
    const parts =
      missing === 'first' ? `the missing number and ${bottom}` : `${bottom} and the missing number`
    return `We know that ${parts} make ${top}, so ${take}.`
  }
  return missing === 'first'
    ? `We know that the missing number subtract ${bottom} leaves ${top}, so add ${bottom} back to ${top} to find it.`
    : `We know that ${top} subtract the missing number leaves ${bottom}, so ${bottom} and the missing number make ${top}: ${take}.`
}

function closingSteps({ missing, unit }: Question, { calculation, answer }: Written): Step[] {
  const { operation, top, bottom } = calculation
  const equation = (a: Numeral, sign: Operation, b: Numeral, c: Numeral) => {
    const calculation = { operation: sign, top: a, bottom: b }
    return `${printQuestion({ sign, missing: 'result', unit, calculation })} = ${amountText(c, unit)}`
  }
  const worked = equation(top, operation, bottom, answer)
  const found =
    missing === 'result' ? worked : `${worked}, and the missing number is ${amountText(answer, unit)}`
  const inverse = equation(answer, operation === 'add' ? 'subtract' : 'add', bottom, top)
  return [step('answer', null, `So ${found}.`), step('check', null, `Check with the inverse: ${inverse}.`)]
}

function subtractionSteps({ columns, answer }: Written, words: PlaceWords): Step[] {
  const values = columns.map(({ top }) => top ?? 0)
  const steps = columns.flatMap(({ place, bottom = 0 }, index) => {
    const before = values[index] ?? 0
    const exchanges = before < bottom ? exchangeSteps(columns, values, index, words) : []
    const now = values[index] ?? 0
    // Whether a 0 is at the front shows only when every column is worked.
    const isLast = index === columns.length - 1
    const digit = digitAt(answer, place) ?? (isLast ? undefined : 0)
    const say = bottom === 0 ? staying(now, place, digit, words) : taking(now, bottom, place, digit, words)
    return [
      step('look', place, `${leadIn(index, place, words)}: ${canSubtract(before, bottom, place, words)}.`),
      ...exchanges,
      step('subtract', place, say, digit === undefined ? [] : [{ row: 'answer', place, value: digit }]),
    ]
  })
  const front = columns.slice(0, -1).filter(({ place }) => digitAt(answer, place) === undefined)
  return [...steps, ...rubbingOut(front.map(({ place }) => place).reverse(), words)]
}

/** The zeros that turn out to stand at the front, from the left. */
function rubbingOut(places: readonly number[], { placeName }: PlaceWords): Step[] {
  const [first] = places
  if (first === undefined) return []
  const names = places.map(placeName)
  const say =
    names.length === 1
      ? `Nothing stands in front of the 0 in the ${names.join('')}, so it is not needed: rub it out.`
      : `Nothing stands in front of the 0s in the ${names.slice(0, -1).join(', ')} and ${names.at(-1)}, so they are not needed: rub them out.`
  return [
    step(
      'subtract',
      first,
      say,
      places.map((place) => ({ row: 'answer', place, value: null })),
    ),
  ]
}

function leadIn(index: number, place: number, { placeName }: PlaceWords): string {
  return `${index === 0 ? 'Start with' : 'Now'} the ${placeName(place)}`
}

function canSubtract(
  value: number,
  bottom: number,
  place: number,
  { placeName, countOf }: PlaceWords,
): string {
  if (bottom === 0) return 'there is nothing to subtract'
  if (value === 0)
    return `there are no ${placeName(place)} to subtract ${bottom} from, so we need to exchange`
  const have = `${countOf(value, place)} ${value === 1 ? 'is' : 'are'}`
  return value < bottom
    ? `${have} not enough to subtract ${bottom}, so we need to exchange`
    : `${have} enough to subtract ${bottom}`
}

/** Brings a ten into the column at `index` from the first column on the left that has one to give; keeps `values` up to date. */
function exchangeSteps(
  columns: readonly Column[],
  values: number[],
  index: number,
  words: PlaceWords,
): Step[] {
  const { placeName } = words
  const lender = values.findIndex((value, left) => left > index && value > 0)
  const empty = columns.slice(index + 1, lender).map(({ place }, crossed) => {
    const none = crossed === 0 ? `no ${placeName(place)} to exchange` : `no ${placeName(place)} either`
    return step('look', place, `There are ${none}, so look to the ${placeName(place + 1)}.`)
  })
  const exchanges = columns.slice(index, lender).map(({ place }, offset) => ({ place, at: index + offset }))
  return [...empty, ...exchanges.reverse().map(({ place, at }) => exchangeStep(values, place, at, words))]
}

function exchangeStep(values: number[], place: number, at: number, words: PlaceWords): Step {
  const { oneOf, countOf } = words
  const [gives, gets] = [values[at + 1] ?? 0, values[at] ?? 0]
  values[at + 1] = gives - 1
  values[at] = gets + 10
  const giving = becoming(gives, gives - 1, place + 1, words)
  const getting = gets === 0 ? `now there are ${countOf(10, place)}` : becoming(gets, gets + 10, place, words)
  const say = `Exchange 1 ${oneOf(place + 1)} for ${countOf(10, place)}: ${giving}, and ${getting}.`
  return step('exchange', place, say, [
    { row: 'mark', place: place + 1, value: gives - 1 },
    { row: 'mark', place, value: gets + 10 },
  ])
}

function becoming(from: number, to: number, place: number, { countOf }: PlaceWords): string {
  return `${countOf(from, place)} ${from === 1 ? 'becomes' : 'become'} ${countOf(to, place)}`
}

/** Writing a digit; undefined is the 0 that is not written in front of an answer. */
function writing(digit: number | undefined): string {
  return digit === undefined ? ', and we do not write a 0 at the front' : `, so write ${digit}`
}

function staying(
  value: number,
  place: number,
  digit: number | undefined,
  { placeName, countOf }: PlaceWords,
): string {
  if (value > 0) return `The ${countOf(value, place)} ${value === 1 ? 'stays' : 'stay'}${writing(digit)}.`
  return `There are no ${placeName(place)}${writing(digit)}.`
}

function taking(
  value: number,
  bottom: number,
  place: number,
  digit: number | undefined,
  { countOf }: PlaceWords,
): string {
  const sum = `${countOf(value, place)} subtract ${countOf(bottom, place)} is ${countOf(value - bottom, place)}`
  return `${opening(columnStrategy(value, bottom).how)}: ${sum}${writing(digit)}.`
}

function opening(clause: string): string {
  return clause.charAt(0).toUpperCase() + clause.slice(1)
}

function additionSteps({ calculation: { top, bottom }, columns }: Written, words: PlaceWords): Step[] {
  return columns.filter(hasDigits).flatMap((column, index, { length }) => {
    const { place, receives, lends, result } = column
    const digits = [digitSetOut(top, place), digitSetOut(bottom, place)].filter(
      (digit) => digit !== undefined,
    )
    const alone = digits.length === 1 && !receives
    const say = alone
      ? staying(result, place, result, words)
      : adding(digits, receives, place, lends ? '' : writing(result), words)
    return [
      step('look', place, `${leadIn(index, place, words)}: ${toAdd(digits, receives, place, words)}.`),
      step('add', place, say, lends ? [] : [{ row: 'answer', place, value: result }]),
      ...(lends ? [carryStep(column, index === length - 1, words)] : []),
    ]
  })
}

function carriedInto(place: number, { countOf }: PlaceWords): string {
  return `the ${countOf(1, place)} we carried`
}

function toAdd(digits: readonly number[], carried: boolean, place: number, words: PlaceWords): string {
  const counts = digits.map((digit) => words.countOf(digit, place))
  if (carried) return `add ${counts.join(', ')} and ${carriedInto(place, words)}`
  return counts.length === 1 ? 'there is nothing to add' : `add ${counts.join(' and ')}`
}

function adding(
  [first = 0, second]: readonly number[],
  carried: boolean,
  place: number,
  end: string,
  words: PlaceWords,
): string {
  const { countOf } = words
  const sum = (a: number, b: number) =>
    `${countOf(a, place)} add ${countOf(b, place)} is ${countOf(a + b, place)}`
  if (second === undefined) return `Add ${carriedInto(place, words)}: ${sum(first, 1)}${end}.`
  const more = carried ? `, and ${carriedInto(place, words)} makes ${countOf(first + second + 1, place)}` : ''
  return `${opening(columnStrategy(first, second, 'add').how)}: ${sum(first, second)}${more}${end}.`
}

/** A ten out of the last column is written straight into the answer, as there is nothing to add it to. */
function carryStep(
  { place, result }: Column,
  isLast: boolean,
  { oneOf, placeName, countOf }: PlaceWords,
): Step {
  const next = oneOf(place + 1)
  const regrouped = `${countOf(result + 10, place)} are 1 ${next} and ${countOf(result, place)}`
  const carrying = isLast ? `1 in the ${placeName(place + 1)}` : `carry 1 ${next}`
  const writing = `write ${result} in the ${placeName(place)} and ${carrying}`
  return step('carry', place, `Exchange ${countOf(10, place)} for 1 ${next}: ${regrouped}, so ${writing}.`, [
    { row: 'answer', place, value: result },
    { row: isLast ? 'answer' : 'carried', place: place + 1, value: 1 },
  ])
}
