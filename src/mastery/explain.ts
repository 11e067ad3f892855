import { DEFAULT_MASTERY, type MasterySettings } from './settings'
import {
  standingOf,
  STATUSES,
  statusOf,
  type Count,
  type Judgement,
  type Standing,
  type Status,
} from './standing'
import { STATUS_WORDS, type GroupNeed, type StatusWords } from './support'

/** The most tried for which the counts behind a word are listed. */
const MOST_LISTED = 5

/** The counts that a word stands for, on one occasion: "2 of 2, 3 of 4, 4 of 5 right, or better". */
export function countsFor(status: Status, settings: MasterySettings = DEFAULT_MASTERY): string {
  const counts = Array.from({ length: MOST_LISTED - settings.fewestTried + 1 }, (_, more) => {
    const tried = settings.fewestTried + more
    const all = Array.from({ length: tried + 1 }, (__, right) => right)
    return all.filter((right) => standingOf({ right, tried }, settings).status === status).map(of(tried))
  })
  const listed = (each: readonly (string | undefined)[]) => each.flatMap((count) => count ?? []).join(', ')
  switch (status) {
    case 'secure':
      return `${listed(counts.map((same) => same.at(0)))} right, or better`
    case 'nearly secure':
      return `between: ${listed(counts.flat())}`
    case 'needs support':
      return `${listed(counts.map((same) => same.at(-1)))} right, or worse`
    case 'not enough seen':
      return [`fewer than ${settings.fewestTried} answered`, listed(counts.flat())]
        .filter(Boolean)
        .join(', or ')
  }
}

const of = (tried: number) => (right: number) => `${right} of ${tried}`

/** The words that the marking will have for a pupil who answers so many questions of a family; none where that is too few for any. */
export function wordsFor(asked: number, settings: MasterySettings = DEFAULT_MASTERY): Status[] {
  const possible = Array.from(
    { length: asked + 1 },
    (_, right) => standingOf({ right, tried: asked }, settings).status,
  )
  return STATUSES.toReversed().filter((status) => status !== 'not enough seen' && possible.includes(status))
}

/** Why a pupil's count has its word: "1 of 4 right: 2% likely that the pupil can. Needs support goes up to 25%." */
export function whyStatus(
  standing: Standing,
  settings: MasterySettings = DEFAULT_MASTERY,
  words: StatusWords = STATUS_WORDS,
): string {
  const { right, tried, probability } = standing
  if (tried === 0) return 'Nothing answered.'
  const status = statusOf(tried, probability, settings)
  if (tried < settings.fewestTried) return `${of(tried)(right)} right: too few answers to say more.`
  const isOverWeeks = Math.abs(standingOf(standing, settings).probability - probability) > 1e-9
  const count = `${of(tried)(right)} right${isOverWeeks ? ' in all, the latest weighing most' : ''}`
  const limits = {
    secure: `“${words.secure}” begins at ${percent(settings.secure)}.`,
    'nearly secure': `“${words.secure}” begins at ${percent(settings.secure)}.`,
    'needs support': `“${words['needs support']}” goes up to ${percent(settings.needsSupport)}.`,
    'not enough seen': 'One more answer will tell.',
  }
  return `${count}: ${percent(probability)} likely that the pupil can. ${limits[status]}`
}

function percent(probability: number): string {
  if (probability > 0.99) return 'over 99%'
  return probability < 0.01 ? 'under 1%' : `${Math.round(100 * probability)}%`
}

/** Why a pupil has this need, and whether it is flagged. */
export function whyNeed(
  { need, byFamily, byType }: Judgement,
  settings: MasterySettings = DEFAULT_MASTERY,
  words: StatusWords = STATUS_WORDS,
): string {
  switch (need.kind) {
    case 'typing':
      return 'Not flagged: right answers look moved to other cells, or all are out by one amount. Look at the sheet first.'
    case 'fault':
    case 'no pattern':
      return whyFlagged(need.kind, settings)
    case 'family': {
      const family = byFamily.find((each) => each.family === need.family)
      const type = byType.find((each) => each.type === need.type)
      const standing = family?.status === 'needs support' ? family : type
      return standing ? `Flagged: ${whyStatus(standing, settings, words)}` : whyFlagged(need.kind, settings)
    }
    case 'slips':
      return 'Not flagged: no fault is named, and no family or type needs support.'
    case 'none':
      return byType.some(hasTried) ? 'Not flagged: nothing answered is wrong.' : 'Nothing answered.'
  }
}

/** What a flag of this kind goes by, for several pupils at once. */
export function whyFlagged(kind: GroupNeed['kind'], settings: MasterySettings = DEFAULT_MASTERY): string {
  switch (kind) {
    case 'fault':
      return 'Flagged: wrong answers are exactly what this gives, more often than slips or chance would.'
    case 'family':
      return `Flagged: ${countsFor('needs support', settings)}.`
    case 'no pattern':
      return 'Flagged: at least 4 answered and at least half of them wrong, but no fault, family or type stands out.'
  }
}

const hasTried = ({ tried }: Count) => tried > 0
