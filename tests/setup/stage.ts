import type { TestProject } from 'vitest/node'
import { serveBench } from '../../src/bench/server'
import { startBrowserServer } from '../bench/browser'
import { builds, type Builds } from './builds'

declare module 'vitest' {
  interface ProvidedContext {
    readonly builds: Builds
    /** Where the bench with the built add-in is served. */
    readonly bench: string
    /** Where the Chromium of this run is to be had. */
    readonly chromium: string
  }
}

/** Before the first test of what is built: the builds, one server for them and one Chromium for all test files. */
export default async function ({ provide }: TestProject): Promise<() => Promise<void>> {
  const folders = await builds()
  const server = await serveBench(folders)
  const chromium = await startBrowserServer()
  provide('builds', folders)
  provide('bench', server.url)
  provide('chromium', chromium.wsEndpoint())
  return async () => {
    await chromium.close()
    await server.close()
  }
}
