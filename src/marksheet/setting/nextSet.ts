import { answerWith, FAULTS, type FaultId } from '../../answers/faults'
import { reachOf } from '../../answers/diagnosis'
import { workOut } from '../../arithmetic/columns'
import { exchangesOf, type ExchangeType } from '../../arithmetic/exchange'
import { familyOf } from '../../arithmetic/families'
import { numeralText, wholeDigits, type Numeral } from '../../arithmetic/numeral'
import type { Operation, Question } from '../../arithmetic/question'
import type { Kind } from '../../items/kind'
import { RECIPES, type Year } from '../../items/recipes'
import { drawSet, type Choice } from '../../items/sets'
import { FEWEST_TO_JUDGE, sharedOut } from '../../items/shareOut'
import { chooseTellingApart, type Told } from '../../items/telling-apart'
import { recipeFor } from '../../lesson/objectives'
import { groupBy } from '../layout/groups'

/** What a next set is drawn by: how many questions, those the class has been asked (it is to look like them), a seed, and what not to repeat. */
export interface SetWish extends Choice {
  readonly count: number
  readonly like: readonly Question[]
}

/** Questions to set next, or the sentence that says why there are none. */
export type NextSet = { readonly questions: readonly Question[] } | { readonly problem: string }

/** Questions of a type with numbers as long as in the questions of that type that were asked; else as its recipe has them. */
export function nextSetFor(type: ExchangeType, { count, like, seed, avoid = [] }: SetWish): NextSet {
  const kind = kindLike(type, like)
  const drawn = kind && drawSet({ kind, count, seed, avoid: [...avoid, ...like] })
  if (drawn && 'questions' in drawn) return drawn
  return drawSet({ kind: recipeFor(type, yearOf(like)).kind, count, seed, avoid: [...avoid, ...like] })
}

/** The kind that the questions of a type are of which were asked: of their commonest decimals and unit. Null where none was. */
function kindLike(type: ExchangeType, like: readonly Question[]): Kind | null {
  const same = like.filter(({ calculation }) => typeOf(calculation) === type)
  const shapes = groupBy(same, ({ unit, calculation: { top, bottom } }) =>
    JSON.stringify([unit, top.places, bottom.places]),
  )
  const [common] = [...shapes.values()].sort((one, other) => other.length - one.length)
  const [first] = common ?? []
  if (common === undefined || first === undefined) return null
  const { top, bottom, operation } = first.calculation
  return {
    operation,
    type,
    topDigits: lengths(common.map(({ calculation }) => calculation.top)),
    bottomDigits: lengths(common.map(({ calculation }) => calculation.bottom)),
    topDecimals: top.places,
    bottomDecimals: bottom.places,
    unit: first.unit,
  }
}

const typeOf = (calculation: Question['calculation']) => exchangesOf(workOut(calculation)).type

/** Their numbers of digits before the point, 0 for a number below 1. */
function lengths(numerals: readonly Numeral[]): number[] {
  return [
    ...new Set(numerals.map((numeral) => (/^0\b/.test(numeralText(numeral)) ? 0 : wholeDigits(numeral)))),
  ]
}

/** The school year whose numbers these are (National curriculum, as in the recipes); Year 4 where there are none. */
function yearOf(questions: readonly Question[]): Year {
  const numerals = questions.flatMap(({ calculation: { top, bottom } }) => [top, bottom])
  if (numerals.length === 0) return 4
  const longest = Math.max(...numerals.map(wholeDigits))
  const places = Math.max(...numerals.map((numeral) => numeral.places))
  if (longest > 4 || places > 2) return 5
  return longest < 4 && places === 0 ? 3 : 4
}

/** How many candidates are drawn of each kind, of which the questions that show a fault are taken. */
const CANDIDATES = 12
/** The fewest questions of a family: one of them may be taken for the example. */
const LEAST = FEWEST_TO_JUDGE + 1

/** Subtractions and additions by turns, each of the types that were asked of it, else mixed: the sign is to be read every time. */
function signsByTurns({ count, like, seed, avoid = [] }: SetWish): NextSet {
  const each = Math.max(CANDIDATES, count)
  const lists = (['subtract', 'add'] as const).map((operation, turn) => {
    const own = like.filter(({ calculation }) => calculation.operation === operation)
    const types = [...new Set(own.map(({ calculation }) => typeOf(calculation)))]
    const kinds = RECIPES.filter(
      ({ year, operation: of, kind }) => year === yearOf(like) && of === operation && kind.type === 'any',
    ).slice(0, 1)
    const drawn =
      types.length > 0
        ? types.flatMap((type) => drawnOf(nextSetFor(type, { count: each, like, seed, avoid })))
        : kinds.flatMap(({ kind }) => drawnOf(drawSet({ kind, count: 3 * each, seed, avoid })))
    return sharedOut(drawn, Math.ceil((count - turn) / 2), LEAST)
  })
  const questions = Array.from({ length: count }, (_, index) =>
    (lists[index % 2] ?? []).slice(Math.floor(index / 2), Math.floor(index / 2) + 1),
  ).flat()
  return questions.length === count
    ? { questions }
    : { problem: `Only ${questions.length} of ${count} questions with both signs could be found.` }
}

/** Questions that a pupil with the fault gets wrong: of the types in which it showed among those asked, else of any type of the year. */
export function nextSetAgainst(fault: FaultId, wish: SetWish): NextSet {
  if (fault === 'wrong-operation') return signsByTurns(wish)
  const { count, like, seed, avoid = [] } = wish
  const missed = showing(fault, like)
  const types = [...new Set(missed.map(({ calculation }) => typeOf(calculation)))]
  const each = Math.max(CANDIDATES, count)
  const alike = types.flatMap((type) => drawnOf(nextSetFor(type, { ...wish, count: each })))
  const operations = new Set(FAULTS.filter(({ id }) => id === fault).map(({ operation }) => operation))
  const wider = () => candidatesOf([...operations], { like, seed, avoid: [...avoid, ...like] })
  const shown = showing(fault, alike)
  const enough = shown.length < count ? withoutDoubles([...shown, ...showing(fault, wider())]) : shown
  const all = sharedOut(enough, count, LEAST)
  if (all.length === count) return { questions: all }
  return { problem: `Only ${all.length} of ${count} questions that show this could be found.` }
}

function showing(fault: FaultId, questions: readonly Question[]): Question[] {
  return reachOf([fault], questions).flatMap((index) => questions[index] ?? [])
}

function withoutDoubles(questions: readonly Question[]): Question[] {
  const keyOf = ({ calculation: { operation, top, bottom } }: Question) =>
    [operation, numeralText(top), numeralText(bottom)].join(' ')
  return [...groupBy(questions, keyOf).values()].flatMap((same) => same.slice(0, 1))
}

/** Some questions of every recipe of the year, for these operations. */
function candidatesOf(operations: readonly Operation[], { like, seed, avoid = [] }: Omit<SetWish, 'count'>) {
  const year = yearOf(like)
  const recipes = RECIPES.filter((recipe) => recipe.year === year && operations.includes(recipe.operation))
  return recipes.flatMap(({ kind }) => drawnOf(drawSet({ kind, count: CANDIDATES, seed, avoid })))
}

function drawnOf(drawn: NextSet): readonly Question[] {
  return 'questions' in drawn ? drawn.questions : []
}

/** A follow-up that settles an open diagnosis; `untold` are the pairs of ways of working that it leaves alike. */
export interface FollowUp {
  readonly questions: readonly Question[]
  readonly untold: readonly Told[]
}

/** The questions by which these faults, and the right method, are best told from each other. */
export function followUpFor(open: readonly FaultId[], { count, like, seed, avoid = [] }: SetWish): FollowUp {
  const operations = FAULTS.filter(({ id }) => open.includes(id)).map(({ operation }) => operation)
  const asked = new Set(like.map(({ calculation }) => calculation.operation))
  const both = [...new Set(operations)]
  const wanted = both.filter((operation) => asked.has(operation))
  const candidates = candidatesOf(wanted.length > 0 ? wanted : both, {
    like,
    seed,
    avoid: [...avoid, ...like],
  })
  const { chosen, pairs } = chooseTellingApart(candidates, count, open, ({ calculation }) =>
    familyOf(typeOf(calculation)),
  )
  return {
    questions: chosen.flatMap((index) => candidates[index] ?? []),
    untold: pairs.filter(({ questions }) => questions === 0),
  }
}

/** What a pupil with the fault writes as the answer to a question, as valueText writes it. */
export function faultyAnswer(fault: FaultId, { calculation }: Question): string {
  return answerWith(
    FAULTS.filter(({ id }) => id === fault),
    calculation,
  )
}
