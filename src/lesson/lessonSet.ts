import type { ExchangeType } from '../arithmetic/exchange'
import type { Question } from '../arithmetic/question'
import { strategyFor } from '../arithmetic/strategy'
import type { Kind } from '../items/kind'
import type { Recipe } from '../items/recipes'
import { generatorFrom } from '../items/seed'
import { drawSet, type DrawnSet } from '../items/sets'
import { drawMissingNumbers } from './checks'
import { DEEPER_CRITERIA, successCriteria } from './criteria'
import { exampleFrom } from './example'
import { GRADES, kindOfWayIn, noHarderThan, type Grade } from './grades'
import { drawRecap, upTo } from './recap'
import { QUESTIONS_FOR_TASKS, tasksFrom, type Task } from './tasks'
import { workedQuestion, type WorkedQuestion } from './worked'

/**
 * What a lesson is made from: the objective; the seed; questions in each of the three grades (6 where left out) and in the recap (4);
 * the types of the recap (none for all that come before); whether to talk about other ways before the example.
 */
export interface LessonWish {
  readonly recipe: Recipe
  readonly seed: string | number
  readonly practice?: number
  readonly recap?: number
  readonly recapTypes?: readonly ExchangeType[]
  readonly otherWays?: boolean
}

/** One grade of the practice, with its success criteria and, in the deepest, what there is to work out and explain. */
export interface PracticeSet {
  readonly grade: Grade
  readonly criteria: readonly string[]
  readonly questions: readonly WorkedQuestion[]
  readonly tasks: readonly Task[]
}

/**
 * A lesson: every question with its full working, none of them twice. The recap is empty where nothing comes before. `otherWays` is
 * what there is to say of other ways to work the example out, null where that was not wanted.
 */
export interface Lesson {
  readonly recipe: Recipe
  readonly criteria: readonly string[]
  readonly otherWays: string | null
  readonly model: WorkedQuestion
  readonly partner: WorkedQuestion
  readonly practice: readonly PracticeSet[]
  readonly recap: readonly WorkedQuestion[]
  /** Three questions of the objective to leave with, fewer where there are no more. */
  readonly exit: readonly WorkedQuestion[]
}

/** A lesson, or the sentence that says why there is none. */
export type LessonReading = { readonly lesson: Lesson } | { readonly problem: string }

/** The fewest and most questions in a grade of the practice; the recap may also be left out. */
export const LESSON_QUESTIONS = { least: 1, most: 20 } as const

/** How many questions pupils leave the lesson with. */
const EXIT_QUESTIONS = 3

/** How many questions are looked at for the modelled example and its partner. */
const MODEL_CANDIDATES = 24

/** How many questions are looked at for the way in. */
const WAY_IN_CANDIDATES = 300

/**
 * Makes a lesson from an objective. All three grades practise it: the way in with shorter numbers, never harder than the
 * objective's own questions; then these; deeper with half as many missing numbers of the same kind, and with tasks to explain. The
 * partner question has the modelled example's exchanges and zeros in the same columns; both call for the written method wherever the
 * kind has such questions. The same wish gives the same lesson for ever: nothing else goes into the drawing.
 */
export function makeLesson({
  recipe,
  seed,
  practice = 6,
  recap = 4,
  recapTypes = [],
  otherWays = false,
}: LessonWish): LessonReading {
  const { least, most } = LESSON_QUESTIONS
  const isCount = (count: number, from: number) => Number.isInteger(count) && count >= from && count <= most
  if (!isCount(practice, least))
    return { problem: `A grade of the practice holds ${least} to ${most} questions.` }
  if (!isCount(recap, 0)) return { problem: `The recap holds 0 to ${most} questions.` }

  const used: Question[] = []
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
  const example = exampleFrom(kind, upTo(MODEL_CANDIDATES, kind, `${seed} model`, used), seed)
  if (!example) return { problem: 'There are too few questions for a modelled example.' }
  used.push(example.model, example.partner)
  const objective = take('objective', kind, practice)
  const wayIn = noHarderThan(
    objective,
    upTo(WAY_IN_CANDIDATES, kindOfWayIn(kind, practice), `${seed} way in`, used),
  )
  used.push(...wayIn)
  const deeper = take('deeper', kind, Math.ceil(practice / 2), drawMissingNumbers)
  const tasks = tasksFrom(
    kind,
    upTo(QUESTIONS_FOR_TASKS, kind, `${seed} tasks`, used),
    generatorFrom(`${seed} tasks`),
  )
  const warmUp = drawRecap({
    recipe,
    count: recap,
    types: recapTypes,
    practice: objective,
    seed,
    avoid: used,
  })
  const criteria = criteriaFor(recipe)
  const [first, second, third] = GRADES
  const sets: readonly PracticeSet[] = [
    { grade: first, criteria, questions: wayIn.map(workedQuestion), tasks: [] },
    { grade: second, criteria, questions: objective.map(workedQuestion), tasks: [] },
    {
      grade: third,
      criteria: [...criteria, ...DEEPER_CRITERIA],
      questions: deeper.map(workedQuestion),
      tasks,
    },
  ]
  if (wayIn.length < objective.length)
    problems.push('There are too few easier questions for the way in: choose fewer for a grade.')
  const [problem] = problems
  if (problem !== undefined) return { problem }
  return {
    lesson: {
      recipe,
      criteria,
      otherWays: otherWays ? strategyFor(example.model).reason : null,
      model: workedQuestion(example.model),
      partner: workedQuestion(example.partner),
      practice: sets,
      recap: warmUp.map(workedQuestion),
      exit: upTo(EXIT_QUESTIONS, kind, `${seed} exit`, [...used, ...warmUp]).map(workedQuestion),
    },
  }
}

/** Every question of a lesson that pupils work: the example and its partner, the practice and the recap. */
export function questionsOf({ model, partner, practice, recap, exit }: Lesson): Question[] {
  const worked = [model, partner, ...practice.flatMap(({ questions }) => questions), ...recap, ...exit]
  return worked.map(({ question }) => question)
}

function criteriaFor({ operation, kind }: Recipe): string[] {
  const hasPoint = (kind.topDecimals ?? 0) + (kind.bottomDecimals ?? 0) > 0
  return successCriteria(operation, kind.type, hasPoint)
}
