import ExcelJS from 'exceljs'
import { diagnoserFor } from '../../src/marksheet/marking/diagnose'
import { review, type Review } from '../../src/marksheet/marking/review'
import { columnLetters, type Matrix } from '../../src/marksheet/layout/matrix'
import { converted, LIBREOFFICE } from '../files/libreoffice'
import { median, type Result } from './timing'

/** Milliseconds within which 400,000 answers are to be found, marked and judged, and within which they are to be diagnosed. */
const LIMIT = 350
const DIAGNOSIS_LIMIT = 1000
const [PUPILS, QUESTIONS] = [10_000, 40]

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

/**
 * Times the whole review, layout to need, of a year group's sheet and of the largest one that is thought of, how much of it is diagnosis,
 * and beside it the same marks by formulas in LibreOffice.
 */
export async function reviewing(): Promise<Result> {
  const yearGroup = largeSheet(180, QUESTIONS)
  const sheet = largeSheet(PUPILS, QUESTIONS)
  const [found] = review(sheet)
  if (found === undefined) throw new Error('No marksheet was found.')
  const small = median(() => review(yearGroup))
  const large = median(() => review(sheet))
  const diagnosing = median(() => diagnosed(found))
  const rest = large - diagnosing
  return {
    name: 'Reviewing',
    lines: [
      `180 pupils × ${QUESTIONS} questions: ${small.toFixed(0)} ms`,
      `10,000 pupils × ${QUESTIONS} questions: ${large.toFixed(0)} ms, of these diagnosis ${diagnosing.toFixed(0)} ms (limit ${DIAGNOSIS_LIMIT} ms), all else ${rest.toFixed(0)} ms (limit ${LIMIT} ms)`,
      await byFormulas(sheet, found),
    ],
    met: rest < LIMIT && diagnosing < DIAGNOSIS_LIMIT,
  }
}

function diagnosed(found: Review): number {
  const diagnose = diagnoserFor(found)
  return found.pupils.filter((pupil) => diagnose(pupil).diagnosis.named.length > 0).length
}

/** What LibreOffice takes to open the sheet with one formula an answer (blank, right or wrong), over opening it without them. */
async function byFormulas(sheet: Matrix, { questions }: Review): Promise<string> {
  if (LIBREOFFICE === null) return 'the same marks by formulas in LibreOffice: not installed'
  const keys = questions.map(({ key }) => key.value)
  const book = async (withFormulas: boolean) => {
    const workbook = new ExcelJS.Workbook()
    const target = workbook.addWorksheet(sheet.name)
    for (const [index, row] of sheet.values.entries()) {
      const formulas = keys.map((key, question) => {
        const cell = columnLetters(question + 1) + String(index + 1)
        const formula = `IF(TRIM(${cell})="","blank",IFERROR(VALUE(SUBSTITUTE(TRIM(${cell}),",",""))=${key},"unreadable"))`
        return { formula, date1904: false }
      })
      target.addRow([...row, ...(withFormulas && index > 0 ? formulas : [])])
    }
    return new Uint8Array(await workbook.xlsx.writeBuffer())
  }
  const time = async (bytes: Uint8Array) => {
    const start = performance.now()
    await converted(bytes, 'xlsx', 'csv')
    return performance.now() - start
  }
  const [plain, formulas] = [await book(false), await book(true)]
  const [opening, marking] = [await time(plain), await time(formulas)]
  const seconds = (milliseconds: number) => (milliseconds / 1000).toFixed(1)
  return `the marks alone by formulas in LibreOffice: ${seconds(marking - opening)} s more than the ${seconds(opening)} s for the sheet without them, both from opening to a saved copy`
}
