import { review } from '../../src/marksheet/marking/review'
import type { Matrix } from '../../src/marksheet/layout/matrix'
import { median, type Result } from './timing'

/** Seconds within which 400,000 answers are to be marked and judged. */
const LIMIT = 1

/** A marksheet of invented answers, right and wrong, typed in several ways. */
export function largeSheet(pupils: number, questions: number): Matrix {
  const numbers = Array.from({ length: questions }, (_, i) => [5000 + 37 * i, 1234 + 11 * i] as const)
  const header = ['Name', ...numbers.map(([top, bottom]) => `${top} − ${bottom}`)]
  const typed = (answer: number, kind: number) =>
    kind < 6
      ? answer
      : kind < 8
        ? String(answer)
        : kind === 8
          ? answer + 10
          : kind === 9
            ? ` ${answer}.`
            : null
  const rows = Array.from({ length: pupils }, (_, pupil) => [
    `Pupil ${String.fromCharCode(65 + (pupil % 26))}${pupil}`,
    ...numbers.map(([top, bottom], question) => typed(top - bottom, (31 * pupil + 17 * question) % 11)),
  ])
  return { name: 'Year group', values: [header, ...rows] }
}

/** Times the whole review, layout to mastery, of a year group's sheet and of the largest one that is thought of. */
export function reviewing(): Result {
  const time = (pupils: number, questions: number) => {
    const sheet = largeSheet(pupils, questions)
    return median(() => review(sheet))
  }
  const yearGroup = time(180, 40)
  const large = time(10_000, 40)
  return {
    name: 'Reviewing',
    lines: [
      `180 pupils × 40 questions: ${yearGroup.toFixed(0)} ms`,
      `10,000 pupils × 40 questions: ${large.toFixed(0)} ms (limit ${1000 * LIMIT} ms)`,
    ],
    met: large < 1000 * LIMIT,
  }
}
