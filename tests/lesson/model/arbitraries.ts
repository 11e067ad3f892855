import fc from 'fast-check'
import { readNumeral, wholeNumeral, compareNumerals, type Numeral } from '../../../src/arithmetic/numeral'
import { questionOf, type Operation, type Question } from '../../../src/arithmetic/question'

const numerals: fc.Arbitrary<Numeral> = fc.oneof(
  fc.nat(99_999).map(wholeNumeral),
  fc
    .tuple(fc.nat(999), fc.integer({ min: 0, max: 99 }))
    .map(([whole, part]) => readNumeral(`${whole}.${String(part).padStart(2, '0')}`) ?? wholeNumeral(whole)),
)

/** Additions and subtractions of whole numbers and of numbers with two places. */
export const questions: fc.Arbitrary<Question> = fc
  .tuple(fc.constantFrom<Operation>('add', 'subtract'), numerals, numerals)
  .map(([operation, a, b]) => {
    const [top, bottom] = compareNumerals(a, b) < 0 ? [b, a] : [a, b]
    const reading = questionOf({ operation, top, bottom })
    if ('problem' in reading) throw new Error(reading.problem)
    return reading.question
  })
