import { pathToFileURL } from 'node:url'
import { uniformInt } from 'pure-rand/distribution/uniformInt'
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator'
import { workOut } from '../../src/arithmetic/columns'
import { exchangesOf } from '../../src/arithmetic/exchange'
import { wholeNumeral } from '../../src/arithmetic/numeral'
import { takeCensus } from '../../src/items/census'
import type { Kind } from '../../src/items/kind'
import { RECIPES, type Recipe } from '../../src/items/recipes'
import { generatorFrom } from '../../src/items/seed'
import { drawSet } from '../../src/items/sets'

const QUESTIONS = 30
const ROUNDS = 7
/** How many times faster than rejection sampling the rarest kind is to be drawn. */
const GOAL = 20

type WholeRecipe = Recipe & {
  readonly kind: Kind & { readonly topDigits: number; readonly bottomDigits: number }
}

/** Recipes whose numbers are whole and of one length each, which rejection sampling draws most simply. */
function isWhole(recipe: Recipe): recipe is WholeRecipe {
  const { topDigits, bottomDigits, topDecimals = 0 } = recipe.kind
  return typeof topDigits === 'number' && typeof bottomDigits === 'number' && topDecimals === 0
}

/** How many of the pairs of such numbers, the smaller not on top, are of the kind. */
function shareOf({ kind }: WholeRecipe): number {
  const { operation, topDigits, bottomDigits } = kind
  const all = takeCensus({ operation, type: 'any', topDigits, bottomDigits }).count
  return Number(takeCensus(kind).count) / Number(all)
}

const numberOf = (generator: RandomGenerator, digits: number) =>
  uniformInt(generator, 10 ** (digits - 1), 10 ** digits - 1)

/** Draws pairs until enough different ones are of the kind. Returns how many had to be drawn. */
function drawByRejection(
  { operation, topDigits, bottomDigits }: WholeRecipe['kind'],
  isOfKind: (top: number, bottom: number) => boolean,
  seed: number,
): number {
  const generator = generatorFrom(seed)
  const found = new Set<number>()
  let tries = 0
  while (found.size < QUESTIONS) {
    tries++
    const [top, bottom] = [numberOf(generator, topDigits), numberOf(generator, bottomDigits)]
    if (operation === 'subtract' && bottom > top) continue
    if (isOfKind(top, bottom)) found.add(top * 10 ** bottomDigits + bottom)
  }
  return tries
}

/** The check that a program has at hand: work the question out and classify it. */
function byWorkingOut({ operation, type, answerDigits }: Kind) {
  const answers = [answerDigits ?? []].flat()
  return (top: number, bottom: number) => {
    const written = workOut({ operation, top: wholeNumeral(top), bottom: wholeNumeral(bottom) })
    return (
      exchangesOf(written).type === type &&
      !written.calculation.bottom.digits.includes(0) &&
      (answers.length === 0 || answers.includes(written.answer.digits.length))
    )
  }
}

/** Milliseconds of the middle one of several rounds, after one to warm up. */
function timeOf(draw: (seed: number) => unknown): number {
  const times = Array.from({ length: ROUNDS + 1 }, (_, seed) => {
    const start = performance.now()
    draw(seed)
    return performance.now() - start
  })
  return times.slice(1).sort((a, b) => a - b)[Math.floor(ROUNDS / 2)] ?? NaN
}

/**
 * Times the drawing of a set of the rarest recipe, its census included, beside rejection sampling of the same set in the same
 * run, and beside the commonest recipe.
 */
export async function drawing(): Promise<{ name: string; lines: string[]; met: boolean }> {
  const graded = RECIPES.filter(isWhole)
    .filter(({ kind }) => kind.type !== 'any')
    .map((recipe) => ({ recipe, share: shareOf(recipe) }))
    .sort((a, b) => a.share - b.share)
  const [rarest, commonest] = [graded[0], graded.at(-1)]
  if (!rarest || !commonest) throw new Error('There are no recipes to draw.')

  const draw = ({ kind }: Recipe) => timeOf((seed) => drawSet({ kind, count: QUESTIONS, seed }))
  const ours = draw(rarest.recipe)
  const common = draw(commonest.recipe)
  const longest = draw({
    ...rarest.recipe,
    kind: { ...rarest.recipe.kind, topDigits: 15, bottomDigits: 15, answerDigits: 15 },
  })
  let tries = 0
  const rejected = timeOf((seed) => {
    tries = drawByRejection(rarest.recipe.kind, byWorkingOut(rarest.recipe.kind), seed)
  })
  const times = rejected / ours
  const describe = ({ recipe, share }: typeof rarest) =>
    `Year ${recipe.year}, ${recipe.topic}, ${recipe.name} (${(100 * share).toFixed(2)} % of all pairs)`
  return {
    name: 'Drawing',
    lines: [
      `${QUESTIONS} questions of the rarest recipe, ${describe(rarest)}: ${ours.toFixed(2)} ms`,
      `the same by rejection sampling, ${tries} pairs drawn: ${rejected.toFixed(2)} ms, ${times.toFixed(0)} times as long (goal ${GOAL})`,
      `${QUESTIONS} of the commonest, ${describe(commonest)}: ${common.toFixed(2)} ms`,
      `${QUESTIONS} of the rarest type at 15 digits: ${longest.toFixed(2)} ms`,
    ],
    met: times >= GOAL,
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const { name, lines, met } = await drawing()
  console.log([name, ...lines, met ? 'goal met' : 'goal missed'].join('\n'))
}
