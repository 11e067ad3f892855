import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { policyOf } from './safety'

const PAGES = ['taskpane', 'handout', 'projector', 'privacy'] as const

type PageFor = (env: Readonly<Record<string, string>>) => (content: string, file: string) => string

/** A page as the build makes it, with options. */
async function built(page: string, env: Readonly<Record<string, string>> = {}): Promise<string> {
  const { pageFor } = (await import('../../webpack.config.js' as string)) as { pageFor: PageFor }
  const file = `taskpane/${page}.html`
  return pageFor(env)(readFileSync(file, 'utf8'), file)
}

describe('the pages of a build', () => {
  it.each(PAGES)('%s: bring their policy, unless it is left out, and are the same besides', async (page) => {
    const [whole, without] = [await built(page), await built(page, { policy: 'no' })]
    expect(policyOf(whole)).not.toBeNull()
    expect(policyOf(without)).toBeNull()
    expect(without).not.toContain('Content-Security-Policy')
    expect(whole.replace(/\s*<meta\s+http-equiv[^>]*>/, '')).toBe(without)
  })

  it('have the host checks in the pane alone, and only where they are asked for', async () => {
    for (const page of PAGES) {
      expect(await built(page)).not.toContain('host-checks')
      expect((await built(page, { checks: 'yes' })).includes('host-checks.js')).toBe(page === 'taskpane')
    }
  })

  it('are not made for an option that is none', async () => {
    await expect(built('taskpane', { policy: 'none' })).rejects.toThrow('--env policy=none: choose yes or no')
    await expect(built('taskpane', { checks: 'maybe' })).rejects.toThrow(
      '--env checks=maybe: choose yes or no',
    )
  })

  it('run what takes presses of the ribbon before anything that waits', async () => {
    const scripts = Array.from((await built('taskpane')).matchAll(/<script src="([^"]+)"( defer)?/g))
    const names = scripts.map(([, source = '', defer]) => `${source.replace(/.*\//, '')}${defer ?? ''}`)
    expect(names).toEqual(['office.js', 'commands.js', 'functions.js', 'taskpane.js defer'])
  })
})
