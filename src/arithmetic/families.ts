import type { ExchangeType } from './exchange'

/** The families of exchange types, in the order of `TEACHING_ORDER`: addition first, then subtraction from the easiest. */
export const FAMILIES = [
  'no carry',
  'one carry',
  'two or more carries',
  'no exchange',
  'one exchange',
  'two or more exchanges',
  'through zeros',
] as const

export type Family = (typeof FAMILIES)[number]

/** The family that a type belongs to. */
export function familyOf(type: ExchangeType): Family {
  if (type === 'no carry' || type === 'no exchange') return type
  if (type.startsWith('through')) return 'through zeros'
  if (type.startsWith('one carry')) return 'one carry'
  if (type.startsWith('one exchange')) return 'one exchange'
  return type.endsWith('carries') || type.includes('carries,')
    ? 'two or more carries'
    : 'two or more exchanges'
}
