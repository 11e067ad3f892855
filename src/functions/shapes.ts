import { askedIn, unusable, type Asked } from './cells'

/** A range as a host passes it: rows of cells, all of one length. */
export type Range = readonly (readonly unknown[])[]

/** One pupil's typed answer with the question it belongs to. */
export interface Pair {
  readonly asked: Asked
  readonly typed: unknown
}

/** The answers of a class, a row to each pupil, in the order of the questions. `isAcross`: the sheet has a column to each. */
export interface Class {
  readonly asked: readonly Asked[]
  readonly pupils: Range
  readonly isAcross: boolean
}

const MUST_FIT =
  'The questions must be one row as wide as the answers, one column as tall, or a range of the same size.'
const MUST_PAIR = 'There must be as many answers as questions, in the same order.'
const MUST_LINE = 'The questions must be one row as wide as the answers, or one column as tall.'

const rowsOf = (range: Range) => range.length
const columnsOf = (range: Range) => range[0]?.length ?? 0
const isRow = (range: Range) => rowsOf(range) === 1
const isColumn = (range: Range) => columnsOf(range) === 1

function sameSize(one: Range, other: Range): boolean {
  return rowsOf(one) === rowsOf(other) && columnsOf(one) === columnsOf(other)
}

/** A range read as rows of questions. */
export function questionsIn(range: Range): Asked[][] {
  return range.map((row) => row.map(askedIn))
}

/**
 * Puts the question to each typed answer, in the shape of the answers: a row of questions stands over every row of answers, a
 * column of questions beside every column, a range of the same size cell on cell. Throws #VALUE! where they do not fit.
 */
export function pairsIn(questions: Range, typed: Range): Pair[][] {
  const isOver = isRow(questions) && columnsOf(questions) === columnsOf(typed)
  const isBeside = isColumn(questions) && rowsOf(questions) === rowsOf(typed)
  if (!isOver && !isBeside && !sameSize(questions, typed)) throw unusable(MUST_FIT)
  const asked = questionsIn(questions)
  return typed.map((row, r) =>
    row.map((cell, c) => ({ asked: asked[isOver ? 0 : r]?.[isBeside ? 0 : c] ?? null, typed: cell })),
  )
}

/** One pupil's questions and answers in reading order: two ranges of one size, or a row and a column of one length. */
export function pairsOfPupil(questions: Range, typed: Range): Pair[] {
  const areLines = (isRow(questions) || isColumn(questions)) && (isRow(typed) || isColumn(typed))
  const [asked, answers] = [questionsIn(questions).flat(), typed.flat()]
  if (!sameSize(questions, typed) && !(areLines && asked.length === answers.length)) throw unusable(MUST_PAIR)
  return asked.map((one, index) => ({ asked: one, typed: answers[index] }))
}

/** A class's answers: a row of questions has a pupil to each row beneath, a column of questions one to each column beside. */
export function classIn(questions: Range, typed: Range): Class {
  const asked = questionsIn(questions).flat()
  if (isRow(questions) && columnsOf(questions) === columnsOf(typed))
    return { asked, pupils: typed, isAcross: false }
  if (isColumn(questions) && rowsOf(questions) === rowsOf(typed))
    return { asked, pupils: transposed(typed), isAcross: true }
  throw unusable(MUST_LINE)
}

/** Rows as columns. */
export function transposed<T>(range: readonly (readonly T[])[]): T[][] {
  return (range[0] ?? []).map((_, column) => range.flatMap((row) => row.slice(column, column + 1)))
}

/** A list as one column of cells, or as one row. */
export function listed<T>(items: readonly T[], isAcross: boolean): T[][] {
  return isAcross ? [[...items]] : items.map((item) => [item])
}
