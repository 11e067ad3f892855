import fc from 'fast-check'
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
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
          const { byType, bySkill } = judgeOccasions(occasions, using)
          for (const { skill, probability } of bySkill) expect(probability).toBeCloseTo(chance([skill]), 9)
          const all = questions
            .flat()
            .map((question, index) => ({ question, outcome: outcomes.flat()[index] }))
          for (const { type, probability, tried, right } of byType) {
            const own = all.filter(({ question }) => question.type === type)
            const answeredOnly = own.filter(({ outcome }) => outcome !== null)
            const counted = tried === 0 ? own : answeredOnly
            const sum = counted.reduce((total, { question }) => total + chance(question.skills), 0)
            expect(probability).toBeCloseTo(sum / counted.length, 9)
            expect(tried).toBe(answeredOnly.length)
            expect(right).toBe(own.filter(({ outcome }) => outcome === true).length)
          }
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
        expect(apart.byType.map(({ type }) => type)).toEqual(together.byType.map(({ type }) => type))
        apart.byType.forEach(({ probability }, index) => {
          expect(probability).toBeCloseTo(together.byType[index]?.probability ?? NaN, 9)
        })
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

describe('the list of pupils who need support', () => {
  const question: MasteryQuestion = {
    type: 'through a zero',
    skills: ['subtract.tens-to-ones', 'subtract.hundreds-to-tens', 'subtract.through-zero'],
  }
  const questions = [question, question, question, question]
  const week = (right: number): Occasion => ({
    questions,
    outcomes: questions.map((_, index) => index < right),
  })

  it('is left within two weeks by a pupil who has learnt, and kept by one who has not', () => {
    const before = [week(0), week(1), week(0)]
    expect(judgeOccasions(before).needsSupport).toBe(true)
    expect(judgeOccasions([...before, week(4), week(3)]).needsSupport).toBe(false)
    expect(judgeOccasions([...before, week(0), week(1)]).needsSupport).toBe(true)
  })

  it('is joined again by a pupil who has forgotten', () => {
    const before = [week(4), week(4), week(4)]
    expect(judgeOccasions(before).needsSupport).toBe(false)
    expect(judgeOccasions([...before, week(0), week(0)]).needsSupport).toBe(true)
  })

  it('shows in simulated classes who learnt in the fourth of six weeks and who never did', () => {
    const random = xoroshiro128plus(4)
    const { slip, guess } = DEFAULT_MASTERY
    const listed = (weekOfLearning: number): number => {
      const pupils = Array.from({ length: 200 }, () =>
        judgeOccasions(
          Array.from({ length: 6 }, (_, index) => ({
            questions,
            outcomes: questions.map(
              () => uniformFloat64(random) < (index + 1 >= weekOfLearning ? 1 - slip : guess),
            ),
          })),
        ),
      )
      return pupils.filter(({ needsSupport }) => needsSupport).length
    }
    expect(listed(4)).toBeLessThanOrEqual(4)
    expect(listed(Infinity)).toBeGreaterThanOrEqual(190)
  })
})
