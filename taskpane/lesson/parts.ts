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
    id: 'starter',
    name: 'Dice starter',
    says: 'Subtractions whose answers are the totals of two dice, to roll and cover.',
    load: async () => (await import(/* webpackChunkName: "lesson-starter" */ './Starter')).Starter,
  },
]
