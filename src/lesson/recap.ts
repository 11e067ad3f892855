import type { ExchangeType } from '../arithmetic/exchange'
import type { Question } from '../arithmetic/question'
import type { Kind } from '../items/kind'
import type { Recipe } from '../items/recipes'
import { generatorFrom } from '../items/seed'
import { drawSet } from '../items/sets'
import type { Status } from '../mastery/standing'
import { isNoHarder } from './grades'
import { earlierObjectives } from './objectives'
import { shuffled } from './random'

/** A type and how secure it is, of one pupil or, listed once for each pupil, of a class. */
export interface TypeStatus {
  readonly type: ExchangeType
  readonly status: Status
}

/** What speaks for a type in the recap, for a pupil with each status. */
const WEIGHTS: Readonly<Record<Status, number>> = {
  'needs support': 4,
  'nearly secure': 2,
  'not enough seen': 1,
  secure: 0,
}

/** The most types that a recap is narrowed down to. */
const MOST_TYPES = 4

/**
 * The types of an objective's recap in which a class is least secure, most first; those that the class is secure in, or of which
 * nothing is known, are none of them.
 */
export function leastSecure(recipe: Recipe, known: readonly TypeStatus[]): ExchangeType[] {
  const weighed = warmUps(recipe).flatMap(({ kind: { type } }) => {
    const found = known.filter((each) => each.type === type).map(({ status }) => WEIGHTS[status])
    const weight = found.reduce((sum, each) => sum + each, 0) / found.length
    return type === 'any' || found.length === 0 || weight < 1 ? [] : [{ type, weight }]
  })
  return weighed
    .sort((a, b) => b.weight - a.weight)
    .slice(0, MOST_TYPES)
    .map(({ type }) => type)
}

/** The earlier objectives that move no more tens and cross no more zeros than an objective itself. */
export function warmUps(recipe: Recipe): Recipe[] {
  const [tens, zeros] = demandOf(recipe.kind.type)
  return earlierObjectives(recipe).filter(({ kind }) => {
    const [otherTens, otherZeros] = demandOf(kind.type)
    return otherTens <= tens && otherZeros <= zeros
  })
}

/** The fewest tens that change hands in a type, and zeros that are crossed; of mixed questions what the hardest could demand. */
function demandOf(type: Kind['type']): readonly [tens: number, zeros: number] {
  if (type === 'any' || type === 'through two or more zeros') return [3, 2]
  if (type === 'through a zero') return [2, 1]
  return [['no', 'one', 'two', 'three'].findIndex((count) => type.startsWith(count)), 0]
}

/** How many questions of an earlier objective are looked at for one that is no harder than the practice. */
const CANDIDATES = 60

/**
 * Questions of earlier objectives, from easy to hard, in no way harder than the practice that they lead up to; of `types` only, where
 * any of them is a warm-up, otherwise of all. No objective comes twice before each has come. Fewer where there are no more.
 */
export function drawRecap({
  recipe,
  count,
  types,
  practice,
  seed,
  avoid,
}: {
  readonly recipe: Recipe
  readonly count: number
  readonly types: readonly ExchangeType[]
  readonly practice: readonly Question[]
  readonly seed: string | number
  readonly avoid: readonly Question[]
}): Question[] {
  const all = warmUps(recipe)
  const wanted = all.filter(({ kind }) => types.some((type) => type === kind.type))
  const generator = generatorFrom(`${seed} recap`)
  const used = [...avoid]
  const chosen: { readonly at: number; readonly question: Question }[] = []
  let left: readonly Recipe[] = wanted.length > 0 ? wanted : all
  while (chosen.length < count && left.length > 0) {
    const found: Recipe[] = []
    for (const each of shuffled(left, generator)) {
      if (chosen.length === count) break
      const candidates = upTo(CANDIDATES, each.kind, `${seed} recap ${chosen.length}`, used)
      const question = candidates.find((candidate) => isNoHarder(candidate, practice))
      if (!question) continue
      used.push(question)
      chosen.push({ at: all.indexOf(each), question })
      found.push(each)
    }
    left = found
  }
  return chosen.sort((a, b) => a.at - b.at).map(({ question }) => question)
}

/** As many questions of a kind as there are, up to a number; none where there is none. */
export function upTo(
  count: number,
  kind: Kind,
  seed: string | number,
  avoid: readonly Question[],
): readonly Question[] {
  const drawn = drawSet({ kind, count, seed, avoid })
  if (!('problem' in drawn)) return drawn.questions
  return drawn.available > 0n && drawn.available < BigInt(count)
    ? upTo(Number(drawn.available), kind, seed, avoid)
    : []
}
