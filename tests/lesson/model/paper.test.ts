import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { answerWith, FAULTS, type Fault } from '../../../src/answers/faults'
import { workOut } from '../../../src/arithmetic/columns'
import { readNumeral, valueText } from '../../../src/arithmetic/numeral'
import { stepsOf } from '../../../src/arithmetic/steps'
import type { Notation } from '../../../src/lesson/model/notation'
import {
  finishedPaper,
  paperAfter,
  paperWith,
  type Paper,
  type PaperColumn,
} from '../../../src/lesson/model/paper'
import { questions } from './arbitraries'
import { asked } from '../../support/asked'

const BESIDE: Notation = { exchange: 'beside', carry: 'above' }

const faultOf = (operation: 'add' | 'subtract', id: string): Fault => {
  const fault = FAULTS.find((each) => each.operation === operation && each.id === id)
  if (!fault) throw new Error(`There is no fault ${id}.`)
  return fault
}

/** A column as a person would copy it: "3/2+10" is a crossed-out 3 below a 2 with a small ten. */
const column = ({ top }: PaperColumn) =>
  top.map(({ digit, ten, crossed }) => `${ten ? '1·' : ''}${digit}${crossed ? 'x' : ''}`).join(' ')

const finished = (text: string) => {
  const question = asked(text)
  return finishedPaper(question, BESIDE)
}

/** The number that stands in the answer row. */
function answerOf({ columns, points }: Paper): string {
  const text = columns.map(({ place, answer }) => answer + (place === points.answer ? '.' : '')).join('')
  const numeral = readNumeral(text.replace(/^\.|\.$/, ''))
  return numeral ? valueText(numeral) : '0'
}

describe('the paper of the written method', () => {
  it('crosses out a digit that lends and writes the new one above; a ten received is a small ten before the digit', () => {
    const paper = finished('932 − 457')
    expect(paper.columns.map(column)).toEqual(['9x 8', '3x 1·2', '1·2'])
    expect(paper.above).toBe(1)
  })

  it('through a zero, the zero becomes ten, then the ten is crossed out and 9 stands above it', () => {
    expect(finished('4003 − 1567').columns.map(column)).toEqual(['4x 3', '1·0x 9', '1·0x 9', '1·3'])
  })

  it('carries a small ten over the next column, and the last one into the answer', () => {
    const { columns, sign } = finished('789 + 642')
    expect(sign).toBe('+')
    expect(columns.map(({ carried }) => carried)).toEqual(['', '1', '1', ''])
    expect(columns.map(({ answer }) => answer)).toEqual(['1', '4', '3', '1'])
  })

  it('keeps its size through all steps, so that nothing jumps', () => {
    fc.assert(
      fc.property(questions, (question) => {
        const papers = Array.from({ length: stepsOf(question).length + 1 }, (_, n) =>
          paperAfter(question, n, BESIDE),
        )
        expect(new Set(papers.map(({ above }) => above)).size).toBe(1)
        expect(new Set(papers.map(({ columns }) => columns.length)).size).toBe(1)
      }),
      { numRuns: 60 },
    )
  })

  it('shows the right answer after the last step', () => {
    fc.assert(
      fc.property(questions, (question) => {
        const paper = finishedPaper(question, BESIDE)
        expect(answerOf(paper)).toBe(valueText(workOut(question.calculation).answer))
      }),
    )
  })

  it('marks what the last step wrote, and nothing before the first', () => {
    const question = asked('52 − 17')
    expect(paperAfter(question, 0, BESIDE).columns.every(({ fresh }) => fresh.length === 0)).toBe(true)
    const exchange = stepsOf(question).findIndex(({ kind }) => kind === 'exchange')
    const after = paperAfter(question, exchange + 1, BESIDE)
    expect(after.columns.map(({ fresh }) => fresh)).toEqual([['top'], ['top']])
    expect(after.current).toBe(0)
  })

  it('puts the points under each other', () => {
    expect(finished('£7 − £2.35').points).toEqual({ top: 0, bottom: 0, answer: 0 })
    expect(finished('700 − 235').points).toEqual({ top: null, bottom: null, answer: null })
  })
})

describe('the paper of a pupil with a fault', () => {
  it('shows the answer that the fault leads to, whatever the question', () => {
    fc.assert(
      fc.property(questions, fc.constantFrom(...FAULTS), (question, fault) => {
        if (fault.operation !== question.calculation.operation) return
        expect(answerOf(paperWith(fault, question, BESIDE))).toBe(answerWith([fault], question.calculation))
      }),
      { numRuns: 500 },
    )
  })

  it('shows the exchange marks that the pupil made', () => {
    const question = asked('305 − 128')
    const marks = (id: string) => paperWith(faultOf('subtract', id), question, BESIDE).columns.map(column)
    expect(marks('zero-left-as-ten')).toEqual(['3x 2', '1·0', '1·5'])
    expect(marks('nine-for-free')).toEqual(['3', '0x 9', '1·5'])
    expect(marks('skips-over-zero')).toEqual(['3x 2x 1', '1·0', '1·5'])
    expect(marks('takes-smaller-from-larger')).toEqual(['3', '0', '5'])
  })

  it('shows what was carried, wrongly or not at all', () => {
    const question = asked('467 + 258')
    const carried = (id: string) =>
      paperWith(faultOf('add', id), question, BESIDE).columns.map((each) => each.carried)
    expect(carried('carries-wrong-digit')).toEqual(['', '6', '5', ''])
    expect(carried('drops-carried-ten')).toEqual(['', '', ''])
  })

  it('moves the point with the digits where numbers are lined up by their last digits', () => {
    const { points, columns } = paperWith(faultOf('add', 'lines-up-right'), asked('4.25 + 1.3'), BESIDE)
    expect(columns.map(({ bottom }) => bottom)).toEqual(['', '1', '3'])
    expect(points).toEqual({ top: 0, bottom: -1, answer: 0 })
  })

  it('keeps the printed sign where the pupil does the other operation', () => {
    expect(paperWith(faultOf('subtract', 'wrong-operation'), asked('932 − 457'), BESIDE).sign).toBe('−')
  })
})
