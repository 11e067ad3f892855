import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { numeralText } from '../../src/arithmetic/numeral'
import { FAULTS } from '../../src/answers/faults'
import { answerKey } from '../../src/answers/typed'
import { workOut } from '../../src/arithmetic/columns'
import { exchangesOf } from '../../src/arithmetic/exchange'
import { amountText, printQuestion } from '../../src/arithmetic/question'
import { RECIPES } from '../../src/items/recipes'
import { drawInverseChecks, drawMissingNumbers, drawMistakes } from '../../src/lesson/checks'
import { asked } from '../support/asked'

const recipes = fc.constantFrom(...RECIPES)
const seeds = fc.integer()

const value = (text: string) => answerKey(asked(text)).value

describe('missing-number questions', () => {
  it('have the type asked for, in the calculation that finds the number, and read as they are printed', () => {
    fc.assert(
      fc.property(recipes, seeds, ({ kind }, seed) => {
        const drawn = drawMissingNumbers({ kind, count: 6, seed })
        if ('problem' in drawn) throw new Error(drawn.problem)
        for (const question of drawn.questions) {
          expect(question.missing).not.toBe('result')
          const printed = printQuestion(question)
          expect(printed).toContain('□')
          expect(printQuestion(asked(printed))).toBe(printed)
          expect(value(printed)).toBe(answerKey(question).value)
          if (kind.type !== 'any') expect(exchangesOf(workOut(question.calculation)).type).toBe(kind.type)
        }
      }),
      { numRuns: 60 },
    )
  })

  it('take every form in turn', () => {
    const subtraction = RECIPES.find(({ operation }) => operation === 'subtract')
    if (!subtraction) throw new Error('There are no subtractions.')
    const drawn = drawMissingNumbers({ kind: subtraction.kind, count: 3, seed: 1 })
    const forms = 'questions' in drawn ? drawn.questions.map((each) => `${each.sign} ${each.missing}`) : []
    expect(forms).toEqual(['add second', 'subtract second', 'add first'])
  })

  it('the number found makes the printed calculation true', () => {
    for (const text of ['□ − 46 = 30', '30 + □ = 76', '76 − □ = 46', '□ + 46 = 76']) {
      const found = answerKey(asked(text)).value
      const [left = '', right] = text.replace('□', found).split(' = ')
      expect(value(left)).toBe(right)
    }
  })
})

describe('inverse checks', () => {
  const checked = (recipe: (typeof RECIPES)[number], seed: number, count: number) => {
    const drawn = drawInverseChecks({ kind: recipe.kind, count, seed })
    if ('problem' in drawn) throw new Error(drawn.problem)
    return drawn.checks
  }

  it('are right exactly where the inverse leads back to the number started with', () => {
    fc.assert(
      fc.property(recipes, seeds, (recipe, seed) => {
        for (const check of checked(recipe, seed, 4)) {
          const { question, inverse, found, claimed, isRight, text, answer } = check
          const start = amountText(question.calculation.top, question.unit)
          const right = amountText(answerKey(question).numeral, question.unit)
          expect(claimed === right).toBe(isRight)
          expect(inverse.calculation.operation).not.toBe(question.calculation.operation)
          expect(value(`${printQuestion(inverse)}`)).toBe(answerKey(inverse).value)
          expect(
            found === start || Number(found.replace(/[£p,]/g, '')) === Number(start.replace(/[£p,]/g, '')),
          ).toBe(isRight)
          expect(text).toContain(`${printQuestion(question)} = ${claimed}.`)
          expect(text).toMatch(/\?$/)
          expect(answer).toContain(`${printQuestion(inverse)} = ${found}`)
          expect(answer).toContain(isRight ? 'is right.' : 'is not right.')
          if (!isRight) expect(answer).toContain(`${printQuestion(question)} = ${right}.`)
        }
      }),
      { numRuns: 80 },
    )
  })

  it('cannot be guessed: how many are wrong varies by draw, of three or more at least one and not all, in any place', () => {
    for (const recipe of RECIPES.filter((_, index) => index % 12 === 0)) {
      const draws = Array.from({ length: 100 }, (_, seed) =>
        checked(recipe, seed, 6).map(({ isRight }) => isRight),
      )
      const wrong = draws.map((draw) => draw.filter((isRight) => !isRight).length)
      expect(Math.min(...wrong)).toBeGreaterThanOrEqual(1)
      expect(Math.max(...wrong)).toBeLessThanOrEqual(5)
      for (let count = 1; count <= 5; count++)
        expect(wrong.filter((each) => each === count).length).toBeGreaterThan(5)
      for (let place = 0; place < 6; place++)
        expect(draws.filter((draw) => draw[place] === true).length).toBeGreaterThan(20)
    }
  })

  it('are wrong by real faults of the catalogue, by a slip only where none shows that the inverse could check', () => {
    fc.assert(
      fc.property(recipes, seeds, (recipe, seed) => {
        for (const { question, isRight, claimed } of checked(recipe, seed, 4)) {
          if (isRight) continue
          const { operation, bottom } = question.calculation
          const right = Number(answerKey(question).value)
          const given = FAULTS.flatMap((fault) => Number(fault.apply(question.calculation) ?? right)).filter(
            (each) => each !== right,
          )
          const isCheckable = (each: number) =>
            operation === 'subtract' || each >= Number(numeralText(bottom))
          const likely = given.filter(
            (each) => isCheckable(each) && String(each).length <= String(right).length,
          )
          if (likely.length > 0) expect(given).toContain(Number(claimed.replace(/[^\d.]/g, '')))
        }
      }),
      { numRuns: 100 },
    )
  })

  it('pass on why a set cannot be drawn', () => {
    const [recipe] = RECIPES
    if (!recipe) throw new Error('There are no recipes.')
    expect(drawInverseChecks({ kind: recipe.kind, count: 0, seed: 1 })).toHaveProperty('problem')
  })
})

describe('mistakes to find', () => {
  it('are workings with a fault of the catalogue, never the right answer, never at the sign alone', () => {
    fc.assert(
      fc.property(recipes, seeds, (recipe, seed) => {
        const drawn = drawMistakes({ kind: recipe.kind, count: 3, seed })
        if ('problem' in drawn) throw new Error(drawn.problem)
        for (const { question, wrong } of drawn.mistakes) {
          expect(wrong.fault.moment).not.toBe('operation')
          expect(wrong.answer).not.toBe(amountText(answerKey(question).numeral, question.unit))
          expect(Number(wrong.fault.apply(question.calculation))).toBe(
            Number(wrong.answer.replace(/[^\d.]/g, '')),
          )
        }
      }),
      { numRuns: 100 },
    )
  })
})
