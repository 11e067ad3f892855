import fc from 'fast-check'
import {
  ADDITION_SKILLS,
  ADDITION_TYPES,
  SUBTRACTION_SKILLS,
  SUBTRACTION_TYPES,
} from '../../src/arithmetic/exchange'
import type { MasteryQuestion } from '../../src/mastery/judge'
import type { Evidence } from '../../src/mastery/standing'
import { DEFAULT_MASTERY, settingsProblem, type MasterySettings } from '../../src/mastery/settings'

/** What one answer tells. */
export const evidence = fc.constantFrom<Evidence>(true, false, null)

/** Subtraction questions of any type and any demand. */
export const subtraction: fc.Arbitrary<MasteryQuestion> = fc.record({
  type: fc.constantFrom(...SUBTRACTION_TYPES),
  skills: fc.subarray([...SUBTRACTION_SKILLS]),
})

/** Addition questions of any type and any demand. */
export const addition: fc.Arbitrary<MasteryQuestion> = fc.record({
  type: fc.constantFrom(...ADDITION_TYPES),
  skills: fc.subarray([...ADDITION_SKILLS]),
})

/** Subtraction questions of few types that demand at least one of only three skills. */
export const narrowSubtraction: fc.Arbitrary<MasteryQuestion> = fc.record({
  type: fc.constantFrom('through a zero', 'two exchanges, apart'),
  skills: fc.subarray([...SUBTRACTION_SKILLS.slice(0, 3)], { minLength: 1 }),
})

/** A question with what its answer tells. */
export function answered(
  question: fc.Arbitrary<MasteryQuestion>,
): fc.Arbitrary<{ question: MasteryQuestion; outcome: Evidence }> {
  return fc.record({ question, outcome: evidence })
}

const rate = fc.double({ min: 0.01, max: 0.98, noNaN: true })

/** Settings that make sense, far from the defaults too. */
export const settings: fc.Arbitrary<MasterySettings> = fc
  .record({ slip: rate, guess: rate, prior: rate, learn: rate, forget: rate })
  .map((rates) => ({ ...DEFAULT_MASTERY, ...rates }))
  .filter((each) => settingsProblem(each) === null)
