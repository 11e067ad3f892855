import type { ComponentType } from 'react'

/** Something to make for a lesson. Its code is loaded when it is first chosen. */
export interface LessonPart {
  readonly id: string
  /** The words in the list. */
  readonly name: string
  /** What it is, in a sentence. */
  readonly says: string
  readonly load: () => Promise<ComponentType>
}

/** What can be made for a lesson, in the order of the list. */
export const LESSON_PARTS: readonly LessonPart[] = [
  {
    id: 'lesson',
    name: 'Lesson set',
    says: 'An example, practice in three grades, a recap, answers, a letter home and the marksheet, from one objective.',
    load: async () => (await import(/* webpackChunkName: "lesson-set" */ './LessonSet')).LessonSet,
  },
  {
    id: 'personal',
    name: 'Personal sets',
    says: 'Each pupil’s own questions, by what each of them needs, a row for each.',
    load: async () => (await import(/* webpackChunkName: "lesson-personal" */ './Personal')).Personal,
  },
  {
    id: 'starter',
    name: 'Dice starter',
    says: 'Subtractions whose answers are the totals of two dice, to roll and cover.',
    load: async () => (await import(/* webpackChunkName: "lesson-starter" */ './Starter')).Starter,
  },
  {
    id: 'triangles',
    name: 'Number triangles',
    says: 'The numbers 1 to 9 around a triangle, every side to one total: puzzles with one solution each.',
    load: async () => (await import(/* webpackChunkName: "lesson-triangles" */ './Triangles')).Triangles,
  },
  {
    id: 'stories',
    name: 'Two-step stories',
    says: 'Problems in two steps, each of the type that you choose, with bar models.',
    load: async () => (await import(/* webpackChunkName: "lesson-stories" */ './Stories')).Stories,
  },
  {
    id: 'checks',
    name: 'Missing numbers and checks',
    says: 'Missing numbers to find, and worked answers to check with the inverse.',
    load: async () => (await import(/* webpackChunkName: "lesson-checks" */ './Checks')).Checks,
  },
]
