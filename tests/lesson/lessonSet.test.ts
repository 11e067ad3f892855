import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ADDITION_TYPES, SUBTRACTION_TYPES } from '../../src/arithmetic/exchange'
import { workOut } from '../../src/arithmetic/columns'
import type { Calculation } from '../../src/arithmetic/question'
import { strategyFor } from '../../src/arithmetic/strategy'
import { RECIPES, type Recipe } from '../../src/items/recipes'
import { successCriteria } from '../../src/lesson/criteria'
import { makeLesson, type Lesson, type LessonWish, type PracticeSet } from '../../src/lesson/lessonSet'
import { leastSecure, warmUps } from '../../src/lesson/recap'
import { partWorked } from '../../src/lesson/partWorked'
import { TASKS } from '../../src/lesson/tasks'
import { earlierObjectives, recipeFor } from '../../src/lesson/objectives'
import { operationOf, typeInWords } from '../../src/lesson/words'
import { TEACHING_ORDER } from '../../src/mastery/support'
import { MAKING, rowsOf } from './making'

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
const columnsIn = (calculation: Calculation) => workOut(calculation).columns.length
const digitsOfKind = ({ kind: { topDigits, bottomDigits, topDecimals = 0, bottomDecimals = 0 } }: Recipe) =>
  Math.max(...[topDigits, bottomDigits].flat()) + Math.max(topDecimals, bottomDecimals) + 1
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
    expect(lesson.practice.map(({ questions }) => questions.length)).toEqual([4, 4, 2])
    if (type !== 'any') {
      expect([lesson.model.type, lesson.partner.type]).toEqual([type, type])
      expect(lesson.practice[1]?.questions.map((question) => question.type)).toEqual(Array(4).fill(type))
    }
    const texts = allQuestions(lesson).map(({ question }) => JSON.stringify(question.calculation))
    expect(new Set(texts).size).toBe(texts.length)
    expect(lesson.recap.length).toBeLessThanOrEqual(3)
    if (earlierObjectives(recipe).length === 0) expect(lesson.recap).toEqual([])
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
            for (const { type } of questions) expect(type).toBe(recipe.kind.type)
        const measures = ({ questions }: PracticeSet) =>
          [tensIn, zerosCrossedIn, digitsIn].map((measure) =>
            questions.map(({ question }) => measure(question.calculation)).sort((a, b) => a - b),
          )
        const easier = measures(wayIn)
        measures(objective).forEach((sizes, measure) =>
          sizes.forEach((size, index) => expect(easier[measure]?.[index]).toBeLessThanOrEqual(size)),
        )
      }),
      { numRuns: 100 },
    )
  })

  it.each([1, 20])(
    'is made for every objective with %i questions in a grade, whatever the seed',
    (practice) => {
      for (const recipe of RECIPES)
        for (const seed of [1, 2, 3])
          expect(
            lessonOf({ recipe, seed, practice, recap: 0 }).practice.map(({ questions }) => questions.length),
          ).toEqual([practice, practice, Math.ceil(practice / 2)])
    },
  )

  it('leads in with fewer digits where that kind of exchange has any', () => {
    const [wayIn] = lessonOf({ recipe: THROUGH_ZERO, seed: 1 }).practice
    for (const { question, type } of wayIn?.questions ?? []) {
      expect(question.calculation.top.digits).toHaveLength(3)
      expect(type).toBe('through a zero')
    }
  })

  it('goes deeper with missing numbers and something to explain of each sort, never with longer numbers, in every draw', () => {
    fc.assert(
      fc.property(fc.constantFrom(...RECIPES), fc.integer(), (recipe, seed) => {
        const [, objective, deeper] = lessonOf({ recipe, seed, recap: 0 }).practice
        if (!objective || !deeper) throw new Error('There are three grades.')
        for (const { text } of deeper.questions) expect(text).toContain('□')
        const longest = digitsOfKind(recipe)
        for (const { question } of deeper.questions)
          expect(digitsIn(question.calculation)).toBeLessThanOrEqual(longest)
        expect(deeper.tasks.map(({ name }) => name)).toEqual(TASKS)
        for (const { answer } of deeper.tasks) expect(answer).toMatch(/^[A-Z£\d].*[.”]$/)
        const [, mistake, claim] = deeper.tasks
        const [, asked = '', claimed = ''] = /^(.+) = (.+) is wrong\./.exec(mistake?.text ?? '') ?? []
        expect(mistake?.answer).toContain(`${asked} = `)
        expect(mistake?.answer.startsWith(`${asked} = ${claimed}.`)).toBe(false)
        expect(claim?.answer).toMatch(/^(?:Always|Sometimes|Never)\. /)
        expect(deeper.criteria.length).toBeGreaterThan(objective.criteria.length)
        expect(deeper.criteria.join(' ')).toMatch(/missing number.*missing digits.*explain/)
      }),
      { numRuns: 100 },
    )
  })

  it('lets the first question of the way in be begun, never finished, in every draw', () => {
    fc.assert(
      fc.property(fc.constantFrom(...RECIPES), fc.integer(), (recipe, seed) => {
        const [begun] = lessonOf({ recipe, seed, practice: 1, recap: 0 }).practice[0]?.questions ?? []
        if (!begun) throw new Error('The way in is empty.')
        const given = partWorked(begun.question, MAKING.notation)
        const whole = rowsOf(begun.question)
        expect(given.map(({ kind }) => kind)).toEqual(whole.map(({ kind }) => kind))
        const figures = (lines: typeof given, ...kinds: readonly string[]) =>
          lines
            .filter(({ kind }) => kinds.includes(kind))
            .flatMap(({ cells }) => cells.map(({ text }) => text).filter((text) => /\d/.test(text)))
        expect(figures(given, 'bottom')).toEqual(figures(whole, 'bottom'))
        expect(figures(given, 'answer').length).toBeLessThan(figures(whole, 'answer').length)
        expect(figures(whole, 'answer').join('').endsWith(figures(given, 'answer').join(''))).toBe(true)
        const begins = (lines: typeof given) =>
          lines.some(({ cells }) => cells.some(({ crossed }) => crossed))
        const exchanges =
          begun.question.calculation.operation === 'subtract' && tensIn(begun.question.calculation) > 0
        if (exchanges) expect(begins(given)).toBe(true)
        else expect(figures(given, 'answer').length).toBeGreaterThan(0)
      }),
      { numRuns: 100 },
    )
  })

  it('has one way to fill in the missing digits, in every draw', () => {
    fc.assert(
      fc.property(fc.constantFrom(...RECIPES), fc.integer(), (recipe, seed) => {
        const [, , deeper] = lessonOf({ recipe, seed, practice: 1, recap: 0 }).practice
        const given = deeper?.tasks[0]?.given
        if (!given) throw new Error('No digits are missing.')
        const numbers = ['top', 'bottom', 'answer'].map((kind) =>
          (given.find((line) => line.kind === kind)?.cells ?? [])
            .map(({ text }) => text)
            .join('')
            .replace(/[^\d□.]/g, ''),
        )
        const empty = numbers.join('').replace(/[^□]/g, '').length
        expect(empty).toBeGreaterThanOrEqual(2)
        const scale = 10 ** (numbers[0]?.split('.')[1]?.length ?? 0)
        const filled = Array.from({ length: 10 ** empty }, (_, fill) => {
          const digits = [...String(fill).padStart(empty, '0')]
          return numbers.map((number) => number.replace(/□/g, () => digits.shift() ?? ''))
        })
        const right = filled.filter((three) => {
          const [top = 0, bottom = 0, answer = 0] = three.map((number) => Math.round(Number(number) * scale))
          const isWritten = three.every((number) => number === '' || !/^0\d/.test(number))
          return isWritten && (recipe.operation === 'add' ? top + bottom : top - bottom) === answer
        })
        expect(right).toHaveLength(1)
      }),
      { numRuns: 100 },
    )
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
      { numRuns: 100 },
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
      { numRuns: 100 },
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

  it('is never harder than the practice, in any way, in every draw', () => {
    fc.assert(
      fc.property(fc.constantFrom(...RECIPES), fc.integer(), (recipe, seed) => {
        const { practice, recap } = lessonOf({ recipe, seed, practice: 5, recap: 6 })
        for (const measure of [tensIn, zerosCrossedIn, columnsIn]) {
          const sizes = (practice[1]?.questions ?? []).map(({ question }) => measure(question.calculation))
          for (const { question } of recap)
            expect(measure(question.calculation)).toBeLessThanOrEqual(Math.max(...sizes))
        }
      }),
      { numRuns: 100 },
    )
  })

  it('holds as many questions as wanted for every objective that enough comes before', () => {
    const without = RECIPES.filter((recipe) => lessonOf({ recipe, seed: 1 }).recap.length < 4)
    expect(without.every((recipe) => recipe.year === 3 && recipe.kind.type === 'no carry')).toBe(true)
  })

  it('keeps to the types that are chosen, where any of them is a warm-up', () => {
    const types = ['no exchange', 'one carry, ones to tens'] as const
    const { recap } = lessonOf({ recipe: THROUGH_ZERO, seed: 1, recap: 6, recapTypes: types })
    expect(new Set(recap.map(({ type }) => type))).toEqual(new Set(types))
    const other = lessonOf({ recipe: THROUGH_ZERO, seed: 1, recapTypes: ['through two or more zeros'] })
    expect(other.recap).toEqual(lessonOf({ recipe: THROUGH_ZERO, seed: 1 }).recap)
  })

  it('can be narrowed down to what a class is least secure in', () => {
    const known = [
      { type: 'no exchange', status: 'secure' },
      { type: 'one exchange, tens to ones', status: 'needs support' },
      { type: 'one exchange, tens to ones', status: 'secure' },
      { type: 'no carry', status: 'needs support' },
      { type: 'through two or more zeros', status: 'needs support' },
    ] as const
    expect(leastSecure(THROUGH_ZERO, known)).toEqual(['no carry', 'one exchange, tens to ones'])
    expect(leastSecure(THROUGH_ZERO, [])).toEqual([])
  })

  it('has only warm-ups that move no more tens', () => {
    const types = warmUps(THROUGH_ZERO).map(({ kind }) => kind.type)
    expect(types).toContain('two exchanges, apart')
    expect(types).not.toContain('three or more exchanges')
    expect(types).not.toContain('three or more carries')
  })
})

describe('success criteria', () => {
  it('are five to seven short sentences for every type, from the estimate to the check', () => {
    for (const type of ['any', ...SUBTRACTION_TYPES, ...ADDITION_TYPES] as const)
      for (const operation of type === 'any' ? (['add', 'subtract'] as const) : [operationOf(type)]) {
        const lines = successCriteria(operation, type)
        expect(lines.length).toBeGreaterThanOrEqual(5)
        expect(lines.length).toBeLessThanOrEqual(7)
        for (const line of lines) expect(line).toMatch(/^(?:I|In|If|After|Before|Where) [^.]{10,95}[.?]$/)
        expect(lines[0]).toContain('I estimate')
        expect(lines[1]).toContain('under each other')
        expect(lines.at(-1)).toContain('I check')
      }
  })

  it('name the columns of the type, and the points of decimals', () => {
    expect(successCriteria('subtract', 'one exchange, hundreds to tens')[3]).toBe(
      'Where there are not enough tens, I exchange 1 hundred for 10 tens.',
    )
    expect(successCriteria('add', 'one carry, tenths to ones')[3]).toBe(
      'Where the tenths make 10 or more, I carry 10 tenths as 1 one.',
    )
    expect(successCriteria('add', 'no carry', true)[1]).toContain('points lined up')
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
