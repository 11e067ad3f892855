import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  answerWith,
  areCompatible,
  FAULTS,
  workWith,
  type Fault,
  type FaultId,
} from '../../src/answers/faults'
import { workOut } from '../../src/arithmetic/columns'
import { exchangesOf } from '../../src/arithmetic/exchange'
import { digitAt, readNumeral, scaledValue, valueText, wholeDigits } from '../../src/arithmetic/numeral'
import type { Calculation, Operation } from '../../src/arithmetic/question'
import { CLASSES } from './data/classes'
import { asked } from '../support/asked'

function fault(id: FaultId, operation: Operation): Fault {
  const found = FAULTS.find((each) => each.id === id && each.operation === operation)
  if (!found) throw new Error(`no fault ${id}`)
  return found
}
const subtracting = (id: FaultId, text: string) => fault(id, 'subtract').apply(asked(text).calculation)
const adding = (id: FaultId, text: string) => fault(id, 'add').apply(asked(text).calculation)
const rightAnswer = (calculation: Calculation) => valueText(workOut(calculation).answer)

const number = fc
  .tuple(
    fc.integer({ min: 1, max: 99_999 }),
    fc.constantFrom(1, 10, 100, 1000, 10_000),
    fc.nat({ max: 2 }),
    fc.nat({ max: 99 }),
  )
  .map(([whole, cut, places, decimals]) => {
    const digits = String(Math.max(1, Math.floor(whole / cut)))
    return places === 0 ? digits : `${digits}.${String(decimals).padStart(2, '0').slice(0, places)}`
  })
const whole = number.map((text) => text.replace(/\..*/, ''))

function calculationOf(one: string, other: string, operation: Operation): Calculation {
  const [a, b] = [readNumeral(one), readNumeral(other)]
  if (!a || !b) throw new Error(`${one}, ${other}`)
  const swap = operation === 'subtract' && scaledValue(a, 3) < scaledValue(b, 3)
  return { operation, top: swap ? b : a, bottom: swap ? a : b }
}
const calculations = (numbers: fc.Arbitrary<string>, operation: Operation) =>
  fc.tuple(numbers, numbers).map(([one, other]) => calculationOf(one, other, operation))

/** The digits of two whole numbers column by column put together by a rule, as a value. */
function columnwise({ top, bottom }: Calculation, rule: (upper: number, lower: number) => number): string {
  const length = Math.max(wholeDigits(top), wholeDigits(bottom))
  const digits = Array.from({ length }, (_, place) =>
    rule(digitAt(top, place) ?? 0, digitAt(bottom, place) ?? 0),
  )
  return String(BigInt(digits.reverse().join('')))
}
const value = (calculation: Calculation) =>
  [scaledValue(calculation.top, 0), scaledValue(calculation.bottom, 0)] as const

describe('the catalogue', () => {
  it.each(FAULTS.map((each) => [each.operation, each.id, each] as const))(
    '%s, %s: its example is worked wrongly as told',
    (_, __, each) => {
      const { calculation } = asked(each.example.question)
      expect(each.apply(calculation)).toBe(each.example.answer)
      expect(each.example.answer).not.toBe(rightAnswer(calculation))
      for (const text of [each.sentence, each.example.working, each.help])
        expect(text).toMatch(/^[A-Z0-9].*[.?]$/)
    },
  )

  it('tells a fault and its help without the digits of any one question', () => {
    const ofTheMethod = ['0', '1', '9', '10']
    for (const { sentence, help } of FAULTS)
      for (const [digits] of `${sentence} ${help}`.matchAll(/\d+/g)) expect(ofTheMethod).toContain(digits)
  })

  it('holds every fault once for each operation', () => {
    expect(new Set(FAULTS.map(({ id, operation }) => id + operation)).size).toBe(FAULTS.length)
  })

  it('does not apply a fault of one operation to the other', () => {
    expect(subtracting('no-reduction', '467 + 258')).toBeNull()
    expect(adding('drops-carried-ten', '932 − 457')).toBeNull()
  })

  it('gives every answer of the invented classes in which no slip was put', () => {
    for (const { questions, pupils } of CLASSES)
      for (const { typed, slips, fault: id } of pupils)
        questions.forEach(({ calculation }, index) => {
          const answer = typed[index]
          if (answer == null || slips.includes(index)) return
          const made = FAULTS.find((each) => each.id === id && each.operation === calculation.operation)
          expect(answer).toBe(made ? made.apply(calculation) : rightAnswer(calculation))
        })
  })
})

describe('the method as taught', () => {
  it('is what is left when no fault is had, marks included', () => {
    for (const operation of ['add', 'subtract'] as const)
      fc.assert(
        fc.property(calculations(number, operation), (calculation) => {
          const { columns, answer } = workOut(calculation)
          expect(answerWith([], calculation)).toBe(valueText(answer))
          if (operation === 'subtract')
            expect(workWith([], calculation).map(({ marks }) => marks)).toEqual(
              columns.map(({ marks }) => marks),
            )
        }),
      )
  })
})

describe('subtraction faults by their own laws', () => {
  const law = (
    id: FaultId,
    numbers: fc.Arbitrary<string>,
    expected: (calculation: Calculation) => string | undefined,
  ) =>
    fc.assert(
      fc.property(calculations(numbers, 'subtract'), (calculation) => {
        const answer = expected(calculation)
        fc.pre(answer !== undefined)
        expect(fault(id, 'subtract').apply(calculation)).toBe(answer)
      }),
    )

  it('takes-smaller-from-larger is the difference of the digits in every column', () => {
    law('takes-smaller-from-larger', whole, (c) => columnwise(c, (a, b) => Math.abs(a - b)))
  })
  it('zero-when-short is the difference of the digits, never less than 0', () => {
    law('zero-when-short', whole, (c) => columnwise(c, (a, b) => Math.max(0, a - b)))
  })
  it('no-reduction is the difference of the digits modulo ten', () => {
    law('no-reduction', whole, (c) => columnwise(c, (a, b) => (a - b + 10) % 10))
  })
  it('wrong-operation is the sum', () => {
    law('wrong-operation', number, (c) => rightAnswer({ ...c, operation: 'add' }))
  })
  it('lines-up-left takes away ten times as much for each digit fewer, while there is enough', () => {
    law('lines-up-left', whole, (c) => {
      const [a, b] = value(c)
      const moved = b * 10n ** BigInt(wholeDigits(c.top) - wholeDigits(c.bottom))
      return moved > a
        ? columnwise(
            {
              ...c,
              bottom: { digits: c.bottom.digits, places: c.bottom.digits.length - wholeDigits(c.top) },
            },
            (x, y) => Math.abs(x - y),
          )
        : String(a - moved)
    })
  })
  it('drops-unpaired-digits keeps as many right-hand digits as the bottom number has', () => {
    law('drops-unpaired-digits', whole, (c) => {
      const [a, b] = value(c)
      return String((a - b) % 10n ** BigInt(wholeDigits(c.bottom)))
    })
  })
  it('take-zero-gives-zero puts 0 for the digit above each printed bottom 0', () => {
    law('take-zero-gives-zero', whole, (c) => {
      const digits = workOut(c).columns.map(({ bottom, result }) => (bottom === 0 ? 0 : result))
      return String(BigInt(digits.reverse().join('')))
    })
  })
  it.each(['skips-over-zero', 'nine-for-free', 'zero-left-as-ten'] as const)(
    '%s is right unless an exchange runs through a zero',
    (id) => {
      law(id, number, (c) => (exchangesOf(workOut(c)).zerosCrossed === 0 ? rightAnswer(c) : undefined))
    },
  )
  it('nine-for-free is too much by the ten that nobody gave for each 9', () => {
    law('nine-for-free', whole, (c) => {
      const [a, b] = value(c)
      const nines = workWith([fault('nine-for-free', 'subtract')], c).filter(({ marks }) => marks[0] === 9)
      return String(nines.reduce((sum, { place }) => sum + 10n ** BigInt(place + 1), a - b))
    })
  })
  it('zero-left-as-ten is too much by one in each zero lent through', () => {
    law('zero-left-as-ten', whole, (c) => {
      const columns = workOut(c).columns.map(
        ({ top, lends, result }) => result + (top === 0 && lends ? 1 : 0),
      )
      return String(BigInt(columns.reverse().join('')))
    })
  })
  it.each(['zero-gives-digit', 'zero-gives-zero'] as const)(
    '%s is right where no printed 0 is the first to be short',
    (id) => {
      law(id, number, (c) =>
        workOut(c).columns.some(({ top, receives, lends }) => top === 0 && receives && !lends)
          ? undefined
          : rightAnswer(c),
      )
    },
  )
  it.each([
    ['zero-gives-digit', (below: number) => below],
    ['zero-gives-zero', () => 0],
  ] as const)('%s, worked with a borrow carried along instead of marks', (id, given) => {
    law(id, whole, ({ top, bottom }) => {
      let borrow = 0
      const digits = top.digits.map((upper, place) => {
        const lower = digitAt(bottom, place) ?? 0
        if (upper === 0 && borrow === 0) return given(lower)
        const left = upper - borrow - lower
        borrow = left < 0 ? 1 : 0
        return (left + 10) % 10
      })
      return String(BigInt(digits.reverse().join('')))
    })
  })
  it('skips-over-zero, worked on the number that is left of the column: its last digit that is not 0 goes down by one', () => {
    law('skips-over-zero', whole, ({ top, bottom }) => {
      let left = top.digits.toReversed().join('')
      const written = top.digits.map((_, place) => {
        const [upper, lower] = [Number(left.at(-1)), digitAt(bottom, place) ?? 0]
        const rest = left.slice(0, -1)
        left = upper < lower ? rest.replace(/[1-9](?=0*$)/, (digit) => String(Number(digit) - 1)) : rest
        return upper >= lower ? upper - lower : left === rest ? lower - upper : upper + 10 - lower
      })
      return String(BigInt(written.reverse().join('')))
    })
  })
  it.each(['lines-up-left', 'drops-unpaired-digits'] as const)(
    '%s is right for numbers of one length',
    (id) => {
      law(id, number, (c) =>
        wholeDigits(c.top) === wholeDigits(c.bottom) && c.top.places === c.bottom.places
          ? rightAnswer(c)
          : undefined,
      )
    },
  )
  it('lines-up-right is right where both numbers have as many digits after the point', () => {
    law('lines-up-right', number, (c) => (c.top.places === c.bottom.places ? rightAnswer(c) : undefined))
  })
})

describe('subtraction faults at the edges', () => {
  it.each([
    ['zero-gives-digit', '5000 − 1', '5001'],
    ['zero-gives-zero', '5000 − 1', '5000'],
    ['skips-over-zero', '1004 − 998', '996'],
    ['skips-over-zero', '5103 − 147', '3966'],
    ['zero-left-as-ten', '5.01 − 0.06', '4.105'],
    ['zero-left-as-ten', '4000 − 3', '310107'],
    ['take-zero-gives-zero', '3.2 − 0.7', '0.5'],
    ['take-zero-gives-zero', '8.65 − 2.3', '6.35'],
    ['takes-smaller-from-larger', '8.6 − 2.35', '6.35'],
    ['zero-when-short', '£7.20 − £3.45', '4'],
    ['no-reduction', '7.2 − 3.45', '4.85'],
    ['no-reduction', '£3.45 − 86p', '3.69'],
    ['lines-up-left', '12.5 − 3.4', '22.5'],
    ['lines-up-left', '42.5 − 3.4', '8.5'],
    ['lines-up-right', '8.6 − 2.35', '2.51'],
    ['lines-up-right', '7.25 − 3', '7.22'],
    ['drops-unpaired-digits', '12.45 − 3.2', '9.2'],
    ['drops-unpaired-digits', '12.5 − 3', '9'],
    ['wrong-operation', '£3.45 − 86p', '4.31'],
    ['takes-smaller-from-larger', '□ + 457 = 932', '525'],
  ] as const)('%s: %s gives %s', (id, text, answer) => {
    expect(subtracting(id, text)).toBe(answer)
  })
})

describe('addition faults', () => {
  const law = (id: FaultId, numbers: fc.Arbitrary<string>, expected: (calculation: Calculation) => string) =>
    fc.assert(
      fc.property(calculations(numbers, 'add'), (calculation) => {
        expect(fault(id, 'add').apply(calculation)).toBe(expected(calculation))
      }),
    )

  it('drops-carried-ten is the sum of the digits modulo ten', () => {
    law('drops-carried-ten', whole, (c) => columnwise(c, (a, b) => (a + b) % 10))
  })
  it('loses-last-ten is the sum cut to the columns of the longer number', () => {
    law('loses-last-ten', whole, (c) => {
      const [a, b] = value(c)
      return String((a + b) % 10n ** BigInt(Math.max(wholeDigits(c.top), wholeDigits(c.bottom))))
    })
  })
  it('lines-up-left adds ten times as much for each digit fewer', () => {
    law('lines-up-left', whole, (c) => {
      const [a, b] = value(c)
      const shift = wholeDigits(c.top) - wholeDigits(c.bottom)
      const power = 10n ** BigInt(Math.abs(shift))
      return String(shift > 0 ? a + b * power : a * power + b)
    })
  })
  it('wrong-operation is the difference, whichever number is on top', () => {
    law('wrong-operation', number, ({ top, bottom }) => {
      const [greater, smaller] = scaledValue(top, 3) < scaledValue(bottom, 3) ? [bottom, top] : [top, bottom]
      return rightAnswer({ operation: 'subtract', top: greater, bottom: smaller })
    })
  })
  it('is right without a carry, except for lining up and the wrong operation', () => {
    fc.assert(
      fc.property(calculations(number, 'add'), (calculation) => {
        fc.pre(exchangesOf(workOut(calculation)).places.length === 0)
        for (const each of FAULTS)
          if (each.moment === 'column total') expect(each.apply(calculation)).toBe(rightAnswer(calculation))
      }),
    )
  })
  it.each([
    ['writes-whole-total', '4.7 + 2.5', '6.12'],
    ['writes-whole-total', '46 + 789', '71215'],
    ['carries-wrong-digit', '4.7 + 2.5', '8.1'],
    ['loses-last-ten', '7.5 + 4.2', '1.7'],
    ['loses-last-ten', '950 + 50', '0'],
    ['lines-up-left', '12.5 + 3.45', '47'],
    ['lines-up-right', '4.7 + 2.35', '2.82'],
    ['lines-up-right', '0.4 + 0.23', '0.27'],
    ['drops-carried-ten', '□ − 467 = 258', '615'],
  ] as const)('%s: %s gives %s', (id, text, answer) => {
    expect(adding(id, text)).toBe(answer)
  })
})

describe('two faults at once', () => {
  const both = (one: FaultId, other: FaultId, text: string) => {
    const { calculation } = asked(text)
    return answerWith([fault(one, calculation.operation), fault(other, calculation.operation)], calculation)
  }

  it.each([
    ['zero-gives-digit', 'take-zero-gives-zero', '5040 − 2308', '3308'],
    ['zero-left-as-ten', 'zero-gives-zero', '5040 − 2308', '3040'],
    ['lines-up-left', 'takes-smaller-from-larger', '503 − 46', '163'],
    ['lines-up-left', 'drops-carried-ten', '3856 + 479', '7546'],
    ['takes-smaller-from-larger', 'drops-unpaired-digits', '7214 − 86', '72'],
    ['zero-when-short', 'zero-gives-digit', '5042 − 2308', '3340'],
  ] as const)('%s with %s: %s gives %s', (one, other, text, answer) => {
    expect(both(one, other, text)).toBe(answer)
    expect(both(other, one, text)).toBe(answer)
  })

  it('needs different moments, and the written method', () => {
    const can = (one: FaultId, other: FaultId) =>
      areCompatible(fault(one, 'subtract'), fault(other, 'subtract'))
    expect(can('nine-for-free', 'zero-left-as-ten')).toBe(false)
    expect(can('wrong-operation', 'lines-up-left')).toBe(false)
    expect(can('zero-gives-digit', 'nine-for-free')).toBe(true)
    expect(areCompatible(fault('wrong-operation', 'subtract'), fault('drops-carried-ten', 'add'))).toBe(true)
  })

  it('is the same whichever is named first', () => {
    fc.assert(
      fc.property(calculations(number, 'subtract'), (calculation) => {
        for (const one of FAULTS)
          for (const other of FAULTS)
            if (one !== other && areCompatible(one, other))
              expect(answerWith([one, other], calculation)).toBe(answerWith([other, one], calculation))
      }),
      { numRuns: 30 },
    )
  })
})
