import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { SUBTRACTION_SKILLS, type Skill } from '../../src/arithmetic/exchange'
import {
  judgeOccasions,
  prepareMastery,
  prepareOccasions,
  type MasteryQuestion,
  type Occasion,
} from '../../src/mastery/judge'
import { DEFAULT_MASTERY } from '../../src/mastery/settings'
import { answered, narrowSubtraction, settings, subtraction } from './arbitraries'
import { chanceByEnumeration } from './enumeration'

function occasionOf(question: fc.Arbitrary<MasteryQuestion>, most: number): fc.Arbitrary<Occasion> {
  return fc.array(answered(question), { maxLength: most }).map((all) => ({
    questions: all.map((each) => each.question),
    outcomes: all.map(({ outcome }) => outcome),
  }))
}

describe('mastery over several occasions', () => {
  it('is the sum over every history of skill profiles written out', () => {
    const skills = SUBTRACTION_SKILLS.slice(0, 3)
    fc.assert(
      fc.property(
        fc.array(occasionOf(narrowSubtraction, 5), { minLength: 1, maxLength: 3 }),
        settings,
        (occasions, using) => {
          const questions = occasions.map((occasion) => occasion.questions)
          const outcomes = occasions.map((occasion) => occasion.outcomes)
          const chance = (wanted: readonly Skill[]): number =>
            chanceByEnumeration(wanted, skills, questions, outcomes, using)
          const { bySkill } = judgeOccasions(occasions, using)
          for (const { skill, probability } of bySkill) expect(probability).toBeCloseTo(chance([skill]), 9)
        },
      ),
      { numRuns: 60 },
    )
  })

  it('is the plain judgement where there is only one', () => {
    fc.assert(
      fc.property(occasionOf(subtraction, 20), (occasion) => {
        expect(judgeOccasions([occasion])).toEqual(
          prepareMastery(occasion.questions).judge(occasion.outcomes),
        )
      }),
    )
  })

  it('is the judgement of all answers together where nothing is learnt or forgotten', () => {
    const fixed = { ...DEFAULT_MASTERY, learn: 0, forget: 0 }
    fc.assert(
      fc.property(fc.array(occasionOf(subtraction, 8), { maxLength: 5 }), (occasions) => {
        const together = prepareMastery(
          occasions.flatMap(({ questions }) => questions),
          fixed,
        ).judge(occasions.flatMap(({ outcomes }) => outcomes))
        const apart = judgeOccasions(occasions, fixed)
        expect(apart.bySkill.map(({ skill }) => skill)).toEqual(together.bySkill.map(({ skill }) => skill))
        apart.bySkill.forEach(({ probability }, index) => {
          expect(probability).toBeCloseTo(together.bySkill[index]?.probability ?? NaN, 9)
        })
      }),
    )
  })

  it('is refused, with a sentence, where an occasion has no outcomes', () => {
    expect(() => prepareOccasions([[], []]).judge([[]])).toThrow(
      new RangeError('There are outcomes of 1 occasions but questions of 2.'),
    )
  })
})
