import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { FAULTS } from '../../../src/answers/faults'
import { printQuestion } from '../../../src/arithmetic/question'
import { stepsOf } from '../../../src/arithmetic/steps'
import { asked, questions } from '../../lesson/model/arbitraries'
import { projectedIn, projectorAddress } from '../../../taskpane/model/projected'
import { saidAfter, stepByKey } from '../../../taskpane/model/playing'

const PANE = 'https://school.example/columnwise/taskpane.html?_host_Info=Excel#x'

describe('the address of the large window', () => {
  it('brings over the question, the step, the fault and the colours, and nothing else', () => {
    fc.assert(
      fc.property(
        questions,
        fc.nat(30),
        fc.option(fc.constantFrom(...FAULTS.map(({ id }) => id))),
        fc.boolean(),
        (question, n, fault, isDark) => {
          const step = Math.min(n, stepsOf(question).length)
          const address = new URL(
            projectorAddress({ text: printQuestion(question), step, fault, isDark }, PANE),
          )
          expect(address.origin + address.pathname).toBe('https://school.example/columnwise/projector.html')
          expect(projectedIn(address.search)).toEqual({ question, step, fault, isDark })
        },
      ),
    )
  })

  it('that asks for no question is told in a sentence', () => {
    expect(projectedIn('')).toHaveProperty('problem')
    expect(projectedIn('?question=hello')).toHaveProperty('problem')
  })

  it('with a step or fault that makes no sense shows the question from its start', () => {
    const question = asked('52 − 17')
    const start = { question, step: 0, fault: null, isDark: false }
    expect(projectedIn('?question=52-17&step=many&fault=none')).toEqual(start)
    expect(projectedIn('?question=52-17&step=-3')).toEqual(start)
    expect(projectedIn('?question=52-17&step=99')).toEqual({ ...start, step: stepsOf(question).length })
  })
})

describe('stepping', () => {
  it('goes forward and back by arrows and to the ends by Home and End, never beyond them', () => {
    expect(['ArrowRight', 'ArrowLeft', 'Home', 'End'].map((key) => stepByKey(key, 3, 9))).toEqual([
      4, 2, 0, 9,
    ])
    expect([stepByKey('ArrowLeft', 0, 9), stepByKey('ArrowRight', 9, 9)]).toEqual([0, 9])
    expect(stepByKey('a', 3, 9)).toBeNull()
  })

  it('says how the question could be tackled before the first step, then each step’s own sentence', () => {
    const question = asked('932 − 457')
    expect(saidAfter(question, 0)).toBe(
      '932 − 457: how shall we do this? ' +
        '932 and 457 are neither close together nor easy to round: use the written method.',
    )
    stepsOf(question).forEach(({ say }, index) => {
      expect(saidAfter(question, index + 1)).toBe(say)
    })
  })
})
