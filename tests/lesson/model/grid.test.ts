import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { workOut } from '../../../src/arithmetic/columns'
import { numeralText, readNumeral, scaledValue, type Numeral } from '../../../src/arithmetic/numeral'
import { type Operation, type Question } from '../../../src/arithmetic/question'
import { stateAfter, stepsOf } from '../../../src/arithmetic/steps'
import { gridOf, layoutOf, type PaperLine } from '../../../src/lesson/model/grid'
import { finishedPaper } from '../../../src/lesson/model/paper'
import { NOTATIONS } from '../making'
import { asked } from '../../support/asked'

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

/** The rows of a finished working as texts. */
const texts = (lines: readonly PaperLine[]) =>
  lines.map(({ kind, cells }) => ({ kind, cells: cells.map(({ text }) => text) }))

describe('the written layout for the function LAYOUT', () => {
  it('puts the newest mark of a column on top', () => {
    expect(layoutOf(asked('305 − 128'))).toEqual([
      ['', '', '9', ''],
      ['', '2', '10', '15'],
      ['', '3', '0', '5'],
      ['−', '1', '2', '8'],
      ['', '1', '7', '7'],
    ])
  })

  it('has no row of marks where nothing is exchanged', () => {
    expect(layoutOf(asked('874 − 523'))).toHaveLength(3)
  })

  it('puts the carried tens above, but the last one straight into the answer', () => {
    expect(layoutOf(asked('789 + 642'))).toEqual([
      ['', '', '1', '1', ''],
      ['', '', '7', '8', '9'],
      ['+', '', '6', '4', '2'],
      ['', '1', '4', '3', '1'],
    ])
  })

  it('lines up the points in a cell of their own and fills empty places after them with 0', () => {
    expect(layoutOf(asked('£5 − £1.35'))).toEqual([
      ['', '', '', '9', ''],
      ['', '4', '', '10', '10'],
      ['', '5', '.', '0', '0'],
      ['−', '1', '.', '3', '5'],
      ['', '3', '.', '6', '5'],
    ])
  })

  it('leaves cells empty to the left of a shorter number and of the answer', () => {
    expect(layoutOf(asked('1000 − 999')).slice(-2)).toEqual([
      ['−', '', '9', '9', '9'],
      ['', '', '', '', '1'],
    ])
  })
})

describe('the rows of a finished working, in every notation', () => {
  it('have one width, and the digits of the numbers in them', () => {
    fc.assert(
      fc.property(anyQuestion, fc.constantFrom(...NOTATIONS), (asked, notation) => {
        const rows = texts(gridOf(finishedPaper(asked, notation)))
        const { answer, calculation, columns } = workOut(asked.calculation)
        const width = 1 + columns.length + Number(answer.places > 0)
        for (const { cells } of rows) expect(cells).toHaveLength(width)
        const filled = (number: Numeral) => {
          const [whole = '', decimals = ''] = numeralText(number).split('.')
          return answer.places === 0 ? whole : `${whole}.${decimals.padEnd(answer.places, '0')}`
        }
        const read = (kind: string) =>
          (rows.find((row) => row.kind === kind)?.cells ?? []).slice(1).join('').replaceAll('¹', '')
        expect(read('top')).toBe(filled(calculation.top))
        expect(read('bottom')).toBe(filled(calculation.bottom))
        expect(read('answer')).toBe(numeralText(answer))
      }),
    )
  })

  it('hold what the steps wrote, and each mark as the school writes it', () => {
    fc.assert(
      fc.property(anyQuestion, fc.constantFrom(...NOTATIONS), (asked, notation) => {
        const rows = texts(gridOf(finishedPaper(asked, notation)))
        const { columns } = stateAfter(asked, stepsOf(asked).length)
        const at = (place: number) => {
          const fromLeft = columns.findIndex((column) => column.place === place)
          const index = columns.length - 1 - fromLeft
          return 1 + index + Number(place < 0)
        }
        for (const { place, top, marks, carried } of columns) {
          const inRows = (kind: string) =>
            rows.filter((row) => row.kind === kind).flatMap(({ cells }) => cells[at(place)] || [])
          const last = marks.at(-1) ?? top
          const shown = [...inRows('top'), ...inRows('mark').reverse()]
          if (notation.exchange === 'above')
            expect(shown).toEqual([...(top === undefined ? [] : [top]), ...marks].map(String))
          else
            expect(shown.at(-1)).toBe(last === undefined ? undefined : String(last).replace(/^1(?=.)/, '¹'))
          expect(inRows('carried')).toEqual(carried === undefined ? [] : [String(carried)])
        }
        const kinds = rows.map(({ kind }) => kind)
        if (kinds.includes('carried'))
          expect(kinds.indexOf('carried') > kinds.indexOf('answer')).toBe(notation.carry === 'below')
      }),
    )
  })

  it('cross out every value of a column but its newest', () => {
    fc.assert(
      fc.property(anyQuestion, fc.constantFrom(...NOTATIONS), (asked, notation) => {
        const rows = gridOf(finishedPaper(asked, notation)).filter(
          ({ kind }) => kind === 'mark' || kind === 'top',
        )
        const width = rows[0]?.cells.length ?? 0
        for (let column = 1; column < width; column++) {
          const written = rows.flatMap(({ cells }) => cells[column] ?? []).filter(({ text }) => text !== '')
          expect(written.map(({ crossed }) => crossed)).toEqual(written.map((_, index) => index > 0))
        }
      }),
    )
  })
})
