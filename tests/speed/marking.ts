import { answerKey, markAnswer } from '../../src/answers/typed'
import { review } from '../../src/marksheet/marking/review'
import { columnLetters } from '../../src/marksheet/layout/matrix'
import { engineSheet } from './engine'
import { largeSheet } from './reviewing'
import { median, type Result } from './timing'

const PUPILS = 300
const QUESTIONS = 40

/** Times marking beside a bare number conversion and beside the same marks by formulas in a general spreadsheet engine. */
export async function marking(): Promise<Result> {
  const sheet = largeSheet(PUPILS, QUESTIONS)
  const [{ questions }] = review(sheet) as [ReturnType<typeof review>[number]]
  const keys = questions.map(({ question }) => answerKey(question))
  const rows = sheet.values.slice(1).map((row) => row.slice(1))
  const answers = PUPILS * QUESTIONS
  const perAnswer = (milliseconds: number) => `${((1000 * milliseconds) / answers).toFixed(2)} µs an answer`

  const ours = median(() =>
    rows.map((row) => row.map((value, index) => keys[index] && markAnswer(value, keys[index]))),
  )
  const numbers = keys.map(({ value }) => Number(value))
  const bare = median(() => rows.map((row) => row.map((value, index) => Number(value) === numbers[index])))
  const engine = await byFormulas(rows, numbers)
  return {
    name: 'Marking',
    lines: [
      `${answers} typed answers marked: ${perAnswer(ours)}`,
      `a bare number conversion and comparison: ${perAnswer(bare)}`,
      `the same marks by formulas in a spreadsheet engine (Univer): ${perAnswer(engine)}, ${(engine / ours).toFixed(0)} times as long`,
    ],
    met: ours < engine,
  }
}

/** Milliseconds that a spreadsheet engine takes for one formula an answer: blank, right or wrong. */
async function byFormulas(
  rows: readonly (readonly unknown[])[],
  numbers: readonly number[],
): Promise<number> {
  const sheet = engineSheet(rows.length, 2 * QUESTIONS)
  sheet
    .getRange(0, 0, rows.length, QUESTIONS)
    .setValues(rows.map((row) => row.map((value) => (value ?? '') as string)))
  const formulas = rows.map((_, row) =>
    numbers.map((number, column) => {
      const cell = columnLetters(column) + String(row + 1)
      return `=IF(TRIM(${cell})="","blank",IFERROR(VALUE(SUBSTITUTE(TRIM(${cell}),",",""))=${number},"unreadable"))`
    }),
  )
  const start = performance.now()
  sheet.getRange(0, QUESTIONS, rows.length, QUESTIONS).setValues(formulas)
  const last = sheet.getRange(rows.length - 1, 2 * QUESTIONS - 1)
  while (last.getValue() === null) await new Promise((resolve) => setTimeout(resolve, 5))
  return performance.now() - start
}
