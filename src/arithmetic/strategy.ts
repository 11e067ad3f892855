import { workOut } from './columns'
import { movePoint, scaledValue, type Numeral } from './numeral'
import { amountText, printQuestion, type Operation, type Question, type Unit } from './question'

/**
 * What counts as small and as near. `small`: the most that is counted on or back for a whole question; `near`: how far a number
 * to be rounded may be from a multiple of 100; both in units of the last place, so in pennies for £4.99. `smallInColumn`: the most
 * that is counted within one column.
 */
export interface StrategySettings {
  readonly small: number
  readonly near: number
  readonly smallInColumn: number
}

/** The settings used where none are given (common practice, no source). */
export const STRATEGY_SETTINGS: StrategySettings = { small: 20, near: 3, smallInColumn: 3 }

export type StrategyName = 'count on' | 'count back' | 'round and adjust' | 'in the head' | 'written method'

/** A way to work out a question, and why, in whole sentences that name its numbers. */
export interface Strategy {
  readonly name: StrategyName
  readonly reason: string
}

/** A way to work out one column; `how` is a clause that can open a sentence: "count on from 9 to 12". */
export interface ColumnStrategy {
  readonly name: 'known fact' | 'count on' | 'count back' | 'through ten'
  readonly how: string
}

/**
 * Chooses a strategy for a whole question (common practice, no source; the first line that fits counts):
 * count on where the answer of a subtraction is small, count back where the number taken away is (where both are, the shorter
 * count); in an addition count on where one number is small; change from whole pounds by counting on; round and adjust where
 * the number taken away, or a number added, is near a multiple of 100, and so of 1000, but never the number taken from; place by
 * place in the head where nothing is exchanged or carried and at most two digits change; otherwise the written method.
 * Decimals and money are judged by their digits, in units of the last place: £5 − £4.85 is a count of 15.
 * A missing-number question has the strategy of the calculation that finds it.
 */
export function strategyFor(question: Question, settings: StrategySettings = STRATEGY_SETTINGS): Strategy {
  const numbers = numbersOf(question)
  const counted =
    numbers.operation === 'add' ? countOnSmall(numbers, settings) : countOnOrBack(numbers, settings)
  const strategy =
    counted ??
    changeFromPounds(numbers) ??
    roundNear(numbers, settings) ??
    inTheHead(numbers) ??
    writtenMethod(numbers)
  if (question.missing === 'result') return strategy
  return { ...strategy, reason: `${numbers.text} finds the missing number. ${strategy.reason}` }
}

/** A calculation in units of its last place, and as printed; `exchanges` where a ten is exchanged or carried. */
interface Numbers {
  readonly exchanges: boolean
  readonly operation: Operation
  readonly places: number
  readonly unit: Unit
  readonly a: bigint
  readonly b: bigint
  readonly top: string
  readonly bottom: string
  readonly text: string
}

function numbersOf({ calculation, unit }: Question): Numbers {
  const { operation, top, bottom } = calculation
  const places = Math.max(top.places, bottom.places)
  return {
    exchanges: workOut(calculation).columns.some(({ receives }) => receives),
    operation,
    places,
    unit,
    a: scaledValue(top, places),
    b: scaledValue(bottom, places),
    top: amountText(top, unit),
    bottom: amountText(bottom, unit),
    text: printQuestion({ sign: operation, missing: 'result', unit, calculation }),
  }
}

function countOnSmall({ a, b, top, bottom }: Numbers, { small }: StrategySettings): Strategy | null {
  const [from, by, least] = a < b ? [bottom, top, a] : [top, bottom, b]
  if (least > small) return null
  const reason =
    least === 0n ? `Adding ${by} to ${from} changes nothing.` : `${by} is small: count on ${by} from ${from}.`
  return { name: 'count on', reason }
}

function countOnOrBack({ a, b, top, bottom }: Numbers, { small }: StrategySettings): Strategy | null {
  const difference = a - b
  if (b > small && difference > small) return null
  if (b === 0n) return { name: 'count back', reason: `Subtracting ${bottom} from ${top} changes nothing.` }
  if (difference === 0n)
    return { name: 'count on', reason: `${bottom} and ${top} are equal: nothing is left.` }
  return difference <= b
    ? { name: 'count on', reason: `${bottom} and ${top} are close: count on from ${bottom} to ${top}.` }
    : { name: 'count back', reason: `${bottom} is small: count back ${bottom} from ${top}.` }
}

function changeFromPounds(numbers: Numbers): Strategy | null {
  const { operation, unit, places, a, b, top, bottom } = numbers
  if (operation === 'add' || unit !== '£' || places !== 2 || a % 100n !== 0n || b % 100n === 0n) return null
  const pounds = (b / 100n + 1n) * 100n
  const on = pounds === a ? `to ${top}` : `to ${amountText(numeral(pounds, numbers), unit)}, then to ${top}`
  return { name: 'count on', reason: `This is change from ${top}: count on from ${bottom} ${on}.` }
}

function roundNear(numbers: Numbers, { near }: StrategySettings): Strategy | null {
  const { operation, a, b, top, bottom } = numbers
  const roundA = roundNumber(a)
  const roundB = roundNumber(b)
  const isNear = (value: bigint, rounded: bigint) =>
    rounded > 0n && rounded !== value && distance(value, rounded) <= near
  if (isNear(b, roundB) && (operation === 'add' || roundB <= a))
    return roundAndAdjust(numbers, bottom, roundB, a, roundB)
  if (operation === 'add' && isNear(a, roundA)) return roundAndAdjust(numbers, top, roundA, roundA, b)
  return null
}

/** The most digits that change in the head. */
const MOST_CHANGED = 2

function inTheHead(numbers: Numbers): Strategy | null {
  const { operation, exchanges, a, b, text, top, bottom } = numbers
  const isTop = operation === 'add' && placeValues(a).length < placeValues(b).length
  const parts = placeValues(isTop ? a : b)
  if (parts.length > MOST_CHANGED || (exchanges && !isRound(numbers))) return null
  const inWords = parts.map((part) => smallAmount(part, numbers)).join(', then ')
  const move =
    operation === 'add' ? `add ${inWords} ${isTop ? `to ${bottom}` : ''}`.trim() : `subtract ${inWords}`
  const changing = parts.length === 1 ? 'only one digit changes' : `only two digits change`
  const ten = operation === 'add' ? 'carried' : 'exchanged'
  const why = exchanges
    ? `${top} and ${bottom} are round numbers`
    : `In ${text} nothing is ${ten} and ${changing}`
  return { name: 'in the head', reason: `${why}: ${move} in the head.` }
}

/** The values of the digits that are not 0, the largest first: 300 and 20 of 320. */
function placeValues(value: bigint): bigint[] {
  const digits = Array.from(String(value), BigInt)
  return digits
    .map((digit, index) => digit * 10n ** BigInt(digits.length - 1 - index))
    .filter((part) => part > 0n)
}

/** 600 − 250: one digit and noughts, less a multiple of 50. */
function isRound({ operation, a, b }: Numbers): boolean {
  return operation === 'subtract' && placeValues(a).length === 1 && a % 100n === 0n && b % 50n === 0n
}

function roundNumber(value: bigint): bigint {
  return ((value + 50n) / 100n) * 100n
}

function distance(a: bigint, b: bigint): bigint {
  return a < b ? b - a : a - b
}

/** The strategy that rounds the printed number `from` to `to`, which makes the calculation one of `left` and `right`. */
function roundAndAdjust(numbers: Numbers, from: string, to: bigint, left: bigint, right: bigint): Strategy {
  const name = 'round and adjust'
  const { operation, unit, a, b } = numbers
  const over = operation === 'add' ? left + right - (a + b) : left - right - (a - b)
  const calculation = { operation, top: numeral(left, numbers), bottom: numeral(right, numbers) }
  const eased = printQuestion({ sign: operation, missing: 'result', unit, calculation })
  const adjust = `${over > 0n ? 'subtract' : 'add'} ${smallAmount(distance(over, 0n), numbers)}`
  const rounded = amountText(numeral(to, numbers), unit)
  return { name, reason: `${from} is close to ${rounded}: work out ${eased}, then ${adjust}.` }
}

function writtenMethod({ operation, top, bottom }: Numbers): Strategy {
  const not = operation === 'add' ? 'small' : 'close together'
  const reason = `${top} and ${bottom} are neither ${not} nor easy to round: use the written method.`
  return { name: 'written method', reason }
}

function numeral(value: bigint, { places }: Numbers): Numeral {
  return movePoint({ digits: Array.from(String(value), Number).reverse(), places: 0 }, places)
}

function smallAmount(value: bigint, numbers: Numbers): string {
  const { unit, places } = numbers
  return unit === '£' && places === 2 && value < 100n
    ? `${value}p`
    : amountText(numeral(value, numbers), unit)
}

/**
 * Chooses a strategy for one column (common practice, no source): count on or back where that is a short count; a known fact
 * within ten, for a double and where a number is 0; otherwise through ten.
 * Whole numbers from 0 to 19, in a subtraction the top not below the bottom; RangeError for others.
 */
export function columnStrategy(
  top: number,
  bottom: number,
  operation: Operation = 'subtract',
  { smallInColumn }: StrategySettings = STRATEGY_SETTINGS,
): ColumnStrategy {
  const isDigit = (value: number) => Number.isInteger(value) && value >= 0 && value <= 19
  if (!isDigit(top) || !isDigit(bottom) || (operation === 'subtract' && top < bottom))
    throw new RangeError(
      `${top} and ${bottom} are no column of ${operation === 'add' ? 'an addition' : 'a subtraction'}.`,
    )
  return operation === 'add' ? addColumn(top, bottom, smallInColumn) : takeColumn(top, bottom, smallInColumn)
}

function addColumn(top: number, bottom: number, small: number): ColumnStrategy {
  const [greater, less] = top < bottom ? [bottom, top] : [top, bottom]
  const fact: ColumnStrategy = {
    name: 'known fact',
    how: `use the fact ${top} + ${bottom} = ${top + bottom}`,
  }
  if (less === 0) return fact
  if (less <= small) return { name: 'count on', how: `count on ${less} from ${greater}` }
  if (top + bottom <= 10 || top === bottom || greater >= 10) return fact
  const toTen = 10 - greater
  return {
    name: 'through ten',
    how: `start at ${greater}, add ${toTen} to make 10, then ${less - toTen} more`,
  }
}

function takeColumn(top: number, bottom: number, small: number): ColumnStrategy {
  const left = top - bottom
  const fact: ColumnStrategy = { name: 'known fact', how: `use the fact ${top} − ${bottom} = ${left}` }
  if (bottom === 0 || left === 0) return fact
  if (left <= Math.min(small, bottom)) return { name: 'count on', how: `count on from ${bottom} to ${top}` }
  if (bottom <= small) return { name: 'count back', how: `count back ${bottom} from ${top}` }
  if (top <= 10 || left >= 10 || left === bottom) return fact
  return { name: 'through ten', how: `subtract ${top - 10} to reach 10, then ${10 - left} more` }
}
