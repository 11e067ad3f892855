import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64'
import { uniformInt } from 'pure-rand/distribution/uniformInt'
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator'
import { answerWith, type Fault } from '../../src/answers/faults'
import { readNumeral, valueText } from '../../src/arithmetic/numeral'
import type { Operation, Question } from '../../src/arithmetic/question'
import { asked } from '../support/asked'

/** A number from 0 up to, but without, 1. */
export const chance = (generator: RandomGenerator) => uniformFloat64(generator)

/** One of the items, each as likely. */
export function oneOf<Item>(generator: RandomGenerator, items: readonly Item[]): Item {
  const item = items[uniformInt(generator, 0, items.length - 1)]
  if (item === undefined) throw new Error('Nothing to choose from.')
  return item
}

function numberText(generator: RandomGenerator, length: number): string {
  const digits = Array.from({ length }, (_, place) =>
    place === 0 ? uniformInt(generator, 1, 9) : chance(generator) < 0.15 ? 0 : uniformInt(generator, 0, 9),
  )
  return digits.join('')
}

/**
 * Questions as a Year 4 sheet has them, all different: three or four digits on top, two to four below, zeros a little more
 * common than chance.
 */
export function sheetOf(generator: RandomGenerator, operation: Operation, count: number): Question[] {
  const texts = new Set<string>()
  while (texts.size < count) {
    const length = oneOf(generator, [3, 3, 4])
    const [one, other] = [
      numberText(generator, length),
      numberText(generator, oneOf(generator, [length, length, length - 1])),
    ]
    const [top, bottom] = Number(one) < Number(other) ? [other, one] : [one, other]
    if (top !== bottom) texts.add(`${top} ${operation === 'add' ? '+' : '−'} ${bottom}`)
  }
  return [...texts].map(asked)
}

/** What a pupil types who has these faults (none: works as taught) and slips with this chance, in canonical texts. */
export function answersOf(
  generator: RandomGenerator,
  questions: readonly Question[],
  faults: readonly Fault[],
  slip: number,
): string[] {
  return questions.map(({ calculation }) => {
    const answer = answerWith(faults, calculation)
    return chance(generator) < slip ? slipped(generator, answer) : answer
  })
}

/** The answer with one digit out by one or, one time in five, two different digits swapped. */
export function slipped(generator: RandomGenerator, answer: string): string {
  const digits = Array.from(answer)
  const places = digits.flatMap((digit, index) => (digit === '.' ? [] : [index]))
  const swaps = places.flatMap((one) =>
    places
      .filter((other) => other > one && digits[one] !== digits[other])
      .map((other) => [one, other] as const),
  )
  if (swaps.length > 0 && chance(generator) < 0.2) {
    const [one, other] = oneOf(generator, swaps)
    ;[digits[one], digits[other]] = [digits[other] ?? '', digits[one] ?? '']
  } else {
    const place = oneOf(generator, places)
    const digit = Number(digits[place])
    digits[place] = String(
      oneOf(
        generator,
        [digit - 1, digit + 1].filter((each) => each >= 0 && each <= 9),
      ),
    )
  }
  const numeral = readNumeral(digits.join(''))
  return numeral ? valueText(numeral) : answer
}
