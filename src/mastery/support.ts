import { ADDITION_TYPES, type ExchangeType } from '../arithmetic/exchange'
import type { FaultId } from '../answers/faults'
import { familyOf } from '../arithmetic/families'
import type { Judgement, Standings, Status } from './standing'

/**
 * The types from the easiest to the hardest: addition first; no exchange, one, two apart, two next to each other, more, then
 * through zeros; decimals after whole numbers. Common practice, no source.
 */
export const TEACHING_ORDER = [
  'no carry',
  'one carry, ones to tens',
  'one carry, tens to hundreds',
  'one carry, hundreds to thousands',
  'one carry, thousands to ten thousands',
  'one carry, beyond ten thousands',
  'two carries, apart',
  'two carries, next to each other',
  'three or more carries',
  'one carry, tenths to ones',
  'one carry, hundredths to tenths',
  'one carry, thousandths to hundredths',
  'no exchange',
  'one exchange, tens to ones',
  'one exchange, hundreds to tens',
  'one exchange, thousands to hundreds',
  'one exchange, ten thousands to thousands',
  'one exchange, beyond ten thousands',
  'two exchanges, apart',
  'two exchanges, next to each other',
  'three or more exchanges',
  'through a zero',
  'through two or more zeros',
  'one exchange, ones to tenths',
  'one exchange, tenths to hundredths',
  'one exchange, hundredths to thousandths',
] as const satisfies readonly ExchangeType[]

/** A circle filled as far as the pupil has come, so that a status can be told without its colour. */
const SIGNS: Readonly<Record<Status, string>> = {
  secure: '●',
  'nearly secure': '◐',
  'needs support': '○',
  'not enough seen': '?',
}

/** What each status is called on screen and in the sheets that the add-in writes. */
export type StatusWords = Readonly<Record<Status, string>>

/** The words that a status has unless the teacher chooses others. */
export const STATUS_WORDS: StatusWords = {
  secure: 'secure',
  'nearly secure': 'nearly secure',
  'needs support': 'needs support',
  'not enough seen': 'not enough seen',
}

/** The one-character sign that stands beside the word of a status. */
export function statusSign(status: Status): string {
  return SIGNS[status]
}

/**
 * What comes next for a pupil: of the types asked, the first that is not secure above the highest that the pupil is secure in; where there
 * is none the next one up, within the operation. Never an easier one than what is secure. Where nothing is secure the first that was asked.
 * Null where nothing was answered, and at the very top.
 */
export function nextType(standings: Standings): ExchangeType | null {
  const { byType } = standings
  if (byType.every(({ tried }) => tried === 0)) return null
  const asked = TEACHING_ORDER.filter((type) => byType.some((each) => each.type === type))
  const highest = highestSecure(standings)
  if (highest === null) return asked[0] ?? null
  const above = TEACHING_ORDER.slice(TEACHING_ORDER.indexOf(highest) + 1)
  const isKnown = (type: ExchangeType) => byType.find((each) => each.type === type)?.status === 'secure'
  const open = above.find((type) => asked.includes(type) && !isKnown(type))
  if (open !== undefined) return open
  const further = above.filter((type) => !asked.includes(type) && isAddition(type) === isAddition(highest))
  return further.find((type) => asked.some(needsMoreColumns) || !needsMoreColumns(type)) ?? further[0] ?? null
}

/** The highest type that the pupil is secure in; where none has enough answers of its own, one that is all right in a secure family. */
function highestSecure({ byType, byFamily }: Standings): ExchangeType | null {
  const inOrder = TEACHING_ORDER.flatMap((type) => byType.filter((each) => each.type === type))
  const secure = inOrder.findLast(({ status }) => status === 'secure')
  if (secure !== undefined) return secure.type
  const allRight = inOrder.filter(({ right, tried }) => tried > 0 && right === tried)
  const families = byFamily.filter(({ status }) => status === 'secure').map(({ family }) => family)
  return allRight.findLast(({ type }) => families.includes(familyOf(type)))?.type ?? null
}

const isAddition = (type: ExchangeType) => ADDITION_TYPES.some((each) => each === type)

/** Whether a type needs decimal places or five digits, which a class of four-digit whole numbers does not work with. */
const needsMoreColumns = (type: ExchangeType) => /tenth|hundredth|ten thousand/.test(type)

/** What the pupils of a group have in common. */
export interface GroupNeed {
  readonly kind: 'fault' | 'family' | 'no pattern'
  readonly fault: FaultId | null
  /** The type to work at; of a group without a pattern what comes next for its first pupil. */
  readonly type: ExchangeType | null
}

/** Flagged pupils with the same need. */
export interface SupportGroup<Pupil> {
  readonly need: GroupNeed
  readonly pupils: readonly Pupil[]
}

/**
 * Puts every flagged pupil into exactly one group by need: those with the same fault together, then those who need support with the same
 * type, in teaching order, then those without a pattern. More than `largest` are split into groups as even as can be. Throws RangeError
 * unless `largest` is a whole number from 1.
 */
export function supportGroups<Pupil extends { readonly judgement: Judgement }>(
  pupils: readonly Pupil[],
  largest: number,
): SupportGroup<Pupil>[] {
  if (!Number.isSafeInteger(largest) || largest < 1)
    throw new RangeError('The size of a group must be a whole number from 1 up.')
  const groups = new Map<string, { need: GroupNeed; pupils: Pupil[] }>()
  for (const pupil of pupils) {
    const need = groupNeed(pupil.judgement)
    if (need === null) continue
    const key = `${need.kind} ${need.fault ?? (need.kind === 'family' ? need.type : '')}`
    const group = groups.get(key) ?? { need, pupils: [] }
    group.pupils.push(pupil)
    groups.set(key, group)
  }
  return [...groups.values()]
    .sort((one, other) => placeOf(one.need) - placeOf(other.need) || other.pupils.length - one.pupils.length)
    .flatMap((group) =>
      splitEvenly(group.pupils, largest).map((part) => ({ need: group.need, pupils: part })),
    )
}

function groupNeed(judgement: Judgement): GroupNeed | null {
  const { kind, fault, type } = judgement.need
  if (kind === 'fault' || kind === 'family') return { kind, fault, type }
  return kind === 'no pattern' ? { kind, fault: null, type: nextType(judgement) } : null
}

/** Faults first, then types in teaching order, then what has no pattern. */
function placeOf({ kind, type }: GroupNeed): number {
  if (kind === 'fault') return -1
  return kind === 'no pattern' || type === null ? TEACHING_ORDER.length : TEACHING_ORDER.indexOf(type)
}

function splitEvenly<T>(items: readonly T[], largest: number): T[][] {
  const parts = Math.ceil(items.length / largest)
  const cut = (part: number): number => Math.round((part * items.length) / parts)
  return Array.from({ length: parts }, (_, part) => items.slice(cut(part), cut(part + 1)))
}
