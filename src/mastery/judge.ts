import type { Skill } from '../arithmetic/exchange'
import { asked, beliefsAbout, chanceOf, infer, type MasteryQuestion } from './belief'
import { DEFAULT_MASTERY, settingsProblem, type MasterySettings } from './settings'
import { countOf, statusOf, type Evidence, type Standing } from './standing'

export type { MasteryQuestion } from './belief'

export interface SkillStanding extends Standing {
  readonly skill: Skill
}

/** One pupil's skills that occur among the questions, subtraction first, in the order of their lists. */
export interface SkillJudgement {
  readonly bySkill: readonly SkillStanding[]
}

/** One occasion of one pupil: the questions set and, in the same order, what each answer tells. */
export interface Occasion {
  readonly questions: readonly MasteryQuestion[]
  readonly outcomes: readonly Evidence[]
}

/**
 * Prepares a set of questions once, for judging many pupils' skills by their answers to it. A skill's probability is its marginal chance; its
 * counts are of the answered questions that demand it. A question that demands no skill tells nothing of any.
 *
 * Throws RangeError with a sentence for senseless settings, a skill of the other operation, or (judging) a wrong number of
 * outcomes.
 */
export function prepareMastery(
  questions: readonly MasteryQuestion[],
  settings: MasterySettings = DEFAULT_MASTERY,
): { judge(outcomes: readonly Evidence[]): SkillJudgement } {
  const { judge } = prepareOccasions([questions], settings)
  return { judge: (outcomes) => judge([outcomes]) }
}

/**
 * One pupil's mastery after the last of several occasions, given in time order. Between an occasion and the next each skill
 * may be learnt or forgotten. Counts are over all occasions; probabilities are those after the last one. Every occasion given counts as
 * time passed, also one with no evidence.
 * Throws as `prepareMastery` does.
 */
export function judgeOccasions(
  occasions: readonly Occasion[],
  settings: MasterySettings = DEFAULT_MASTERY,
): SkillJudgement {
  const sets = occasions.map(({ questions }) => questions)
  return prepareOccasions(sets, settings).judge(occasions.map(({ outcomes }) => outcomes))
}

/** Prepares the questions of several occasions once, for judging many pupils as `judgeOccasions` does. */
export function prepareOccasions(
  sets: readonly (readonly MasteryQuestion[])[],
  settings: MasterySettings = DEFAULT_MASTERY,
): { judge(outcomes: readonly (readonly Evidence[])[]): SkillJudgement } {
  const problem = settingsProblem(settings)
  if (problem) throw new RangeError(problem)
  const beliefs = beliefsAbout(sets.flat(), settings.prior)
  let count = 0
  const occasions = sets.map((set) => set.flatMap((question) => asked(question, count++, beliefs) ?? []))
  const questions = occasions.flat()
  const skills = beliefs.flatMap((belief) =>
    belief.skills.map((skill, bit) => ({
      skill,
      demand: { belief, mask: 1 << bit },
      indices: questions.filter((each) => each.skills.includes(skill)).map(({ index }) => index),
    })),
  )

  return {
    judge(outcomes) {
      checkLengths(outcomes, sets)
      const evidence = ([] as Evidence[]).concat(...outcomes)
      infer(beliefs, occasions, evidence, settings)
      return {
        bySkill: skills.map(({ skill, demand, indices }) => {
          const { right, tried } = countOf(indices.map((index) => evidence[index] ?? null))
          const probability = Math.min(1, chanceOf(demand))
          return { skill, right, tried, probability, status: statusOf(tried, probability, settings) }
        }),
      }
    },
  }
}

function checkLengths(
  outcomes: readonly (readonly Evidence[])[],
  sets: readonly (readonly MasteryQuestion[])[],
): void {
  if (outcomes.length !== sets.length)
    throw new RangeError(
      `There are outcomes of ${outcomes.length} occasions but questions of ${sets.length}.`,
    )
  sets.forEach((set, occasion) => {
    const given = outcomes[occasion]?.length
    if (given !== set.length) throw new RangeError(`There are ${given} outcomes for ${set.length} questions.`)
  })
}
