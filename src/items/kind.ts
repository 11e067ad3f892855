import { ADDITION_TYPES, SUBTRACTION_TYPES, type ExchangeType } from '../arithmetic/exchange'
import { MOST_PLACES, MOST_WHOLE_DIGITS } from '../arithmetic/numeral'
import type { Operation, Unit } from '../arithmetic/question'

/** One number of digits, or several that are all allowed. */
export type Digits = number | readonly number[]

/**
 * A kind of question. What is left out is not asked for.
 *
 * `topDigits`, `bottomDigits`: digits before the point, 1 to 15, the first of them never 0; 0 stands for a number between 0 and
 * 1, printed with a 0 before the point (0.5). So no number of a kind is 0 itself.
 * `topDecimals`, `bottomDecimals`: digits after the point, 0 to 3, the last of which may be 0 (8.60); 0 where left out.
 * `answerDigits`: digits of the answer before the point, 0 for an answer below 1, 0 to 16.
 * `places`: exactly the columns that receive a ten (subtraction) or send one (addition); 0 the ones, 1 the tens, −1 the tenths.
 * `zerosCrossed`: how many printed zeros exchanges run through. `zerosBelow`: false where the bottom number must hold no
 * printed 0. `unit`: as printed, see Unit; several take turns.
 */
export interface Kind {
  readonly operation: Operation
  readonly type: ExchangeType | 'any'
  readonly topDigits: Digits
  readonly bottomDigits: Digits
  readonly topDecimals?: number
  readonly bottomDecimals?: number
  readonly answerDigits?: Digits
  readonly places?: readonly number[]
  readonly zerosCrossed?: number
  readonly zerosBelow?: boolean
  readonly unit?: Unit | readonly Unit[]
}

/** The allowed numbers of digits, each once, the smallest first. */
export function digitChoices(digits: Digits): number[] {
  return [...new Set(typeof digits === 'number' ? [digits] : digits)].sort((a, b) => a - b)
}

/** The unit of the question at a place of a set: those of its kind take turns. */
export function unitAt({ unit = '' }: Kind, index: number): Unit {
  const units = [unit].flat()
  return units[index % units.length] ?? ''
}

/** What is wrong with a kind, in one sentence for the teacher; null where nothing is. A sound kind may still be empty. */
export function problemOfKind(kind: Kind): string | null {
  return (
    problemOfType(kind) ??
    problemOfNumber('top', kind.topDigits, kind.topDecimals) ??
    problemOfNumber('bottom', kind.bottomDigits, kind.bottomDecimals) ??
    problemOfLengths(kind) ??
    problemOfAnswer(kind) ??
    problemOfExchanges(kind) ??
    problemOfUnit(kind)
  )
}

function problemOfType({ operation, type }: Kind): string | null {
  if (type === 'any') return null
  const [own, other]: (readonly string[])[] =
    operation === 'subtract' ? [SUBTRACTION_TYPES, ADDITION_TYPES] : [ADDITION_TYPES, SUBTRACTION_TYPES]
  if (own?.includes(type)) return null
  if (!other?.includes(type)) return `There is no type called “${type}”.`
  return operation === 'subtract'
    ? `“${type}” is a type of addition, not of subtraction.`
    : `“${type}” is a type of subtraction, not of addition.`
}

function problemOfNumber(which: 'top' | 'bottom', digits: Digits, decimals = 0): string | null {
  const choices = digitChoices(digits)
  if (choices.length === 0 || !choices.every((choice) => isWholeWithin(choice, 0, MOST_WHOLE_DIGITS)))
    return `The ${which} number must have 1 to ${MOST_WHOLE_DIGITS} digits before the point (0 for a number below 1).`
  if (!isWholeWithin(decimals, 0, MOST_PLACES))
    return `The ${which} number must have 0 to ${MOST_PLACES} digits after the point.`
  if (choices.includes(0) && decimals === 0)
    return `For the ${which} number to be below 1 it needs digits after the point.`
  return null
}

function problemOfLengths({ operation, topDigits, bottomDigits }: Kind): string | null {
  const longestTop = Math.max(...digitChoices(topDigits))
  const shortestBottom = Math.min(...digitChoices(bottomDigits))
  return operation === 'subtract' && shortestBottom > longestTop
    ? 'The bottom number has more digits than the top number, so it cannot be taken away from it.'
    : null
}

function problemOfAnswer({ answerDigits }: Kind): string | null {
  if (answerDigits === undefined) return null
  const choices = digitChoices(answerDigits)
  return choices.length > 0 && choices.every((choice) => isWholeWithin(choice, 0, MOST_WHOLE_DIGITS + 1))
    ? null
    : `The answer must have 1 to ${MOST_WHOLE_DIGITS + 1} digits before the point (0 for an answer below 1).`
}

function problemOfExchanges({ operation, places = [], zerosCrossed = 0 }: Kind): string | null {
  if (!places.every((place) => isWholeWithin(place, -MOST_PLACES, MOST_WHOLE_DIGITS - 1)))
    return `The columns of a question run from ${-MOST_PLACES} (thousandths) through 0 (ones) to ${MOST_WHOLE_DIGITS - 1}.`
  if (!Number.isSafeInteger(zerosCrossed) || zerosCrossed < 0)
    return 'The number of zeros crossed must be a whole number from 0 up.'
  if (operation === 'add' && zerosCrossed > 0) return 'Only a subtraction can exchange through a zero.'
  return null
}

function problemOfUnit({ unit = '', topDecimals = 0, bottomDecimals = 0 }: Kind): string | null {
  const decimals = [topDecimals, bottomDecimals]
  if (unit === '£' && !decimals.every((count) => count === 0 || count === 2))
    return 'Pounds are written with two digits after the point, or with none.'
  if (unit === 'p' && !decimals.every((count) => count === 0))
    return 'Pence are written without digits after the point.'
  return null
}

function isWholeWithin(value: number, least: number, most: number): boolean {
  return Number.isInteger(value) && value >= least && value <= most
}

/** A kind in words: "4 digits − 2 or 3 digits, through a zero, no 0 in the bottom number". */
export function describeKind(kind: Kind): string {
  const { operation, type, topDecimals = 0, bottomDecimals = 0, unit = '' } = kind
  const numbers = [numberText(kind.topDigits, topDecimals), numberText(kind.bottomDigits, bottomDecimals)]
  const exchanges = operation === 'subtract' ? 'exchanges' : 'carries'
  return [
    numbers.join(operation === 'subtract' ? ' − ' : ' + '),
    type === 'any' ? '' : type,
    kind.places ? `${exchanges} in exactly the chosen columns` : '',
    kind.zerosCrossed === undefined ? '' : `zeros crossed: ${kind.zerosCrossed}`,
    kind.zerosBelow === false ? 'no 0 in the bottom number' : '',
    kind.answerDigits === undefined ? '' : `answer ${numberText(kind.answerDigits, 0)}`,
    unit === ''
      ? ''
      : unit === '£'
        ? 'in pounds'
        : unit === 'p'
          ? 'in pence'
          : `in ${[unit].flat().join(', ')}`,
  ]
    .filter((part) => part !== '')
    .join(', ')
}

function numberText(digits: Digits, decimals: number): string {
  const choices = digitChoices(digits)
  const counts = choices.filter((choice) => choice > 0)
  const below = choices.includes(0) ? ['below 1'] : []
  const named =
    counts.length > 0 ? [`${counts.join(' or ')} ${counts.at(-1) === 1 ? 'digit' : 'digits'}`] : []
  const whole = [...below, ...named].join(' or ')
  return decimals === 0 ? whole : `${whole} with ${decimals} after the point`
}
