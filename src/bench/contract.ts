import { BATCHES } from './contract/batches'
import { CELLS } from './contract/cells'
import type { Check } from './contract/check'
import { FORMATS } from './contract/formats'
import { OVERLAYS } from './contract/overlays'
import { PICTURES } from './contract/pictures'
import { PRINTING } from './contract/printing'
import { RANGES } from './contract/ranges'
import { RUNTIME } from './contract/runtime'
import { SHEETS } from './contract/sheets'
import { THINGS } from './contract/things'

export type { Check } from './contract/check'

/**
 * What the add-in relies on from its host, written with the public Office.js API alone: the bench must pass all of it,
 * and so must Excel.
 */
export const CONTRACT: readonly Check[] = [
  ...CELLS,
  ...RANGES,
  ...SHEETS,
  ...FORMATS,
  ...THINGS,
  ...PICTURES,
  ...RUNTIME,
  ...OVERLAYS,
  ...PRINTING,
  ...BATCHES,
]

/** How a check came out; `message` says what went wrong, or what was found. */
export interface CheckResult {
  readonly name: string
  readonly passed: boolean
  readonly message: string
}

/** How long Excel has for a check, in milliseconds: long enough for Excel on the web. */
const LIMIT = 90_000
const NO_ANSWER = `Excel did not answer within ${LIMIT / 1000} seconds.`
/** After so many checks without an answer no others are run. */
const MOST_UNANSWERED = 2

/** Runs checks one after another, as all of them work on the workbook that is open; `begun` is told each one's number, from 1. */
export async function runContract(
  checks: readonly Check[] = CONTRACT,
  begun: (number: number) => void = () => undefined,
): Promise<readonly CheckResult[]> {
  const results: CheckResult[] = []
  let unanswered = 0
  for (const [index, { name, run }] of checks.entries()) {
    begun(index + 1)
    const result =
      unanswered < MOST_UNANSWERED
        ? await outcomeOf(name, run)
        : { name, passed: false, message: 'Not run, since Excel answered no more.' }
    if (result.message === NO_ANSWER) unanswered++
    results.push(result)
  }
  return results
}

/** How a check comes out that gives what it found, or nothing. */
export async function outcomeOf(name: string, run: () => Promise<unknown>): Promise<CheckResult> {
  let timer: ReturnType<typeof setTimeout> | undefined
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => {
      reject(new Error(NO_ANSWER))
    }, LIMIT)
  })
  try {
    return { name, passed: true, message: String((await Promise.race([run(), late])) ?? '') }
  } catch (error) {
    return { name, passed: false, message: error instanceof Error ? error.message : String(error) }
  } finally {
    clearTimeout(timer)
  }
}
