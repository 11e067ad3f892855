import type { CellRef } from '../marksheet/layout/matrix'
import type { Paper } from './choices'
import type { HomeQuestion } from './format'
import { squaresOf, type Squares } from './squares'

/** A question on the Questions sheet: its rows from `top` on, the cells for its answer and for what is said of it, the squares beside it. */
export interface Place {
  readonly question: HomeQuestion
  readonly answer: CellRef
  readonly says: CellRef
  readonly rows: number
  readonly squares: Squares | null
}

/** The columns and rows of the Questions sheet. */
export const COLUMNS = { number: 0, question: 1, answer: 2, says: 3, squares: 5 } as const
export const ROWS = { title: 0, advice: 1, name: 2, progress: 3, headings: 4, first: 5 } as const

/** Where the questions stand, one below the other. */
export function placesOf(questions: readonly HomeQuestion[], paper: Paper): Place[] {
  let top: number = ROWS.first
  return questions.map((question) => {
    const row = top
    const squares = paper === 'squares' ? squaresOf(question.question) : null
    const rows = squares ? squares.lines.length + 1 : 1
    top += rows
    return {
      question,
      answer: { row, column: COLUMNS.answer },
      says: { row, column: COLUMNS.says },
      rows,
      squares,
    }
  })
}
