import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  ADDITION_SKILLS,
  ADDITION_TYPES,
  SUBTRACTION_SKILLS,
  SUBTRACTION_TYPES,
  type ExchangeType,
} from '../../src/arithmetic/exchange'
import {
  prepareMastery,
  type MasteryQuestion,
  type ModelJudgement as Judgement,
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

function probabilities({ byType, bySkill }: Judgement): Map<string, number> {
  return new Map([
    ...byType.map(({ type, probability }): [string, number] => [type, probability]),
    ...bySkill.map(({ skill, probability }): [string, number] => [skill, probability]),
  ])
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
        const { byType, bySkill } = judged(demanding, using)
        for (const { skill, probability } of bySkill) expect(probability).toBeCloseTo(chance([skill]), 9)
        for (const { type, probability, tried } of byType) {
          const counted = demanding.filter(
            ({ question, outcome }) => question.type === type && (tried === 0 || outcome !== null),
          )
          const sum = counted.reduce((total, { question }) => total + chance(question.skills), 0)
          expect(probability).toBeCloseTo(sum / counted.length, 9)
        }
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

  it('is the same with a blank answer as without it, where the type and its skills occur anyway', () => {
    fc.assert(
      fc.property(anyAnswers, (all) => {
        const answers = all.filter(({ outcome }) => outcome !== null)
        const blanks = answers.map(({ question }) => ({ question, outcome: null }))
        expect(judged([...answers, ...blanks]).byType.map(({ tried }) => tried)).toEqual(
          judged(answers).byType.map(({ tried }) => tried),
        )
        expectSame(judged([...answers, ...blanks]), judged(answers))
      }),
    )
  })

  it('stays at the start where nothing was answered', () => {
    const { byType, bySkill, needsSupport } = judged([
      { question: { type: 'two exchanges, apart', skills: SUBTRACTION_SKILLS.slice(0, 2) }, outcome: null },
      { question: { type: 'two exchanges, apart', skills: SUBTRACTION_SKILLS.slice(0, 3) }, outcome: null },
    ])
    expect(byType).toEqual([
      {
        type: 'two exchanges, apart',
        right: 0,
        tried: 0,
        probability: (0.25 + 0.125) / 2,
        status: 'not enough seen',
      },
    ])
    expect(bySkill.map(({ probability }) => probability)).toEqual([0.5, 0.5, 0.5])
    expect(needsSupport).toBe(false)
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

  it('never falls, for a type whose questions demand the same, when one of them is right instead of wrong', () => {
    const type: ExchangeType = 'through a zero'
    const skills = fc.subarray([...SUBTRACTION_SKILLS])
    const others = fc.array(answered(subtraction.filter((question) => question.type !== type)), {
      maxLength: 15,
    })
    fc.assert(
      fc.property(
        skills,
        fc.array(fc.boolean(), { minLength: 1, maxLength: 6 }),
        others,
        (demand, own, rest) => {
          const chance = (outcomes: readonly boolean[]): number =>
            probabilities(
              judged([
                ...rest,
                ...outcomes.map((outcome) => ({ question: { type, skills: demand }, outcome })),
              ]),
            ).get(type) ?? NaN
          own.forEach((_, index) => {
            expect(chance(own.with(index, true))).toBeGreaterThanOrEqual(
              chance(own.with(index, false)) - 1e-12,
            )
          })
        },
      ),
    )
  })

  it('is judged for addition and subtraction apart', () => {
    const some = fc.array(answered(subtraction), { maxLength: 15 })
    const others = fc.array(answered(addition), { maxLength: 15 })
    fc.assert(
      fc.property(some, others, (taking, adding) => {
        const [together, one, other] = [judged([...adding, ...taking]), judged(taking), judged(adding)]
        expect(together.byType).toEqual([...one.byType, ...other.byType])
        expect(together.bySkill).toEqual([...one.bySkill, ...other.bySkill])
        expect(together.needsSupport).toBe(one.needsSupport || other.needsSupport)
      }),
    )
  })

  it('can be told from hundreds of answers', () => {
    const question: MasteryQuestion = { type: 'through a zero', skills: SUBTRACTION_SKILLS }
    for (const [outcome, status] of [
      [true, 'secure'],
      [false, 'needs support'],
    ] as const) {
      const { byType } = judged(Array.from({ length: 900 }, () => ({ question, outcome })))
      expect(byType.map((standing) => standing.status)).toEqual([status])
      expect(byType[0]?.probability).toBeCloseTo(outcome ? 1 : 0, 9)
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
  it('are secure or not by their own answers', () => {
    const status = (outcomes: readonly Evidence[]): string | undefined =>
      judged(outcomes.map((outcome) => ({ question: plain, outcome }))).byType[0]?.status
    expect(status([true, true, true, true])).toBe('secure')
    expect(status([false, false, false, false])).toBe('needs support')
    expect(status([null, null, true])).toBe('not enough seen')
  })

  it('are judged as one skill by itself is', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom<Evidence>(true, false, null)), settings, (outcomes, using) => {
        const one: MasteryQuestion = { type: 'no exchange', skills: ['subtract.zero-below'] }
        const by = (question: MasteryQuestion): Judgement =>
          judged(
            outcomes.map((outcome) => ({ question, outcome })),
            using,
          )
        expect(by(plain).byType).toEqual(by(one).byType)
        expect(by(plain).bySkill).toEqual([])
      }),
    )
  })

  it('change no figure of any other type or skill', () => {
    const others = fc.array(answered(narrowSubtraction), { maxLength: 15 })
    fc.assert(
      fc.property(others, fc.array(fc.boolean()), (all, outcomes) => {
        const added = judged([...all, ...outcomes.map((outcome) => ({ question: plain, outcome }))])
        const bare = judged(all)
        expect(added.byType.filter(({ type }) => type !== plain.type)).toEqual(bare.byType)
        expect(added.bySkill).toEqual(bare.bySkill)
      }),
    )
  })
})

describe('the table of standings', () => {
  it('counts what was right and what was tried, in the order of the types and of the skills', () => {
    fc.assert(
      fc.property(anyAnswers, (all) => {
        const { byType, bySkill, needsSupport } = judged(all)
        const occur = <T>(order: readonly T[], holds: (question: MasteryQuestion, item: T) => boolean): T[] =>
          order.filter((item) => all.some(({ question }) => holds(question, item)))
        expect(byType.map(({ type }) => type)).toEqual(
          occur([...SUBTRACTION_TYPES, ...ADDITION_TYPES], (question, type) => question.type === type),
        )
        expect(bySkill.map(({ skill }) => skill)).toEqual(
          occur([...SUBTRACTION_SKILLS, ...ADDITION_SKILLS], ({ skills }, skill) => skills.includes(skill)),
        )
        const count = (outcomes: readonly Evidence[]): { right: number; tried: number } => ({
          right: outcomes.filter((outcome) => outcome === true).length,
          tried: outcomes.filter((outcome) => outcome !== null).length,
        })
        for (const standing of byType)
          expect(standing).toMatchObject(
            count(all.flatMap(({ question, outcome }) => (question.type === standing.type ? [outcome] : []))),
          )
        for (const standing of bySkill)
          expect(standing).toMatchObject(
            count(
              all.flatMap(({ question, outcome }) =>
                question.skills.includes(standing.skill) ? [outcome] : [],
              ),
            ),
          )
        expect(needsSupport).toBe(byType.some(({ status }) => status === 'needs support'))
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
