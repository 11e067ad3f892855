import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, inject, it } from 'vitest'
import { policyOf, unsafeUses } from './safety'

const folder = inject('builds').local
const MICROSOFT = 'https://appsforoffice.microsoft.com'

const built = (name: string) => readFileSync(path.join(folder, name), 'utf8')
const sourcesIn = (root: string) =>
  readdirSync(root, { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.tsx?$/.test(file))
    .map((file) => path.join(root, file))
    .filter((file) => !file.startsWith(path.join('src', 'bench')))

describe('nothing is stored or sent outside the workbook', () => {
  it('by our own sources: none stores, sends, or runs text as a program', () => {
    const sources = [...sourcesIn('src'), ...sourcesIn('taskpane')]
    expect(sources.length).toBeGreaterThan(150)
    expect(sources.flatMap((file) => unsafeUses(file, readFileSync(file, 'utf8')))).toEqual([])
  })

  it('by the built scripts, what they take from libraries included', () => {
    const scripts = readdirSync(folder).filter((file) => file.endsWith('.js'))
    expect(scripts).toContain('taskpane.js')
    const names =
      /\b(?:localStorage|sessionStorage|indexedDB|cookieStore|serviceWorker|XMLHttpRequest|sendBeacon|WebSocket|EventSource|RTCPeerConnection)\b|document\.cookie|\bfetch\(|\beval\(|new Function\b/g
    expect(
      scripts.flatMap((file) => [...built(file).matchAll(names)].map(([name]) => `${name} in ${file}`)),
    ).toEqual([])
  })

  it('and a source that does is found, whether it calls or hands on what it uses', () => {
    const uses = unsafeUses(
      'use.tsx',
      'const keep = window.localStorage; keep.a = 1\nconst send = () => fetch("/x")\nconst run = globalThis["x"] ?? eval\n// fetch\nconst word = "fetch"',
    )
    expect(uses).toEqual(['localStorage (use.tsx:1)', 'fetch (use.tsx:2)', 'eval (use.tsx:3)'])
  })
})

describe.each(['taskpane.html', 'handout.html', 'projector.html', 'privacy.html'])(
  'the policy of %s',
  (page) => {
    const policy = () =>
      policyOf(readFileSync(path.join('taskpane', page), 'utf8')) ?? new Map<string, readonly string[]>()

    it('allows nothing that it does not name, and nothing to be sent elsewhere', () => {
      expect(policy().get('default-src')).toEqual(["'none'"])
      expect(policy().get('base-uri')).toEqual(["'none'"])
      expect(policy().get('form-action')).toEqual(["'none'"])
      expect(policy().get('connect-src') ?? ["'self'"]).toEqual(["'self'"])
    })

    it('lets no text run as a program: scripts are files, of the add-in’s own address or Microsoft’s', () => {
      for (const source of policy().get('script-src') ?? []) expect(["'self'", MICROSOFT]).toContain(source)
      const text = readFileSync(path.join('taskpane', page), 'utf8')
      expect(text.match(/<script(?![^>]*\ssrc=)|\son\w+=|javascript:/g)).toBeNull()
    })

    it('says nothing of who may frame it, which a page itself cannot and Excel must', () => {
      expect(policy().has('frame-ancestors')).toBe(false)
    })
  },
)

describe('the built pages', () => {
  it('name no address but their own where the client library is carried along', () => {
    expect(policyOf(built('taskpane.html'))?.get('script-src')).toEqual(["'self'"])
    for (const page of ['taskpane.html', 'handout.html', 'projector.html', 'privacy.html'])
      expect(built(page)).not.toMatch(/https?:\/\//)
  })

  it('come with the settings for a web server, hidden file and all', () => {
    expect(built('.htaccess')).toBe(readFileSync('taskpane/server/.htaccess', 'utf8'))
    expect(built('web.config')).toBe(readFileSync('taskpane/server/web.config', 'utf8'))
  })

  it('come with a privacy page, which the manifest names', () => {
    expect(built('manifest.xml')).toMatch(/<SupportUrl DefaultValue="[^"]*\/privacy\.html"/)
    expect(built('privacy.html')).toContain('Nothing by Columnwise’s doing.')
  })
})

describe('the changes', () => {
  it('begin with the version of the package', () => {
    const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string }
    expect(/^## (\S+)/m.exec(readFileSync('CHANGELOG.md', 'utf8'))?.[1]).toBe(version)
  })
})

describe('the notices of what is bundled', () => {
  const notices = () =>
    built('THIRD-PARTY-NOTICES.txt')
      .split(`\n${'-'.repeat(80)}\n`)
      .slice(1)

  it('name every package with its version, its licence and the licence’s text', () => {
    const { packages } = JSON.parse(readFileSync('package-lock.json', 'utf8')) as {
      packages: Record<string, { version?: string; license?: string }>
    }
    expect(notices().length).toBeGreaterThan(20)
    for (const notice of notices()) {
      const [, name = '', version, licence] = /^(\S+) (\S+), (.+)\n/.exec(notice) ?? []
      const locked = Object.entries(packages).filter(([folder]) => folder.endsWith(`node_modules/${name}`))
      expect(locked.map(([, { version: each, license }]) => [each, license])).toContainEqual([
        version,
        licence,
      ])
      expect(notice, name).toMatch(/permission|licen[cs]e/i)
      expect(notice.length, name).toBeGreaterThan(500)
    }
  })

  it('leave out no package whose name stands in a comment that the build keeps', () => {
    const names = notices().map((notice) => notice.split(' ')[0])
    const kept = readdirSync(folder)
      .filter((file) => file.endsWith('.LICENSE.txt'))
      .map(built)
      .join()
    for (const name of ['react', 'react-dom', 'scheduler']) {
      expect(kept).toContain(name)
      expect(names).toContain(name)
    }
    expect(names).toContain('@fluentui/react-components')
  })
})
