import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { RECIPES } from '../../src/items/recipes'
import {
  keptData,
  mondayFrom,
  MOST_KEPT,
  nextLesson,
  readKept,
  weekOf,
  withLesson,
  type KeptLesson,
} from '../../src/lesson/kept'
import { makeLesson } from '../../src/lesson/lessonSet'
import { TEACHING_ORDER } from '../../src/mastery/support'

const days = fc
  .date({ min: new Date('2020-01-01'), max: new Date('2040-01-01'), noInvalidDate: true })
  .map((date) => date.toISOString().slice(0, 10))
const lessons: fc.Arbitrary<KeptLesson> = fc.record({
  day: days,
  set: fc.oneof(fc.integer({ min: 1000, max: 9999 }).map(String), fc.constantFrom('owls', 'owls 2')),
  recipe: fc.constantFrom(...RECIPES),
  practice: fc.integer({ min: 1, max: 20 }),
  recap: fc.integer({ min: 0, max: 20 }),
  recapTypes: fc
    .subarray([...TEACHING_ORDER])
    .map((types) => TEACHING_ORDER.filter((type) => types.includes(type))),
  otherWays: fc.boolean(),
  criteria: fc.option(fc.string()),
})
const weekday = (day: string) => new Date(`${day}T12:00:00Z`).getUTCDay()

describe('lessons that are kept', () => {
  it('come back as they were, through the text that a workbook keeps', () => {
    fc.assert(
      fc.property(fc.array(lessons, { maxLength: 5 }), (kept) => {
        expect(readKept(JSON.parse(JSON.stringify(keptData(kept))))).toEqual(kept)
      }),
    )
  })

  it('are made again with the same questions', () => {
    fc.assert(
      fc.property(lessons, (lesson) => {
        const small = { ...lesson, practice: 2, recap: 2 }
        const [again] = readKept(JSON.parse(JSON.stringify(keptData([small]))))
        const making = ({ set, ...choices }: KeptLesson) => makeLesson({ ...choices, seed: set })
        expect(again && making(again)).toEqual(making(small))
      }),
      { numRuns: 20 },
    )
  })

  it('are left out where they make no sense', () => {
    fc.assert(
      fc.property(fc.anything(), (data) => {
        expect(readKept(data)).toEqual([])
      }),
    )
    const [recipe] = RECIPES
    if (!recipe) throw new Error('There are no recipes.')
    const sound = { day: '2026-11-26', set: '7', practice: 6, recap: 4, recapTypes: [], otherWays: false }
    const [data] = keptData([{ ...sound, recipe, criteria: null }]) as [Record<string, unknown>]
    for (const wrong of [{ day: 'today' }, { set: '' }, { practice: 21 }, { recap: -1 }, { recipe: null }])
      expect(readKept([{ ...data, ...wrong }])).toEqual([])
    expect(readKept([data])).toHaveLength(1)
  })

  it('stand newest first, each lesson of a day once, and no more than the list holds', () => {
    fc.assert(
      fc.property(fc.array(lessons, { maxLength: 12 }), lessons, (before, lesson) => {
        const list = before.reduce(withLesson, [] as KeptLesson[])
        const once = withLesson(list, lesson)
        expect(withLesson(once, lesson)).toEqual(once)
        expect(once.map(({ day }) => day)).toEqual(
          once
            .map(({ day }) => day)
            .sort()
            .reverse(),
        )
        expect(once.length).toBeLessThanOrEqual(MOST_KEPT)
      }),
    )
  })
})

describe('the next day and the week', () => {
  it('the next day is a school day, with the next objective of the ladder and the next number', () => {
    fc.assert(
      fc.property(lessons, (lesson) => {
        const next = nextLesson(lesson)
        expect([0, 6]).not.toContain(weekday(next.day))
        expect(next.day > lesson.day).toBe(true)
        const { year, topic, operation } = lesson.recipe
        expect(next.recipe).toMatchObject({ year, topic, operation })
        expect(next.set).not.toBe(lesson.set)
      }),
    )
    const [recipe] = RECIPES
    if (!recipe) throw new Error('There are no recipes.')
    const friday: KeptLesson = {
      day: '2026-11-27',
      set: '4827',
      recipe,
      practice: 6,
      recap: 4,
      recapTypes: [],
      otherWays: false,
      criteria: 'I line up the ones.',
    }
    expect(nextLesson(friday)).toMatchObject({ day: '2026-11-30', set: '4828', criteria: null })
    expect(nextLesson({ ...friday, set: 'owls' }).set).toBe('owls 2')
    expect(nextLesson({ ...friday, set: 'owls 2' }).set).toBe('owls 3')
  })

  it('a week runs from Monday to Friday and begins with the lesson itself', () => {
    fc.assert(
      fc.property(lessons, (lesson) => {
        const week = weekOf(lesson)
        expect(week.map(({ day }) => weekday(day))).toEqual([1, 2, 3, 4, 5])
        expect(week[0]).toEqual({ ...lesson, day: mondayFrom(lesson.day) })
        expect(new Set(week.map(({ set }) => set)).size).toBe(5)
        expect((week[0]?.day ?? '') >= lesson.day).toBe(true)
      }),
    )
  })
})
