import {
  ADDITION_SKILLS,
  ADDITION_TYPES,
  SUBTRACTION_SKILLS,
  SUBTRACTION_TYPES,
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
 * demand. The arrays are written over for each pupil. `skills` are in the order of their bits; the belief about the unlisted
 * skill, which questions without demand are judged by, has none.
 */
export interface Belief {
  readonly types: readonly ExchangeType[]
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

const OPERATIONS = [
  { types: SUBTRACTION_TYPES, skills: SUBTRACTION_SKILLS },
  { types: ADDITION_TYPES, skills: ADDITION_SKILLS },
]

/**
 * The beliefs that questions call for. For each operation one about those listed skills which some question demands (the
 * others are independent of every answer and left out), and one about the unlisted skill.
 */
export function beliefsAbout(questions: readonly MasteryQuestion[], prior: number): Belief[] {
  const demanded = new Set(questions.flatMap((question) => question.skills))
  return OPERATIONS.flatMap(({ types, skills }) => {
    const listed = skills.filter((skill) => demanded.has(skill))
    const unlisted = emptyBelief(types, [], 1, prior)
    return listed.length > 0 ? [emptyBelief(types, listed, listed.length, prior), unlisted] : [unlisted]
  })
}

function emptyBelief(
  types: readonly ExchangeType[],
  skills: readonly Skill[],
  bits: number,
  prior: number,
): Belief {
  const array = (): Float64Array => new Float64Array(1 << bits)
  const start = startingWeights(bits, prior)
  return { types, skills, start, logWeights: array(), evidence: array(), chances: array() }
}

/** Finds the belief by which a question is judged. Throws RangeError where it demands a skill of the other operation. */
export function asked(question: MasteryQuestion, index: number, beliefs: readonly Belief[]): Asked {
  const { type, skills } = question
  const demandsListed = skills.length > 0
  const belief = beliefs.find((each) => each.types.includes(type) && each.skills.length > 0 === demandsListed)
  const stray = skills.find((skill) => !belief?.skills.includes(skill))
  if (!belief || stray)
    throw new RangeError(`A question of the type "${type}" cannot demand the skill ${stray}.`)
  const mask = skills.reduce((bits, skill) => bits | (1 << belief.skills.indexOf(skill)), 0)
  return { type, skills, index, belief, mask: mask || 1 }
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
