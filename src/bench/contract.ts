import { BATCHES } from './contract/batches'
import { CELLS } from './contract/cells'
import type { Check } from './contract/check'
import { FORMATS } from './contract/formats'
import { OVERLAYS } from './contract/overlays'
import { PICTURES } from './contract/pictures'
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
  ...BATCHES,
]

/** How a check came out; `message` says what went wrong. */
export interface CheckResult {
  readonly name: string
  readonly passed: boolean
  readonly message: string
}

/** Runs checks one after another, as all of them work on the workbook that is open. */
export async function runContract(checks: readonly Check[] = CONTRACT): Promise<readonly CheckResult[]> {
  const results: CheckResult[] = []
  for (const { name, run } of checks) {
    try {
      await run()
      results.push({ name, passed: true, message: '' })
    } catch (error) {
      results.push({ name, passed: false, message: error instanceof Error ? error.message : String(error) })
    }
  }
  return results
}
