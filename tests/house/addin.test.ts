import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { gzipSync } from 'node:zlib'
import { describe, expect, inject, it } from 'vitest'
import { buildAddin, HOST } from '../setup/builds'
import { addinProblems, type ReadFile } from './addin'

const FUNCTIONS_SCRIPT_LIMIT = 40_000

const { hosted, local } = inject('builds')

function reader(folder: string): ReadFile {
  return (name) => {
    const file = path.join(folder, name)
    return existsSync(file) ? readFileSync(file) : undefined
  }
}

const read = reader(hosted)

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

describe('the built add-in', () => {
  it('is valid', () => {
    expect(addinProblems(read)).toEqual([])
  })

  it('names the address that it was built for, and no other, in its manifest', () => {
    const hosts = Array.from(textOf('manifest.xml').matchAll(/https:\/\/([^/"<]+)/g), ([, host]) => host)
    expect(new Set(hosts)).toEqual(new Set(['school.example']))
    expect(textOf('manifest.xml')).toContain(`${HOST}/taskpane.html`)
  })

  it('has the version of the package', () => {
    const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string }
    expect(textOf('manifest.xml')).toContain(`<Version>${version}.0</Version>`)
  })

  it('asks for the client library at its only supported address', () => {
    expect(textOf('taskpane.html')).toContain('"https://appsforoffice.microsoft.com/lib/1/hosted/office.js"')
  })

  it('carries the client library unmodified, with its licence, where that is asked for', () => {
    const inFolder = reader(local)
    const library = path.resolve('node_modules/@microsoft/office-js')
    expect(addinProblems(inFolder)).toEqual([])
    expect(inFolder('taskpane.html')?.toString('utf8')).toContain('"office/office.js"')
    for (const name of ['office.js', 'excel-win32-16.01.js', 'excel-web-16.00.js', 'en-gb/office_strings.js'])
      expect(inFolder(`office/${name}`)?.equals(readFileSync(path.join(library, 'dist', name)))).toBe(true)
    expect(inFolder('office/LICENSE.md')?.equals(readFileSync(path.join(library, 'LICENSE.md')))).toBe(true)
  })

  it.each([
    ['base=http://school.example', /must begin with https/],
    ['base=school', /must begin with https/],
    ['officejs=mine', /choose hosted \(the default\) or local/],
  ])('is not built with --env %s, and the reason is told', async (env, reason) => {
    await expect(buildAddin(path.resolve('.cache/builds/refused'), env)).rejects.toThrow(reason)
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

describe('npm run validate', () => {
  const validate = (folder: string) =>
    spawnSync(process.execPath, ['node_modules/tsx/dist/cli.mjs', 'tests/house/validate.ts', folder], {
      encoding: 'utf8',
    })

  it('says that a valid folder is valid, exit code 0', () => {
    const { status, stdout } = validate(hosted)
    expect([status, stdout.trim()]).toEqual([
      0,
      `${hosted}: the manifest and the files that it names are valid.`,
    ])
  })

  it('says what is wrong with any other, exit code 1', () => {
    const { status, stderr } = validate(path.dirname(hosted))
    expect([status, stderr.trim()]).toEqual([1, 'manifest.xml is missing. Run "npm run build" first.'])
  })
})
