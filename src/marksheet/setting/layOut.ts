import { printQuestion, type Question } from '../../arithmetic/question'
import type { Area } from '../layout/matrix'

/** The most pupils and questions of a marksheet that is laid out in one go. */
export const MOST_LAID_OUT = { pupils: 1000, questions: 40 } as const

/**
 * A marksheet as it is laid out on an empty sheet: its texts from A1 on, row by row ('' stays empty); the row, from 0, that
 * holds the questions; the cells for the answers; and the columns' widths in characters.
 */
export interface MarksheetPlan {
  readonly rows: readonly (readonly string[])[]
  readonly head: number
  readonly answers: Area
  readonly widths: readonly number[]
}

/** A plan, or the sentence that says why there is none. */
export type PlanReading = { readonly plan: MarksheetPlan } | { readonly problem: string }

const ADVICE =
  'Type each answer as the pupil wrote it. Leave it empty where there is none; type abs for a pupil who was away.'
const NAME_WIDTH = { least: 14, most: 36 } as const
/** Room beside a question, and the narrowest column that an answer needs, in characters. */
const QUESTION_WIDTH = { room: 2, least: 9 } as const

/** Lays out a marksheet: a title, advice, the questions across the top and the names down the side, empty cells for the answers. */
export function planMarksheet(wanted: {
  readonly title: string
  readonly names: readonly string[]
  readonly questions: readonly Question[]
}): PlanReading {
  const { title, names } = wanted
  const questions = wanted.questions.map(printQuestion)
  if (names.length === 0) return { problem: 'There are no names to lay a marksheet out for.' }
  if (questions.length === 0) return { problem: 'There are no questions to lay out.' }
  if (names.length > MOST_LAID_OUT.pupils || questions.length > MOST_LAID_OUT.questions)
    return {
      problem: `A marksheet is laid out for up to ${MOST_LAID_OUT.pupils.toLocaleString('en-GB')} pupils and ${MOST_LAID_OUT.questions} questions.`,
    }
  const row = (...texts: readonly string[]) => [...texts, ...questions.slice(texts.length - 1).map(() => '')]
  const head = 2
  return {
    plan: {
      rows: [row(title), row(ADVICE), ['Name', ...questions], ...names.map((name) => row(name))],
      head,
      answers: { top: head + 1, left: 1, bottom: head + names.length, right: questions.length },
      widths: [
        within(NAME_WIDTH, Math.max(...names.map(({ length }) => length)) + 2),
        ...questions.map((text) => columnWidthFor(text)),
      ],
    },
  }
}

/** How wide a column must be for a question to stand in one line, in characters. */
export function columnWidthFor(question: string): number {
  return Math.max(QUESTION_WIDTH.least, question.length + QUESTION_WIDTH.room)
}

function within({ least, most }: { readonly least: number; readonly most: number }, value: number): number {
  return Math.min(most, Math.max(least, value))
}
