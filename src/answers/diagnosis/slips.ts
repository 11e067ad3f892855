import type { Question } from '../../arithmetic/question'
import { readNumeral, valueText } from '../../arithmetic/numeral'

/**
 * The answers that a slip makes of a right or faulty one, each with its share of all slips: one digit out by one, all such
 * equally likely, or two digits swapped, likewise (`swapped` is the part of these). `answer` as valueText writes it; `places`
 * digits stand after its point on paper. A slip that leaves the answer as it is does not count.
 */
export function slipsOf(answer: string, places: number, swapped: number): ReadonlyMap<string, number> {
  const written = withPlaces(answer, places)
  const outByOne = digitIndices(written).flatMap((index) =>
    [-1, 1]
      .map((step) => Number(written[index]) + step)
      .filter((digit) => digit >= 0 && digit <= 9)
      .map((digit) => replaced(written, index, String(digit))),
  )
  const swaps = digitIndices(written).flatMap((one, order, all) =>
    all
      .slice(order + 1)
      .map((other) => replaced(replaced(written, one, written[other]), other, written[one])),
  )
  const different = swaps.filter((text) => text !== written)
  const swapShare = different.length === 0 ? 0 : swapped
  const shares = new Map<string, number>()
  const spread = (texts: readonly string[], share: number) => {
    for (const text of texts) {
      const value = canonical(text)
      shares.set(value, (shares.get(value) ?? 0) + share / texts.length)
    }
  }
  spread(outByOne, 1 - swapShare)
  spread(different, swapShare)
  return shares
}

/** How many digits stand after the point when a question is worked on paper. */
export function writtenPlaces({ calculation: { top, bottom } }: Question): number {
  return Math.max(top.places, bottom.places)
}

function withPlaces(answer: string, places: number): string {
  const [whole = '', decimals = ''] = answer.split('.')
  return places === 0 && decimals === '' ? whole : `${whole}.${decimals.padEnd(places, '0')}`
}

function digitIndices(text: string): number[] {
  return Array.from(text, (_, index) => index).filter((index) => text[index] !== '.')
}

function replaced(text: string, index: number, digit = ''): string {
  return text.slice(0, index) + digit + text.slice(index + 1)
}

function canonical(text: string): string {
  const numeral = readNumeral(text)
  return numeral ? valueText(numeral) : text
}
