import { DOMParser } from '@xmldom/xmldom'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { FAULTS } from '../../../src/answers/faults'
import { stepsOf } from '../../../src/arithmetic/steps'
import { drawPaper, MARGIN, SQUARE, type Shape } from '../../../src/lesson/model/drawing'
import { headOf } from '../../../src/lesson/model/heads'
import { paperInWords } from '../../../src/lesson/model/inWords'
import type { Notation } from '../../../src/lesson/model/notation'
import { finishedPaper, paperAfter, paperWith } from '../../../src/lesson/model/paper'
import { svgFile } from '../../../src/lesson/model/svg'
import { questions } from './arbitraries'
import { asked } from '../../support/asked'

const BESIDE: Notation = { exchange: 'beside', carry: 'above' }

const done = (text: string) => {
  const question = asked(text)
  return finishedPaper(question, BESIDE)
}

const textsOf = (shapes: readonly Shape[], kind: string) =>
  shapes.flatMap((shape) => (shape.shape === 'text' && shape.kind.split(' ')[0] === kind ? [shape] : []))

describe('the drawing', () => {
  it('has a square for the sign and for each column, a row for letters, marks and numbers, and an even margin', () => {
    const { width, height, shapes } = drawPaper(done('932 − 457'))
    expect([width, height]).toEqual([4 * SQUARE + 2 * MARGIN, 5 * SQUARE + 2 * MARGIN])
    expect(textsOf(shapes, 'head').map(({ text }) => text)).toEqual(['H', 'T', 'O'])
    expect(textsOf(shapes, 'sign').map(({ text }) => text)).toEqual(['−'])
  })

  it('rules off the answer from the edge of the first square to the edge of the last', () => {
    fc.assert(
      fc.property(questions, (question) => {
        const { width, shapes } = drawPaper(finishedPaper(question, BESIDE))
        const lines = shapes.flatMap((shape) => (shape.shape === 'line' ? [shape] : []))
        const ends = (kind: string) => {
          const flat = lines.filter((each) => each.kind === kind && each.y1 === each.y2)
          return new Set(flat.map(({ x1, x2 }) => `${x1} to ${x2}`))
        }
        expect(lines.filter(({ kind }) => kind === 'rule')).toHaveLength(2)
        expect(ends('rule')).toEqual(ends('square'))
        expect(ends('rule')).toEqual(new Set([`${MARGIN} to ${width - MARGIN}`]))
      }),
      { numRuns: 40 },
    )
  })

  it('crosses out as many digits as were replaced', () => {
    const crosses = drawPaper(done('4003 − 1567')).shapes.filter(({ kind }) => kind === 'cross')
    expect(crosses).toHaveLength(3)
  })

  it('keeps every figure inside the paper, rightly worked or wrongly', () => {
    fc.assert(
      fc.property(questions, fc.nat(40), (question, n) => {
        const papers = [
          paperAfter(question, Math.min(n, stepsOf(question).length), BESIDE),
          ...FAULTS.filter(({ operation }) => operation === question.calculation.operation).map((fault) =>
            paperWith(fault, question, BESIDE),
          ),
        ]
        for (const { width, height, shapes } of papers.map(drawPaper))
          for (const shape of shapes) {
            if (shape.shape !== 'text') continue
            expect(shape.x).toBeGreaterThan(0)
            expect(shape.x).toBeLessThan(width)
            expect(shape.y).toBeGreaterThan(0)
            expect(shape.y).toBeLessThan(height)
          }
      }),
      { numRuns: 60 },
    )
  })

  it('never writes two figures in one place', () => {
    fc.assert(
      fc.property(questions, (question) => {
        const { shapes } = drawPaper(finishedPaper(question, BESIDE))
        const places = shapes.flatMap((shape) => (shape.shape === 'text' ? [`${shape.x} ${shape.y}`] : []))
        expect(new Set(places).size).toBe(places.length)
      }),
      { numRuns: 100 },
    )
  })

  it('names columns by the letters that primary books print (common practice, no source)', () => {
    expect([-3, -2, -1, 0, 1, 2, 3, 4, 5, 6].map((place) => headOf(place, ''))).toEqual([
      'th',
      'h',
      't',
      'O',
      'T',
      'H',
      'Th',
      'TTh',
      'HTh',
      'M',
    ])
    expect(headOf(14, '')).toBe('')
  })
})

describe('the file of a drawing', () => {
  it('is well-formed SVG with its size in pixels and every text of the drawing', () => {
    const drawing = drawPaper(done('£7.00 − £2.35'))
    const root = new DOMParser().parseFromString(svgFile(drawing, 2), 'image/svg+xml').documentElement
    expect(root?.namespaceURI).toBe('http://www.w3.org/2000/svg')
    expect(root?.getAttribute('width')).toBe(String(drawing.width * 2))
    expect(root?.getAttribute('viewBox')).toBe(`0 0 ${drawing.width} ${drawing.height}`)
    const texts = Array.from(root?.getElementsByTagName('text') ?? [], (element) => element.textContent)
    expect(texts).toEqual(drawing.shapes.flatMap((shape) => (shape.shape === 'text' ? [shape.text] : [])))
  })
})

describe('the paper in words', () => {
  it('reads each row from the left, and what was written over a digit', () => {
    expect(paperInWords(done('52 − 17'))).toBe('Top: 5 crossed out then 4, 12. Subtract: 1, 7. Answer: 3, 5.')
    expect(paperInWords(done('1.5 + 2.7'))).toBe(
      'Carried: 1 in the ones. Top: 1, point, 5. Add: 2, point, 7. Answer: 4, point, 2.',
    )
  })

  it('says so where nothing is written', () => {
    expect(paperInWords(paperAfter(asked('52 − 17'), 0, BESIDE))).toBe('Empty squared paper.')
  })
})
