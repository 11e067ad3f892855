import { likeliestFault } from '../../answers/diagnosis'
import type { FaultId } from '../../answers/faults'
import { readTyped, type CellValue } from '../../answers/typed'
import { readQuestion, type Question } from '../../arithmetic/question'
import { findMarksheets } from '../../marksheet/layout/find'
import { addressOf, type CellRef, type Matrix } from '../../marksheet/layout/matrix'
import { Problem, problemOf } from '../edit/errors'
import { readSheet } from '../workbook/read'
import { UNWATCHED, type Work } from '../edit/work'

/**
 * The question of a cell: the one in it or, where it holds an answer of a marksheet, the one that it answers; then `fault` is the likeliest
 * reason for a wrong answer, null for none.
 */
export interface CellQuestion {
  readonly address: string
  readonly question: Question
  readonly fault: FaultId | null
}

/** The question of the selected cell. Throws Problem where there is none. */
export async function selectedQuestion(work: Work = UNWATCHED): Promise<CellQuestion> {
  const { cell, value } = await activeCell()
  const address = addressOf(cell)
  const reading = readQuestion(String(value))
  if ('question' in reading) return { address, question: reading.question, fault: null }
  const { matrix } = await readSheet(undefined, work)
  const answered = answeredIn(matrix, cell)
  if (answered) return { address, ...answered }
  throw new Problem(
    value === '' ? `Cell ${address} is empty.` : `Cell ${address} holds no question, nor an answer to one.`,
    'Select a cell with a question such as 7,214 − 86, or a pupil’s answer to one.',
  )
}

async function activeCell(): Promise<{ readonly cell: CellRef; readonly value: CellValue }> {
  try {
    return await Excel.run(async (context) => {
      const cell = context.workbook.getActiveCell()
      cell.load('values, rowIndex, columnIndex')
      await context.sync()
      const value = (cell.values as CellValue[][])[0]?.[0] ?? ''
      return { cell: { row: cell.rowIndex, column: cell.columnIndex }, value }
    })
  } catch (error) {
    throw problemOf(error)
  }
}

function answeredIn(matrix: Matrix, { row, column }: CellRef): Omit<CellQuestion, 'address'> | null {
  for (const { questions, pupils } of findMarksheets(matrix)) {
    const answers = pupils.flatMap((pupil) => pupil.answers)
    const answer = answers.find((each) => each.row === row && each.column === column)
    const question = answer && questions[answer.question]?.question
    if (!question) continue
    const typed = readTyped(matrix.values[row]?.[column] ?? '', question.unit)
    return { question, fault: typed.kind === 'number' ? likeliestFault(question, typed.value) : null }
  }
  return null
}
