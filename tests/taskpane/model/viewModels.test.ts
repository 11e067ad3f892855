import fc from 'fast-check'
import { describe, expect, it, vi } from 'vitest'
import { NOTATION } from '../../../src/lesson/model/notation'
import { NOTATIONS } from '../../lesson/making'
import { FAULTS } from '../../../src/answers/faults'
import { printQuestion } from '../../../src/arithmetic/question'
import { stepsOf } from '../../../src/arithmetic/steps'
import { questions } from '../../lesson/model/arbitraries'
import { asked } from '../../support/asked'
import { projectedIn, projectorAddress } from '../../../taskpane/model/projected'
import { saidAfter, stepByKey, steppingByKeys } from '../../../taskpane/model/playing'

const PANE = 'https://school.example/columnwise/taskpane.html?_host_Info=Excel#x'

describe('the address of the large window', () => {
  it('brings over the question, the step, the fault and the colours, and nothing else', () => {
    fc.assert(
      fc.property(
        questions,
        fc.nat(30),
        fc.option(fc.constantFrom(...FAULTS.map(({ id }) => id))),
        fc.boolean(),
        fc.constantFrom(...NOTATIONS),
        fc.nat(2),
        (question, n, fault, isDark, notation, comparing) => {
          const step = Math.min(n, stepsOf(question).length)
          const address = new URL(
            projectorAddress(
              { text: printQuestion(question), step, fault, comparing, isDark, notation },
              PANE,
            ),
          )
          expect(address.origin + address.pathname).toBe('https://school.example/columnwise/projector.html')
          expect(projectedIn(address.search)).toEqual({ question, step, fault, comparing, isDark, notation })
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
    const start = { question, step: 0, fault: null, comparing: 0, isDark: false, notation: NOTATION }
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
        '932 and 457 are neither close together nor easy to round: use the written method. Estimate first: 900 − 500 = 400.',
    )
    stepsOf(question).forEach(({ kind, say }, index) => {
      const estimated = kind === 'answer' ? `${say} Our estimate was 400.` : say
      expect(saidAfter(question, index + 1)).toBe(estimated)
    })
  })

  it.each([
    [
      '4003 − 1298',
      '4,003 − 1,298: how shall we do this? Without columns you could round and adjust. ' +
        '1,298 is close to 1,300: work out 4,003 − 1,300, then add 2.',
    ],
    [
      '845 − 32',
      '845 − 32: how shall we do this? Without columns you could work in the head. ' +
        'In 845 − 32 nothing is exchanged and only two digits change: subtract 30, then 2 in the head.',
    ],
    [
      '1003 − 998',
      '1,003 − 998: how shall we do this? Without columns you could count on. ' +
        '998 and 1,003 are close: count on from 998 to 1,003.',
    ],
    [
      '932 − 5',
      '932 − 5: how shall we do this? Without columns you could count back. 5 is small: count back 5 from 932.',
    ],
  ])('tells a way without columns from the written method that follows: %s', (text, way) => {
    expect(saidAfter(asked(text), 0)).toBe(
      `${way} The steps that follow show another way: the written method.`,
    )
  })

  it('by a key is done once, and not where Alt, Ctrl or another element has the key', () => {
    const onStep = vi.fn()
    const press = steppingByKeys(1, 2, onStep)
    const pressed = (key: string, more = {}) => {
      const done = { preventDefault: vi.fn(), stopPropagation: vi.fn() }
      press({ key, altKey: false, ctrlKey: false, metaKey: false, defaultPrevented: false, ...done, ...more })
      return done.preventDefault.mock.calls.length === 1 && done.stopPropagation.mock.calls.length === 1
    }
    expect(pressed('ArrowRight')).toBe(true)
    expect(pressed('Home')).toBe(true)
    expect(onStep.mock.calls).toEqual([[2], [0]])
    expect(pressed('a')).toBe(false)
    expect(pressed('ArrowLeft', { altKey: true })).toBe(false)
    expect(pressed('ArrowLeft', { defaultPrevented: true })).toBe(false)
    expect(onStep).toHaveBeenCalledTimes(2)
  })
})
