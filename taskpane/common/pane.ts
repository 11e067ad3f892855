import { createContext, useContext, useSyncExternalStore } from 'react'
import { Runner, type RunnerState } from './runner'
import type { Store } from './store'

/** The runner that all areas and the ribbon share. */
export const RUNNER = new Runner()

export const RunnerContext = createContext(RUNNER)

/** Whether the area around a component is the one that is open. */
export const OpenContext = createContext(true)

/** The runner, through which every area works: one action at a time, with progress, errors as sentences, and undo. */
export function useRunner(): Runner {
  return useContext(RunnerContext)
}

/** What the runner shows at the moment. */
export function useRunnerState(): RunnerState {
  return useStore(useRunner())
}

/** Whether an action is under way, so that no other can be started. */
export function useBusy(): boolean {
  return useRunnerState().running !== null
}

/** A store's state, kept up to date. */
export function useStore<State extends object>({ subscribe, state }: Store<State>): State {
  return useSyncExternalStore(subscribe, state)
}
