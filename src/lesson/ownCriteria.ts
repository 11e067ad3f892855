import type { Lesson } from './lessonSet'

/** The most lines of success criteria that fit a sheet, and the most letters in one. */
export const CRITERIA = { lines: 10, letters: 200 } as const

/** Success criteria as typed, one in a line; empty lines and spaces around are left out. */
export function criteriaIn(typed: string): string[] {
  return typed
    .split(/\r?\n/)
    .map((line) => line.trim().slice(0, CRITERIA.letters))
    .filter((line) => line !== '')
    .slice(0, CRITERIA.lines)
}

/** The lesson with a teacher's own success criteria in place of ours; what the deepest grade needs besides stays below them. */
export function withCriteria(lesson: Lesson, criteria: readonly string[]): Lesson {
  return {
    ...lesson,
    criteria,
    practice: lesson.practice.map((set) => ({
      ...set,
      criteria: [...criteria, ...set.criteria.slice(lesson.criteria.length)],
    })),
  }
}
