import { RECIPES } from '../../src/items/recipes'
import { lessonWorksheets, printedCells, worksheetsOf } from '../../src/lesson/cells/worksheet'
import { lessonHandout } from '../../src/lesson/lessonSheets'
import { makeLesson } from '../../src/lesson/lessonSet'
import { printablePage } from '../../src/lesson/page'
import { personalSets } from '../../src/lesson/personal'
import { personalHandout } from '../../src/lesson/questionSheets'
import { median, type Result } from './timing'
import { MAKING } from '../lesson/making'
import { judged } from '../mastery/judged'

/** Milliseconds within which a full lesson for a class is to be ready. */
const LIMIT = 1000
const PUPILS = 30

/** Times a full lesson: the set, its hand-outs as pages and as cells, and a personal set for each of thirty pupils with its own. */
export function lesson(): Result {
  const recipe = RECIPES.find(({ year, kind }) => year === 4 && kind.type === 'through a zero')
  if (!recipe) throw new Error('There is no such recipe.')
  const pupils = Array.from({ length: PUPILS }, (_, index) => ({
    name: `Pupil ${index}`,
    judgement: judged({ 'through a zero': [index % 2 === 0 ? 3 : 0, 3] }),
  }))
  let seed = 0
  const time = median(() => {
    seed++
    const made = makeLesson({ recipe, seed })
    if (!('lesson' in made)) throw new Error(made.problem)
    const personal = personalSets({ pupils, year: 4, seed })
    if (!('sets' in personal)) throw new Error(personal.problem)
    const sheets = personalHandout(personal.sets, MAKING)
    return [
      printablePage(lessonHandout(made.lesson, MAKING)),
      printablePage(sheets),
      ...[...lessonWorksheets(made.lesson, MAKING), ...worksheetsOf(sheets)].map(printedCells),
    ]
  })
  return {
    name: 'Lesson',
    lines: [
      `a lesson, its hand-outs as pages and as cells, and ${PUPILS} personal sets: ${time.toFixed(0)} ms (limit ${LIMIT} ms)`,
    ],
    met: time < LIMIT,
  }
}
