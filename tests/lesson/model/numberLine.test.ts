import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { workOut } from '../../../src/arithmetic/columns'
import { amountText } from '../../../src/arithmetic/question'
import { drawNumberLine, lineInWords, numberLine, saidOfLine } from '../../../src/lesson/model/numberLine'
import { questions } from './arbitraries'
import { asked } from '../../support/asked'

/** The number that a text prints, in hundredths, which hold every number of these tests exactly. */
const hundredths = (text: string) => Math.round(Number(text.replace(/[^\d.]/g, '')) * 100)

describe('a number line', () => {
  it('counts on to rounder and rounder numbers, then by parts: 305 − 128', () => {
    expect(numberLine(asked('305 − 128'), 'count on')).toEqual({
      way: 'count on',
      start: '128',
      jumps: [
        { by: '+2', to: '130' },
        { by: '+70', to: '200' },
        { by: '+100', to: '300' },
        { by: '+5', to: '305' },
      ],
      end: 'The jumps make 2 + 70 + 100 + 5 = 177: that is the difference.',
    })
  })

  it('counts back by the parts of the number taken away, and on by those of the smaller number added', () => {
    expect(numberLine(asked('305 − 128'), 'count back')?.jumps.map(({ to }) => to)).toEqual([
      '205',
      '185',
      '177',
    ])
    expect(numberLine(asked('46 + 230'), 'count on')).toMatchObject({
      start: '230',
      jumps: [
        { by: '+40', to: '270' },
        { by: '+6', to: '276' },
      ],
      end: 'The last jump lands on the answer: 276.',
    })
    expect(numberLine(asked('46 + 230'), 'count back')).toBeNull()
    expect(numberLine(asked('46 − 46'), 'count on')).toBeNull()
  })

  it('is in pounds for money', () => {
    expect(numberLine(asked('£5 − £1.35'), 'count on')?.jumps.map(({ by }) => by)).toEqual([
      '+5p',
      '+60p',
      '+£3.00',
    ])
  })

  it('lands where each jump says, and tells the right answer', () => {
    fc.assert(
      fc.property(questions, fc.constantFrom('count on', 'count back'), (question, way) => {
        const line = numberLine(question, way)
        if (!line) return
        const { answer } = workOut(question.calculation)
        let at = hundredths(line.start)
        for (const { by, to } of line.jumps) {
          at += by.startsWith('+') ? hundredths(by) : -hundredths(by)
          expect(hundredths(to)).toBe(at)
        }
        const told = [...line.end.matchAll(/[\d,]+(?:\.\d+)?/g)].at(-1)?.[0] ?? ''
        expect(hundredths(told)).toBe(hundredths(amountText(answer, '')))
      }),
      { numRuns: 200 },
    )
  })

  it('draws one jump after the other, all inside the drawing', () => {
    fc.assert(
      fc.property(questions, fc.nat(8), (question, n) => {
        const line = numberLine(question, 'count on')
        if (!line) return
        const shown = Math.min(n, line.jumps.length)
        const { width, shapes } = drawNumberLine(line, shown)
        expect(shapes.filter(({ kind }) => kind === 'jump')).toHaveLength(shown)
        for (const shape of shapes)
          if (shape.shape === 'text') {
            expect(shape.x).toBeGreaterThan(0)
            expect(shape.x).toBeLessThan(width)
          }
      }),
      { numRuns: 60 },
    )
    const line = numberLine(asked('52 − 17'), 'count back')
    expect(line && saidOfLine(line, 0)).toBe('Start at 52.')
    expect(line && saidOfLine(line, 1)).toBe('Jump −10, to 42.')
    expect(line && lineInWords(line, 1)).toBe('A number line from 52, −10 to 42.')
  })
})
