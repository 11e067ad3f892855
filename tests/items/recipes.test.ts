import { describe, expect, it } from 'vitest'
import { workOut } from '../../src/arithmetic/columns'
import { ADDITION_TYPES, exchangesOf, SUBTRACTION_TYPES } from '../../src/arithmetic/exchange'
import { takeCensus } from '../../src/items/census'
import { digitChoices, problemOfKind, type Kind } from '../../src/items/kind'
import { RECIPES, recipesFor, type Recipe } from '../../src/items/recipes'
import { RUNGS } from '../../src/items/rungs'
import { drawGradedSet, drawSet } from '../../src/items/sets'

const title = ({ year, topic, operation, name }: Recipe) => `Year ${year}, ${topic}, ${operation}: ${name}`

describe('every recipe', () => {
  it.each(RECIPES.map((recipe) => [title(recipe), recipe] as const))('%s', (_, { kind, objective }) => {
    expect(problemOfKind(kind)).toBeNull()
    expect(takeCensus(kind).count).toBeGreaterThan(1000n)
    expect(objective).toMatch(/^I can [^.]+\.$/)
    const set = drawSet({ kind, count: 30, seed: 1 })
    if ('problem' in set) throw new Error(set.problem)
    for (const { calculation } of set.questions) {
      if (kind.type === 'any') continue
      expect(exchangesOf(workOut(calculation)).type).toBe(kind.type)
      expect(calculation.bottom.digits).not.toContain(0)
    }
  })

  it('has a title of its own', () => {
    expect(new Set(RECIPES.map(title)).size).toBe(RECIPES.length)
  })
})

/** National curriculum in England, mathematics programmes of study (Department for Education, 2013), read in copies. */
describe('the years', () => {
  const longest = ({ kind }: Recipe) => Math.max(...[kind.topDigits, kind.bottomDigits].flatMap(digitChoices))
  const decimals = ({ kind }: Recipe) => Math.max(kind.topDecimals ?? 0, kind.bottomDecimals ?? 0)
  const ofYear = (year: number) => RECIPES.filter((recipe) => recipe.year === year)

  it('Year 3: up to three digits, no decimals', () => {
    expect(Math.max(...ofYear(3).map(longest))).toBe(3)
    expect(Math.max(...ofYear(3).map(decimals))).toBe(0)
  })
  it('Year 4: up to four digits, decimals to two places, pounds and pence', () => {
    expect(Math.max(...ofYear(4).map(longest))).toBe(4)
    expect(Math.max(...ofYear(4).map(decimals))).toBe(2)
    expect(ofYear(4).some(({ kind }) => kind.unit === '£')).toBe(true)
  })
  it('Year 5: more than four digits, decimals to three places', () => {
    expect(Math.max(...ofYear(5).map(longest))).toBeGreaterThan(4)
    expect(Math.max(...ofYear(5).map(decimals))).toBe(3)
  })
})

describe('a ladder', () => {
  it('runs from easy to hard: a graded set in its order stays in its order', () => {
    for (const year of [3, 4, 5] as const)
      for (const operation of ['add', 'subtract'] as const) {
        const recipes = recipesFor(year, operation)
        const topics = new Set(recipes.map(({ topic }) => topic))
        expect(topics.size).toBeGreaterThan(2)
        for (const topic of topics) {
          const ladder = recipes.filter((recipe) => recipe.topic === topic)
          const kinds = ladder.map(({ kind }) => kind).filter(({ type }) => type !== 'any')
          const shortest = kinds.map((kind): Kind => ({
            ...kind,
            topDigits: Math.max(...digitChoices(kind.topDigits)),
            bottomDigits: Math.max(...digitChoices(kind.bottomDigits)),
          }))
          const set = drawGradedSet({ parts: shortest.map((kind) => ({ kind, count: 2 })), seed: 1 })
          if ('problem' in set) throw new Error(set.problem)
          const types = set.questions.map(({ calculation }) => exchangesOf(workOut(calculation)).type)
          expect(types).toEqual(kinds.flatMap(({ type }) => [type, type]))
          expect(ladder.at(-1)?.kind.type).toBe('any')
        }
      }
  })

  it('has a rung for every type that numbers of one length can be of', () => {
    for (const topic of [
      'Three-digit numbers',
      'Four-digit numbers',
      'Five-digit numbers',
      'Pounds and pence',
    ]) {
      const own = RECIPES.filter((recipe) => recipe.topic === topic)
      const [first] = own
      if (!first) throw new Error(`${topic} is no topic`)
      for (const [operation, types] of [
        ['add', ADDITION_TYPES],
        ['subtract', SUBTRACTION_TYPES],
      ] as const) {
        const numbers: Kind = { ...first.kind, operation, type: 'any' }
        const possible = types.filter((type) => takeCensus({ ...numbers, type }).count > 0n)
        const asked = own.filter((recipe) => recipe.operation === operation).map(({ kind }) => kind.type)
        expect([topic, ...asked.slice(0, -1).sort()]).toEqual([topic, ...possible.sort()])
      }
    }
  })

  it('has words for every type', () => {
    expect(Object.keys(RUNGS).sort()).toEqual([...SUBTRACTION_TYPES, ...ADDITION_TYPES].sort())
  })
})
