import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { FAULTS } from '../../src/answers/faults'
import { answerKey } from '../../src/answers/typed'
import { hintsFor } from '../../src/home/hints'
import { asked } from '../support/asked'
import { questions } from './questions'

const says = (text: string, answer: string) =>
  hintsFor(asked(text)).find((hint) => hint.answer === answer)?.says

describe('a hint', () => {
  // Faulty answers: the table of check values in the project's domain notes, worked out by an independent reference.
  it.each([
    ['932 − 457', '525', 'Check the tens: did you exchange?'],
    ['305 − 128', '223', 'Check the ones: did you exchange?'],
    ['305 − 128', '87', 'Check the tens: a 0 on top has to get ten before it can give one away.'],
    ['932 − 457', '585', 'Check the tens: when one is exchanged, one fewer is left there.'],
    ['467 + 258', '615', 'Check the tens: did you add the one that was carried?'],
    ['789 + 642', '431', 'Check the thousands: was one more carried there?'],
    ['7214 − 86', '7300', 'Look at the sign: is it add or take away?'],
    ['503 − 46', '43', 'Are the ones under the ones? Set it out again, starting with the ones.'],
  ])('for %s answered %s: %s', (question, answer, hint) => {
    expect(says(question, answer)).toBe(hint)
  })

  it('never names a sign that a missing number does not show', () => {
    expect(says('□ − 46 = 30', '16')).toBe('Which calculation finds the missing number?')
  })

  it('is there for every wrong answer of a known fault, once, and never holds the answer', () => {
    fc.assert(
      fc.property(questions, (question) => {
        const key = answerKey(question).value
        const hints = hintsFor(question)
        const wrong = FAULTS.map((fault) => fault.apply(question.calculation)).filter(
          (each) => each !== null && each !== key,
        )
        expect(new Set(hints.map(({ answer }) => answer))).toEqual(new Set(wrong))
        expect(new Set(hints.map(({ answer }) => answer)).size).toBe(hints.length)
        for (const hint of hints) {
          if (key.length > 1) expect(hint.says).not.toContain(key)
          expect(hint.says).not.toMatch(/\{|\bright\b|wrong|"/i)
          expect(hint.says.length).toBeLessThan(100)
        }
      }),
    )
  })
})
