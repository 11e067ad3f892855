import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { FAULTS, workWith } from '../../../src/answers/faults'
import { workOut } from '../../../src/arithmetic/columns'
import { valueText } from '../../../src/arithmetic/numeral'
import { mistakeIn, wrongAnswers } from '../../../src/lesson/model/wentWrong'
import { questions } from './arbitraries'
import { asked } from '../../support/asked'

const given = (text: string) =>
  Object.fromEntries(wrongAnswers(asked(text)).map((each) => [each.fault.id, each.answer]))

describe('what can have gone wrong with a question', () => {
  // Answers computed by an independent reference.
  it('gives the known wrong answers of 6105 − 2350, and leaves out the faults that do not show', () => {
    expect(given('6105 − 2350')).toEqual({
      'takes-smaller-from-larger': '4,255',
      'zero-when-short': '4,005',
      'no-reduction': '4,855',
      'zero-gives-digit': '3,855',
      'zero-gives-zero': '3,805',
      'take-zero-gives-zero': '3,750',
      'wrong-operation': '8,455',
    })
  })

  it('writes money as money', () => {
    expect(given('£7.25 − £1.30')['take-zero-gives-zero']).toBe('£5.90')
  })

  it('gives each answer once, under the fault that the pupil showed where that is known', () => {
    expect(given('301 − 6')).not.toHaveProperty('zero-left-as-ten')
    fc.assert(
      fc.property(questions, fc.constantFrom(...FAULTS), (question, { id }) => {
        for (const shown of [null, id]) {
          const answers = wrongAnswers(question, shown).map(({ answer }) => answer)
          expect(new Set(answers).size).toBe(answers.length)
        }
        const { operation } = question.calculation
        const fault = FAULTS.find((each) => each.id === id && each.operation === operation)
        const value = fault?.apply(question.calculation) ?? null
        const isWrong = value !== null && value !== valueText(workOut(question.calculation).answer)
        expect(wrongAnswers(question, id).some((each) => each.fault.id === id)).toBe(isWrong)
      }),
      { numRuns: 200 },
    )
  })

  it('leaves out answers longer than a child would write', () => {
    fc.assert(
      fc.property(questions, (question) => {
        const { operation, top } = question.calculation
        const right = workOut(question.calculation).answer
        const whole = (each: { readonly digits: readonly number[]; readonly places: number }) =>
          each.digits.length - each.places
        for (const { fault, numeral } of wrongAnswers(question)) {
          const most = operation === 'subtract' ? whole(top) : whole(right) + 2
          if (fault.id !== 'wrong-operation') expect(whole(numeral)).toBeLessThanOrEqual(most)
          expect(numeral.places).toBe(right.places)
        }
      }),
    )
  })

  it('offers faults of the operation alone, and never the right answer', () => {
    fc.assert(
      fc.property(questions, (question) => {
        const { operation } = question.calculation
        const right = valueText(workOut(question.calculation).answer)
        for (const { fault } of wrongAnswers(question)) {
          expect(fault.operation).toBe(operation)
          expect(fault.apply(question.calculation)).not.toBe(right)
        }
      }),
      { numRuns: 100 },
    )
  })
})

const mistake = (text: string, id: string) => {
  const question = asked(text)
  const wrong = wrongAnswers(question).find(({ fault }) => fault.id === id)
  return wrong && mistakeIn(wrong.fault, question)
}

describe('where a working goes wrong', () => {
  // Read off the workings by hand: the first column from the right that is not as the written method has it.
  it.each([
    ['932 − 457', 'takes-smaller-from-larger', 0, 'ones'],
    ['932 − 457', 'no-reduction', 1, 'tens'],
    ['305 − 128', 'zero-left-as-ten', 1, 'tens'],
    ['846 − 302', 'take-zero-gives-zero', 1, 'tens'],
    ['7214 − 86', 'drops-unpaired-digits', 2, 'hundreds'],
    ['467 + 258', 'drops-carried-ten', 1, 'tens'],
    ['789 + 642', 'loses-last-ten', 2, 'hundreds'],
    ['£7.25 − £1.30', 'take-zero-gives-zero', -2, 'pennies'],
  ])('%s, %s: in a column', (text, id, place, name) => {
    expect(mistake(text, id)).toEqual({ place, say: `It first goes wrong in the ${name}.` })
  })

  it('is the sign or the setting out where these were taken wrongly', () => {
    expect(mistake('467 + 258', 'wrong-operation')).toEqual({
      place: null,
      say: 'It goes wrong at the sign.',
    })
    expect(mistake('503 − 46', 'lines-up-left')).toEqual({
      place: null,
      say: 'It goes wrong in the setting out, before the first column.',
    })
  })

  it('has everything to its right as taught, in any question that comes out wrong', () => {
    fc.assert(
      fc.property(questions, (question) => {
        for (const { fault } of wrongAnswers(question)) {
          const { place } = mistakeIn(fault, question)
          expect(place === null).toBe(fault.moment === 'operation' || fault.moment === 'lining up')
          if (place === null) continue
          const before = (each: { readonly place: number }) => each.place < place
          const [right, wrong] = [[], [fault]].map((faults) => workWith(faults, question.calculation))
          expect(wrong?.filter(before)).toEqual(right?.filter(before))
          expect(wrong?.find((each) => each.place === place)).not.toEqual(
            right?.find((each) => each.place === place),
          )
        }
      }),
      { numRuns: 60 },
    )
  })
})
