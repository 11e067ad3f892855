import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { FAULTS } from '../../../src/answers/faults'
import { workOut } from '../../../src/arithmetic/columns'
import { valueText } from '../../../src/arithmetic/numeral'
import { wrongAnswers } from '../../../src/lesson/model/wentWrong'
import { asked, questions } from './arbitraries'

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

  it('offers faults of the operation alone, and never the right answer', () => {
    fc.assert(
      fc.property(questions, (question) => {
        const { operation } = question.calculation
        const right = valueText(workOut(question.calculation).answer)
        for (const { fault } of wrongAnswers(question)) {
          expect(fault.operation).toBe(operation)
          expect(fault.apply(question.calculation)).not.toBe(right)
        }
        const shown = wrongAnswers(question).map(({ fault }) => fault)
        for (const fault of FAULTS.filter((each) => each.operation === operation && !shown.includes(each)))
          expect(fault.apply(question.calculation)).toBe(right)
      }),
      { numRuns: 100 },
    )
  })
})
