import { prepareMastery, type MasteryQuestion, type SkillStanding } from './judge'
import { DEFAULT_MASTERY, type MasterySettings } from './settings'
import type { Evidence } from './standing'

/** Chance that a question is answered right without a skill it demands, in the model of skills (a judgement, no source). */
const SKILL_GUESS = 0.1

/**
 * A pupil's skills, which serve planning and are no verdict. Where a skill is shown it keeps to its counts: all right of two or more is
 * never `needs support`, none right of two or more never above it. Throws as `prepareMastery` does.
 */
export function skillStandings(
  questions: readonly MasteryQuestion[],
  told: readonly Evidence[],
  settings: MasterySettings = DEFAULT_MASTERY,
): SkillStanding[] {
  const model = { ...settings, guess: SKILL_GUESS }
  return prepareMastery(questions, model).judge(told).bySkill.map(keepToCounts)
}

function keepToCounts(standing: SkillStanding): SkillStanding {
  const { right, tried, status } = standing
  if (tried < 2) return standing
  if (right === tried && status === 'needs support') return { ...standing, status: 'nearly secure' }
  if (right === 0 && status !== 'not enough seen') return { ...standing, status: 'needs support' }
  return standing
}
