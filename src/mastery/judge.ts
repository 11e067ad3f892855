import { ADDITION_TYPES, SUBTRACTION_TYPES, type ExchangeType, type Skill } from '../arithmetic/exchange'
import { asked, beliefsAbout, chanceOf, infer, type Demand, type MasteryQuestion } from './belief'
import { DEFAULT_MASTERY, settingsProblem, type MasterySettings } from './settings'
import { statusOf, type Evidence, type Standing, type TypeStanding } from './standing'

export type { MasteryQuestion } from './belief'

export interface SkillStanding extends Standing {
  readonly skill: Skill
}

/**
 * One pupil's mastery: the types and skills that occur among the questions, subtraction first, in the order of their lists.
 * `needsSupport`: whether any type needs support.
 */
export interface ModelJudgement {
  readonly byType: readonly TypeStanding[]
  readonly bySkill: readonly SkillStanding[]
  readonly needsSupport: boolean
}

/** One occasion of one pupil: the questions set and, in the same order, what each answer tells. */
export interface Occasion {
  readonly questions: readonly MasteryQuestion[]
  readonly outcomes: readonly Evidence[]
}

/**
 * Prepares a set of questions once, for judging many pupils by their answers to it.
 *
 * A type's probability is the chance that the pupil has every skill demanded, averaged over the questions of that type that
 * were tried (over all of that type where none was). A skill's is its marginal chance; its counts are of the answered
 * questions that demand it.
 *
 * A question that demands no skill is right with chance 1 − slip for every profile, so by the bare model none right of four
 * would still be secure. Such questions are therefore judged by one further skill of each operation, "columns without
 * exchange", with the same slip, guess, prior, learn and forget. Only they demand it, so it is independent of all other
 * skills and changes none of their figures. It is not listed among the skills.
 *
 * Throws RangeError with a sentence for senseless settings, a skill of the other operation, or (judging) a wrong number of
 * outcomes.
 */
export function prepareMastery(
  questions: readonly MasteryQuestion[],
  settings: MasterySettings = DEFAULT_MASTERY,
): { judge(outcomes: readonly Evidence[]): ModelJudgement } {
  const { judge } = prepareOccasions([questions], settings)
  return { judge: (outcomes) => judge([outcomes]) }
}

/**
 * One pupil's mastery after the last of several occasions, given in time order. Between an occasion and the next each skill
 * may be learnt or forgotten. Counts are over all occasions; probabilities are those after the last one, a type's averaged
 * over its questions tried on any occasion. Every occasion given counts as time passed, also one with no evidence.
 * Throws as `prepareMastery` does.
 */
export function judgeOccasions(
  occasions: readonly Occasion[],
  settings: MasterySettings = DEFAULT_MASTERY,
): ModelJudgement {
  const sets = occasions.map(({ questions }) => questions)
  return prepareOccasions(sets, settings).judge(occasions.map(({ outcomes }) => outcomes))
}

const TYPES: readonly ExchangeType[] = [...SUBTRACTION_TYPES, ...ADDITION_TYPES]

/** Prepares the questions of several occasions once, for judging many pupils as `judgeOccasions` does. */
export function prepareOccasions(
  sets: readonly (readonly MasteryQuestion[])[],
  settings: MasterySettings = DEFAULT_MASTERY,
): { judge(outcomes: readonly (readonly Evidence[])[]): ModelJudgement } {
  const problem = settingsProblem(settings)
  if (problem) throw new RangeError(problem)
  const beliefs = beliefsAbout(sets.flat(), settings.prior)
  let count = 0
  const occasions = sets.map((set) => set.map((question) => asked(question, count++, beliefs)))
  const questions = occasions.flat()
  const types = TYPES.map((type) => ({
    type,
    counted: questions.filter((each) => each.type === type),
  })).filter(({ counted }) => counted.length > 0)
  const skills = beliefs.flatMap((belief) =>
    belief.skills.map((skill, bit) => ({
      skill,
      counted: questions
        .filter((each) => each.skills.includes(skill))
        .map(({ index }) => ({ index, belief, mask: 1 << bit })),
    })),
  )

  return {
    judge(outcomes) {
      checkLengths(outcomes, sets)
      const evidence = ([] as Evidence[]).concat(...outcomes)
      infer(beliefs, occasions, evidence, settings)
      const byType = types.map(({ type, counted }) => {
        const { right, tried, probability, status } = standingOf(counted, evidence, settings)
        return { type, right, tried, probability, status }
      })
      const bySkill = skills.map(({ skill, counted }) => {
        const { right, tried, probability, status } = standingOf(counted, evidence, settings)
        return { skill, right, tried, probability, status }
      })
      return { byType, bySkill, needsSupport: byType.some(({ status }) => status === 'needs support') }
    },
  }
}

/** A question's place among all questions, and the skills whose chance counts where it was tried. */
interface Counted extends Demand {
  readonly index: number
}

/** Counts what was answered, and averages the chances over it (over everything where nothing was answered). */
function standingOf(
  counted: readonly Counted[],
  evidence: readonly Evidence[],
  settings: MasterySettings,
): Standing {
  let right = 0
  let tried = 0
  let sumOfTried = 0
  let sumOfAll = 0
  for (const each of counted) {
    const told = evidence[each.index]
    const chance = chanceOf(each)
    sumOfAll += chance
    if (told === null) continue
    tried += 1
    sumOfTried += chance
    if (told) right += 1
  }
  const average = tried > 0 ? sumOfTried / tried : sumOfAll / counted.length
  const probability = Math.min(1, average)
  return { right, tried, probability, status: statusOf(tried, probability, settings) }
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
