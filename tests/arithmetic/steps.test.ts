import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { workOut } from '../../src/arithmetic/columns'
import { exchangesOf } from '../../src/arithmetic/exchange'
import { digitAt, readNumeral, scaledValue, type Numeral } from '../../src/arithmetic/numeral'
import { wordsFor } from '../../src/arithmetic/places'
import { type Missing, type Operation, type Question, type Unit } from '../../src/arithmetic/question'
import { stateAfter, stepsOf } from '../../src/arithmetic/steps'
import { asked } from '../support/asked'

const said = (text: string) => stepsOf(asked(text)).map(({ say }) => say)

/** Numbers of up to 15 digits before the point and 3 after it, short ones and zeros as likely as long ones. */
const numeral: fc.Arbitrary<Numeral> = fc
  .tuple(
    fc.array(fc.constantFrom(0, 0, 1, 2, 5, 8, 9), { minLength: 1, maxLength: 15 }),
    fc.nat(3),
    fc.nat(999),
  )
  .map(([whole, places, decimals]) => {
    const point = places === 0 ? '' : `.${String(decimals).padStart(3, '0').slice(0, places)}`
    const read = readNumeral(whole.join('') + point)
    if (!read) throw new Error('no number')
    return read
  })

const anyQuestion: fc.Arbitrary<Question> = fc
  .record({
    one: numeral,
    other: numeral,
    operation: fc.constantFrom<Operation>('add', 'subtract'),
    missing: fc.constantFrom<Missing>('result', 'first', 'second'),
    unit: fc.constantFrom<Unit>('', '£', 'p'),
  })
  .map(({ one, other, operation, missing, unit }) => {
    const isLess = scaledValue(one, 3) < scaledValue(other, 3)
    const [top, bottom] = operation === 'subtract' && isLess ? [other, one] : [one, other]
    const calculation = { operation, top, bottom }
    if (missing === 'result') return { sign: operation, missing, unit, calculation }
    if (operation === 'add') return { sign: 'subtract', missing: 'first', unit, calculation }
    return { sign: missing === 'first' ? 'add' : 'subtract', missing, unit, calculation }
  })

describe('the steps of any question', () => {
  it('write, one after the other, exactly the marks, carried tens and answer of the written method', () => {
    fc.assert(
      fc.property(anyQuestion, (asked) => {
        const { columns, answer, calculation } = workOut(asked.calculation)
        const last = stateAfter(asked, stepsOf(asked).length)
        expect(last.columns.map(({ place }) => place)).toEqual(columns.map(({ place }) => place))
        expect(last.columns.map(({ marks }) => marks)).toEqual(columns.map(({ marks }) => marks))
        for (const { place, answer: digit, carried, top, bottom } of last.columns) {
          const column = columns.find((one) => one.place === place)
          expect(digit).toBe(digitAt(answer, place))
          expect(top).toBe(column?.top ?? (place < 0 ? 0 : undefined))
          expect(bottom).toBe(column?.bottom ?? (place < 0 ? 0 : undefined))
          const isCarriedTo =
            calculation.operation === 'add' && column?.receives && (top ?? bottom) !== undefined
          expect(carried).toBe(isCarriedTo ? 1 : undefined)
        }
      }),
    )
  })

  it('exchange or carry once for each column in which a ten changes hands, naming both places', () => {
    fc.assert(
      fc.property(anyQuestion, (asked) => {
        const kind = asked.calculation.operation === 'add' ? 'carry' : 'exchange'
        const steps = stepsOf(asked).filter((step) => step.kind === 'exchange' || step.kind === 'carry')
        expect(steps.map(({ place }) => place).sort((a, b) => (a ?? 0) - (b ?? 0))).toEqual(
          exchangesOf(workOut(asked.calculation)).places,
        )
        const { oneOf, countOf } = wordsFor(asked.unit)
        for (const step of steps) {
          const place = step.place ?? NaN
          expect(step.kind).toBe(kind)
          expect(step.say).toMatch(
            kind === 'exchange'
              ? `Exchange 1 ${oneOf(place + 1)} for ${countOf(10, place)}: `
              : `Exchange ${countOf(10, place)} for 1 ${oneOf(place + 1)}: `,
          )
        }
      }),
    )
  })

  it('are one sentence each, in words of the classroom', () => {
    fc.assert(
      fc.property(anyQuestion, (asked) => {
        for (const { say } of stepsOf(asked)) {
          expect(say).toMatch(/^[A-Z].*[^.]\.$/)
          expect(say).not.toMatch(/\. |borrow|undefined|NaN|null/)
          expect(say).not.toMatch(
            /(?<![\d,.])1 (?:(?:ten|hundred) )?(?:ones|tens|(?!pounds)\w+(?:nd|ion|th)s)\b/,
          )
        }
      }),
    )
  })

  it('write every answer digit after the ones to its right, and nothing before the setting out', () => {
    fc.assert(
      fc.property(anyQuestion, (asked) => {
        const places = stepsOf(asked)
          .flatMap(({ changes }) => changes)
          .filter(({ row, value }) => row === 'answer' && value !== null)
          .map(({ place }) => place)
        expect(places).toEqual([...places].sort((a, b) => a - b))
        const before = stateAfter(asked, 0)
        expect(before.step).toBeNull()
        for (const { top, bottom, marks, carried, answer } of before.columns)
          expect([top, bottom, marks, carried, answer]).toEqual([
            undefined,
            undefined,
            [],
            undefined,
            undefined,
          ])
      }),
    )
  })

  it('say nothing of a 0 at the front before every column is worked, and then rub out what was written', () => {
    fc.assert(
      fc.property(anyQuestion, (asked) => {
        const steps = stepsOf(asked)
        const last = steps.findLastIndex(({ kind }) => kind === 'look')
        for (const { say, changes } of steps.slice(0, last + 1)) {
          expect(say).not.toMatch(/front|rub/)
          expect(changes.every(({ value }) => value !== null)).toBe(true)
        }
        const written = steps.slice(0, last).filter(({ kind }) => kind === 'subtract')
        expect(written.every(({ changes }) => changes.length === 1)).toBe(true)
      }),
    )
  })

  it('speak of money as pounds and pence, never as ones or tenths', () => {
    fc.assert(
      fc.property(anyQuestion, fc.constantFrom<Unit>('£', 'p'), (asked, unit) => {
        for (const { say } of stepsOf({ ...asked, unit }))
          expect(say).not.toMatch(/\bones\b|(?:ten|hundred)ths?\b(?! of a penny)/)
      }),
    )
  })

  it('end with the answer and the check by the inverse', () => {
    fc.assert(
      fc.property(anyQuestion, (asked) => {
        expect(
          stepsOf(asked)
            .slice(-2)
            .map(({ kind }) => kind),
        ).toEqual(['answer', 'check'])
      }),
    )
  })
})

describe('the paper after a step', () => {
  it('shows the first mark of a zero before its second', () => {
    const question = asked('305 − 128')
    const marks = stepsOf(question).map((_, index) =>
      stateAfter(question, index + 1).columns.map((column) => column.marks),
    )
    expect(marks.slice(2, 5)).toEqual([
      [[], [], []],
      [[], [10], [2]],
      [[15], [10, 9], [2]],
    ])
  })

  it.each([-1, 13, 1.5])('does not exist after step %d of twelve', (n) => {
    expect(stepsOf(asked('305 − 128'))).toHaveLength(12)
    expect(() => stateAfter(asked('305 − 128'), n)).toThrow(RangeError)
  })
})

describe('what the teacher says', () => {
  it('exchanges in two columns next to each other: 932 − 457', () => {
    expect(said('932 − 457')).toEqual([
      'Write 457 under 932, ones under ones and tens under tens.',
      'Start with the ones: 2 ones are not enough to subtract 7, so we need to exchange.',
      'Exchange 1 ten for 10 ones: 3 tens become 2 tens, and 2 ones become 12 ones.',
      'Subtract 2 to reach 10, then 5 more: 12 ones subtract 7 ones is 5 ones, so write 5.',
      'Now the tens: 2 tens are not enough to subtract 5, so we need to exchange.',
      'Exchange 1 hundred for 10 tens: 9 hundreds become 8 hundreds, and 2 tens become 12 tens.',
      'Subtract 2 to reach 10, then 3 more: 12 tens subtract 5 tens is 7 tens, so write 7.',
      'Now the hundreds: 8 hundreds are enough to subtract 4.',
      'Use the fact 8 − 4 = 4: 8 hundreds subtract 4 hundreds is 4 hundreds, so write 4.',
      'So 932 − 457 = 475.',
      'Check with the inverse: 475 + 457 = 932.',
    ])
  })

  it('exchanges through a zero: 305 − 128', () => {
    expect(said('305 − 128')).toEqual([
      'Write 128 under 305, ones under ones and tens under tens.',
      'Start with the ones: 5 ones are not enough to subtract 8, so we need to exchange.',
      'There are no tens to exchange, so look to the hundreds.',
      'Exchange 1 hundred for 10 tens: 3 hundreds become 2 hundreds, and now there are 10 tens.',
      'Exchange 1 ten for 10 ones: 10 tens become 9 tens, and 5 ones become 15 ones.',
      'Subtract 5 to reach 10, then 3 more: 15 ones subtract 8 ones is 7 ones, so write 7.',
      'Now the tens: 9 tens are enough to subtract 2.',
      'Count back 2 from 9: 9 tens subtract 2 tens is 7 tens, so write 7.',
      'Now the hundreds: 2 hundreds are enough to subtract 1.',
      'Count on from 1 to 2: 2 hundreds subtract 1 hundred is 1 hundred, so write 1.',
      'So 305 − 128 = 177.',
      'Check with the inverse: 177 + 128 = 305.',
    ])
  })

  it('exchanges through two zeros: 4003 − 1567', () => {
    expect(said('4003 − 1567')).toEqual([
      'Write 1,567 under 4,003, ones under ones and tens under tens.',
      'Start with the ones: 3 ones are not enough to subtract 7, so we need to exchange.',
      'There are no tens to exchange, so look to the hundreds.',
      'There are no hundreds either, so look to the thousands.',
      'Exchange 1 thousand for 10 hundreds: 4 thousands become 3 thousands, and now there are 10 hundreds.',
      'Exchange 1 hundred for 10 tens: 10 hundreds become 9 hundreds, and now there are 10 tens.',
      'Exchange 1 ten for 10 ones: 10 tens become 9 tens, and 3 ones become 13 ones.',
      'Subtract 3 to reach 10, then 4 more: 13 ones subtract 7 ones is 6 ones, so write 6.',
      'Now the tens: 9 tens are enough to subtract 6.',
      'Count on from 6 to 9: 9 tens subtract 6 tens is 3 tens, so write 3.',
      'Now the hundreds: 9 hundreds are enough to subtract 5.',
      'Use the fact 9 − 5 = 4: 9 hundreds subtract 5 hundreds is 4 hundreds, so write 4.',
      'Now the thousands: 3 thousands are enough to subtract 1.',
      'Count back 1 from 3: 3 thousands subtract 1 thousand is 2 thousands, so write 2.',
      'So 4,003 − 1,567 = 2,436.',
      'Check with the inverse: 2,436 + 1,567 = 4,003.',
    ])
  })

  it('carries, the last ten straight into the answer: 789 + 642', () => {
    expect(said('789 + 642')).toEqual([
      'Write 642 under 789, ones under ones and tens under tens.',
      'Start with the ones: add 9 ones and 2 ones.',
      'Count on 2 from 9: 9 ones add 2 ones is 11 ones.',
      'Exchange 10 ones for 1 ten: 11 ones are 1 ten and 1 one, so write 1 in the ones and carry 1 ten.',
      'Now the tens: add 8 tens, 4 tens and the 1 ten we carried.',
      'Start at 8, add 2 to make 10, then 2 more: 8 tens add 4 tens is 12 tens, and the 1 ten we carried makes 13 tens.',
      'Exchange 10 tens for 1 hundred: 13 tens are 1 hundred and 3 tens, so write 3 in the tens and carry 1 hundred.',
      'Now the hundreds: add 7 hundreds, 6 hundreds and the 1 hundred we carried.',
      'Start at 7, add 3 to make 10, then 3 more: 7 hundreds add 6 hundreds is 13 hundreds, and the 1 hundred we carried makes 14 hundreds.',
      'Exchange 10 hundreds for 1 thousand: 14 hundreds are 1 thousand and 4 hundreds, so write 4 in the hundreds and 1 in the thousands.',
      'So 789 + 642 = 1,431.',
      'Check with the inverse: 1,431 − 642 = 789.',
    ])
  })

  it('fills the empty places of money with 0: £5 − £1.35', () => {
    expect(said('£5 − £1.35')).toEqual([
      'Write £1.35 under £5, pounds under pounds, with the points lined up.',
      'Fill the empty places after the point with 0: write £5 as £5.00.',
      'From the left, the columns hold pounds, ten-pence coins and pennies.',
      'Start with the pennies: there are no pennies to subtract 5 from, so we need to exchange.',
      'There are no ten-pence coins to exchange, so look to the pounds.',
      'Exchange 1 pound for 10 ten-pence coins: 5 pounds become 4 pounds, and now there are 10 ten-pence coins.',
      'Exchange 1 ten-pence coin for 10 pennies: 10 ten-pence coins become 9 ten-pence coins, and now there are 10 pennies.',
      'Use the fact 10 − 5 = 5: 10 pennies subtract 5 pennies is 5 pennies, so write 5.',
      'Now the ten-pence coins: 9 ten-pence coins are enough to subtract 3.',
      'Count back 3 from 9: 9 ten-pence coins subtract 3 ten-pence coins is 6 ten-pence coins, so write 6.',
      'Now the pounds: 4 pounds are enough to subtract 1.',
      'Count back 1 from 4: 4 pounds subtract 1 pound is 3 pounds, so write 3.',
      'So £5 − £1.35 = £3.65.',
      'Check with the inverse: £3.65 + £1.35 = £5.',
    ])
  })

  it('says first what finds a missing number: □ − 46 = 30', () => {
    expect(said('□ − 46 = 30')).toEqual([
      'We know that the missing number subtract 46 leaves 30, so add 46 back to 30 to find it.',
      'Write 46 under 30, ones under ones and tens under tens.',
      'Start with the ones: add 0 ones and 6 ones.',
      'Use the fact 0 + 6 = 6: 0 ones add 6 ones is 6 ones, so write 6.',
      'Now the tens: add 3 tens and 4 tens.',
      'Count on 3 from 4: 3 tens add 4 tens is 7 tens, so write 7.',
      'So 30 + 46 = 76, and the missing number is 76.',
      'Check with the inverse: 76 − 46 = 30.',
    ])
  })

  it('leaves columns with nothing to subtract as they are, and writes no 0 in front: 1000 − 1', () => {
    expect(said('1000 − 1')).toEqual([
      'Write 1 under 1,000, ones under ones.',
      'Start with the ones: there are no ones to subtract 1 from, so we need to exchange.',
      'There are no tens to exchange, so look to the hundreds.',
      'There are no hundreds either, so look to the thousands.',
      'Exchange 1 thousand for 10 hundreds: 1 thousand becomes 0 thousands, and now there are 10 hundreds.',
      'Exchange 1 hundred for 10 tens: 10 hundreds become 9 hundreds, and now there are 10 tens.',
      'Exchange 1 ten for 10 ones: 10 tens become 9 tens, and now there are 10 ones.',
      'Count back 1 from 10: 10 ones subtract 1 one is 9 ones, so write 9.',
      'Now the tens: there is nothing to subtract.',
      'The 9 tens stay, so write 9.',
      'Now the hundreds: there is nothing to subtract.',
      'The 9 hundreds stay, so write 9.',
      'Now the thousands: there is nothing to subtract.',
      'There are no thousands, and we do not write a 0 at the front.',
      'So 1,000 − 1 = 999.',
      'Check with the inverse: 999 + 1 = 1,000.',
    ])
  })

  it('writes a 0 that may yet be needed, and rubs it out when it proves to be at the front: 1032 − 957', () => {
    expect(said('1032 − 957').slice(9, 14)).toEqual([
      'Now the hundreds: 9 hundreds are enough to subtract 9.',
      'Use the fact 9 − 9 = 0: 9 hundreds subtract 9 hundreds is 0 hundreds, so write 0.',
      'Now the thousands: there is nothing to subtract.',
      'There are no thousands, and we do not write a 0 at the front.',
      'Nothing stands in front of the 0 in the hundreds, so it is not needed: rub it out.',
    ])
    const before = stateAfter(asked('1032 − 957'), 13).columns.map(({ answer }) => answer)
    expect(before).toEqual([5, 7, 0, undefined])
  })

  it('leaves columns with nothing to add as they are: 1056 + 2', () => {
    expect(said('1056 + 2')).toEqual([
      'Write 2 under 1,056, ones under ones.',
      'Start with the ones: add 6 ones and 2 ones.',
      'Count on 2 from 6: 6 ones add 2 ones is 8 ones, so write 8.',
      'Now the tens: there is nothing to add.',
      'The 5 tens stay, so write 5.',
      'Now the hundreds: there is nothing to add.',
      'There are no hundreds, so write 0.',
      'Now the thousands: there is nothing to add.',
      'The 1 thousand stays, so write 1.',
      'So 1,056 + 2 = 1,058.',
      'Check with the inverse: 1,058 − 2 = 1,056.',
    ])
  })

  it.each([
    ['35 + □ = 80', 'We know that 35 and the missing number make 80, so subtract 35 from 80 to find it.'],
    ['□ + 35 = 80', 'We know that the missing number and 35 make 80, so subtract 35 from 80 to find it.'],
    [
      '80 − □ = 35',
      'We know that 80 subtract the missing number leaves 35, so 35 and the missing number make 80: subtract 35 from 80 to find it.',
    ],
  ])('why the calculation finds the missing number of %s', (text, sentence) => {
    expect(said(text)[0]).toBe(sentence)
  })
})
