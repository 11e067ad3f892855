import { cellOf, mayBeEmpty, unusable } from './cells'

/** A plain parameter: reads what a host passes for it. Throws #VALUE! with a sentence where that is beyond its limits. */
export type Parameter<T> = (passed: unknown) => T

/** One of a few words, whatever their case; `otherwise` where it is left out. `problem` makes the sentence for any other word. */
export function oneOf<W extends string>(
  words: readonly W[],
  problem: (word: string) => string,
  otherwise?: W,
): Parameter<W> {
  return (passed) => {
    const cell = cellOf(passed)
    if (mayBeEmpty(cell) && otherwise !== undefined) return otherwise
    const word = String(cell ?? '').trim()
    const found = words.find((one) => one === word.toLowerCase())
    if (found === undefined) throw unusable(problem(word))
    return found
  }
}

/** A whole number within limits, both included; `otherwise` where it is left out. `problem` is the sentence for any other. */
export function wholeNumber(
  least: number,
  most: number,
  problem: string,
  otherwise?: number,
): Parameter<number> {
  return (passed) => {
    const cell = cellOf(passed)
    if (mayBeEmpty(cell) && otherwise !== undefined) return otherwise
    const number = Number(cell)
    if (!Number.isInteger(number) || number < least || number > most) throw unusable(problem)
    return number
  }
}

/** Any text or number, as text; `otherwise` where it is left out. */
export function anyText(otherwise: string): Parameter<string> {
  return (passed) => {
    const cell = cellOf(passed)
    return mayBeEmpty(cell) ? otherwise : String(cell).trim()
  }
}

/** TRUE; anything else is FALSE. */
export const isTrue: Parameter<boolean> = (passed) => cellOf(passed) === true
