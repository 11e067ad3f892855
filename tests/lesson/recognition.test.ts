import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { recognise, type PupilWeek, type TypeOnOccasion } from '../../src/lesson/recognition'
import { STATUSES } from '../../src/mastery/standing'
import { TEACHING_ORDER } from '../../src/mastery/support'

const on = (
  type: TypeOnOccasion['type'],
  right: number,
  tried: number,
  before: TypeOnOccasion['before'],
  after: TypeOnOccasion['after'],
): TypeOnOccasion => ({ type, right, tried, before, after })

const said = (...occasions: TypeOnOccasion[][]) => recognise([{ name: 'Amina K', occasions }])[0]?.says

const occasion = fc.uniqueArray(fc.constantFrom(...TEACHING_ORDER), { maxLength: 5 }).chain((types) =>
  fc.tuple(
    ...types.map((type) =>
      fc
        .record({
          right: fc.nat(4),
          more: fc.nat(3),
          before: fc.option(fc.constantFrom(...STATUSES)),
          after: fc.constantFrom(...STATUSES),
        })
        .map(({ right, more, before, after }) => on(type, right, right + more, before, after)),
    ),
  ),
)
const weeks: fc.Arbitrary<PupilWeek[]> = fc.array(
  fc.record({
    name: fc.constantFrom('Zoë A', 'Ángel B', 'Amina K', 'bryn T', 'Caris W'),
    occasions: fc.array(occasion, { maxLength: 3 }),
  }),
  { maxLength: 6 },
)

const triedIn = ({ occasions }: PupilWeek) => occasions.flat().reduce((sum, { tried }) => sum + tried, 0)

describe('recognition', () => {
  it('tells progress first, then accuracy', () => {
    expect(said([on('through a zero', 4, 4, 'nearly secure', 'secure')])).toEqual([
      'Now secure in subtraction through a zero.',
      'Answered 4 questions, all of them right.',
    ])
    expect(
      said([
        on('no exchange', 2, 3, 'secure', 'secure'),
        on('through a zero', 2, 3, 'needs support', 'nearly secure'),
      ]),
    ).toEqual(['Now nearly secure in subtraction through a zero.', 'Answered 6 questions, 4 of them right.'])
    expect(
      said([
        on('no exchange', 4, 4, 'secure', 'secure'),
        on('through a zero', 0, 3, 'needs support', 'needs support'),
      ]),
    ).toEqual(['All 4 right in subtraction with no exchange.', 'Answered 7 questions, 4 of them right.'])
  })

  it('puts the occasions of a week together', () => {
    expect(
      said(
        [on('no carry', 1, 2, null, 'not enough seen')],
        [on('no carry', 3, 3, 'not enough seen', 'secure'), on('through a zero', 0, 0, 'secure', 'secure')],
      ),
    ).toEqual(['Now secure in addition with no carry.', 'Answered 5 questions, 4 of them right.'])
  })

  it('finds something true for a pupil who had nothing right', () => {
    expect(said([on('through a zero', 0, 3, null, 'needs support')])).toEqual([
      'Worked at 3 questions, on subtraction through a zero.',
    ])
    expect(said([on('no carry', 1, 1, null, 'not enough seen')])).toEqual([
      'Answered 1 question and got it right.',
    ])
  })

  it('looks for what was right where most was wrong, and names an operation once', () => {
    expect(
      said([
        on('no exchange', 1, 4, null, 'needs support'),
        on('one exchange, tens to ones', 1, 3, null, 'needs support'),
        on('through a zero', 0, 3, null, 'needs support'),
        on('no carry', 1, 3, null, 'needs support'),
      ]),
    ).toEqual([
      'Worked at 13 questions and got 3 right: addition with no carry, subtraction with no exchange and with one exchange (tens to ones).',
    ])
  })

  it('names everyone who answered, and only them, in the order of the alphabet, with one or two sentences', () => {
    fc.assert(
      fc.property(weeks, (pupils) => {
        const list = recognise(pupils)
        const names = (given: readonly { readonly name: string }[]) => given.map(({ name }) => name)
        const answered = pupils.filter((pupil) => triedIn(pupil) > 0)
        expect(names(list)).toEqual(names(answered).sort((a, b) => a.localeCompare(b, 'en-GB')))
        for (const { says } of list) {
          expect(says.length === 1 || says.length === 2).toBe(true)
          for (const sentence of says) expect(sentence).toMatch(/^[A-Z][^.]+\.$/)
        }
      }),
    )
  })

  it('says nothing of a pupil that other pupils change: nobody is compared', () => {
    fc.assert(
      fc.property(weeks, (pupils) => {
        const together = recognise(pupils)
        const alone = pupils.flatMap((pupil) => recognise([pupil]))
        expect([...together].map((each) => JSON.stringify(each)).sort()).toEqual(
          alone.map((each) => JSON.stringify(each)).sort(),
        )
        expect(JSON.stringify(together)).not.toMatch(/\b(?:best|most|top|first|than|ahead|behind)\b/)
      }),
    )
  })

  it('says only what the counts bear out', () => {
    fc.assert(
      fc.property(weeks, (pupils) => {
        for (const pupil of pupils) {
          const right = pupil.occasions.flat().reduce((sum, each) => sum + each.right, 0)
          for (const sentence of recognise([pupil]).flatMap(({ says }) => says)) {
            const [, tried, of] =
              /^Answered (\d+) questions?, (\d+|all) of them right\.$/.exec(sentence) ?? []
            if (tried === undefined) continue
            expect(Number(tried)).toBe(triedIn(pupil))
            expect(of === 'all' ? right === Number(tried) : Number(of) === right).toBe(true)
          }
        }
      }),
    )
  })
})
