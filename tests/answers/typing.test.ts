import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { typingTrouble, type TypedItem } from '../../src/answers/diagnosis/typing'

const items = (answers: readonly string[], values: readonly (string | null)[]): TypedItem[] =>
  answers.map((answer, index) => ({ answer, value: values[index] ?? null }))
const ANSWERS = ['475', '177', '2436', '2732', '3755', '5001', '7128', '457']
const different = fc.uniqueArray(fc.integer({ min: 100, max: 9999 }), { minLength: 8, maxLength: 20 })

describe('answers moved along', () => {
  it('are the right ones in a run, further on or further back', () => {
    const skipped = ['475', '177', null, ...ANSWERS.slice(2, 7)]
    expect(typingTrouble(items(ANSWERS, skipped))).toEqual({ kind: 'moved', by: 1, count: 5, tried: 7 })
    const back = ANSWERS.slice(2)
    expect(typingTrouble(items(ANSWERS, back))).toEqual({ kind: 'moved', by: -2, count: 6, tried: 6 })
  })

  it('may have empty cells between, but no other answer', () => {
    const [a = '', b = '', c = ''] = ANSWERS
    expect(typingTrouble(items(ANSWERS, [null, a, null, '2436', null, '3755']))).toMatchObject({ count: 3 })
    expect(typingTrouble(items(ANSWERS, [null, a, b, '88', '2732', '3755']))).toBeNull()
    expect(typingTrouble(items(ANSWERS, [null, a, b, c]))).toMatchObject({ by: 1, count: 3, tried: 3 })
  })

  it('are different ones: the same answer again and again is no move', () => {
    const answers = ['475', '12', '475', '13', '475', '14']
    expect(
      typingTrouble(
        items(
          answers,
          answers.map(() => '475'),
        ),
      ),
    ).toBeNull()
  })

  it('are found wherever they begin and however far they moved, and two are not enough', () => {
    fc.assert(
      fc.property(
        different,
        fc.nat(),
        fc.integer({ min: 1, max: 4 }),
        fc.boolean(),
        (numbers, nat, by, on) => {
          const answers = numbers.map(String)
          const count = 1 + (nat % (answers.length - by))
          const from = answers.length - count
          const moved = answers.map((answer, index) => (index < from ? answer : (answers[index - by] ?? '')))
          const [right, typed] = on ? [answers, moved] : [[...answers].reverse(), [...moved].reverse()]
          expect(typingTrouble(items(right, typed))).toEqual(
            count < 3 ? null : { kind: 'moved', by: on ? by : -by, count, tried: answers.length },
          )
        },
      ),
    )
  })
})

describe('answers out by one amount', () => {
  it('are nearly all the answers, and at least four', () => {
    const all = ANSWERS.map((answer) => String(Number(answer) + 100))
    expect(typingTrouble(items(ANSWERS, all))).toEqual({ kind: 'out by', amount: '100', count: 8, tried: 8 })
    expect(typingTrouble(items(ANSWERS, all.with(3, '2732')))).toMatchObject({ count: 7, tried: 8 })
    expect(typingTrouble(items(ANSWERS, all.with(3, '2732').with(4, '3755')))).toBeNull()
    expect(typingTrouble(items(ANSWERS, all.slice(0, 4)))).toMatchObject({ count: 4, tried: 4 })
    expect(typingTrouble(items(ANSWERS, all.slice(0, 3)))).toBeNull()
  })

  it('are reckoned exactly, below nought and behind the point', () => {
    const answers = ['0.3', '8.6', '7', '12.25']
    const out = { kind: 'out by', count: 4, tried: 4 }
    expect(typingTrouble(items(answers, ['0.4', '8.7', '7.1', '12.35']))).toEqual({ ...out, amount: '0.1' })
    expect(typingTrouble(items(answers, ['-0.7', '7.6', '6', '11.25']))).toEqual({ ...out, amount: '-1' })
  })

  it('are found for every amount, unless the same answers are the right ones moved along', () => {
    fc.assert(
      fc.property(
        different,
        fc.integer({ min: -99, max: 99 }),
        fc.nat({ max: 2 }),
        (numbers, amount, places) => {
          fc.pre(amount !== 0 && !numbers.some((number) => numbers.includes(number + amount)))
          const text = (value: number) => String(value / 10 ** places)
          const pupil = items(
            numbers.map(text),
            numbers.map((number) => text(number + amount)),
          )
          const tried = numbers.length
          expect(typingTrouble(pupil)).toEqual({ kind: 'out by', amount: text(amount), count: tried, tried })
        },
      ),
    )
  })
})

describe('no trouble with typing', () => {
  it('is right answers, blanks, and answers out by amounts that differ', () => {
    fc.assert(
      fc.property(different, fc.array(fc.boolean(), { minLength: 20, maxLength: 20 }), (numbers, blank) => {
        const answers = numbers.map(String)
        const typed = answers.map((answer, index) => (blank[index] ? null : answer))
        expect(typingTrouble(items(answers, typed))).toBeNull()
        const further = numbers.map((number, index) => String(number + 10_000 * (index + 1)))
        expect(typingTrouble(items(answers, further))).toBeNull()
      }),
    )
    expect(typingTrouble([])).toBeNull()
  })

  it('is a fault that gives every answer concerned', () => {
    const out = items(
      ANSWERS,
      ANSWERS.map((answer) => String(Number(answer) + 10)),
    )
    const every = ANSWERS.map((_, index) => index)
    expect(typingTrouble(out, every)).toBeNull()
    expect(typingTrouble(out, every.slice(1))).toMatchObject({ kind: 'out by', amount: '10', count: 8 })
    expect(typingTrouble(items(ANSWERS, ANSWERS.slice(1)), every)).toBeNull()
  })
})
