import type { ExchangeType } from '../arithmetic/exchange'
import { familyOf } from '../arithmetic/families'
import { printQuestion, type Question } from '../arithmetic/question'
import type { Kind } from '../items/kind'
import { recipesFor, type Year } from '../items/recipes'
import { drawSet } from '../items/sets'
import { FEWEST_TO_JUDGE } from '../items/shareOut'
import type { Judgement } from '../mastery/standing'
import { nextType, TEACHING_ORDER } from '../mastery/support'
import { recipeFor } from './objectives'

/** A pupil, and the verdict on the pupil. */
export interface PupilNeeds {
  readonly name: string
  readonly judgement: Judgement
}

/** What personal sets are made from: the pupils in the order of their rows, the year, questions for each (6 where left out), the seed. */
export interface PersonalWish {
  readonly pupils: readonly PupilNeeds[]
  readonly year: Year
  readonly seed: string | number
  readonly count?: number
  readonly avoid?: readonly Question[]
}

/** A pupil's own questions, from easy to hard, and the types they are there for ('any' where they are mixed). */
export interface PersonalSet {
  readonly name: string
  readonly types: readonly (ExchangeType | 'any')[]
  readonly questions: readonly Question[]
}

/** The fewest and most questions for a pupil. */
export const PERSONAL_QUESTIONS = { least: 2, most: 20 } as const

/**
 * A set for each pupil by need: the type that carries the pupil's need (under a fault the first type that needs support), what comes next,
 * and the hardest secure type, so that every pupil also meets what is well known; two or more of every family, so that the marking can judge
 * it. A pupil who misreads the sign has additions and subtractions by turns; one of whom nothing is known has mixed questions of the year.
 * No pupil has a question twice; two pupils have different questions of one type.
 */
export function personalSets({
  pupils,
  year,
  seed,
  count = 6,
  avoid = [],
}: PersonalWish): { readonly sets: readonly PersonalSet[] } | { readonly problem: string } {
  const { least, most } = PERSONAL_QUESTIONS
  if (!Number.isInteger(count) || count < least || count > most)
    return { problem: `A personal set holds ${least} to ${most} questions.` }
  if (pupils.length === 0) return { problem: 'There are no pupils to make personal sets for.' }
  const wanted = pupils.map(({ judgement }) => needsOf(judgement, year, count))
  const uses = new Map<string, { readonly kind: Kind; count: number }>()
  for (const kind of wanted.flat()) {
    const use = uses.get(keyOf(kind)) ?? { kind, count: 0 }
    use.count += 1
    uses.set(keyOf(kind), use)
  }
  const used = [...avoid]
  const stock = new Map<string, Question[]>()
  for (const [key, use] of uses) {
    const drawn = drawSet({ ...use, seed: `${seed} ${key}`, avoid: used })
    if ('problem' in drawn) return drawn
    used.push(...drawn.questions)
    stock.set(key, [...drawn.questions])
  }
  return {
    sets: pupils.map(({ name }, pupil) => {
      const kinds = wanted[pupil] ?? []
      return {
        name,
        types: [...new Set(kinds.map(({ type }) => type))],
        questions: kinds.flatMap((kind) => stock.get(keyOf(kind))?.shift() ?? []),
      }
    }),
  }
}

function keyOf(kind: Kind): string {
  return JSON.stringify(kind)
}

/** The kinds of a pupil's questions, from easy to hard. */
function needsOf(judgement: Judgement, year: Year, count: number): Kind[] {
  const { need, byType } = judgement
  const next = nextType(judgement)
  const known = TEACHING_ORDER.findLast((type) =>
    byType.some((each) => each.type === type && each.status === 'secure'),
  )
  const inNeed = TEACHING_ORDER.find((type) =>
    byType.some((each) => each.type === type && each.status === 'needs support'),
  )
  const first = need.type ?? inNeed ?? next ?? known
  if (first === undefined || need.fault === 'wrong-operation') return mixedKinds(year, count)
  const wanted = [...new Set([first, next ?? first, known ?? first])]
  const types = typesFor(wanted, count)
  return types
    .sort((a, b) => TEACHING_ORDER.indexOf(a) - TEACHING_ORDER.indexOf(b))
    .map((type) => recipeFor(type, year).kind)
}

/** The types, likeliest to help first, with as many questions each as make two of every family; the first gets what is over. */
function typesFor(wanted: readonly ExchangeType[], count: number): ExchangeType[] {
  const families = [...new Set(wanted.map(familyOf))].slice(
    0,
    Math.max(1, Math.floor(count / FEWEST_TO_JUDGE)),
  )
  const kept = wanted.filter((type) => families.includes(familyOf(type)))
  return Array.from({ length: count }, (_, index) => {
    const family = families[index % families.length]
    const own = kept.filter((type) => familyOf(type) === family)
    return own[Math.floor(index / families.length) % own.length] ?? wanted[0]
  }).filter((type) => type !== undefined)
}

/** Mixed questions of a year, additions and subtractions by turns. */
function mixedKinds(year: Year, count: number): Kind[] {
  const mixed = (['add', 'subtract'] as const).map((operation) =>
    recipesFor(year, operation).find(({ kind }) => kind.type === 'any'),
  )
  return Array.from({ length: count }, (_, index) => mixed[index % 2]?.kind).filter(
    (kind) => kind !== undefined,
  )
}

/**
 * The sets as cells of text, one row for a pupil under a row of headings: name, question, answer, question, answer … The answer
 * cells are empty, for the pupils to fill.
 */
export function personalTable(sets: readonly PersonalSet[]): string[][] {
  const most = Math.max(0, ...sets.map(({ questions }) => questions.length))
  const headings = Array.from({ length: most }, (_, index) => [
    `Question ${index + 1}`,
    `Answer ${index + 1}`,
  ])
  return [
    ['Name', ...headings.flat()],
    ...sets.map(({ name, questions }) => [
      name,
      ...questions.flatMap((question) => [printQuestion(question), '']),
    ]),
  ]
}
