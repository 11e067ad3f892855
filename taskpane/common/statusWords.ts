import { useSyncExternalStore } from 'react'
import type { StatusWords } from '../../src/mastery/support'
import { readSettings, watchSettings } from '../../src/office/workbook/settings'

let current: StatusWords | null = null
const words = (): StatusWords => (current ??= readSettings().words)
const watch = (changed: () => void): (() => void) =>
  watchSettings((settings) => {
    current = settings.words
    changed()
  })

/** What statuses are called in this workbook, kept up to date. */
export function useStatusWords(): StatusWords {
  return useSyncExternalStore(watch, words)
}
