import { useSyncExternalStore } from 'react'
import type { Notation } from '../../src/lesson/model/notation'
import { readSettings, watchSettings } from '../../src/office/workbook/settings'

let known: Notation | null = null
watchSettings(({ notation }) => {
  known = notation
})

/** The school's notation, by the settings of the workbook. */
export function notationNow(): Notation {
  known ??= readSettings().notation
  return known
}

/** The same, kept up to date on screen. */
export function useNotation(): Notation {
  return useSyncExternalStore(watchSettings, notationNow)
}
