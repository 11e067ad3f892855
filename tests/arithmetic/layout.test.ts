import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { workOut } from '../../src/arithmetic/columns'
import { layoutOf, layoutRows } from '../../src/arithmetic/layout'
import { numeralText, readNumeral, scaledValue, type Numeral } from '../../src/arithmetic/numeral'
import { readQuestion, type Operation, type Question } from '../../src/arithmetic/question'
import { stateAfter, stepsOf } from '../../src/arithmetic/steps'

function question(text: string): Question {
  const reading = readQuestion(text)
  if ('problem' in reading) throw new Error(reading.problem)
  return reading.question
}

const numeral: fc.Arbitrary<Numeral> = fc
  .tuple(fc.bigInt({ min: 0n, max: 10n ** 15n - 1n }), fc.nat(15), fc.nat(3), fc.nat(999))
  .map(([whole, digits, places, decimals]) => {
    const point = places === 0 ? '' : `.${String(decimals).padStart(3, '0').slice(0, places)}`
    const read = readNumeral(String(whole % 10n ** BigInt(digits)) + point)
    if (!read) throw new Error('no number')
    return read
  })

const anyQuestion: fc.Arbitrary<Question> = fc
  .tuple(numeral, numeral, fc.constantFrom<Operation>('add', 'subtract'))
  .map(([one, other, operation]) => {
    const isLess = scaledValue(one, 3) < scaledValue(other, 3)
    const [top, bottom] = operation === 'subtract' && isLess ? [other, one] : [one, other]
    return { sign: operation, missing: 'result', unit: '', calculation: { operation, top, bottom } }
  })

describe('the written layout', () => {
  it('puts the newest mark of a column on top', () => {
    expect(layoutOf(question('305 − 128'))).toEqual([
      ['', '', '9', ''],
      ['', '2', '10', '15'],
      ['', '3', '0', '5'],
      ['−', '1', '2', '8'],
      ['', '1', '7', '7'],
    ])
  })

  it('has no row of marks where nothing is exchanged', () => {
    expect(layoutRows(question('874 − 523')).rows.map(({ kind }) => kind)).toEqual([
      'top',
      'bottom',
      'answer',
    ])
  })

  it('puts the carried tens above, but the last one straight into the answer', () => {
    expect(layoutOf(question('789 + 642'))).toEqual([
      ['', '', '1', '1', ''],
      ['', '', '7', '8', '9'],
      ['+', '', '6', '4', '2'],
      ['', '1', '4', '3', '1'],
    ])
  })

  it('lines up the points in a cell of their own and fills empty places after them with 0', () => {
    expect(layoutRows(question('£5 − £1.35'))).toEqual({
      heads: ['sign', 0, 'point', -1, -2],
      rows: [
        { kind: 'mark', cells: ['', '', '', '9', ''] },
        { kind: 'mark', cells: ['', '4', '', '10', '10'] },
        { kind: 'top', cells: ['', '5', '.', '0', '0'] },
        { kind: 'bottom', cells: ['−', '1', '.', '3', '5'] },
        { kind: 'answer', cells: ['', '3', '.', '6', '5'] },
      ],
    })
  })

  it('leaves cells empty to the left of a shorter number and of the answer', () => {
    expect(layoutOf(question('1000 − 999')).slice(-2)).toEqual([
      ['−', '', '9', '9', '9'],
      ['', '', '', '', '1'],
    ])
  })

  it('has rows of one width, one cell for a head, and the digits of the numbers in them', () => {
    fc.assert(
      fc.property(anyQuestion, (asked) => {
        const { heads, rows } = layoutRows(asked)
        const { answer, calculation } = workOut(asked.calculation)
        for (const { cells } of rows) expect(cells).toHaveLength(heads.length)
        const filled = (number: Numeral) => {
          const [whole = '', decimals = ''] = numeralText(number).split('.')
          return answer.places === 0 ? whole : `${whole}.${decimals.padEnd(answer.places, '0')}`
        }
        const texts = rows.slice(-3).map(({ cells }) => cells.slice(1).join(''))
        expect(texts).toEqual([filled(calculation.top), filled(calculation.bottom), numeralText(answer)])
      }),
    )
  })

  it('is what stands on the paper after the last step', () => {
    fc.assert(
      fc.property(anyQuestion, (asked) => {
        const { heads, rows } = layoutRows(asked)
        const { columns } = stateAfter(asked, stepsOf(asked).length)
        for (const { place, top, bottom, marks, carried, answer } of columns) {
          const at = heads.indexOf(place)
          const inRows = (kind: string) =>
            rows.filter((row) => row.kind === kind).flatMap(({ cells }) => cells[at] || [])
          const text = (digit: number | undefined) => (digit === undefined ? [] : [String(digit)])
          expect(inRows('mark').reverse()).toEqual(marks.map(String))
          expect(inRows('carried')).toEqual(text(carried))
          expect(inRows('top')).toEqual(text(top))
          expect(inRows('bottom')).toEqual(text(bottom))
          expect(inRows('answer')).toEqual(text(answer))
        }
      }),
    )
  })
})
