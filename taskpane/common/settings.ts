import { useSyncExternalStore } from 'react'
import { readSettings, watchSettings, type Settings } from '../../src/office/workbook/settings'

let current: Settings | null = null
const settings = (): Settings => (current ??= readSettings())
const watch = (changed: () => void): (() => void) =>
  watchSettings((now) => {
    current = now
    changed()
  })

/** What is set in this workbook, kept up to date. */
export function useSettings(): Settings {
  return useSyncExternalStore(watch, settings)
}
