import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import ts from 'typescript'
import { describe, expect, it } from 'vitest'
import { isAtLeast, memberUses } from './requirementSets'

const OPTIONS: ts.CompilerOptions = {
  target: ts.ScriptTarget.ES2022,
  module: ts.ModuleKind.ESNext,
  moduleResolution: ts.ModuleResolutionKind.Bundler,
  jsx: ts.JsxEmit.ReactJSX,
  types: ['office-js', 'custom-functions-runtime'],
  skipLibCheck: true,
  noEmit: true,
}

/** The sets that the manifest asks for, with their least versions. */
const asked = new Map(
  [...readFileSync('manifest.xml', 'utf8').matchAll(/<(?:bt:)?Set Name="(\w+)" MinVersion="([\d.]+)"/g)].map(
    ([, name = '', version = '']) => [name, version],
  ),
)
const sourcesIn = (folder: string) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.tsx?$/.test(file) && !file.endsWith('.d.ts'))
    .map((file) => join(folder, file))

describe('requirement sets', () => {
  it('of every Office.js member that the add-in uses are asked for by the manifest, or asked about before', () => {
    const uses = memberUses([...sourcesIn('src/office'), ...sourcesIn('taskpane')], OPTIONS)
    expect(uses.length).toBeGreaterThan(50)
    const beyond = uses.filter(
      ({ set, version, guarded }) => !guarded && !isAtLeast(asked.get(set) ?? '0', version),
    )
    expect(
      beyond.map(({ member, set, version, place }) => `${member} needs ${set} ${version} (${place})`),
    ).toEqual([])
  })

  it('are told from the library’s own documentation: a use beyond them is found, a guarded one is told', () => {
    const folder = mkdtempSync(join(process.cwd(), '.requirement-sets-'))
    try {
      const file = join(folder, 'use.ts')
      const use =
        'export const areas = (sheet: Excel.Worksheet, range: Excel.Range) => [sheet.getRanges("A1,B2"), range.values]'
      writeFileSync(file, use)
      expect(
        memberUses([file], OPTIONS).map(({ member, set, version, guarded }) => [
          member,
          set,
          version,
          guarded,
        ]),
      ).toEqual([
        ['Worksheet.getRanges', 'ExcelApi', '1.9', false],
        ['Range.values', 'ExcelApi', '1.1', false],
      ])
      writeFileSync(
        file,
        `if (Office.context.requirements.isSetSupported('ExcelApi', '1.9')) console.log()\n${use}`,
      )
      expect(memberUses([file], OPTIONS).every(({ set, guarded }) => set !== 'ExcelApi' || guarded)).toBe(
        true,
      )
    } finally {
      rmSync(folder, { recursive: true })
    }
  })

  it('compare by their parts', () => {
    expect([
      isAtLeast('1.10', '1.9'),
      isAtLeast('1.9', '1.10'),
      isAtLeast('1.9', '1.9'),
      isAtLeast('1.1', '1.1'),
    ]).toEqual([true, false, true, true])
  })
})
