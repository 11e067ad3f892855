import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { workOut } from '../../src/arithmetic/columns'
import { exchangesOf } from '../../src/arithmetic/exchange'
import { printQuestion, type Question } from '../../src/arithmetic/question'
import { takeCensus } from '../../src/items/census'
import { makeSet, type MadeSet } from '../../src/items/makeSet'
import { recipesFor } from '../../src/items/recipes'
import { RUNGS } from '../../src/items/rungs'
import { toldInWords } from '../../src/items/told'
import { aimsFor, describeWish, TOPICS, WISH_COUNT, type Wish } from '../../src/items/wish'

const FOUR_DIGITS: Wish = {
  operation: 'subtract',
  numbers: { year: 4, topic: 'Four-digit numbers' },
  aim: 'graded',
  count: 10,
}

function made(wish: Wish, seed = '4827', avoid: readonly Question[] = []): MadeSet {
  const set = makeSet(wish, seed, avoid)
  if ('problem' in set) throw new Error(set.problem)
  return set
}

const texts = ({ questions }: MadeSet) => questions.map(printQuestion)
const typeOf = ({ calculation }: Question) => exchangesOf(workOut(calculation)).type

const wishes: fc.Arbitrary<Wish> = fc
  .record({
    operation: fc.constantFrom('add' as const, 'subtract' as const, 'both' as const),
    numbers: fc.constantFrom(...TOPICS),
    count: fc.integer({ min: WISH_COUNT.least, max: WISH_COUNT.most }),
    at: fc.nat(),
  })
  .map(({ at, ...wish }) => {
    const aims = aimsFor(wish)
    return { ...wish, aim: aims[at % aims.length]?.aim ?? 'graded' }
  })

describe('a set made for a wish', () => {
  it('holds as many questions as wished for, no calculation twice, the same for the same seed', () => {
    fc.assert(
      fc.property(wishes, fc.string(), (wish, seed) => {
        const set = makeSet(wish, seed)
        if ('problem' in set) return set.exist < BigInt(wish.count) || wish.aim === 'why'
        expect(set.questions).toHaveLength(wish.count)
        expect(new Set(texts(set)).size).toBe(wish.count)
        expect(makeSet(wish, seed)).toEqual(set)
        return true
      }),
      { numRuns: 60 },
    )
  })

  it('is of the wished type where the aim is one', () => {
    const set = made({ ...FOUR_DIGITS, aim: 'through a zero' })
    expect(new Set(set.questions.map(typeOf))).toEqual(new Set(['through a zero']))
  })

  it('goes from easy to hard through the types of the topic when graded', () => {
    const ladder = recipesFor(4, 'subtract')
      .filter(({ topic }) => topic === 'Four-digit numbers')
      .map(({ kind }) => kind.type)
    const rungs = made(FOUR_DIGITS).questions.map((question) => ladder.indexOf(typeOf(question)))
    expect(rungs).toEqual(rungs.toSorted((a, b) => a - b))
    expect(rungs[0]).toBe(0)
    expect(rungs.at(-1)).toBe(ladder.length - 2)
  })

  it('asks additions and subtractions in turn when both are wished for', () => {
    const { questions } = made({ ...FOUR_DIGITS, operation: 'both', count: 7 })
    const subtractions = questions.filter(({ sign }) => sign === 'subtract')
    expect(subtractions).toHaveLength(4)
    questions.forEach(({ sign }, index) => {
      if (index > 0) expect(sign).not.toBe(questions[index - 1]?.sign)
    })
  })

  it('tells how many such questions exist: the sum over its kinds', () => {
    const kinds = recipesFor(4, 'subtract')
      .filter(({ topic, kind }) => topic === 'Four-digit numbers' && kind.type !== 'any')
      .map(({ kind }) => takeCensus(kind).count)
    expect(made(FOUR_DIGITS).exist).toBe(kinds.reduce((sum, count) => sum + count, 0n))
  })
})

describe('questions that must not come again', () => {
  it('never come, and only they are exchanged, so that parallel classes keep the rest of the set', () => {
    const whole = made(FOUR_DIGITS)
    const avoid = whole.questions.filter((_, index) => index % 3 === 0)
    const set = made(FOUR_DIGITS, '4827', avoid)
    const avoided = new Set(avoid.map(printQuestion))
    expect(texts(set).some((text) => avoided.has(text))).toBe(false)
    expect(set.exchanged).toBe(avoid.length)
    expect(set.avoided).toBe(avoid.length)
    texts(whole).forEach((text, index) => {
      if (!avoided.has(text)) expect(texts(set)[index]).toBe(text)
    })
    expect(set.questions.map(typeOf)).toEqual(whole.questions.map(typeOf))
  })

  it('leave a telling-apart set as it is where none of them is in it', () => {
    const why: Wish = { ...FOUR_DIGITS, aim: 'why' }
    const whole = made(why)
    const elsewhere = made({ ...FOUR_DIGITS, count: 40 }, 'another').questions.filter(
      (question) => !texts(whole).includes(printQuestion(question)),
    )
    expect(texts(made(why, '4827', elsewhere))).toEqual(texts(whole))
    const again = made(why, '4827', whole.questions)
    expect(texts(again).some((text) => texts(whole).includes(text))).toBe(false)
    expect(again.exchanged).toBe(again.questions.length)
  })

  it('leave too few, which is said with how many are left', () => {
    const wish: Wish = {
      operation: 'subtract',
      numbers: { own: { topDigits: 1, bottomDigits: 1 } },
      aim: 'no exchange',
      count: 40,
    }
    expect(made(wish).exist).toBe(45n)
    const set = makeSet(wish, '1', made(wish).questions)
    expect('problem' in set && set.problem).toMatch(/^Only 5 of the 45 such questions are left/)
  })
})

describe('a set that finds out why', () => {
  it('shows nearly every fault on two questions or more and tells them from each other, for every topic', () => {
    for (const numbers of TOPICS) {
      for (const operation of ['add', 'subtract'] as const) {
        const { told } = made({ operation, numbers, aim: 'why', count: 10 })
        if (!told) throw new Error('It tells nothing.')
        const fromRight = told.pairs.filter(({ ways }) => ways[0] === 'right')
        const { shown, limits } = toldInWords(told, [operation])
        expect(shown.length + limits.length).toBe(fromRight.length)
        expect(limits.length).toBeLessThanOrEqual(1)
      }
    }
  })

  it('stays mixed: no type has more than half of its questions', () => {
    for (const numbers of TOPICS) {
      const types = made({ operation: 'subtract', numbers, aim: 'why', count: 12 }).questions.map(typeOf)
      for (const type of types) expect(types.filter((each) => each === type).length).toBeLessThanOrEqual(6)
    }
  })

  it('names a fault of both operations by what it is in those that are asked', () => {
    const pairs = [{ ways: ['right', 'wrong-operation'] as const, questions: 2 }]
    const shown = (...operations: ('add' | 'subtract')[]) =>
      toldInWords({ chosen: [], pairs }, operations).shown
    expect(shown('subtract')).toEqual(['Adds instead of subtracting.'])
    expect(shown('subtract', 'add')).toEqual([
      'Adds instead of subtracting. Or: Subtracts instead of adding.',
    ])
  })

  it('says in sentences what it shows and what it cannot', () => {
    expect(
      toldInWords(
        {
          chosen: [0, 1],
          pairs: [
            { ways: ['right', 'no-reduction'], questions: 2 },
            { ways: ['right', 'nine-for-free'], questions: 2 },
            { ways: ['right', 'lines-up-left'], questions: 1 },
            { ways: ['right', 'take-zero-gives-zero'], questions: 0 },
            { ways: ['no-reduction', 'nine-for-free'], questions: 0 },
            { ways: ['no-reduction', 'lines-up-left'], questions: 0 },
          ],
        },
        ['subtract'],
      ),
    ).toEqual({
      summary: 'Tells 2 of 4 known faults from the right way of working, each on two questions or more.',
      shown: [
        'Adds ten to a column that is short, but reduces nothing to its left.',
        'Turns a 0 into 9 when exchanging, but takes nothing from the digit to its left.',
      ],
      limits: [
        'Shows on one question only: Writes the shorter number under the left-hand digits of the longer one.',
        'Does not show: Where the bottom digit is 0, writes 0, as if nothing were left.',
        'Cannot tell “Adds ten to a column that is short, but reduces nothing to its left.” from ' +
          '“Turns a 0 into 9 when exchanging, but takes nothing from the digit to its left.”',
      ],
    })
  })
})

describe('numbers of the teacher’s own choice', () => {
  it('offer the types that occur with them, each with at least one question', () => {
    const numbers = { own: { topDigits: 3, bottomDigits: 2 } }
    const aims = aimsFor({ operation: 'subtract', numbers }).flatMap(({ aim }) => (aim in RUNGS ? aim : []))
    expect(aims).toEqual([
      'no exchange',
      'one exchange, tens to ones',
      'one exchange, hundreds to tens',
      'two exchanges, next to each other',
      'through a zero',
    ])
    for (const aim of aims) made({ operation: 'subtract', numbers, aim, count: 1 })
  })

  it.each<[Partial<Wish>, string]>([
    [{ count: 0 }, 'Choose 1 to 40 questions.'],
    [{ count: 2.5 }, 'Choose 1 to 40 questions.'],
    [
      { numbers: { own: { topDigits: 2, bottomDigits: 4 } } },
      'The bottom number has more digits than the top number, so it cannot be taken away from it.',
    ],
    [
      { aim: 'one carry, ones to tens' },
      'With these numbers there is no subtraction called “One carry, ones to tens”.',
    ],
    [
      { numbers: { year: 4, topic: 'Fractions' }, aim: 'through a zero' },
      'With these numbers there is no subtraction called “Through a zero”.',
    ],
  ])('are refused with a sentence where they make no set: %j', (change, problem) => {
    expect(makeSet({ ...FOUR_DIGITS, ...change }, '1')).toEqual({ problem, exist: 0n })
  })
})

it('a wish in words names year, topic, operation, aim and count', () => {
  expect(describeWish(FOUR_DIGITS)).toBe(
    'Year 4, Four-digit numbers, subtraction, from easy to hard, 10 questions',
  )
  expect(
    describeWish({
      operation: 'both',
      numbers: { own: { topDigits: 3, bottomDigits: 2, unit: '£' } },
      aim: 'mixed',
      count: 1,
    }),
  ).toBe('3 digits ± 2 digits, in pounds, mixed, 1 question')
})
