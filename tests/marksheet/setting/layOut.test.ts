import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { printQuestion, type Question } from '../../../src/arithmetic/question'
import { makeSet } from '../../../src/items/makeSet'
import { TOPICS } from '../../../src/items/wish'
import { findMarksheets } from '../../../src/marksheet/layout/find'
import { columnWidthFor, MOST_LAID_OUT, planMarksheet } from '../../../src/marksheet/setting/layOut'

const NAMES = ['Amira P', 'Bertie L', 'Cerys H']

function questionsOf(count: number, topic = 0): readonly Question[] {
  const numbers = TOPICS[topic % TOPICS.length] ?? { year: 4 as const, topic: '' }
  const set = makeSet({ operation: 'both', numbers, aim: 'mixed', count }, '4827')
  if ('problem' in set) throw new Error(set.problem)
  return set.questions
}

function planned(names: readonly string[], questions: readonly Question[]) {
  const reading = planMarksheet({ title: 'Column subtraction · set 4827', names, questions })
  if ('problem' in reading) throw new Error(reading.problem)
  return reading.plan
}

describe('a marksheet laid out', () => {
  it('is found again, with its pupils and questions, for every topic and size', () => {
    const invented = fc
      .tuple(fc.constantFrom('Ada', 'Ben', 'Cal', 'Dot'), fc.constantFrom('Hill', 'Moss', 'Reed', 'Vale'))
      .map((parts) => parts.join(' '))
    const cases = fc.tuple(
      fc.uniqueArray(invented, { minLength: 1 }),
      fc.integer({ min: 1, max: 40 }),
      fc.nat(),
    )
    fc.assert(
      fc.property(cases, ([names, count, topic]) => {
        const questions = questionsOf(count, topic)
        const { rows, head, answers } = planned(names, questions)
        const [found, ...others] = findMarksheets({ name: 'New', values: rows })
        expect(others).toEqual([])
        expect(found?.orientation).toBe('pupils-down')
        expect(found?.pupils.map(({ name }) => name)).toEqual(names)
        expect(found?.questions.map(({ text, row }) => [text, row])).toEqual(
          questions.map((question) => [printQuestion(question), head]),
        )
        expect(found?.pupils[0]?.answers[0]).toMatchObject({ row: answers.top, column: answers.left })
        expect(found?.pupils.at(-1)?.answers.at(-1)).toMatchObject({
          row: answers.bottom,
          column: answers.right,
        })
      }),
      { numRuns: 40 },
    )
  })

  it('has rows of equal length, a width for every column and nothing in the answer cells', () => {
    const { rows, widths, answers } = planned(NAMES, questionsOf(12))
    for (const row of rows) expect(row).toHaveLength(widths.length)
    for (const row of rows.slice(answers.top)) expect(row.slice(answers.left).join('')).toBe('')
  })

  it('has columns wide enough for names and questions', () => {
    const questions = questionsOf(3, 8)
    const { rows, head, widths } = planned(['Bartholomew Fotheringay'], questions)
    expect(widths[0]).toBeGreaterThan('Bartholomew Fotheringay'.length)
    rows[head]?.slice(1).forEach((text, index) => {
      expect(widths[index + 1]).toBeGreaterThan(text.length)
      expect(widths[index + 1]).toBe(columnWidthFor(text))
    })
  })

  it.each([
    [[], 3, 'There are no names to lay a marksheet out for.'],
    [NAMES, 0, 'There are no questions to lay out.'],
    [
      Array.from({ length: MOST_LAID_OUT.pupils + 1 }, (_, index) => `Pupil ${index}`),
      3,
      'A marksheet is laid out for up to 1,000 pupils and 40 questions.',
    ],
  ])(
    'is refused with a sentence where names or questions are missing or too many (%#)',
    (names, count, problem) => {
      const questions = count === 0 ? [] : questionsOf(count)
      expect(planMarksheet({ title: 'T', names, questions })).toEqual({ problem })
    },
  )
})
