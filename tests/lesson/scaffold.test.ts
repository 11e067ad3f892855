import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { workOut } from '../../src/arithmetic/columns'
import { numeralText } from '../../src/arithmetic/numeral'
import { stepsOf } from '../../src/arithmetic/steps'
import { gridOf } from '../../src/lesson/model/grid'
import { fadingHelp, scaffold } from '../../src/lesson/scaffold'
import { STAGES, stagesOf } from '../../src/lesson/stages'
import { NOTATIONS } from './making'
import { questions } from './model/arbitraries'

const notations = fc.constantFrom(...NOTATIONS)

describe('the frame of a working', () => {
  it('holds the numbers of the question at most: no answer, no exchange, nothing carried', () => {
    fc.assert(
      fc.property(questions, notations, fc.constantFrom('numbers', 'frame'), (question, notation, help) => {
        const lines = scaffold(question, notation, help) ?? []
        const read = (kind: string) =>
          lines.filter((line) => line.kind === kind).flatMap(({ cells }) => cells.map(({ text }) => text))
        expect([...read('answer'), ...read('boxes')].join('')).toBe('')
        expect(read('boxes').length).toBeGreaterThan(0)
        const digits = (text: string) => text.replace(/[^\d]/g, '')
        const { top } = question.calculation
        const shown = digits(read('top').join(''))
        expect(shown.startsWith(help === 'numbers' ? digits(numeralText(top)) : '')).toBe(true)
        if (help === 'frame') expect(shown).toBe('')
        expect(new Set(lines.map(({ cells }) => cells.length)).size).toBe(1)
      }),
    )
  })

  it('tells nothing of the exchanges or carries: it is as wide and high for any question of a size', () => {
    fc.assert(
      fc.property(notations, fc.nat(999), fc.nat(999), fc.nat(999), fc.nat(999), (notation, a, b, c, d) => {
        const size = (one: number, other: number) => {
          const numeral = (value: number) => ({
            digits: Array.from(String(value).padStart(3, '1'), Number).reverse(),
            places: 0,
          })
          const calculation = { operation: 'add', top: numeral(one), bottom: numeral(other) } as const
          const lines = scaffold({ sign: 'add', missing: 'result', unit: '', calculation }, notation, 'frame')
          return [lines?.length, lines?.[0]?.cells.length]
        }
        expect(size(a, b)).toEqual(size(c, d))
      }),
    )
  })

  it('fades over the sheet: never more help than before, none at the end', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 20 }), (count) => {
        const order = ['numbers', 'frame', 'none']
        const helps = fadingHelp(count).map((help) => order.indexOf(help))
        expect(helps).toHaveLength(count)
        expect(helps).toEqual(helps.toSorted())
        expect(helps.at(-1)).toBe(2)
      }),
    )
  })
})

describe('the pictures of an example', () => {
  it('are four or five, but for numbers that have less to show, and end with the whole working', () => {
    fc.assert(
      fc.property(questions, notations, (question, notation) => {
        const stages = stagesOf(question, notation)
        const { columns, answer } = workOut(question.calculation)
        expect(stages.length).toBeLessThanOrEqual(STAGES.most)
        const printed = columns.filter(({ top, bottom }) => top !== undefined || bottom !== undefined)
        if (printed.length >= STAGES.least - 1) expect(stages.length).toBeGreaterThanOrEqual(STAGES.least)
        const last = stages.at(-1)
        const row = last && gridOf(last.paper).find(({ kind }) => kind === 'answer')
        expect(row?.cells.map(({ text }) => text).join('')).toBe(numeralText(answer))
        expect(stages.flatMap(({ says }) => says)).toEqual(stepsOf(question).map(({ say }) => say))
        for (const { says } of stages) expect(says.length).toBeGreaterThan(0)
      }),
      { numRuns: 200 },
    )
  })
})
