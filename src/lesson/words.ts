import { ADDITION_TYPES, type ExchangeType } from '../arithmetic/exchange'
import type { Operation } from '../arithmetic/question'

const ADDITIONS: readonly string[] = ADDITION_TYPES

/** The operation that a type belongs to. */
export function operationOf(type: ExchangeType): Operation {
  return ADDITIONS.includes(type) ? 'add' : 'subtract'
}

/** A type as it stands within a sentence: "subtraction with one exchange (tens to ones)", "subtraction through a zero". */
export function typeInWords(type: ExchangeType): string {
  const [what = '', where] = type.split(', ')
  const joined = what.startsWith('through') ? what : `with ${what}`
  return `${operationName(operationOf(type))} ${joined}${where === undefined ? '' : ` (${where})`}`
}

/** Types in a series, each operation named once: "subtraction with no exchange and through a zero". */
export function typesInWords(types: readonly ExchangeType[]): string {
  return inSeries(
    types.map((type, index) => {
      const before = types[index - 1]
      const words = typeInWords(type)
      const isSame = before !== undefined && operationOf(before) === operationOf(type)
      return isSame ? words.slice(operationName(operationOf(type)).length + 1) : words
    }),
  )
}

/** "addition" or "subtraction". */
export function operationName(operation: Operation): 'addition' | 'subtraction' {
  return operation === 'add' ? 'addition' : 'subtraction'
}

/** "a", "a and b", "a, b and c". */
export function inSeries(items: readonly string[]): string {
  if (items.length < 2) return items.join('')
  return `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`
}

/** "1 question", "4 questions". */
export function countedNoun(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`
}
