import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { answerKey } from '../../src/answers/typed'
import { workOut } from '../../src/arithmetic/columns'
import { exchangesOf } from '../../src/arithmetic/exchange'
import { amountText, printQuestion, readQuestion, type Question } from '../../src/arithmetic/question'
import { RECIPES } from '../../src/items/recipes'
import { drawInverseChecks, drawMissingNumbers } from '../../src/lesson/checks'

const recipes = fc.constantFrom(...RECIPES)
const seeds = fc.integer()

const read = (text: string): Question => {
  const reading = readQuestion(text)
  if ('problem' in reading) throw new Error(`${text}: ${reading.problem}`)
  return reading.question
}
const value = (text: string) => answerKey(read(text)).value

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
          expect(printQuestion(read(printed))).toBe(printed)
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
      const found = answerKey(read(text)).value
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

  it('half of them are right, in no fixed order', () => {
    const [recipe] = RECIPES
    if (!recipe) throw new Error('There are no recipes.')
    const orders = Array.from({ length: 12 }, (_, seed) =>
      checked(recipe, seed, 6).map(({ isRight }) => isRight),
    )
    for (const order of orders) expect(order.filter(Boolean)).toHaveLength(3)
    expect(new Set(orders.map(String)).size).toBeGreaterThan(4)
  })

  it('pass on why a set cannot be drawn', () => {
    const [recipe] = RECIPES
    if (!recipe) throw new Error('There are no recipes.')
    expect(drawInverseChecks({ kind: recipe.kind, count: 0, seed: 1 })).toHaveProperty('problem')
  })
})
