import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ADDITION_TYPES, SUBTRACTION_TYPES } from '../../src/arithmetic/exchange'
import { workOut } from '../../src/arithmetic/columns'
import type { Calculation } from '../../src/arithmetic/question'
import { strategyFor } from '../../src/arithmetic/strategy'
import { RECIPES, type Recipe } from '../../src/items/recipes'
import { successCriteria } from '../../src/lesson/criteria'
import {
  makeLesson,
  recapObjectives,
  type Lesson,
  type LessonWish,
  type PracticeSet,
} from '../../src/lesson/lessonSet'
import { earlierObjectives, recipeFor } from '../../src/lesson/objectives'
import { operationOf, typeInWords } from '../../src/lesson/words'
import { TEACHING_ORDER } from '../../src/mastery/support'

function lessonOf(wish: LessonWish): Lesson {
  const made = makeLesson(wish)
  if ('problem' in made) throw new Error(made.problem)
  return made.lesson
}

function recipeNamed(
  year: number,
  topic: string,
  type: Recipe['kind']['type'],
  operation: Recipe['operation'],
): Recipe {
  const found = RECIPES.find(
    (recipe) =>
      recipe.year === year &&
      recipe.topic === topic &&
      recipe.kind.type === type &&
      recipe.operation === operation,
  )
  if (!found) throw new Error('No such recipe.')
  return found
}

const THROUGH_ZERO = recipeNamed(4, 'Four-digit numbers', 'through a zero', 'subtract')
const title = ({ year, topic, operation, name }: Recipe) => `Year ${year}, ${topic}, ${operation}: ${name}`
const tensIn = (calculation: Calculation) =>
  workOut(calculation).columns.filter(({ receives }) => receives).length
const zerosCrossedIn = (calculation: Calculation) =>
  calculation.operation === 'add'
    ? 0
    : workOut(calculation).columns.filter(({ lends, top = 0 }) => lends && top === 0).length
const digitsIn = ({ top, bottom }: Calculation) => Math.max(top.digits.length, bottom.digits.length)
const allQuestions = ({ model, partner, practice, recap }: Lesson) => [
  model,
  partner,
  ...practice.flatMap(({ questions }) => questions),
  ...recap,
]

describe('a lesson for every objective', () => {
  it.each(RECIPES.map((recipe) => [title(recipe), recipe] as const))('%s', (_, recipe) => {
    const lesson = lessonOf({ recipe, seed: 'week 3', practice: 4, recap: 3 })
    const { type } = recipe.kind
    expect(lesson.practice.map(({ questions }) => questions.length)).toEqual([4, 4, 4])
    if (type !== 'any') {
      expect([lesson.model.type, lesson.partner.type]).toEqual([type, type])
      expect(lesson.practice[1]?.questions.map((question) => question.type)).toEqual(Array(4).fill(type))
    }
    const texts = allQuestions(lesson).map(({ question }) => JSON.stringify(question.calculation))
    expect(new Set(texts).size).toBe(texts.length)
    expect(lesson.recap).toHaveLength(earlierObjectives(recipe).length === 0 ? 0 : 3)
    for (const { steps, answer, text } of allQuestions(lesson)) {
      expect(steps.some((step) => step.includes(answer))).toBe(true)
      expect(text).not.toContain(' = ' + answer)
    }
  })
})

describe('the practice', () => {
  it('has three grades of one objective, the way in never harder than the objective, in every draw', () => {
    fc.assert(
      fc.property(fc.constantFrom(...RECIPES), fc.integer(), (recipe, seed) => {
        const [wayIn, objective, deeper] = lessonOf({ recipe, seed, practice: 5, recap: 0 }).practice
        if (!wayIn || !objective || !deeper) throw new Error('There are three grades.')
        expect([wayIn, objective, deeper].map(({ grade }) => grade)).toEqual([
          'The way in',
          'The objective',
          'Deeper',
        ])
        if (recipe.kind.type !== 'any')
          for (const { questions } of [wayIn, objective, deeper])
            expect(questions.map(({ type }) => type)).toEqual(Array(5).fill(recipe.kind.type))
        const measures = ({ questions }: PracticeSet) =>
          [tensIn, zerosCrossedIn, digitsIn].map((measure) =>
            questions.map(({ question }) => measure(question.calculation)).sort((a, b) => a - b),
          )
        const easier = measures(wayIn)
        measures(objective).forEach((sizes, measure) =>
          sizes.forEach((size, index) => expect(easier[measure]?.[index]).toBeLessThanOrEqual(size)),
        )
      }),
      { numRuns: 300 },
    )
  })

  it.each([1, 20])(
    'is made for every objective with %i questions in a grade, whatever the seed',
    (practice) => {
      for (const recipe of RECIPES)
        for (const seed of [1, 2, 3])
          expect(
            lessonOf({ recipe, seed, practice, recap: 0 }).practice.map(({ questions }) => questions.length),
          ).toEqual(Array(3).fill(practice))
    },
  )

  it('leads in with fewer digits where that kind of exchange has any', () => {
    const [wayIn] = lessonOf({ recipe: THROUGH_ZERO, seed: 1 }).practice
    for (const { question, type } of wayIn?.questions ?? []) {
      expect(question.calculation.top.digits).toHaveLength(3)
      expect(type).toBe('through a zero')
    }
  })

  it('goes deeper with missing numbers, a mistake to find and a sentence to judge, never with longer numbers', () => {
    for (const recipe of RECIPES) {
      const [, , deeper] = lessonOf({ recipe, seed: 3 }).practice
      for (const { text } of deeper?.questions ?? []) expect(text).toContain('□')
      const [mistake, claim] = deeper?.tasks ?? []
      const [, asked = '', claimed = ''] = /^(.+) = (\S+) is wrong\./.exec(mistake?.text ?? '') ?? []
      expect(mistake?.answer).toContain(`${asked} = `)
      expect(mistake?.answer).toContain(`not ${claimed}.`)
      expect(mistake?.answer.startsWith(`${asked} = ${claimed},`)).toBe(false)
      expect(claim?.text).toMatch(/^Always, sometimes or never true\?/)
      expect(claim?.answer).toMatch(/^(?:Always|Sometimes|Never)\. /)
    }
  })

  it('avoids questions already set', () => {
    const before = allQuestions(lessonOf({ recipe: THROUGH_ZERO, seed: 1 })).map(({ question }) => question)
    const after = allQuestions(lessonOf({ recipe: THROUGH_ZERO, seed: 1, avoid: before }))
    const used = new Set(before.map(({ calculation }) => JSON.stringify(calculation)))
    expect(after).toHaveLength(before.length)
    for (const { question } of after) expect(used).not.toContain(JSON.stringify(question.calculation))
  })

  it('is the same for the same seed, another for another', () => {
    expect(lessonOf({ recipe: THROUGH_ZERO, seed: 7 })).toEqual(lessonOf({ recipe: THROUGH_ZERO, seed: '7' }))
    expect(lessonOf({ recipe: THROUGH_ZERO, seed: 7 })).not.toEqual(
      lessonOf({ recipe: THROUGH_ZERO, seed: 8 }),
    )
  })

  it('says how many questions there can be', () => {
    expect(makeLesson({ recipe: THROUGH_ZERO, seed: 1, practice: 0 })).toEqual({
      problem: 'A grade of the practice holds 1 to 20 questions.',
    })
    expect(makeLesson({ recipe: THROUGH_ZERO, seed: 1, recap: 21 })).toEqual({
      problem: 'The recap holds 0 to 20 questions.',
    })
  })
})

describe('the modelled example and its partner question', () => {
  it('have exchanges and zeros in the same columns and no other digit in common, in every draw', () => {
    fc.assert(
      fc.property(fc.constantFrom(...RECIPES), fc.integer(), (recipe, seed) => {
        const { model, partner } = lessonOf({ recipe, seed, practice: 1, recap: 0 })
        const [one, other] = [model.question.calculation, partner.question.calculation]
        const moves = (calculation: Calculation) =>
          workOut(calculation).columns.map(({ receives, lends }) => [receives, lends])
        expect(moves(other)).toEqual(moves(one))
        for (const row of ['top', 'bottom'] as const) {
          expect(other[row].places).toBe(one[row].places)
          expect(other[row].digits).toHaveLength(one[row].digits.length)
          one[row].digits.forEach((digit, place) => {
            if (digit === 0) expect(other[row].digits[place]).toBe(0)
            else expect([0, digit]).not.toContain(other[row].digits[place])
          })
        }
      }),
      { numRuns: 300 },
    )
  })

  it('call for the written method, except where no question of the objective does', () => {
    const isMental = (recipe: Recipe) =>
      recipe.topic === 'A three-digit and a two-digit number' && /^no /.test(recipe.kind.type)
    expect(RECIPES.filter(isMental)).toHaveLength(2)
    fc.assert(
      fc.property(fc.constantFrom(...RECIPES), fc.integer(), (recipe, seed) => {
        const { model, partner } = lessonOf({ recipe, seed, practice: 1, recap: 0 })
        for (const { question } of [model, partner])
          expect(strategyFor(question).name === 'written method').toBe(!isMental(recipe))
      }),
      { numRuns: 300 },
    )
  })
})

describe('the recap', () => {
  it('holds only what is taught before', () => {
    for (const recipe of RECIPES)
      for (const earlier of earlierObjectives(recipe)) {
        expect(earlier.year).toBeLessThanOrEqual(recipe.year)
        if (earlier.year === recipe.year && recipe.kind.type !== 'any')
          expect(TEACHING_ORDER.findIndex((type) => type === earlier.kind.type)).toBeLessThan(
            TEACHING_ORDER.findIndex((type) => type === recipe.kind.type),
          )
      }
    expect(earlierObjectives(recipeNamed(3, 'Three-digit numbers', 'no carry', 'add'))).toEqual([])
    const types = earlierObjectives(THROUGH_ZERO).map(({ kind }) => kind.type)
    expect(types).toContain('three or more exchanges')
    expect(types).not.toContain('through two or more zeros')
    expect(types.some((type) => type.includes('tenths'))).toBe(false)
    for (const recipe of RECIPES.filter(({ topic }) => /digit numbers?$/.test(topic)))
      for (const { kind } of earlierObjectives(recipe))
        expect([kind.unit ?? '', kind.topDecimals ?? 0]).toEqual(['', 0])
  })

  it('leans to what is not secure', () => {
    const types = earlierObjectives(THROUGH_ZERO).flatMap(({ kind }) =>
      kind.type === 'any' ? [] : [kind.type],
    )
    const weak = new Set(['no exchange', 'one carry, ones to tens', 'two exchanges, apart'])
    const known = types.map(
      (type) => ({ type, status: weak.has(type) ? 'needs support' : 'secure' }) as const,
    )
    const draws = Array.from({ length: 200 }, (_, seed) =>
      recapObjectives(THROUGH_ZERO, 3, known, seed),
    ).flat()
    const share = draws.filter(({ kind }) => weak.has(kind.type)).length / draws.length
    const shareUnknown =
      Array.from({ length: 200 }, (_, seed) => recapObjectives(THROUGH_ZERO, 3, [], seed))
        .flat()
        .filter(({ kind }) => weak.has(kind.type)).length / draws.length
    expect(shareUnknown).toBeLessThan(0.3)
    expect(share).toBeGreaterThan(0.55)
    expect(share).toBeLessThan(1)
  })

  it('weighs a class by its pupils, and has no objective twice before each has come', () => {
    fc.assert(
      fc.property(fc.integer(), fc.integer({ min: 0, max: 20 }), (seed, count) => {
        const drawn = recapObjectives(THROUGH_ZERO, count, [{ type: 'no carry', status: 'secure' }], seed)
        const times = earlierObjectives(THROUGH_ZERO).map(
          (each) => drawn.filter((one) => one === each).length,
        )
        expect(drawn).toHaveLength(count)
        expect(Math.max(...times) - Math.min(...times)).toBeLessThanOrEqual(1)
      }),
    )
  })
})

describe('success criteria', () => {
  it('are four to six short sentences for every type, from setting out to checking', () => {
    for (const type of ['any', ...SUBTRACTION_TYPES, ...ADDITION_TYPES] as const)
      for (const operation of type === 'any' ? (['add', 'subtract'] as const) : [operationOf(type)]) {
        const lines = successCriteria(operation, type)
        expect(lines.length).toBeGreaterThanOrEqual(4)
        expect(lines.length).toBeLessThanOrEqual(6)
        for (const line of lines) expect(line).toMatch(/^(?:I|In|If|After|Where) [^.]{10,95}[.?]$/)
        expect(lines[0]).toContain('under each other')
        expect(lines.at(-1)).toContain('I check')
      }
  })

  it('name the columns of the type, and the points of decimals', () => {
    expect(successCriteria('subtract', 'one exchange, hundreds to tens')[2]).toBe(
      'Where there are not enough tens, I exchange 1 hundred for 10 tens.',
    )
    expect(successCriteria('add', 'one carry, tenths to ones')[2]).toBe(
      'Where the tenths make 10 or more, I carry 10 tenths as 1 one.',
    )
    expect(successCriteria('add', 'no carry', true)[0]).toContain('points lined up')
  })
})

describe('objectives', () => {
  it('there is a recipe for every type and year, of that year where it has one', () => {
    for (const year of [3, 4, 5] as const)
      for (const type of TEACHING_ORDER) {
        const recipe = recipeFor(type, year)
        expect(recipe.kind.type).toBe(type)
        if (RECIPES.some((each) => each.year === year && each.kind.type === type))
          expect(recipe.year).toBe(year)
      }
    expect(recipeFor('one exchange, tens to ones', 4).topic).toBe('Four-digit numbers')
    expect(recipeFor('one carry, hundredths to tenths', 3).year).toBe(4)
  })

  it('types have words for a sentence', () => {
    expect(typeInWords('through a zero')).toBe('subtraction through a zero')
    expect(typeInWords('one exchange, tens to ones')).toBe('subtraction with one exchange (tens to ones)')
    expect(typeInWords('no carry')).toBe('addition with no carry')
  })
})
