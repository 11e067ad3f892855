import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { recognise, type Occasion, type PupilWeek } from '../../src/lesson/recognition'
import { typeInWords } from '../../src/lesson/words'
import { TEACHING_ORDER } from '../../src/mastery/support'

type Type = (typeof TEACHING_ORDER)[number]

/** An occasion by right and tried of each type, with so many questions not answered. */
const on = (counts: Partial<Record<Type, readonly [number, number]>>, blank = 0): Occasion => {
  const byType = Object.entries(counts).map(([type, [right, tried]]) => ({
    type: type as Type,
    right,
    tried,
  }))
  return { byType, asked: blank + byType.reduce((sum, { tried }) => sum + tried, 0) }
}
const said = (week: readonly Occasion[], before: readonly Occasion[] = []) =>
  recognise([{ name: 'Amina K', before, week }])[0]?.says ?? []

const TYPES = TEACHING_ORDER.slice(12, 17)
const occasion = fc
  .tuple(
    fc.dictionary(
      fc.constantFrom(...TYPES),
      fc.tuple(fc.nat(4), fc.nat(3)).map(([right, wrong]) => [right, right + wrong] as const),
      { maxKeys: 5 },
    ),
    fc.nat(2),
  )
  .map(([counts, blank]) => on(counts, blank))
const weeks: fc.Arbitrary<PupilWeek[]> = fc.array(
  fc.record({
    name: fc.constantFrom('Zoë A', 'Ángel B', 'Amina K', 'bryn T', 'Caris W'),
    before: fc.array(occasion, { maxLength: 2 }),
    week: fc.array(occasion, { maxLength: 3 }),
  }),
  { maxLength: 6 },
)

describe('recognition', () => {
  it('tells more right than the time before first, then what is all right', () => {
    expect(said([on({ 'through a zero': [4, 4] })], [on({ 'through a zero': [1, 4] })])).toEqual([
      'More right than the time before in subtraction through a zero: 4 of 4, after 1 of 4.',
      'Answered 4 questions, all of them right.',
    ])
    expect(said([on({ 'no exchange': [4, 4], 'through a zero': [0, 3] }, 1)])).toEqual([
      'All 4 right in subtraction with no exchange.',
    ])
  })

  it('compares with the last time that the type was answered, in the same week too', () => {
    const zero = (right: number, tried: number) => on({ 'through a zero': [right, tried] })
    expect(said([zero(1, 4), on({ 'no carry': [1, 2] }, 1), zero(3, 4)], [zero(4, 4)])[0]).toBe(
      'More right than the time before in subtraction through a zero: 3 of 4, after 1 of 4.',
    )
    expect(said([zero(3, 10)], [zero(2, 2)])).toEqual(['Answered every one of the 10 questions.'])
  })

  it('never makes praise of one of twelve, nor of one alone', () => {
    expect(said([on({ 'through a zero': [1, 12] }, 1)], [on({ 'through a zero': [0, 12] })])).toEqual([])
    expect(said([on({ 'through a zero': [1, 12] })])).toEqual(['Answered every one of the 12 questions.'])
    expect(said([on({ 'no carry': [1, 1] })])).toEqual([])
    expect(said([on({ 'no carry': [0, 3] }, 2)])).toEqual([])
  })

  it('is in the order of the alphabet, with one or two sentences, and compares nobody', () => {
    fc.assert(
      fc.property(weeks, (pupils) => {
        const together = recognise(pupils)
        const names = together.map(({ name }) => name)
        expect(names).toEqual(names.toSorted((a, b) => a.localeCompare(b, 'en-GB')))
        for (const { says } of together) {
          expect([1, 2]).toContain(says.length)
          for (const sentence of says) expect(sentence).toMatch(/^[A-Z][^.]+\.$/)
        }
        const alone = pupils.flatMap((pupil) => recognise([pupil]))
        expect(together.map((each) => JSON.stringify(each)).sort()).toEqual(
          alone.map((each) => JSON.stringify(each)).sort(),
        )
        expect(JSON.stringify(together)).not.toMatch(/\b(?:best|most|top|first|ahead|behind)\b/)
      }),
    )
  })

  it('says only what plain counts bear out', () => {
    const total = (occasions: readonly Occasion[], type?: string) => {
      const own = occasions.flatMap(({ byType }) =>
        byType.filter((each) => (type ?? each.type) === each.type),
      )
      return [own.reduce((sum, { right }) => sum + right, 0), own.reduce((sum, { tried }) => sum + tried, 0)]
    }
    const typeOf = (words: string | undefined) => TYPES.find((type) => typeInWords(type) === words)
    fc.assert(
      fc.property(weeks, (pupils) => {
        for (const pupil of pupils)
          for (const sentence of recognise([pupil]).flatMap(({ says }) => says)) {
            const { week, before } = pupil
            const rose =
              /^More right than the time before in (.*): (\d+) of (\d+), after (\d+) of (\d+)\.$/.exec(
                sentence,
              )
            const type = /^All (\d+) right in (.*)\.$/.exec(sentence)
            const whole = /^Answered (\d+) questions, all of them right\.$/.exec(sentence)
            const every = /^Answered every one of the (\d+) questions\.$/.exec(sentence)
            if (rose) {
              const [now = 0, of = 0, then = 0, ofThen = 0] = rose.slice(2).map(Number)
              const times = [...before, ...week]
                .map((each) => total([each], typeOf(rose[1])))
                .filter(([, tried]) => tried !== 0)
              expect(times.slice(-2)).toEqual([
                [then, ofThen],
                [now, of],
              ])
              expect(now > then && 2 * now >= of && now * ofThen >= then * of).toBe(true)
            } else if (type) {
              const [count, words] = [Number(type[1]), type[2]]
              expect(total(week, typeOf(words))).toEqual([count, count])
              expect(count).toBeGreaterThanOrEqual(2)
            } else if (whole) {
              expect(total(week)).toEqual([Number(whole[1]), Number(whole[1])])
              expect(Number(whole[1])).toBeGreaterThanOrEqual(2)
            } else {
              expect([sentence, every?.[1]]).toEqual([sentence, String(total(week)[1])])
              expect(week.reduce((sum, { asked }) => sum + asked, 0)).toBe(total(week)[1])
            }
          }
      }),
      { numRuns: 500 },
    )
  })
})
