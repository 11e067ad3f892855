import { describe, expect, it } from 'vitest'
import { judgeOccasions, prepareMastery, type MasteryQuestion } from '../../src/mastery/judge'
import { addEvidence, answerWeights, chancesOfAll } from '../../src/mastery/model'
import { DEFAULT_MASTERY } from '../../src/mastery/settings'
import reference from './mastery-reference.json'

const SKILLS = [
  'subtract.tens-to-ones',
  'subtract.hundreds-to-tens',
  'subtract.thousands-to-hundreds',
  'subtract.through-zero',
] as const

/** Sources of the figures: in the data file. */
describe('the conjunctive model beside statistics software', () => {
  it('gives every pupil the chances of an exact sum over the profiles in R, equal prior, to 1e-9', () => {
    const questions = reference.demands.map((row): MasteryQuestion => ({
      type: 'no exchange',
      skills: SKILLS.filter((_, skill) => row[skill] === 1),
    }))
    const { slip, guess } = reference
    const { judge } = prepareMastery(questions, { ...DEFAULT_MASTERY, slip, guess })
    expect(reference.responses).toHaveLength(30)
    for (const [pupil, row] of reference.responses.entries()) {
      const { bySkill } = judge(row.map((mark) => mark === 1))
      expect(bySkill.map(({ skill }) => skill)).toEqual(SKILLS)
      for (const [skill, { probability }] of bySkill.entries())
        expect(Math.abs(probability - value(reference.equalPrior.values, pupil, skill))).toBeLessThan(1e-9)
    }
  })

  it('gives every pupil the chances of the R package CDM when it starts from the profile proportions fitted there', () => {
    const { right, wrong } = answerWeights(reference.slip, reference.guess)
    const start = new Float64Array(16)
    for (const [profile, proportion] of Object.entries(reference.fittedPrior.proportions))
      start[maskOf(Array.from(profile, Number))] = Math.log(proportion)
    for (const [pupil, row] of reference.responses.entries()) {
      const weights = start.slice()
      const evidence = new Float64Array(16)
      reference.demands.forEach((demand, question) => {
        if (question > 0)
          evidence[maskOf(demand)] = (evidence[maskOf(demand)] ?? NaN) + (row[question] === 1 ? right : wrong)
      })
      addEvidence(weights, evidence)
      const chances = new Float64Array(16)
      chancesOfAll(weights, chances)
      for (const skill of SKILLS.keys())
        expect(
          Math.abs((chances[1 << skill] ?? NaN) - value(reference.fittedPrior.values, pupil, skill)),
        ).toBeLessThan(2e-3)
    }
  })
})

describe('learning between occasions', () => {
  /**
   * Corbett and Anderson (1995, User Modeling and User-Adapted Interaction 4, 253–278), from memory: after an answer
   * P(L | right) = P(L)(1 − S) / (P(L)(1 − S) + (1 − P(L))G), P(L | wrong) = P(L)S / (P(L)S + (1 − P(L))(1 − G)),
   * and before the next P(L) = P(L | answer) + (1 − P(L | answer))T. They have no forgetting.
   */
  it('follows the published recursion for one skill, one answer an occasion, without forgetting', () => {
    const settings = { ...DEFAULT_MASTERY, prior: 0.35, learn: 0.15, forget: 0 }
    const { slip, guess, learn } = settings
    const answers = [false, true, false, true, true, true, false]
    let known: number = settings.prior
    answers.forEach((right, occasion) => {
      if (occasion > 0) known += (1 - known) * learn
      const [having, lacking] = right ? [1 - slip, guess] : [slip, 1 - guess]
      known = (known * having) / (known * having + (1 - known) * lacking)
      const questions: MasteryQuestion[] = [{ type: 'one carry, ones to tens', skills: ['add.ones-to-tens'] }]
      const { bySkill } = judgeOccasions(
        answers.slice(0, occasion + 1).map((outcome) => ({ questions, outcomes: [outcome] })),
        settings,
      )
      expect(bySkill[0]?.probability).toBeCloseTo(known, 12)
    })
  })
})

function value(values: readonly (readonly number[])[], pupil: number, skill: number): number {
  return values[pupil]?.[skill] ?? NaN
}

function maskOf(held: readonly number[]): number {
  return held.reduce((mask, bit, skill) => mask | (bit << skill), 0)
}
