import { invalidArgument, itemAlreadyExists } from './errors'

/** Longest name of a sheet. */
const MAX_LENGTH = 31

/**
 * Throws where Excel takes no such name for a sheet: empty, over 31 characters, with any of : \ / ? * [ ], with an
 * apostrophe at an end, the reserved word History (InvalidArgument), or taken already in any case (ItemAlreadyExists).
 */
export function requireSheetName(name: unknown, taken: readonly string[]): asserts name is string {
  if (typeof name !== 'string' || name.length === 0 || name.length > MAX_LENGTH) throw invalidArgument()
  if (/[:\\/?*[\]]/.test(name) || /^'|'$/.test(name) || name.toLowerCase() === 'history')
    throw invalidArgument()
  if (taken.some((other) => other.toLowerCase() === name.toLowerCase())) throw itemAlreadyExists()
}

/** The first free name of the form Sheet1, Sheet2 … */
export function freeSheetName(taken: readonly string[]): string {
  const lower = new Set(taken.map((name) => name.toLowerCase()))
  let n = 1
  while (lower.has(`sheet${n}`)) n++
  return `Sheet${n}`
}
