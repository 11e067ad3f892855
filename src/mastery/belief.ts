import {
  ADDITION_SKILLS,
  ADDITION_TYPES,
  SUBTRACTION_SKILLS,
  type ExchangeType,
  type Skill,
} from '../arithmetic/exchange'
import { addEvidence, answerWeights, chancesOfAll, letTimePass, startingWeights } from './model'
import type { MasterySettings } from './settings'
import type { Evidence } from './standing'

/** What mastery needs to know of a question. The skills belong to the operation of the type. */
export interface MasteryQuestion {
  readonly type: ExchangeType
  readonly skills: readonly Skill[]
}

/**
 * What is believed of one pupil about skills that are judged together: log weights of the profiles, and the chance of every
 * demand. The arrays are written over for each pupil. `skills` are in the order of their bits.
 */
export interface Belief {
  readonly skills: readonly Skill[]
  readonly start: Float64Array
  readonly logWeights: Float64Array
  readonly evidence: Float64Array
  readonly chances: Float64Array
}

/** Some skills of one belief, as a bit set. */
export interface Demand {
  readonly belief: Belief
  readonly mask: number
}

/** A question with its place among all questions asked, and what it demands. */
export interface Asked extends Demand, MasteryQuestion {
  readonly index: number
}

/**
 * The beliefs that questions call for: for each operation one about those skills which some question demands. (The others are
 * independent of every answer and left out.)
 */
export function beliefsAbout(questions: readonly MasteryQuestion[], prior: number): Belief[] {
  const demanded = new Set(questions.flatMap((question) => question.skills))
  return [SUBTRACTION_SKILLS, ADDITION_SKILLS].flatMap((skills) => {
    const listed = skills.filter((skill) => demanded.has(skill))
    return listed.length > 0 ? [emptyBelief(listed, prior)] : []
  })
}

function emptyBelief(skills: readonly Skill[], prior: number): Belief {
  const array = (): Float64Array => new Float64Array(1 << skills.length)
  const start = startingWeights(skills.length, prior)
  return { skills, start, logWeights: array(), evidence: array(), chances: array() }
}

/**
 * Finds the belief by which a question is judged; null where it demands no skill. Throws RangeError where it demands a skill of the other
 * operation.
 */
export function asked(question: MasteryQuestion, index: number, beliefs: readonly Belief[]): Asked | null {
  const { type, skills } = question
  const own: readonly Skill[] = ADDITION_TYPES.some((each) => each === type)
    ? ADDITION_SKILLS
    : SUBTRACTION_SKILLS
  const stray = skills.find((skill) => !own.includes(skill))
  if (stray) throw new RangeError(`A question of the type "${type}" cannot demand the skill ${stray}.`)
  const [first] = skills
  const belief = beliefs.find((each) => first !== undefined && each.skills.includes(first))
  if (!belief) return null
  const mask = skills.reduce((bits, skill) => bits | (1 << belief.skills.indexOf(skill)), 0)
  return { type, skills, index, belief, mask }
}

/** Brings the beliefs to where one pupil's evidence, at the questions' indices, leaves them after the last occasion. */
export function infer(
  beliefs: readonly Belief[],
  occasions: readonly (readonly Asked[])[],
  evidence: readonly Evidence[],
  { slip, guess, learn, forget }: MasterySettings,
): void {
  const { right, wrong } = answerWeights(slip, guess)
  for (const { logWeights, start } of beliefs) logWeights.set(start)
  for (const [occasion, questions] of occasions.entries()) {
    for (const belief of beliefs) {
      if (occasion > 0) letTimePass(belief.logWeights, learn, forget)
      belief.evidence.fill(0)
    }
    for (const { index, belief, mask } of questions) {
      const told = evidence[index]
      if (told !== null) belief.evidence[mask] = (belief.evidence[mask] ?? 0) + (told ? right : wrong)
    }
    for (const belief of beliefs) addEvidence(belief.logWeights, belief.evidence)
  }
  for (const { logWeights, chances } of beliefs) chancesOfAll(logWeights, chances)
}

/** The chance, from 0 to 1, that the pupil whose evidence was last inferred from has every skill demanded. */
export function chanceOf({ belief, mask }: Demand): number {
  return belief.chances[mask] ?? NaN
}
