import { uniformInt } from 'pure-rand/distribution/uniformInt'
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator'
import type { FaultId } from '../answers/faults'
import { workOut } from '../arithmetic/columns'
import { ADDITION_TYPES, exchangesOf, type ExchangeType } from '../arithmetic/exchange'
import { familyOf } from '../arithmetic/families'
import { numeralText } from '../arithmetic/numeral'
import type { Operation, Question } from '../arithmetic/question'
import { takeCensus } from './census'
import { indexOfQuestion } from './draw'
import { problemOfKind, type Kind } from './kind'
import { generatorFrom } from './seed'
import { drawSet, type Part } from './sets'
import { shareOut } from './shareOut'
import { chooseTellingApart, faultsAskedBy, type TellingApartSet } from './telling-apart'
import {
  kindsAsked,
  mixedKind,
  operationsOf,
  problemOfWish,
  RUNG_ORDER,
  rungsOf,
  typedKindsAsked,
  type Numbers,
  type TypedKind,
  type Wish,
} from './wish'

/**
 * A set made for a wish. `exist`: how many such questions there are, `avoided` how many of them were not to come again, and
 * `exchanged` how many of the set stand in for one of those. `told`: what a set that tells faults apart tells.
 */
export interface MadeSet {
  readonly questions: readonly Question[]
  readonly exist: bigint
  readonly avoided: number
  readonly exchanged: number
  readonly told: TellingApartSet | null
}

/** A set, or the sentence that says why there is none. */
export type MadeReading = MadeSet | { readonly problem: string; readonly exist: bigint }

/**
 * Makes the set of a wish. The same wish and seed give the same set in every class, but for those questions that are to be
 * avoided: only they are exchanged for others. No question comes twice.
 */
export function makeSet(wish: Wish, seed: string, avoid: readonly Question[] = []): MadeReading {
  const problem = problemOfWish(wish)
  if (problem !== null) return { problem, exist: 0n }
  const kinds = kindsAsked(wish)
  const { exist, avoided } = countKinds(kinds, avoid)
  const made = wish.aim === 'why' ? tellingApart(wish, seed, avoid) : byParts(wish, seed, avoid)
  return 'problem' in made ? { problem: made.problem, exist } : { ...made, exist, avoided }
}

type Made = Pick<MadeSet, 'questions' | 'exchanged' | 'told'> | { readonly problem: string }

function countKinds(kinds: readonly Kind[], avoid: readonly Question[]) {
  const censuses = kinds.map(takeCensus)
  return {
    exist: censuses.reduce((sum, { count }) => sum + count, 0n),
    avoided: avoid.filter(({ calculation }) =>
      censuses.some((census) => indexOfQuestion(census, calculation) !== undefined),
    ).length,
  }
}

/** How many of `count` questions each operation gets: half, and the odd one to subtraction. */
function shares(operation: Wish['operation'], count: number): { operation: Operation; count: number }[] {
  if (operation !== 'both') return [{ operation, count }]
  const add = Math.floor(count / 2)
  return [
    { operation: 'add' as const, count: add },
    { operation: 'subtract' as const, count: count - add },
  ].filter((share) => share.count > 0)
}

function byParts(wish: Wish, seed: string, avoid: readonly Question[]): Made {
  const lists: Question[][] = []
  let exchanged = 0
  for (const share of shares(wish.operation, wish.count)) {
    const own = `${seed} ${share.operation}`
    const mixed = wish.aim === 'mixed' ? mixedKind(wish.numbers, share.operation) : null
    const kinds =
      mixed === null ? typedKindsAsked({ ...wish, operation: share.operation }) : kindsWithin(mixed)
    const drawn = drawParts(partsOf(kinds, share.count), own, avoid, mixed)
    if ('problem' in drawn) return drawn
    lists.push(mixed === null ? drawn.questions : shuffled(drawn.questions, generatorFrom(`${own} order`)))
    exchanged += drawn.exchanged
  }
  return { questions: inTurn(lists), exchanged, told: null }
}

/** So many questions shared out over the kinds; the last gets what there is no room for, and its shortage is told. */
function partsOf(kinds: readonly TypedKind[], count: number): Part[] {
  const supplies = kinds.map((kind) => {
    const { count: exist } = takeCensus(kind)
    return { type: kind.type, room: exist < BigInt(count) ? Number(exist) : count }
  })
  const given = shareOut(supplies, count)
  const short = count - given.reduce((sum, each) => sum + each, 0)
  return kinds
    .map((kind, at) => ({ kind, count: (given[at] ?? 0) + (at === kinds.length - 1 ? short : 0) }))
    .filter((part) => part.count > 0)
}

/** The kinds of one type each that a mixed kind is made of. */
function kindsWithin(mixed: Kind): TypedKind[] {
  return RUNG_ORDER.filter((type) => operationOfType(type) === mixed.operation)
    .map((type) => ({ ...mixed, type }))
    .filter((kind) => problemOfKind(kind) === null && takeCensus(kind).count > 0n)
}

const operationOfType = (type: ExchangeType): Operation =>
  ADDITION_TYPES.some((each) => each === type) ? 'add' : 'subtract'

function shuffled(questions: readonly Question[], generator: RandomGenerator): Question[] {
  const left = [...questions]
  return questions.flatMap(() => left.splice(uniformInt(generator, 0, left.length - 1), 1))
}

const keyOf = ({ calculation: { operation, top, bottom } }: Question) =>
  `${operation} ${numeralText(top)} ${numeralText(bottom)}`

/**
 * Draws the parts as though nothing were to be avoided, then exchanges in place what is: for another of its kind or, where none is left, for
 * one of the `wider` kind.
 */
function drawParts(
  parts: readonly Part[],
  seed: string,
  avoid: readonly Question[],
  wider: Kind | null,
): { readonly questions: Question[]; readonly exchanged: number } | { readonly problem: string } {
  const bases: { readonly part: Part; readonly seed: string; readonly questions: readonly Question[] }[] = []
  const taken: Question[] = []
  for (const [index, part] of parts.entries()) {
    const own = `${seed} ${index}`
    const drawn = drawSet({ ...part, seed: own, avoid: taken })
    if ('problem' in drawn) return { problem: drawn.problem }
    bases.push({ part, seed: own, questions: drawn.questions })
    taken.push(...drawn.questions)
  }
  const avoided = new Set(avoid.map(keyOf))
  const questions: Question[] = []
  let exchanged = 0
  for (const base of bases) {
    const count = base.questions.filter((question) => avoided.has(keyOf(question))).length
    const others: Question[] = []
    if (count > 0) {
      const { kind } = base.part
      const choice = { count, seed: `${base.seed} instead`, avoid: [...avoid, ...taken] }
      const own = drawSet({ kind, ...choice })
      const drawn = 'problem' in own && wider !== null ? drawSet({ kind: wider, ...choice }) : own
      if ('problem' in drawn) return { problem: shortageOf(base.part, avoid) ?? drawn.problem }
      others.push(...drawn.questions)
      taken.push(...drawn.questions)
    }
    exchanged += count
    questions.push(
      ...base.questions.map((question) =>
        avoided.has(keyOf(question)) ? (others.shift() ?? question) : question,
      ),
    )
  }
  return { questions, exchanged }
}

function shortageOf(part: Part, avoid: readonly Question[]): string | null {
  const drawn = drawSet({ ...part, seed: '', avoid })
  return 'problem' in drawn ? drawn.problem : null
}

/** Lists merged by how far along them each question stands, so that both go from easy to hard together. */
function inTurn(lists: readonly (readonly Question[])[]): Question[] {
  return lists
    .flatMap((list) => list.map((question, index) => ({ question, at: (index + 0.5) / list.length })))
    .sort((one, other) => one.at - other.at)
    .map(({ question }) => question)
}

/** Questions drawn of each kind, from which those that tell most are chosen: of one type, and of any type. */
const CANDIDATES = { ofType: 6, ofAny: 16 } as const

function tellingApart(wish: Wish, seed: string, avoid: readonly Question[]): Made {
  const candidates = operationsOf(wish.operation).flatMap((operation) =>
    candidatesFor(wish.numbers, operation, seed),
  )
  const avoided = new Set(avoid.map(keyOf))
  const fresh = candidates.filter((question) => !avoided.has(keyOf(question)))
  if (fresh.length < wish.count)
    return {
      problem: `Only ${fresh.length} questions are left to choose from; ask for fewer, or for other numbers.`,
    }
  const questionsOf = (from: readonly Question[], { chosen }: TellingApartSet) =>
    chosen.flatMap((index) => from[index] ?? [])
  const faults = faultsPossible(candidates)
  const whole = chooseTellingApart(candidates, wish.count, faults, familyIn)
  const base = new Set(questionsOf(candidates, whole).map(keyOf))
  const isFresh = [...base].every((key) => !avoided.has(key))
  const told = isFresh ? whole : chooseTellingApart(fresh, wish.count, faults, familyIn)
  const questions = questionsOf(isFresh ? candidates : fresh, told)
  const byOperation = operationsOf(wish.operation).map((operation) =>
    fromEasyToHard(questions.filter(({ calculation }) => calculation.operation === operation)),
  )
  const exchanged = questions.filter((question) => !base.has(keyOf(question))).length
  return { questions: inTurn(byOperation), exchanged, told }
}

const familyIn = ({ calculation }: Question) => familyOf(exchangesOf(workOut(calculation)).type)

/** The faults of these operations, without the one that needs decimals where there are none. */
function faultsPossible(questions: readonly Question[]): FaultId[] {
  const hasDecimals = questions.some(({ calculation: { top, bottom } }) => top.places + bottom.places > 0)
  return faultsAskedBy(questions).filter((id) => hasDecimals || id !== 'lines-up-right')
}

/** Questions of every kind in turn: of those that tell equally much the first is chosen, so that the set stays mixed. */
function candidatesFor(numbers: Numbers, operation: Operation, seed: string): Question[] {
  const mixed = mixedKind(numbers, operation)
  const lists: (readonly Question[])[] = []
  const kinds = [...rungsOf(numbers, operation), mixed, ...unevenKinds(mixed)]
  for (const [index, kind] of kinds.entries()) {
    if (problemOfKind(kind) !== null) continue
    const before = lists.flat()
    const most = kind.type === 'any' ? CANDIDATES.ofAny : CANDIDATES.ofType
    const left = takeCensus(kind).count - BigInt(before.length)
    const count = left < BigInt(most) ? Number(left) : most
    if (count < 1) continue
    const drawn = drawSet({ kind, count, seed: `${seed} ${operation} why ${index}`, avoid: before })
    if ('questions' in drawn) lists.push(drawn.questions)
  }
  const longest = Math.max(0, ...lists.map(({ length }) => length))
  return Array.from({ length: longest }, (_, index) =>
    lists.flatMap((list) => list.slice(index, index + 1)),
  ).flat()
}

/** Kinds with a shorter bottom number, or one of other decimal places: some faults show in no others. */
function unevenKinds(mixed: Kind): Kind[] {
  const { operation, type, topDigits, bottomDigits, topDecimals = 0, bottomDecimals = 0, unit = '' } = mixed
  const kind: Kind = { operation, type, topDigits, bottomDigits, topDecimals, bottomDecimals, unit }
  const longest = Math.max(...[topDigits].flat())
  const shorter = [longest - 1, longest - 2]
    .filter((digits) => digits > 0)
    .map((bottomDigits) => ({ ...kind, bottomDigits }))
  const places = unit === '£' ? 0 : topDecimals - 1
  return topDecimals > 0 ? [...shorter, { ...kind, bottomDecimals: Math.max(0, places) }] : shorter
}

function fromEasyToHard(questions: readonly Question[]): Question[] {
  const rung = ({ calculation }: Question) => RUNG_ORDER.indexOf(exchangesOf(workOut(calculation)).type)
  return questions.toSorted((one, other) => rung(one) - rung(other))
}
