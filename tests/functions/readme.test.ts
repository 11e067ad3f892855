import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import { loadFunctions, type FunctionsHost } from './host'

/** A row of the README's reference: a function's signature, an example and what it gives. */
interface Row {
  readonly name: string
  readonly parameters: string
  readonly example: string
  readonly gives: string
}

const ROW =
  /^\| `(?<name>[A-Z]+)\((?<parameters>[^)]*)\)` \| .+? \| `=COLUMNWISE\.(?<example>.+)` \| `(?<gives>.*)` \|$/

const rows = readFileSync('README.md', 'utf8')
  .split('\n')
  .flatMap((line): Row[] => {
    const { groups } = ROW.exec(line) ?? {}
    return groups ? [groups as unknown as Row] : []
  })

/** The arguments of a formula over constants: texts, numbers, TRUE and arrays. */
function argumentsOf(formula: string): unknown[] {
  const list = formula.slice(formula.indexOf('(') + 1, -1)
  const json = list
    .split('"')
    .map((part, index) =>
      index % 2 === 1
        ? part
        : part.replaceAll('{', '[[').replaceAll('}', ']]').replaceAll(';', '],[').replaceAll('TRUE', 'true'),
    )
    .join('"')
  return JSON.parse(`[${json}]`) as unknown[]
}

/** What a formula gives, as it would be read off the cells. */
const shown = (value: unknown): string =>
  (Array.isArray(value) ? (value as unknown[][]) : [[value]])
    .map((row) => row.map((cell) => (typeof cell === 'boolean' ? String(cell).toUpperCase() : String(cell))))
    .map((row) => row.join(', '))
    .join('; ')

describe('the README’s reference', () => {
  let host: FunctionsHost
  beforeAll(async () => {
    host = await loadFunctions()
  })

  it('has every function with its parameters, those in brackets that may be left out, as functions.json has them', () => {
    expect(rows.map(({ name, parameters }) => `${name}(${parameters})`)).toEqual(
      host.functions.map(
        ({ id, parameters }) =>
          `${id}(${parameters.map(({ name, optional }) => (optional ? `[${name}]` : name)).join(', ')})`,
      ),
    )
  })

  it.each(rows.map((row) => [row.name, row] as const))(
    '%s gives what its example says',
    async (name, row) => {
      const ranged = host.functions
        .find(({ id }) => id === name)
        ?.parameters.map(({ dimensionality }) => dimensionality)
      const args = argumentsOf(row.example).map((passed, index) =>
        ranged?.[index] === 'matrix' && !Array.isArray(passed) ? [[passed]] : passed,
      )
      const { value } = await host.call(name, ...args)
      expect(row.example.startsWith(`${name}(`)).toBe(true)
      const [start = '', rest] = row.gives.split('…')
      expect(shown(value).slice(0, rest === undefined ? undefined : start.length)).toBe(start)
    },
  )
})
