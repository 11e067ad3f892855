import type { Notation } from '../../src/lesson/model/notation'
import { settingsProblem, type MasterySettings } from '../../src/mastery/settings'
import { STATUSES } from '../../src/mastery/standing'
import type { StatusWords } from '../../src/mastery/support'
import { LONGEST_WORD, type Settings } from '../../src/office/workbook/settings'

/** A number that can be set: what it is called, why its default is what it is, and whether it is written in per cent. */
export interface NumberField<Key extends string> {
  readonly key: Key
  readonly label: string
  readonly reason: string
  readonly perCent: boolean
}

/** From which chance on a status is given. */
export const THRESHOLDS: readonly NumberField<keyof MasterySettings>[] = [
  {
    key: 'secure',
    label: 'Secure from',
    reason: 'At 85% the pupil cannot yet about one time in seven: you can move on and will seldom be sorry.',
    perCent: true,
  },
  {
    key: 'needsSupport',
    label: 'Needs support up to',
    reason:
      'At 25% it is three to one that the pupil cannot yet. Between the two the pupil is nearly secure.',
    perCent: true,
  },
  {
    key: 'fewestTried',
    label: 'Fewest questions tried',
    reason: 'With fewer, the status is “not enough seen”: one answer is too easily a slip or a guess.',
    perCent: false,
  },
]

/** What is assumed of pupils' answers. */
export const RATES: readonly NumberField<keyof MasterySettings>[] = [
  {
    key: 'slip',
    label: 'Slips',
    reason:
      'How often a pupil who has the skill gets a question wrong all the same. 8% is about one in twelve.',
    perCent: true,
  },
  {
    key: 'guess',
    label: 'Right without the skill',
    reason: 'How often a pupil without it gets there by luck or another way, such as counting on.',
    perCent: true,
  },
  {
    key: 'prior',
    label: 'Known beforehand',
    reason: 'How likely a pupil has a skill before any answer is seen. 50% takes no side.',
    perCent: true,
  },
  {
    key: 'learn',
    label: 'Learnt in a week',
    reason: 'How likely a missing skill is there a week later. 20% means about five weeks on average.',
    perCent: true,
  },
  {
    key: 'forget',
    label: 'Lost in a week',
    reason: 'How likely a skill is gone a week later. 5% means about twenty weeks, so old answers fade.',
    perCent: true,
  },
]

/** How many pupils a group has. */
export const GROUPS: readonly NumberField<'groupSize'>[] = [
  {
    key: 'groupSize',
    label: 'Most pupils in a group',
    reason: 'Six is as many as can sit round one table and all be heard.',
    perCent: false,
  },
]

const NUMBERS = [...THRESHOLDS, ...RATES, ...GROUPS]

type NumberKey = (typeof NUMBERS)[number]['key']

/** The ways to write the column methods, in the words of the form. */
export const EXCHANGES: readonly (readonly [Notation['exchange'], string])[] = [
  ['beside', 'A small 1 beside the digit'],
  ['above', 'The new number above the digit'],
]
export const CARRIES: readonly (readonly [Notation['carry'], string])[] = [
  ['below', 'Below the answer'],
  ['above', 'Above the top number'],
]

/** The settings as they stand in the form: numbers as they are typed. */
export interface Draft {
  readonly numbers: Readonly<Record<NumberKey, string>>
  readonly flags: boolean
  readonly masterySheet: boolean
  readonly className: string
  readonly words: StatusWords
  readonly notation: Notation
}

/** The form for settings. */
export function draftOf({ mastery, groupSize, ...others }: Settings): Draft {
  const values: Readonly<Record<NumberKey, number>> = { ...mastery, groupSize }
  const typed = NUMBERS.map(({ key, perCent }) => [key, inForm(values[key], perCent)])
  return { numbers: Object.fromEntries(typed) as Draft['numbers'], ...others }
}

/** 0.085 in per cent is "8.5", without the noise of binary fractions. */
function inForm(value: number, perCent: boolean): string {
  return String(perCent ? Number((value * 100).toPrecision(12)) : value)
}

/** What the form sets, or the sentence that says why it cannot be kept. */
export function readDraft(draft: Draft): { readonly settings: Settings } | { readonly problem: string } {
  const read = NUMBERS.map(({ key, label, perCent }) => ({
    key,
    label,
    value: numberIn(draft.numbers[key], perCent),
  }))
  const unread = read.find(({ value }) => value === null)
  if (unread) return { problem: `“${unread.label}” must be a number, such as ${example(unread.key)}.` }
  const values = Object.fromEntries(read.map(({ key, value }) => [key, value])) as Record<NumberKey, number>
  const { groupSize, ...mastery } = values
  if (!Number.isSafeInteger(groupSize) || groupSize < 1)
    return { problem: 'The most pupils in a group must be a whole number from 1 up.' }
  const problem = settingsProblem(mastery)
  if (problem !== null) return { problem: inPerCent(problem) }
  const problemOfWords = wordsProblem(draft.words)
  if (problemOfWords !== null) return { problem: problemOfWords }
  const { flags, masterySheet, className, notation } = draft
  const words = Object.fromEntries(
    STATUSES.map((status) => [status, draft.words[status].trim()]),
  ) as StatusWords
  return {
    settings: { mastery, groupSize, flags, masterySheet, className: className.trim(), words, notation },
  }
}

/** What is wrong with the words for the statuses, in a sentence, or null. */
function wordsProblem(words: StatusWords): string | null {
  const chosen = STATUSES.map((status) => words[status].trim())
  if (chosen.some((word) => word === '' || word.length > LONGEST_WORD))
    return `Each status needs a word or a few, of at most ${LONGEST_WORD} letters.`
  const different = new Set(chosen.map((word) => word.toLowerCase())).size === chosen.length
  return different ? null : 'Two statuses have the same words.'
}

function numberIn(typed: string, perCent: boolean): number | null {
  const text = typed.replace(/[\s%]/g, '').replace(',', '.')
  if (!/^\d+(?:\.\d+)?$/.test(text)) return null
  return perCent ? Number((Number(text) / 100).toPrecision(12)) : Number(text)
}

function example(key: NumberKey): string {
  return key === 'groupSize' || key === 'fewestTried' ? '2' : '85'
}

/** The form asks for per cent where the sentences of the mastery model speak of chances up to 1. */
function inPerCent(problem: string): string {
  return problem
    .replace('between 0 and 1,', 'between 0% and 100%,')
    .replace('at least 0 and below 1.', 'at least 0% and below 100%.')
    .replace('less than 1,', 'less than 100%,')
}
