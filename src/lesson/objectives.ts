import type { ExchangeType } from '../arithmetic/exchange'
import { RECIPES, type Recipe, type Year } from '../items/recipes'
import { TEACHING_ORDER } from '../mastery/support'

/** The recipes of one topic and operation, from easy to hard; the last is mixed. */
export function ladderOf({ year, topic, operation }: Recipe): Recipe[] {
  return RECIPES.filter(
    (other) => other.year === year && other.topic === topic && other.operation === operation,
  )
}

/**
 * The objectives that come before one, a recipe for each of their types, from easy to hard: those of earlier years, and of its
 * own year those no later in topic and earlier in teaching order. Of several recipes for a type the nearest before counts. The
 * objective's own type is none of them, and before whole numbers come whole numbers only, without pence.
 */
export function earlierObjectives(recipe: Recipe): Recipe[] {
  const last = RECIPES.findLastIndex(({ year, topic }) => year === recipe.year && topic === recipe.topic)
  const rank = rankOf(recipe)
  const before = RECIPES.filter(
    (other, index) =>
      (isPlain(other) || !isPlain(recipe)) &&
      (other.year < recipe.year || (index <= last && rankOf(other) < rank)),
  )
  return TEACHING_ORDER.filter((type) => type !== recipe.kind.type).flatMap(
    (type) => before.findLast(({ kind }) => kind.type === type) ?? [],
  )
}

function isPlain({ kind: { unit = '', topDecimals = 0, bottomDecimals = 0 } }: Recipe): boolean {
  return unit === '' && topDecimals + bottomDecimals === 0
}

/** A recipe for a type in a year: the year's first, else the nearest of an earlier year, else the first of a later one. */
export function recipeFor(type: ExchangeType, year: Year): Recipe {
  const all = RECIPES.filter(({ kind }) => kind.type === type)
  const found =
    all.find((recipe) => recipe.year === year) ?? all.findLast((recipe) => recipe.year < year) ?? all[0]
  if (!found) throw new RangeError(`There is no recipe for “${type}”.`)
  return found
}

/** The place of a recipe's type in teaching order; a mixed one comes after the last of its ladder. */
function rankOf(recipe: Recipe): number {
  const { type } = recipe.kind
  if (type !== 'any') return TEACHING_ORDER.indexOf(type)
  return (
    Math.max(
      ...ladderOf(recipe).map(({ kind }) => (kind.type === 'any' ? -1 : TEACHING_ORDER.indexOf(kind.type))),
    ) + 0.5
  )
}
