import type { ExchangeType } from '../arithmetic/exchange'
import type { Question } from '../arithmetic/question'
import type { Kind } from '../items/kind'
import type { Recipe } from '../items/recipes'
import { generatorFrom } from '../items/seed'
import { drawSet, type DrawnSet } from '../items/sets'
import type { Status } from '../mastery/standing'
import { drawMissingNumbers } from './checks'
import { successCriteria } from './criteria'
import { exampleFrom } from './example'
import { deeperTasks, GRADES, kindOfWayIn, noHarderThan, type Grade, type Task } from './grades'
import { earlierObjectives } from './objectives'
import { pickByWeight } from './random'
import { workedQuestion, type WorkedQuestion } from './worked'

/** A type and how secure it is, of one pupil or, listed once for each pupil, of a class. */
export interface TypeStatus {
  readonly type: ExchangeType
  readonly status: Status
}

/**
 * What a lesson is made from: the objective; questions in each of the three grades (6 where left out) and in the recap (4);
 * what is known of how secure the types are; the seed; questions that must not come again.
 */
export interface LessonWish {
  readonly recipe: Recipe
  readonly seed: string | number
  readonly practice?: number
  readonly recap?: number
  readonly known?: readonly TypeStatus[]
  readonly avoid?: readonly Question[]
}

/** One grade of the practice, with its success criteria and, in the deepest, what there is to explain. */
export interface PracticeSet {
  readonly grade: Grade
  readonly criteria: readonly string[]
  readonly questions: readonly WorkedQuestion[]
  readonly tasks: readonly Task[]
}

/** A lesson: every question with its full working, none of them twice. The recap is empty where nothing comes before. */
export interface Lesson {
  readonly recipe: Recipe
  readonly criteria: readonly string[]
  readonly model: WorkedQuestion
  readonly partner: WorkedQuestion
  readonly practice: readonly PracticeSet[]
  readonly recap: readonly WorkedQuestion[]
}

/** A lesson, or the sentence that says why there is none. */
export type LessonReading = { readonly lesson: Lesson } | { readonly problem: string }

/** The fewest and most questions in a grade of the practice; the recap may also be left out. */
export const LESSON_QUESTIONS = { least: 1, most: 20 } as const

/** How often a type comes in the recap, for a pupil with each status: most what is least secure, now and then what is secure. */
const RECAP_WEIGHT: Readonly<Record<Status, number>> = {
  'needs support': 8,
  'nearly secure': 4,
  'not enough seen': 2,
  secure: 1,
}

/** How many questions are looked at for the modelled example and its partner. */
const MODEL_CANDIDATES = 24

/** How many questions are looked at for the way in. */
const WAY_IN_CANDIDATES = 300

/**
 * Makes a lesson from an objective. All three grades practise it: the way in with shorter numbers, never harder than the
 * objective's own questions; then these; deeper with missing numbers of the same kind and something to explain. The partner
 * question has the modelled example's exchanges and zeros in the same columns; both call for the written method wherever the
 * kind has such questions. The same wish gives the same lesson.
 */
export function makeLesson({
  recipe,
  seed,
  practice = 6,
  recap = 4,
  known = [],
  avoid = [],
}: LessonWish): LessonReading {
  const { least, most } = LESSON_QUESTIONS
  const isCount = (count: number, from: number) => Number.isInteger(count) && count >= from && count <= most
  if (!isCount(practice, least))
    return { problem: `A grade of the practice holds ${least} to ${most} questions.` }
  if (!isCount(recap, 0)) return { problem: `The recap holds 0 to ${most} questions.` }

  const used = [...avoid]
  const problems: string[] = []
  const take = (
    name: string,
    kind: Kind,
    count: number,
    draw: typeof drawSet = drawSet,
  ): readonly Question[] => {
    const drawn: DrawnSet = draw({ kind, count, seed: `${seed} ${name}`, avoid: used })
    if ('problem' in drawn) {
      problems.push(drawn.problem)
      return []
    }
    used.push(...drawn.questions)
    return drawn.questions
  }

  const { kind } = recipe
  const example = exampleFrom(kind, upTo(MODEL_CANDIDATES, kind, `${seed} model`, used), seed, used)
  if (!example) return { problem: 'There are too few questions for a modelled example.' }
  used.push(example.model, example.partner)
  const objective = take('objective', kind, practice)
  const wayIn = noHarderThan(
    objective,
    upTo(WAY_IN_CANDIDATES, kindOfWayIn(kind, practice), `${seed} way in`, used),
  )
  used.push(...wayIn)
  const deeper = take('deeper', kind, practice, drawMissingNumbers)
  const tasks = deeperTasks(kind, seed, used)
  const criteria = criteriaFor(recipe)
  const [first, second, third] = GRADES
  const sets: readonly PracticeSet[] = [
    { grade: first, criteria, questions: wayIn.map(workedQuestion), tasks: [] },
    { grade: second, criteria, questions: objective.map(workedQuestion), tasks: [] },
    { grade: third, criteria: [...criteria, ...DEEPER], questions: deeper.map(workedQuestion), tasks },
  ]
  if (wayIn.length < objective.length)
    problems.push('There are too few easier questions for the way in: choose fewer for a grade.')
  const again = recapObjectives(recipe, recap, known, seed).map(
    ({ kind: earlier }, index) => take(`recap ${index}`, earlier, 1)[0],
  )
  const [problem] = problems
  if (problem !== undefined) return { problem }
  return {
    lesson: {
      recipe,
      criteria,
      model: workedQuestion(example.model),
      partner: workedQuestion(example.partner),
      practice: sets,
      recap: again.filter((question) => question !== undefined).map(workedQuestion),
    },
  }
}

/** What the deepest grade needs besides. */
const DEEPER: readonly string[] = [
  'I decide which calculation finds the missing number.',
  'I explain how I know, and give an example.',
]

/** As many questions of a kind as there are, up to a number; none where there is none. */
function upTo(count: number, kind: Kind, seed: string, avoid: readonly Question[]): readonly Question[] {
  const drawn = drawSet({ kind, count, seed, avoid })
  if (!('problem' in drawn)) return drawn.questions
  return drawn.available > 0n && drawn.available < BigInt(count)
    ? upTo(Number(drawn.available), kind, seed, avoid)
    : []
}

function criteriaFor({ operation, kind }: Recipe): string[] {
  const hasPoint = (kind.topDecimals ?? 0) + (kind.bottomDecimals ?? 0) > 0
  return successCriteria(operation, kind.type, hasPoint)
}

/**
 * Earlier objectives for a recap, from easy to hard: drawn by weight, the less secure the likelier, and none twice before each
 * has come. A type of which nothing is known counts as not seen enough.
 */
export function recapObjectives(
  recipe: Recipe,
  count: number,
  known: readonly TypeStatus[],
  seed: string | number,
): Recipe[] {
  const earlier = earlierObjectives(recipe)
  if (earlier.length === 0) return []
  const generator = generatorFrom(`${seed} recap`)
  const weights = new Map(earlier.map((objective) => [objective, recapWeight(objective.kind.type, known)]))
  const chosen: Recipe[] = []
  while (chosen.length < count) {
    const times = Math.floor(chosen.length / earlier.length)
    const left = earlier.filter((each) => chosen.filter((before) => before === each).length <= times)
    chosen.push(pickByWeight(left, (objective) => weights.get(objective) ?? 1, generator))
  }
  return chosen.sort((a, b) => earlier.indexOf(a) - earlier.indexOf(b))
}

/** A hundred times the weight of a type, averaged over what is known of it. */
function recapWeight(type: Kind['type'], known: readonly TypeStatus[]): number {
  const found = known.filter((each) => each.type === type).map(({ status }) => RECAP_WEIGHT[status])
  const weights = found.length > 0 ? found : [RECAP_WEIGHT['not enough seen']]
  return Math.round((100 * weights.reduce((sum, weight) => sum + weight, 0)) / weights.length)
}
