import { ADDITION_TYPES, type ExchangeType } from '../arithmetic/exchange'
import type { Operation } from '../arithmetic/question'
import { takeCensus } from './census'
import { describeKind, problemOfKind, type Kind } from './kind'
import { RECIPES, type Year } from './recipes'
import { MIXED, RUNGS } from './rungs'

/** Numbers of the teacher's own choice. */
export type OwnNumbers = Pick<Kind, 'topDigits' | 'bottomDigits' | 'topDecimals' | 'bottomDecimals' | 'unit'>

/** The numbers of a set: those of a year's topic (see RECIPES), or the teacher's own choice. */
export type Numbers = { readonly year: Year; readonly topic: string } | { readonly own: OwnNumbers }

/** Which questions: from easy to hard, mixed, those that tell faults apart, or all of one type. */
export type Aim = 'graded' | 'mixed' | 'why' | ExchangeType

/** What a teacher wishes for. With both operations, additions and subtractions come in turn and the aim is no single type. */
export interface Wish {
  readonly operation: Operation | 'both'
  readonly numbers: Numbers
  readonly aim: Aim
  readonly count: number
}

/** The fewest and most questions of a wish. */
export const WISH_COUNT = { least: 1, most: 40 } as const

/** The topics, in the order of the years. */
export const TOPICS: readonly { readonly year: Year; readonly topic: string }[] = [
  ...new Map(RECIPES.map(({ year, topic }) => [`${year} ${topic}`, { year, topic }])).values(),
]

/** A choice of an aim, with its heading and, where it has one, the objective to show the class. */
export interface AimChoice {
  readonly aim: Aim
  readonly name: string
  readonly objective: string
}

const AIM_NAMES = {
  graded: 'From easy to hard',
  mixed: 'Mixed',
  why: 'Find out why answers go wrong',
} as const

/** The name of an aim, as a heading. */
export function aimName(aim: Aim): string {
  return aim === 'graded' || aim === 'mixed' || aim === 'why' ? AIM_NAMES[aim] : RUNGS[aim].name
}

/** The aims that these numbers allow: the sets of several types, then each type that occurs, from easy to hard. */
export function aimsFor({ operation, numbers }: Pick<Wish, 'operation' | 'numbers'>): AimChoice[] {
  const several = (['graded', 'mixed', 'why'] as const).map((aim) => ({
    aim,
    name: AIM_NAMES[aim],
    objective: aim === 'mixed' && operation !== 'both' ? MIXED[operation].objective : '',
  }))
  if (operation === 'both') return several
  const types = rungsOf(numbers, operation).map(({ type }) => type)
  return [...several, ...types.map((aim) => ({ aim, ...RUNGS[aim] }))]
}

/** A wish in words: "Year 4, Four-digit numbers, subtraction, from easy to hard, 10 questions". */
export function describeWish({ operation, numbers, aim, count }: Wish): string {
  const which = 'own' in numbers ? [] : [`Year ${numbers.year}`, numbers.topic]
  const kind = 'own' in numbers ? describeOwn(numbers.own, operation) : OPERATION_WORDS[operation]
  const counted = `${count} ${count === 1 ? 'question' : 'questions'}`
  return [...which, kind, aimName(aim).replace(/^./, (letter) => letter.toLowerCase()), counted].join(', ')
}

const OPERATION_WORDS = {
  add: 'addition',
  subtract: 'subtraction',
  both: 'addition and subtraction',
} as const

function describeOwn(own: OwnNumbers, operation: Wish['operation']): string {
  const one = operation === 'add' ? 'add' : 'subtract'
  const described = describeKind({ ...own, operation: one, type: 'any' })
  return operation === 'both' ? described.replace('−', '±') : described
}

/** What is wrong with a wish, in one sentence for the teacher; null where nothing is. */
export function problemOfWish({ operation, numbers, aim, count }: Wish): string | null {
  const { least, most } = WISH_COUNT
  if (!Number.isInteger(count) || count < least || count > most)
    return `Choose ${least} to ${most} questions.`
  if ('own' in numbers) {
    const problems = operationsOf(operation).map((each) =>
      problemOfKind({ ...numbers.own, operation: each, type: 'any' }),
    )
    const problem = problems.find((each) => each !== null)
    if (problem !== undefined) return problem
  }
  if (!aimsFor({ operation, numbers }).some((choice) => choice.aim === aim))
    return `With these numbers there is no ${operation === 'both' ? 'set' : OPERATION_WORDS[operation]} called “${aimName(aim)}”.`
  return null
}

/** The operations of a wish, addition first. */
export function operationsOf(operation: Wish['operation']): readonly Operation[] {
  return operation === 'both' ? ['add', 'subtract'] : [operation]
}

/** A kind of one type. */
export type TypedKind = Kind & { readonly type: ExchangeType }

/** The kinds of one type each, from easy to hard. */
export function rungsOf(numbers: Numbers, operation: Operation): TypedKind[] {
  const kinds = 'own' in numbers ? ownRungs(numbers.own, operation) : topicKinds(numbers, operation)
  return kinds.filter((kind): kind is TypedKind => kind.type !== 'any')
}

function topicKinds({ year, topic }: { year: Year; topic: string }, operation: Operation): Kind[] {
  return RECIPES.filter(
    (recipe) => recipe.year === year && recipe.topic === topic && recipe.operation === operation,
  ).map(({ kind }) => kind)
}

const isAddition = (type: string) => ADDITION_TYPES.some((one) => one === type)

/** The types of each operation from easy to hard. */
export const RUNG_ORDER = Object.keys(RUNGS) as ExchangeType[]

function ownRungs(own: OwnNumbers, operation: Operation): Kind[] {
  return RUNG_ORDER.filter((type) => isAddition(type) === (operation === 'add'))
    .map((type) => ({ ...own, operation, type }))
    .filter((kind) => problemOfKind(kind) === null && takeCensus(kind).count > 0n)
}

/** The kind with questions of every type. */
export function mixedKind(numbers: Numbers, operation: Operation): Kind {
  const any: Kind = {
    operation,
    type: 'any',
    ...('own' in numbers ? numbers.own : { topDigits: 1, bottomDigits: 1 }),
  }
  return 'own' in numbers ? any : (topicKinds(numbers, operation).find(({ type }) => type === 'any') ?? any)
}

/** The kinds that a wish chooses from. */
export function kindsAsked(wish: Wish): Kind[] {
  const { operation, numbers, aim } = wish
  return aim === 'mixed' || aim === 'why'
    ? operationsOf(operation).map((each) => mixedKind(numbers, each))
    : typedKindsAsked(wish)
}

/** The kinds of one type each that a graded wish, or one for a type, chooses from. */
export function typedKindsAsked({ operation, numbers, aim }: Wish): TypedKind[] {
  const rungs = operationsOf(operation).flatMap((each) => rungsOf(numbers, each))
  return aim === 'graded' ? rungs : rungs.filter(({ type }) => type === aim)
}
