import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { answerKey } from '../../../src/answers/typed'
import { printQuestion, type Question } from '../../../src/arithmetic/question'
import { RECIPES } from '../../../src/items/recipes'
import { makeLesson } from '../../../src/lesson/lessonSet'
import { PERSONAL_QUESTIONS, personalSets, type PersonalSet } from '../../../src/lesson/personal'
import { planMarksheet, type MarksheetPlan, type PlanReading } from '../../../src/marksheet/setting/layOut'
import { planPersonalSheet } from '../../../src/marksheet/setting/personalSheet'
import { review } from '../../../src/marksheet/marking/review'
import { anyCounts, judged } from '../../mastery/judged'

function planIn(reading: PlanReading): MarksheetPlan {
  if ('problem' in reading) throw new Error(reading.problem)
  return reading.plan
}

/** Sets for pupils with any needs. */
const drawn = fc
  .record({
    pupils: fc
      .uniqueArray(fc.constantFrom('Amira P', 'Daniel O', 'Una K', 'Zoë', '7B Sam'), {
        minLength: 1,
      })
      .chain((names) =>
        fc.tuple(
          ...names.map((name) =>
            fc.record({
              name: fc.constant(name),
              judgement: anyCounts.map((counts) => judged(counts)),
            }),
          ),
        ),
      ),
    year: fc.constantFrom(3, 4, 5),
    seed: fc.integer(),
    count: fc.integer({ min: PERSONAL_QUESTIONS.least, max: 10 }),
  })
  .map((wish): readonly PersonalSet[] => {
    const reading = personalSets(wish as Parameters<typeof personalSets>[0])
    if ('problem' in reading) throw new Error(reading.problem)
    return reading.sets
  })

/** A plan's cells with something typed in those for answers. */
function typedInto({ rows }: MarksheetPlan, cells: readonly (readonly [number, number, string | number])[]) {
  const values: (string | number)[][] = rows.map((row) => [...row])
  for (const [row, column, typed] of cells) {
    const line = values[row]
    if (line) line[column] = typed
  }
  return { name: 'Sheet', values }
}

/** The right answer as a pupil may type it. */
const rightFor = (question: Question): number => Number(answerKey(question).value)

describe('personal sets on a sheet', () => {
  it('stand below title, advice and heads, each question in a column that is wide enough, its answer empty beside it', () => {
    fc.assert(
      fc.property(drawn, (sets) => {
        const { rows, head, answers, widths } = planIn(planPersonalSheet('Personal sets', sets))
        expect([rows[0]?.[0], head, rows.length]).toEqual(['Personal sets', 2, 3 + sets.length])
        expect(answers).toEqual({ top: 3, left: 1, bottom: 2 + sets.length, right: widths.length - 1 })
        expect(new Set(rows.map((row) => row.length))).toEqual(new Set([widths.length]))
        sets.forEach(({ name, questions }, pupil) => {
          const [first, ...cells] = rows[3 + pupil] ?? []
          expect(first).toBe(name)
          questions.forEach((question, index) => {
            const text = printQuestion(question)
            expect(cells.slice(2 * index, 2 * index + 2)).toEqual([text, ''])
            expect(widths[1 + 2 * index]).toBeGreaterThan(text.length)
          })
        })
      }),
      { numRuns: 40 },
    )
  })

  it('are read back as pairs, the same questions for the same pupils, and come out as they are typed', () => {
    fc.assert(
      fc.property(drawn, fc.nat(), (sets, which) => {
        const plan = planIn(planPersonalSheet('Personal sets', sets))
        const isWrong = (pupil: number, index: number) => (pupil + index) % 4 === which % 4
        const cells = sets.flatMap(({ questions }, pupil) =>
          questions.map((question, index) => {
            const right = rightFor(question)
            return [3 + pupil, 2 + 2 * index, isWrong(pupil, index) ? right + 10 : right] as const
          }),
        )
        const [found, ...others] = review(typedInto(plan, cells))
        expect([found?.orientation, found?.marked, others]).toEqual(['pairs', false, []])
        expect(found?.pupils.map(({ name }) => name)).toEqual(sets.map(({ name }) => name))
        const asked = found?.pupils.map(({ answers }) =>
          answers.map(({ question }) => found.questions[question]?.text),
        )
        expect(asked).toEqual(sets.map(({ questions }) => questions.map(printQuestion)))
        expect(found?.pupils.map(({ outcomes }) => outcomes)).toEqual(
          sets.map(({ questions }, pupil) =>
            questions.map((_, index) => (isWrong(pupil, index) ? 'incorrect' : 'correct')),
          ),
        )
      }),
      { numRuns: 60 },
    )
  })
})

describe('the marksheet of any lesson', () => {
  it('is read back with its questions for its pupils, and right answers come out correct', () => {
    const names = ['Amira P', 'Daniel O', 'Una K']
    fc.assert(
      fc.property(fc.constantFrom(...RECIPES), fc.integer(), (recipe, seed) => {
        const reading = makeLesson({ recipe, seed })
        if ('problem' in reading) throw new Error(reading.problem)
        const questions = reading.lesson.practice.flatMap((set) =>
          set.questions.map(({ question }) => question),
        )
        const plan = planIn(planMarksheet({ title: recipe.objective, names, questions }))
        const cells = names.flatMap((_, pupil) =>
          questions.map((question, index) => [3 + pupil, 1 + index, rightFor(question)] as const),
        )
        const [found, ...others] = review(typedInto(plan, cells))
        expect([found?.orientation, found?.marked, others]).toEqual(['pupils-down', false, []])
        expect(found?.questions.map(({ text }) => text)).toEqual(questions.map(printQuestion))
        expect(found?.pupils.map(({ name, outcomes }) => [name, ...new Set(outcomes)])).toEqual(
          names.map((name) => [name, 'correct']),
        )
      }),
      { numRuns: 60 },
    )
  })
})
