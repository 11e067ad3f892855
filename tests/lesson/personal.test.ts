import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { answerKey, type CellValue } from '../../src/answers/typed'
import { workOut } from '../../src/arithmetic/columns'
import { familyOf } from '../../src/arithmetic/families'
import { exchangesOf } from '../../src/arithmetic/exchange'
import { amountText, type Question } from '../../src/arithmetic/question'
import { personalSets, personalTable, type PersonalSet, type PersonalWish } from '../../src/lesson/personal'
import { addressOf } from '../../src/marksheet/layout/matrix'
import { review } from '../../src/marksheet/marking/review'
import { TEACHING_ORDER } from '../../src/mastery/support'
import { anyCounts, judged } from '../mastery/judged'

function setsOf(wish: PersonalWish): readonly PersonalSet[] {
  const made = personalSets(wish)
  if ('problem' in made) throw new Error(made.problem)
  return made.sets
}

const typeOf = ({ calculation }: Question) => exchangesOf(workOut(calculation)).type

const misreadSign = {
  fault: 'wrong-operation',
  alsoFits: [],
  probability: 1,
  explains: [0, 1],
  explainsButForSlip: [],
  held: 'always',
} as const

const PUPILS: PersonalWish['pupils'] = [
  {
    name: 'Amina K',
    judgement: judged({
      'one exchange, tens to ones': [3, 3],
      'two exchanges, next to each other': [2, 3],
      'through a zero': [0, 3],
    }),
  },
  { name: 'Bryn T', judgement: judged({ 'through a zero': [0, 3] }) },
  { name: 'Caris W', judgement: judged({ 'no exchange': [6, 6], 'through a zero': [6, 6] }) },
  { name: 'Dewi P', judgement: judged() },
  { name: 'Ebo M', judgement: judged({ 'no exchange': [0, 3] }, [misreadSign]) },
]

const needs = fc
  .array(anyCounts, { minLength: 2, maxLength: 8 })
  .map((pupils) =>
    pupils.map((counts, index) => ({ name: `Pupil ${'ABCDEFGH'[index]}`, judgement: judged(counts) })),
  )

describe('personal sets', () => {
  it('give the need, then what comes next, and one question of what is secure', () => {
    const [amina, bryn, caris, dewi, ebo] = setsOf({ pupils: PUPILS, year: 4, seed: 1 })
    expect(amina?.questions.map(typeOf)).toEqual([
      'one exchange, tens to ones',
      'one exchange, tens to ones',
      'two exchanges, next to each other',
      'two exchanges, next to each other',
      'through a zero',
      'through a zero',
    ])
    expect(bryn?.types).toEqual(['through a zero'])
    expect(bryn?.questions.map(typeOf)).toEqual(Array(6).fill('through a zero'))
    expect(caris?.types).toEqual(['through a zero', 'through two or more zeros'])
    for (const set of [dewi, ebo]) {
      expect(set?.types).toEqual(['any'])
      expect(set?.questions.map(({ sign }) => sign)).toEqual([
        'add',
        'subtract',
        'add',
        'subtract',
        'add',
        'subtract',
      ])
    }
  })

  it('hold questions in which a named fault shows, where easier types have hardly been seen', () => {
    const fault = { ...misreadSign, fault: 'takes-smaller-from-larger' } as const
    const judgement = judged(
      { 'no exchange': [1, 1], 'one exchange, tens to ones': [0, 4], 'through a zero': [0, 3] },
      [fault],
    )
    const [set] = setsOf({ pupils: [{ name: 'Ffion B', judgement }], year: 4, seed: 1 })
    expect(set?.questions.map(typeOf)).toEqual([
      ...Array<string>(3).fill('no exchange'),
      ...Array<string>(3).fill('one exchange, tens to ones'),
    ])
  })

  it('give nobody who is not flagged anything easier than what was all right, twice or more', () => {
    fc.assert(
      fc.property(needs, (pupils) => {
        const sets = setsOf({ pupils, year: 4, seed: 1 })
        pupils.forEach(({ judgement: { byType, needsSupport } }, index) => {
          const place = (type: string) => TEACHING_ORDER.findIndex((each) => each === type)
          const known = byType.filter(({ right, tried }) => right === tried && tried >= 2)
          const highest = Math.max(-1, ...known.map(({ type }) => place(type)))
          if (needsSupport || highest < 0) return
          for (const question of sets[index]?.questions ?? [])
            expect(place(typeOf(question))).toBeGreaterThanOrEqual(highest)
        })
      }),
      { numRuns: 25 },
    )
  })

  it('hold two questions or more of every family', () => {
    fc.assert(
      fc.property(needs, fc.integer({ min: 2, max: 10 }), (pupils, count) => {
        for (const { types, questions } of setsOf({ pupils, year: 4, seed: 1, count })) {
          if (types.includes('any')) continue
          const families = questions.map((question) => familyOf(typeOf(question)))
          for (const family of families)
            expect(families.filter((each) => each === family).length).toBeGreaterThanOrEqual(2)
        }
      }),
      { numRuns: 25 },
    )
  })

  it('hold as many questions for every pupil, all different', () => {
    fc.assert(
      fc.property(needs, fc.integer({ min: 2, max: 10 }), fc.integer(), (pupils, count, seed) => {
        const sets = setsOf({ pupils, year: 4, seed, count })
        expect(sets.map(({ name }) => name)).toEqual(pupils.map(({ name }) => name))
        const all = sets.flatMap(({ questions }) =>
          questions.map(({ calculation }) => JSON.stringify(calculation)),
        )
        expect(all).toHaveLength(pupils.length * count)
        expect(new Set(all).size).toBe(all.length)
      }),
      { numRuns: 25 },
    )
  })

  it('avoid questions already set, and are the same for the same seed', () => {
    const before = setsOf({ pupils: PUPILS, year: 4, seed: 1 })
    expect(setsOf({ pupils: PUPILS, year: 4, seed: '1' })).toEqual(before)
    const avoid = before.flatMap(({ questions }) => questions)
    const after = setsOf({ pupils: PUPILS, year: 4, seed: 1, avoid }).flatMap(({ questions }) => questions)
    for (const question of after) expect(avoid).not.toContainEqual(question)
  })

  it('say what is wrong with a wish', () => {
    expect(personalSets({ pupils: PUPILS, year: 4, seed: 1, count: 1 })).toEqual({
      problem: 'A personal set holds 2 to 20 questions.',
    })
    expect(personalSets({ pupils: [], year: 4, seed: 1 })).toEqual({
      problem: 'There are no pupils to make personal sets for.',
    })
  })
})

describe('the table of personal sets', () => {
  /** The table as a sheet, with an answer cell filled for every question. */
  function filled(sets: readonly PersonalSet[], answer: (question: Question, index: number) => CellValue) {
    const [head = [], ...rows] = personalTable(sets)
    const body = rows.map((row, pupil) =>
      row.map((cell, column): CellValue => {
        const index = (column - 2) / 2
        const question = sets[pupil]?.questions[index]
        return column > 0 && column % 2 === 0 && question ? answer(question, index) : cell
      }),
    )
    return { name: 'Personal', values: [head, ...body] }
  }

  it('is found by the review as question–answer pairs, and marked', () => {
    const sets = setsOf({ pupils: PUPILS, year: 4, seed: 3 })
    const right = (question: Question) => amountText(answerKey(question).numeral, question.unit)
    const [found, ...others] = review(
      filled(sets, (question, index) => (index === 0 ? '1' : right(question))),
    )
    expect(others).toEqual([])
    expect(found?.orientation).toBe('pairs')
    expect(found?.questions.map(({ text }) => text)).toEqual(
      personalTable(sets)
        .slice(1)
        .flatMap((row) => row.filter((_, column) => column % 2 === 1)),
    )
    expect(found?.pupils.map(({ name, nameCells }) => `${nameCells.map(addressOf).join()} ${name}`)).toEqual([
      'A2 Amina K',
      'A3 Bryn T',
      'A4 Caris W',
      'A5 Dewi P',
      'A6 Ebo M',
    ])
    for (const { outcomes, answers } of found?.pupils ?? []) {
      expect(outcomes).toEqual(['incorrect', ...Array(5).fill('correct')])
      expect(answers.map(({ column }) => column)).toEqual([2, 4, 6, 8, 10, 12])
    }
  })

  it('is found empty, as it is handed out, whatever the needs', () => {
    fc.assert(
      fc.property(needs, fc.integer({ min: 2, max: 8 }), fc.integer(), (pupils, count, seed) => {
        const sets = setsOf({ pupils, year: 4, seed, count })
        const found = review({ name: 'Personal', values: personalTable(sets) })
        expect(found.map(({ orientation }) => orientation)).toEqual(['pairs'])
        expect(found[0]?.pupils.map(({ name }) => name)).toEqual(pupils.map(({ name }) => name))
        expect(found[0]?.pupils.flatMap(({ outcomes }) => outcomes)).toEqual(
          Array(pupils.length * count).fill('blank'),
        )
      }),
      { numRuns: 20 },
    )
  })
})
