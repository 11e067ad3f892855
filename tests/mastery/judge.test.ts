import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ADDITION_SKILLS, SUBTRACTION_SKILLS } from '../../src/arithmetic/exchange'
import {
  prepareMastery,
  type MasteryQuestion,
  type SkillJudgement as Judgement,
} from '../../src/mastery/judge'
import { type Evidence } from '../../src/mastery/standing'
import { DEFAULT_MASTERY, type MasterySettings } from '../../src/mastery/settings'
import { addition, answered, narrowSubtraction, settings, subtraction } from './arbitraries'
import { chanceByEnumeration } from './enumeration'

interface Answered {
  readonly question: MasteryQuestion
  readonly outcome: Evidence
}

function judged(all: readonly Answered[], using: MasterySettings = DEFAULT_MASTERY): Judgement {
  const { judge } = prepareMastery(
    all.map(({ question }) => question),
    using,
  )
  return judge(all.map(({ outcome }) => outcome))
}

function probabilities({ bySkill }: Judgement): Map<string, number> {
  return new Map(bySkill.map(({ skill, probability }): [string, number] => [skill, probability]))
}

function expectSame(one: Judgement, other: Judgement): void {
  const [first, second] = [probabilities(one), probabilities(other)]
  expect([...first.keys()]).toEqual([...second.keys()])
  for (const [what, probability] of first) expect(second.get(what)).toBeCloseTo(probability, 9)
}

const plain: MasteryQuestion = { type: 'no exchange', skills: [] }
const anyAnswers = fc.array(answered(fc.oneof(subtraction, addition)), { maxLength: 40 })

describe('what a pupil can do', () => {
  it('is the sum over every skill profile written out', () => {
    fc.assert(
      fc.property(fc.array(answered(subtraction), { maxLength: 12 }), settings, (all, using) => {
        const demanding = all.filter(({ question }) => question.skills.length > 0)
        const questions = demanding.map(({ question }) => question)
        const outcomes = demanding.map(({ outcome }) => outcome)
        const chance = (wanted: MasteryQuestion['skills']): number =>
          chanceByEnumeration(wanted, SUBTRACTION_SKILLS, [questions], [outcomes], using)
        const { bySkill } = judged(demanding, using)
        for (const { skill, probability } of bySkill) expect(probability).toBeCloseTo(chance([skill]), 9)
      }),
      { numRuns: 30 },
    )
  })

  it('does not depend on the order of the questions', () => {
    const shuffled = anyAnswers.chain((all) =>
      fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length })),
    )
    fc.assert(
      fc.property(shuffled, ([all, mixed]) => {
        expectSame(judged(all), judged(mixed))
      }),
    )
  })

  it('is the same with a blank answer as without it, where its skills occur anyway', () => {
    fc.assert(
      fc.property(anyAnswers, (all) => {
        const answers = all.filter(({ outcome }) => outcome !== null)
        const blanks = answers.map(({ question }) => ({ question, outcome: null }))
        expect(judged([...answers, ...blanks]).bySkill.map(({ tried }) => tried)).toEqual(
          judged(answers).bySkill.map(({ tried }) => tried),
        )
        expectSame(judged([...answers, ...blanks]), judged(answers))
      }),
    )
  })

  it('stays at the start where nothing was answered', () => {
    const { bySkill } = judged([
      { question: { type: 'two exchanges, apart', skills: SUBTRACTION_SKILLS.slice(0, 2) }, outcome: null },
      { question: { type: 'two exchanges, apart', skills: SUBTRACTION_SKILLS.slice(0, 3) }, outcome: null },
    ])
    expect(bySkill).toEqual(
      SUBTRACTION_SKILLS.slice(0, 3).map((skill) => ({
        skill,
        right: 0,
        tried: 0,
        probability: 0.5,
        status: 'not enough seen',
      })),
    )
  })

  it('lies between 0 and 1', () => {
    fc.assert(
      fc.property(anyAnswers, settings, (all, using) => {
        for (const probability of probabilities(judged(all, using)).values()) {
          expect(probability).toBeGreaterThanOrEqual(0)
          expect(probability).toBeLessThanOrEqual(1)
        }
      }),
    )
  })

  it('never falls, for a skill demanded, when an answer is right instead of wrong', () => {
    const skills = fc.subarray([...SUBTRACTION_SKILLS], { minLength: 1 })
    const others = fc.array(answered(subtraction), { maxLength: 15 })
    fc.assert(
      fc.property(skills, others, (demand, rest) => {
        const after = (outcome: boolean) =>
          probabilities(judged([...rest, { question: { type: 'through a zero', skills: demand }, outcome }]))
        const [right, wrong] = [after(true), after(false)]
        for (const skill of demand)
          expect(right.get(skill)).toBeGreaterThanOrEqual((wrong.get(skill) ?? NaN) - 1e-12)
      }),
    )
  })

  it('is judged for addition and subtraction apart', () => {
    const some = fc.array(answered(subtraction), { maxLength: 15 })
    const others = fc.array(answered(addition), { maxLength: 15 })
    fc.assert(
      fc.property(some, others, (taking, adding) => {
        const [together, one, other] = [judged([...adding, ...taking]), judged(taking), judged(adding)]
        expect(together.bySkill).toEqual([...one.bySkill, ...other.bySkill])
      }),
    )
  })

  it('can be told from hundreds of answers that demand it alone', () => {
    const question: MasteryQuestion = { type: 'through a zero', skills: ['subtract.through-zero'] }
    for (const [outcome, status] of [
      [true, 'secure'],
      [false, 'needs support'],
    ] as const) {
      const { bySkill } = judged(Array.from({ length: 900 }, () => ({ question, outcome })))
      expect(bySkill.map((standing) => standing.status)).toEqual([status])
      expect(bySkill[0]?.probability).toBeCloseTo(outcome ? 1 : 0, 9)
    }
  })

  it('is told anew for each pupil', () => {
    const outcomes = fc.array(fc.boolean(), { minLength: 10, maxLength: 10 })
    const questions = fc.array(subtraction, { minLength: 10, maxLength: 10 })
    fc.assert(
      fc.property(questions, outcomes, outcomes, (set, one, other) => {
        const { judge } = prepareMastery(set)
        const first = judge(one)
        judge(other)
        expect(judge(one)).toEqual(first)
      }),
    )
  })
})

describe('questions that demand no skill', () => {
  it('change no figure of any skill', () => {
    const others = fc.array(answered(narrowSubtraction), { maxLength: 15 })
    fc.assert(
      fc.property(others, fc.array(fc.boolean()), (all, outcomes) => {
        const added = judged([...all, ...outcomes.map((outcome) => ({ question: plain, outcome }))])
        const bare = judged(all)
        expect(added.bySkill).toEqual(bare.bySkill)
      }),
    )
  })
})

describe('the table of standings', () => {
  it('counts what was right and what was tried, in the order of the skills', () => {
    fc.assert(
      fc.property(anyAnswers, (all) => {
        const { bySkill } = judged(all)
        const occur = <T>(order: readonly T[], holds: (question: MasteryQuestion, item: T) => boolean): T[] =>
          order.filter((item) => all.some(({ question }) => holds(question, item)))
        expect(bySkill.map(({ skill }) => skill)).toEqual(
          occur([...SUBTRACTION_SKILLS, ...ADDITION_SKILLS], ({ skills }, skill) => skills.includes(skill)),
        )
        const count = (outcomes: readonly Evidence[]): { right: number; tried: number } => ({
          right: outcomes.filter((outcome) => outcome === true).length,
          tried: outcomes.filter((outcome) => outcome !== null).length,
        })
        for (const standing of bySkill)
          expect(standing).toMatchObject(
            count(
              all.flatMap(({ question, outcome }) =>
                question.skills.includes(standing.skill) ? [outcome] : [],
              ),
            ),
          )
      }),
    )
  })

  it('is refused, with a sentence, where outcomes are missing or a skill is of the other operation', () => {
    expect(() => prepareMastery([plain]).judge([])).toThrow(
      new RangeError('There are 0 outcomes for 1 questions.'),
    )
    expect(() => prepareMastery([{ type: 'no exchange', skills: ['add.new-column'] }])).toThrow(
      new RangeError('A question of the type "no exchange" cannot demand the skill add.new-column.'),
    )
  })
})
