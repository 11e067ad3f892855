import {
  ADDITION_SKILLS,
  ADDITION_TYPES,
  SUBTRACTION_SKILLS,
  SUBTRACTION_TYPES,
  type ExchangeType,
  type Skill,
} from '../arithmetic/exchange'
import { addEvidence, answerWeights, chancesOfAll, letTimePass, startingWeights } from './model'
import { DEFAULT_MASTERY, settingsProblem, type MasterySettings } from './settings'

/** What mastery needs to know of a question. The skills belong to the operation of the type. */
export interface MasteryQuestion {
  readonly type: ExchangeType
  readonly skills: readonly Skill[]
}

/** What an answer tells: true right, false wrong, null nothing (blank, absent, unreadable). */
export type Evidence = boolean | null

/** From the least to the most that can be said for a pupil; `not enough seen` says nothing. */
export const STATUSES = ['not enough seen', 'needs support', 'nearly secure', 'secure'] as const

export type Status = (typeof STATUSES)[number]

/** `right` of the `tried` (answered) questions; the probability, from 0 to 1, that the pupil can; the status it gives. */
export interface Standing {
  readonly right: number
  readonly tried: number
  readonly probability: number
  readonly status: Status
}

export interface TypeStanding extends Standing {
  readonly type: ExchangeType
}

export interface SkillStanding extends Standing {
  readonly skill: Skill
}

/**
 * One pupil's mastery. The types and skills that occur among the questions, subtraction first, in the order of their lists.
 * `needsSupport`: whether any type needs support.
 */
export interface Judgement {
  readonly byType: readonly TypeStanding[]
  readonly bySkill: readonly SkillStanding[]
  readonly needsSupport: boolean
}

/** One occasion of one pupil: the questions set and, in the same order, what each answer tells. */
export interface Occasion {
  readonly questions: readonly MasteryQuestion[]
  readonly outcomes: readonly Evidence[]
}

/** `not enough seen` below the fewest tried, else by the thresholds. */
export function statusOf(tried: number, probability: number, settings: MasterySettings): Status {
  if (tried < settings.fewestTried) return 'not enough seen'
  if (probability >= settings.secure) return 'secure'
  return probability >= settings.nearlySecure ? 'nearly secure' : 'needs support'
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
): { judge(outcomes: readonly Evidence[]): Judgement } {
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
): Judgement {
  const { judge } = prepareOccasions(
    occasions.map(({ questions }) => questions),
    settings,
  )
  return judge(occasions.map(({ outcomes }) => outcomes))
}

/** Prepares the questions of several occasions once, for judging many pupils as `judgeOccasions` does. */
export function prepareOccasions(
  occasions: readonly (readonly MasteryQuestion[])[],
  settings: MasterySettings = DEFAULT_MASTERY,
): { judge(outcomes: readonly (readonly Evidence[])[]): Judgement } {
  const problem = settingsProblem(settings)
  if (problem) throw new RangeError(problem)
  const questions = occasions.flat()
  const beliefs = OPERATIONS.flatMap((operation) => beliefsAbout(operation, questions, settings))
  const demands = questions.map((question) => demandOf(question, beliefs))
  const types = TYPES.map((type) => ({ type, asked: indicesWhere(questions, (each) => each.type === type) }))
  const skills = beliefs.flatMap((belief) =>
    belief.skills.map((skill, bit) => ({
      skill,
      demand: { belief, mask: 1 << bit },
      asked: indicesWhere(questions, (each) => each.skills.includes(skill)),
    })),
  )
  const occurring = types.filter(({ asked }) => asked.length > 0)
  const lengths = occasions.map((set) => set.length)

  return {
    judge(outcomes) {
      checkLengths(outcomes, lengths)
      const evidence = ([] as Evidence[]).concat(...outcomes)
      infer(beliefs, demands, evidence, lengths, settings)
      const byType = occurring.map(({ type, asked }): TypeStanding => {
        const { right, tried } = countOf(asked, evidence)
        const counted = tried > 0 ? asked.filter((index) => evidence[index] !== null) : asked
        const probability = averageChance(counted, demands)
        return { type, right, tried, probability, status: statusOf(tried, probability, settings) }
      })
      const bySkill = skills.map(({ skill, demand, asked }): SkillStanding => {
        const { right, tried } = countOf(asked, evidence)
        const probability = chanceOf(demand)
        return { skill, right, tried, probability, status: statusOf(tried, probability, settings) }
      })
      return { byType, bySkill, needsSupport: byType.some(({ status }) => status === 'needs support') }
    },
  }
}

const TYPES: readonly ExchangeType[] = [...SUBTRACTION_TYPES, ...ADDITION_TYPES]

interface OperationTable {
  readonly types: readonly ExchangeType[]
  readonly skills: readonly Skill[]
}

const OPERATIONS: readonly OperationTable[] = [
  { types: SUBTRACTION_TYPES, skills: SUBTRACTION_SKILLS },
  { types: ADDITION_TYPES, skills: ADDITION_SKILLS },
]

/**
 * What is believed of one pupil about skills that are judged together: log weights of the profiles, and the chance of every
 * demand. The arrays are written over for each pupil. `skills` are in the order of their bits; the belief about the unlisted
 * skill of questions without demand has none.
 */
interface Belief {
  readonly types: readonly ExchangeType[]
  readonly skills: readonly Skill[]
  readonly start: Float64Array
  readonly logWeights: Float64Array
  readonly evidence: Float64Array
  readonly chances: Float64Array
}

interface Demand {
  readonly belief: Belief
  readonly mask: number
}

/** For one operation: the belief about the listed skills that some question demands, and that about the unlisted skill. */
function beliefsAbout(
  { types, skills }: OperationTable,
  questions: readonly MasteryQuestion[],
  { prior }: MasterySettings,
): Belief[] {
  const demanded = skills.filter((skill) => questions.some((question) => question.skills.includes(skill)))
  const belief = (listed: readonly Skill[], bits: number): Belief => ({
    types,
    skills: listed,
    start: startingWeights(bits, prior),
    logWeights: new Float64Array(1 << bits),
    evidence: new Float64Array(1 << bits),
    chances: new Float64Array(1 << bits),
  })
  return demanded.length > 0 ? [belief(demanded, demanded.length), belief([], 1)] : [belief([], 1)]
}

function demandOf({ type, skills }: MasteryQuestion, beliefs: readonly Belief[]): Demand {
  const belief = beliefs.find(
    (each) => each.types.includes(type) && each.skills.length > 0 === skills.length > 0,
  )
  const stray = skills.find((skill) => !belief?.skills.includes(skill))
  if (!belief || stray)
    throw new RangeError(`A question of the type "${type}" cannot demand the skill ${stray}.`)
  const mask = skills.reduce((bits, skill) => bits | (1 << belief.skills.indexOf(skill)), 0)
  return { belief, mask: mask || 1 }
}

/** Brings every belief up to date with one pupil's evidence on all occasions. */
function infer(
  beliefs: readonly Belief[],
  demands: readonly Demand[],
  evidence: readonly Evidence[],
  lengths: readonly number[],
  { slip, guess, learn, forget }: MasterySettings,
): void {
  const { right, wrong } = answerWeights(slip, guess)
  for (const { logWeights, start } of beliefs) logWeights.set(start)
  let index = 0
  for (const [occasion, length] of lengths.entries()) {
    for (const belief of beliefs) {
      if (occasion > 0) letTimePass(belief.logWeights, learn, forget)
      belief.evidence.fill(0)
    }
    for (const end = index + length; index < end; index++) {
      const told = evidence[index]
      const demand = demands[index]
      if (told === null || !demand) continue
      const gathered = demand.belief.evidence
      gathered[demand.mask] = (gathered[demand.mask] ?? 0) + (told ? right : wrong)
    }
    for (const belief of beliefs) addEvidence(belief.logWeights, belief.evidence)
  }
  for (const { logWeights, chances } of beliefs) chancesOfAll(logWeights, chances)
}

function chanceOf({ belief, mask }: Demand): number {
  return belief.chances[mask] ?? NaN
}

function averageChance(indices: readonly number[], demands: readonly Demand[]): number {
  let sum = 0
  for (const index of indices) {
    const demand = demands[index]
    if (demand) sum += chanceOf(demand)
  }
  return Math.min(1, sum / indices.length)
}

function countOf(
  indices: readonly number[],
  evidence: readonly Evidence[],
): { right: number; tried: number } {
  let right = 0
  let tried = 0
  for (const index of indices) {
    if (evidence[index] !== null) tried += 1
    if (evidence[index] === true) right += 1
  }
  return { right, tried }
}

function indicesWhere<T>(items: readonly T[], holds: (item: T) => boolean): number[] {
  return items.flatMap((item, index) => (holds(item) ? [index] : []))
}

function checkLengths(outcomes: readonly (readonly Evidence[])[], lengths: readonly number[]): void {
  if (outcomes.length !== lengths.length)
    throw new RangeError(
      `There are outcomes of ${outcomes.length} occasions, but questions of ${lengths.length}.`,
    )
  outcomes.forEach((given, occasion) => {
    if (given.length !== lengths[occasion])
      throw new RangeError(`There are ${given.length} outcomes for ${lengths[occasion]} questions.`)
  })
}
