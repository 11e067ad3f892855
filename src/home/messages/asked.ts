import { valueText, type Numeral } from '../../arithmetic/numeral'
import { readQuestion, type Question } from '../../arithmetic/question'

/** What a message may speak of: the questions of a pupil by the number or letter they are known by, and by their calculations. */
export interface Asked {
  readonly questions: readonly Question[]
  /** The indices of the questions by label: "3", "4a". */
  readonly labels: ReadonlyMap<string, number>
  /** The indices of the questions that a calculation such as "932 - 457" or "□ - 46 = 30" states; none where it states another. */
  sums(text: string): readonly number[]
  /** The indices of the missing-number questions that a whole calculation answers, each with the number that fills the gap. */
  filled(
    sum: string,
    result: string,
  ): readonly { readonly index: number; readonly part: 'first' | 'second' }[]
  /** The most digits before the point that an answer of these questions is likely to have. */
  readonly mostDigits: number
  /** Whether any number of the questions has decimal places. */
  readonly hasDecimals: boolean
}

const OWN_LABEL =
  /^\s*(?:\(?(\d{1,3} ?[a-z]?|[a-z])[):]|(\d{1,3}[a-z]?)\. |(?:question|qu|q|no\.?|number|#)\.? ?(\d{1,3} ?[a-z]?)\b)/i

/** What a message may speak of, from the questions in their order and their texts, whose own numbers count where all have one. */
export function askedOf(asked: readonly { readonly question: Question; readonly text: string }[]): Asked {
  const questions = asked.map(({ question }) => question)
  const own = asked.map(({ text }) => ownLabel(text))
  const places = asked.map((_, index) => String(index + 1))
  const known = own.filter((label) => label !== null)
  const isNumbered = known.length === own.length && new Set(known).size === known.length
  const isInPlace = own.every((label, index) => label === null || label === places[index])
  const labels = isNumbered ? own : isInPlace ? places : []
  const byKey = indices(questions, (question) => (question.missing === 'result' ? keyOf(question) : null))
  const byWhole = indices(questions, (question) => wholeKey(question))
  const numerals = questions.flatMap(({ calculation: { top, bottom } }) => [top, bottom])
  return {
    questions,
    labels: new Map(labels.flatMap((label, index) => (label === null ? [] : [[label, index] as const]))),
    sums: (text) => {
      const reading = readQuestion(text)
      if ('problem' in reading) return []
      const { question } = reading
      return (
        (question.missing === 'result' ? byKey.get(keyOf(question)) : byWhole.get(wholeKey(question))) ?? []
      )
    },
    filled: (sum, result) => [
      ...fills(sum.replace(FIRST_NUMBER, '□'), result, byWhole, 'first'),
      ...fills(sum.replace(LAST_NUMBER, '□'), result, byWhole, 'second'),
    ],
    mostDigits: Math.max(0, ...numerals.map(({ digits, places: after }) => digits.length - after)) + 1,
    hasDecimals: numerals.some(({ places: after }) => after > 0),
  }
}

const FIRST_NUMBER = /^[£\d][\d,. ]*(?=\D)/
const LAST_NUMBER = /£?\d[\d,.]*$/

function fills(
  sum: string,
  result: string,
  byWhole: ReadonlyMap<string, readonly number[]>,
  part: 'first' | 'second',
): { index: number; part: 'first' | 'second' }[] {
  const reading = readQuestion(`${sum} = ${result}`)
  if ('problem' in reading) return []
  return (byWhole.get(wholeKey(reading.question)) ?? []).map((index) => ({ index, part }))
}

function ownLabel(text: string): string | null {
  const [, closed, dotted, named] = OWN_LABEL.exec(text) ?? []
  return (closed ?? dotted ?? named)?.replace(/\s/g, '').toLowerCase() ?? null
}

function indices<Key>(
  items: readonly Question[],
  keyFor: (item: Question) => Key | null,
): Map<Key, number[]> {
  const found = new Map<Key, number[]>()
  items.forEach((item, index) => {
    const key = keyFor(item)
    if (key !== null) found.set(key, [...(found.get(key) ?? []), index])
  })
  return found
}

/** One key for a calculation however it is written: the order of what is added, and the unit, do not count. */
function keyOf({ calculation: { operation, top, bottom } }: Question): string {
  const numbers = [top, bottom].map(valueText)
  return [operation, ...(operation === 'add' ? numbers.sort() : numbers)].join(' ')
}

function wholeKey({ sign, missing, calculation }: Question): string {
  const value = (numeral: Numeral) => valueText(numeral)
  return [sign, missing, calculation.operation, value(calculation.top), value(calculation.bottom)].join(' ')
}
