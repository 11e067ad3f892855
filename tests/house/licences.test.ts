import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

interface Lock {
  readonly packages: Readonly<Record<string, { readonly dev?: boolean; readonly license?: string }>>
}

/** Licences that let anyone use, change and pass on what is built with them, in proprietary surroundings too. */
const PERMISSIVE = [
  'MIT',
  'ISC',
  'BSD-2-Clause',
  'BSD-3-Clause',
  '0BSD',
  'Apache-2.0',
  'Unlicense',
  'CC0-1.0',
  'BlueOak-1.0.0',
  'Zlib',
  'MIT/X11',
]

/** Whether an SPDX expression offers a permissive licence: one of those joined by OR, each of those joined by AND. */
function isPermissive(expression: string): boolean {
  return expression
    .replace(/[()]/g, '')
    .split(' OR ')
    .some((choice) => choice.split(' AND ').every((licence) => PERMISSIVE.includes(licence)))
}

describe('the packages that are not for development only', () => {
  const { packages } = JSON.parse(readFileSync('package-lock.json', 'utf8')) as Lock
  const shipped = Object.entries(packages).filter(([name, { dev }]) => name !== '' && dev !== true)

  it('are known', () => {
    expect(shipped.length).toBeGreaterThan(0)
  })

  it('are all under a permissive licence', () => {
    const others = shipped.filter(([, { license }]) => !isPermissive(license ?? 'none'))
    expect(others.map(([name, { license }]) => `${name}: ${license ?? 'none'}`)).toEqual([])
  })
})
