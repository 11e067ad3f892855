import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import { loadFunctions, type FunctionsHost } from './host'

/** Parameters by function: "?" may be left out, "[]" takes a range. A result "[]" spills. */
const CONTRACT: Readonly<Record<string, { readonly takes: string; readonly gives: string }>> = {
  ANSWER: { takes: 'question[]', gives: '[]' },
  EXCHANGES: { takes: 'question[]', gives: '[]' },
  TYPE: { takes: 'question[]', gives: '[]' },
  SKILLS: { takes: 'question[]', gives: '[]' },
  STRATEGY: { takes: 'question[]', gives: '[]' },
  STEPS: { takes: 'question', gives: '[]' },
  LAYOUT: { takes: 'question', gives: '[]' },
  MARK: { takes: 'questions[] typed[]', gives: '[]' },
  WHY: { takes: 'questions[] typed[]', gives: '[]' },
  MASTERY: { takes: 'questions[] typed[] by?', gives: '[]' },
  SUPPORT: { takes: 'questions[] typed[]', gives: '[]' },
  QUESTIONS: { takes: 'type topDigits bottomDigits count? seed? across?', gives: '[]' },
}

describe('functions.json', () => {
  let host: FunctionsHost
  beforeAll(async () => {
    host = await loadFunctions()
  })

  it('describes the twelve functions, with their parameters and shapes', () => {
    const described = host.functions.map(({ id, parameters, result }) => [
      id,
      {
        takes: parameters
          .map(
            ({ name, dimensionality, optional }) =>
              name + (dimensionality === 'matrix' ? '[]' : '') + (optional ? '?' : ''),
          )
          .join(' '),
        gives: result.dimensionality === 'matrix' ? '[]' : '',
      },
    ])
    expect(Object.fromEntries(described)).toEqual(CONTRACT)
  })

  it('has for each function what the client library has registered, under the same id', () => {
    expect(Object.keys(host.registered).sort()).toEqual(host.functions.map(({ id }) => id).sort())
    expect(host.functions.every(({ id, name }) => id === name)).toBe(true)
  })

  it('explains every function and every parameter in a sentence', () => {
    for (const { description, parameters } of host.functions)
      for (const text of [description, ...parameters.map((parameter) => parameter.description)])
        expect(text).toMatch(/^["A-Z].{10,}[^.]\.$/s)
  })

  it('makes no function volatile or streaming: the same arguments give the same result', () => {
    expect(host.functions.filter(({ options }) => options !== undefined)).toEqual([])
  })

  it('takes cells of any kind where questions and answers go in', () => {
    const ranges = host.functions
      .flatMap(({ parameters }) => parameters)
      .filter(({ dimensionality }) => dimensionality === 'matrix')
    expect(new Set(ranges.map(({ type }) => type))).toEqual(new Set(['any']))
  })
})

describe('the README’s formulas', () => {
  it('pass typed answers with &"", so that an empty cell is never 0, the right answer to 12 − 12', () => {
    const formulas = readFileSync('README.md', 'utf8').match(
      /=COLUMNWISE\.(?:MARK|WHY|MASTERY|SUPPORT)\([A-Z]+\d[^)]*\)/g,
    )
    expect(formulas).toHaveLength(4)
    for (const formula of formulas ?? []) expect(formula).toMatch(/, [A-Z]+\d+:[A-Z]+\d+&""\)$/)
  })
})
