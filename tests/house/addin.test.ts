import { execFileSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { gzipSync } from 'node:zlib'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { addinProblems, type ReadFile } from './addin'

const ADDRESS = 'https://school.example/columnwise'
const FUNCTIONS_SCRIPT_LIMIT = 40_000

const folder = mkdtempSync(path.join(tmpdir(), 'columnwise-'))

const read: ReadFile = (name) => {
  const file = path.join(folder, name)
  return existsSync(file) ? readFileSync(file) : undefined
}

function textOf(name: string): string {
  return read(name)?.toString('utf8') ?? ''
}

/** The built add-in with the text of one file changed, or the file left out. */
function changed(name: string, change: (text: string) => string | undefined): ReadFile {
  return (asked) => {
    if (asked !== name) return read(asked)
    const text = change(textOf(name))
    return text === undefined ? undefined : Buffer.from(text)
  }
}

/** A change that must take effect, so that no check passes because the manifest was reworded. */
function replacing(from: string | RegExp, to: string): (text: string) => string {
  return (text) => {
    const result = text.replace(from, to)
    if (result === text) throw new Error(`${String(from)} is not in the file.`)
    return result
  }
}

beforeAll(() => {
  const webpack = ['webpack', '--mode', 'production', '--env', `base=${ADDRESS}`, '--output-path', folder]
  execFileSync('npx', webpack, { stdio: 'pipe' })
})

afterAll(() => {
  rmSync(folder, { recursive: true })
})

describe('the built add-in', () => {
  it('is valid', () => {
    expect(addinProblems(read)).toEqual([])
  })

  it('names the address that it was built for, and no other, in its manifest', () => {
    const hosts = Array.from(textOf('manifest.xml').matchAll(/https:\/\/([^/"<]+)/g), ([, host]) => host)
    expect(new Set(hosts)).toEqual(new Set(['school.example']))
    expect(textOf('manifest.xml')).toContain(`${ADDRESS}/taskpane.html`)
  })

  it('has the version of the package', () => {
    const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string }
    expect(textOf('manifest.xml')).toContain(`<Version>${version}.0</Version>`)
  })

  it('asks for the client library at its only supported address', () => {
    expect(textOf('taskpane.html')).toContain('"https://appsforoffice.microsoft.com/lib/1/hosted/office.js"')
  })

  it('keeps the script of the functions at 40 kB gzipped or less, and React out of it', () => {
    expect(gzipSync(textOf('functions.js')).length).toBeLessThanOrEqual(FUNCTIONS_SCRIPT_LIMIT)
    expect(textOf('functions.js')).not.toMatch(/react/i)
  })
})

describe('a broken add-in is told from a valid one', () => {
  const manifests: [string, string | RegExp, string, RegExp][] = [
    ['a tag that is not closed', '</Hosts>', '', /not well-formed/],
    [
      'elements in the wrong order',
      /(<Id>.*<\/Id>)\s*(<Version>.*<\/Version>)/,
      '$2$1',
      /OfficeApp\/Id comes too late/,
    ],
    [
      'a child in the wrong order',
      /(<Script>[^]*<\/Script>)\s*(<Page>[^]*<\/Page>)/,
      '$2$1',
      /Script comes too late/,
    ],
    ['a missing part', /<ProviderName>.*<\/ProviderName>/, '', /must hold ProviderName/],
    ['a part twice', /(<Permissions>.*<\/Permissions>)/, '$1$1', /holds Permissions more than once/],
    ['an unknown element', '<Permissions>', '<Colour>blue</Colour><Permissions>', /cannot hold Colour/],
    ['an unknown type', 'xsi:type="ShowTaskpane"', 'xsi:type="ShowPane"', /unknown xsi:type "ShowPane"/],
    [
      'a wrong namespace',
      '/taskpaneappversionoverrides"',
      '/mailappversionoverrides"',
      /must be in the namespace/,
    ],
    ['an Id that is no GUID', /<Id>.*<\/Id>/, '<Id>columnwise</Id>', /Id must be a GUID/],
    [
      'a version that is none',
      /<Version>.*<\/Version>/,
      '<Version>1.0-beta</Version>',
      /Version must be four numbers/,
    ],
    ['an unknown permission', 'ReadWriteDocument', 'ReadWriteAll', /Permissions must be one of/],
    [
      'a description that is too long',
      /Description DefaultValue="/,
      `$&${'x'.repeat(250)}`,
      /1 to 250 characters/,
    ],
    [
      'a label that is too long',
      /"OpenPane.Label" DefaultValue="/,
      `$&${'x'.repeat(125)}`,
      /1 to 125 characters/,
    ],
    [
      'an address without https',
      /IconUrl DefaultValue="https:/,
      'IconUrl DefaultValue="http:',
      /an https address/,
    ],
    [
      'a resid that is defined nowhere',
      'Label resid="Group.Label"',
      'Label resid="Group.Name"',
      /not defined under ShortStrings/,
    ],
    [
      'a resid of another kind',
      'Label resid="Group.Label"',
      'Label resid="Taskpane.Url"',
      /not defined under ShortStrings/,
    ],
    [
      'a resource that nothing uses',
      '<bt:LongStrings>',
      '$&<bt:String id="Spare" DefaultValue="x" />',
      /Spare is never used/,
    ],
    [
      'a resource defined twice',
      '<bt:LongStrings>',
      '$&<bt:String id="OpenPane.Label" DefaultValue="x" />',
      /defined twice/,
    ],
    [
      'a resid that is too long',
      /GetStarted.Title/g,
      'GetStarted.Title.That.Is.Much.Too.Long',
      /more than 32 characters/,
    ],
    ['an icon without a size', '<bt:Image size="80" resid="Icon.80" />', '', /no image of size 80/],
    [
      'an icon of the wrong size',
      'size="64" resid="Icon.64"',
      'size="64" resid="Icon.80"',
      /must be 64 × 64/,
    ],
    ['a runtime that ends', 'lifetime="long"', 'lifetime="short"', /lifetime "long"/],
    ['a missing requirement set', /<Set Name="SharedRuntime".*\/>/, '', /SharedRuntime is missing/],
    [
      'another page for the functions',
      /<Page>\s*<SourceLocation resid="Taskpane.Url"/,
      '<Page><SourceLocation resid="Functions.Script.Url"',
      /not the page of the shared runtime/,
    ],
    [
      'a file that is not there',
      'functions.json"',
      'metadata.json"',
      /metadata.json is named in the manifest/,
    ],
    [
      'a file elsewhere',
      /"https:\/\/school.example\/columnwise\/functions.js"/,
      '"https://other.example/functions.js"',
      /does not begin with/,
    ],
  ]

  it.each(manifests)('%s', (_, from, to, problem) => {
    const problems = addinProblems(changed('manifest.xml', replacing(from, to)))
    expect(problems.filter((sentence) => problem.test(sentence))).not.toEqual([])
  })

  const files: [string, string, (text: string) => string | undefined, RegExp][] = [
    ['no manifest', 'manifest.xml', () => undefined, /Run "npm run build" first/],
    ['no page', 'taskpane.html', () => undefined, /taskpane.html is/],
    ['a picture that is none', 'assets/icon-80.png', () => 'GIF89a', /icon-80.png is not a PNG/],
    [
      'a page without the client library',
      'taskpane.html',
      replacing(/<script src="https.*<\/script>/, ''),
      /office.js before/,
    ],
    [
      'a page without the functions',
      'taskpane.html',
      replacing('"functions.js"', '"other.js"'),
      /must load functions.js/,
    ],
    [
      'a page with a missing script',
      'taskpane.html',
      replacing('"taskpane.js"', '"pane.js"'),
      /pane.js is loaded/,
    ],
    ['metadata that is not JSON', 'functions.json', () => '{', /cannot be read/],
    [
      'a function that is not associated',
      'functions.json',
      replacing('"id": "ANSWER"', '"id": "REPLY"'),
      /REPLY is in functions.json/,
    ],
    [
      'a function without metadata',
      'functions.js',
      (text) => `${text};CustomFunctions.associate("MORE",()=>1)`,
      /MORE is associated/,
    ],
    [
      'a script that fails',
      'functions.js',
      (text) => `${text};throw new Error("broken")`,
      /cannot be read: .*broken/,
    ],
    [
      'a parameter without help',
      'functions.json',
      replacing(/"description": "A question[^\n]*\n/, ''),
      /question of \w+ has no description/,
    ],
  ]

  it.each(files)('%s', (_, name, change, problem) => {
    const problems = addinProblems(changed(name, change))
    expect(problems.filter((sentence) => problem.test(sentence))).not.toEqual([])
  })
})
