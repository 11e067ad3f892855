import { digitAt, wholeDigits, type Numeral } from '../arithmetic/numeral'
import type { Calculation } from '../arithmetic/question'
import { sizeOf, type Census, type DigitPair, type Section } from './census'

/**
 * The question of a kind with this number, 0 to count − 1: each number gives another question, and every question has one.
 * Throws RangeError for any other number.
 */
export function questionAt({ kind, sections, count }: Census, index: bigint): Calculation {
  if (index < 0n || index >= count) throw new RangeError(`There is no question ${index} among ${count}.`)
  let rest = index
  for (const section of sections) {
    if (rest < section.tally.count) {
      const pairs = pairsAt(section, rest)
      return {
        operation: kind.operation,
        top: numeralOf(pairs, 0, kind.topDecimals),
        bottom: numeralOf(pairs, 1, kind.bottomDecimals),
      }
    }
    rest -= section.tally.count
  }
  throw new RangeError('The sections hold fewer questions than the census.')
}

function pairsAt({ tally: first }: Section, index: bigint): DigitPair[] {
  const chosen: DigitPair[] = []
  let tally = first
  let rest = index
  while (tally.branches.length > 0) {
    const branch = tally.branches.find((candidate) => {
      const isHere = rest < sizeOf(candidate)
      if (!isHere) rest -= sizeOf(candidate)
      return isHere
    })
    const pair = branch?.pairs[Number(rest / branch.then.count)]
    if (!branch || !pair) throw new RangeError('A column holds fewer questions than its tally.')
    chosen.push(pair)
    rest %= branch.then.count
    tally = branch.then
  }
  return chosen
}

function numeralOf(pairs: readonly DigitPair[], row: 0 | 1, places = 0): Numeral {
  return { digits: pairs.map((pair) => pair[row]).filter((digit) => digit !== undefined), places }
}

/** The number of a question among its kind, the inverse of questionAt; undefined where it is none of that kind. */
export function indexOfQuestion({ kind, sections }: Census, calculation: Calculation): bigint | undefined {
  if (calculation.operation !== kind.operation) return undefined
  let before = 0n
  for (const section of sections) {
    const within = indexWithin(section, calculation)
    if (within !== undefined) return before + within
    before += section.tally.count
  }
  return undefined
}

function indexWithin({ columns, tally: first }: Section, { top, bottom }: Calculation): bigint | undefined {
  const left = Math.max(wholeDigits(top), wholeDigits(bottom)) - 1
  const right = -Math.max(top.places, bottom.places)
  if (columns[0] !== right || columns.at(-1) !== left) return undefined
  let tally = first
  let index = 0n
  for (const place of columns) {
    const step = stepTo(tally.branches, digitAt(top, place), digitAt(bottom, place))
    if (!step) return undefined
    index += step.passed
    tally = step.then
  }
  return index
}

function stepTo(branches: Section['tally']['branches'], top: number | undefined, bottom: number | undefined) {
  let passed = 0n
  for (const branch of branches) {
    const at = branch.pairs.findIndex(([upper, lower]) => upper === top && lower === bottom)
    if (at >= 0) return { passed: passed + BigInt(at) * branch.then.count, then: branch.then }
    passed += sizeOf(branch)
  }
  return undefined
}
