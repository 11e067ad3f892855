import type { ExchangeType } from '../arithmetic/exchange'
import type { Judgement, Status } from './judge'

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

/** The types with which the pupil needs support, in teaching order. */
export function typesToSupport(judgement: Judgement): ExchangeType[] {
  return typesWith(judgement, (status) => status === 'needs support')
}

/** What the pupil works at next: the first type in teaching order that is not secure. Null where all are. */
export function nextType(judgement: Judgement): ExchangeType | null {
  return typesWith(judgement, (status) => status !== 'secure')[0] ?? null
}

/** Pupils who need support with the same type. */
export interface SupportGroup<Pupil> {
  readonly type: ExchangeType
  readonly pupils: readonly Pupil[]
}

/**
 * Puts every pupil who needs support into one group: that of the first type in teaching order with which the pupil needs it,
 * since the harder types build on it. The type that most pupils need comes first. Within a type the pupils furthest from
 * secure come first; more than `largest` are split into groups as even as can be. Throws RangeError unless `largest` is a
 * whole number from 1.
 */
export function supportGroups<Pupil extends { readonly judgement: Judgement }>(
  pupils: readonly Pupil[],
  largest: number,
): SupportGroup<Pupil>[] {
  if (!Number.isSafeInteger(largest) || largest < 1)
    throw new RangeError('The size of a group must be a whole number from 1 up.')
  return TEACHING_ORDER.map((type) => ({
    type,
    pupils: pupils
      .filter(({ judgement }) => typesToSupport(judgement)[0] === type)
      .sort((one, other) => probabilityOf(one.judgement, type) - probabilityOf(other.judgement, type)),
  }))
    .sort((one, other) => other.pupils.length - one.pupils.length)
    .flatMap((group) =>
      splitEvenly(group.pupils, largest).map((part) => ({ type: group.type, pupils: part })),
    )
}

function typesWith({ byType }: Judgement, holds: (status: Status) => boolean): ExchangeType[] {
  const found = new Set(byType.filter(({ status }) => holds(status)).map(({ type }) => type))
  return TEACHING_ORDER.filter((type) => found.has(type))
}

function probabilityOf({ byType }: Judgement, type: ExchangeType): number {
  return byType.find((standing) => standing.type === type)?.probability ?? 0
}

function splitEvenly<T>(items: readonly T[], largest: number): T[][] {
  const parts = Math.ceil(items.length / largest)
  const cut = (part: number): number => Math.round((part * items.length) / parts)
  return Array.from({ length: parts }, (_, part) => items.slice(cut(part), cut(part + 1)))
}
