import ExcelJS from 'exceljs'
import { childCodes, setCode, shortName } from '../../../src/home/codes'
import { HEADINGS, MARK, NAME_LABEL, PARTS_HEADINGS, TITLE } from '../../../src/home/format'
import { asked as questionOf } from '../../support/asked'
import type { CellValue } from '../../../src/answers/typed'
import type { Matrix } from '../../../src/marksheet/layout/matrix'

/** A class and its questions, for marksheets and the home workbooks that come back. */
export interface Class {
  readonly names: readonly string[]
  readonly questions: readonly string[]
}

export const HERON: Class = {
  names: ['Ada Kay', 'Ben Brook', 'Ben Mill', 'Cai Lane'],
  questions: ['932 − 457', '642 − 321', '305 − 219'],
}

/** A marksheet with pupils down; what is given stands in its answer cells. */
export function marksheetOf(
  { names, questions }: Class,
  held: readonly (readonly CellValue[])[] = [],
): Matrix {
  return {
    name: 'Heron',
    values: [
      ['Name', ...questions],
      ...names.map((name, at) => [name, ...questions.map((_, q) => held[at]?.[q] ?? null)]),
    ],
  }
}

/** What a home workbook that came back holds beside its answers; each may be wrong on purpose. */
export interface Returned {
  readonly answers: readonly CellValue[]
  readonly child?: string
  readonly name?: string
  readonly set?: string
  readonly asked?: readonly string[]
  readonly sent?: readonly string[]
  readonly isHiddenLost?: boolean
}

/** The sheets of a child's home workbook, laid out after the words of `format.ts`. */
export function returnedBy(room: Class, pupil: string | null, returned: Returned): Matrix[] {
  const { answers, asked = room.questions, sent = room.questions } = returned
  const set = returned.set ?? setOf(room)
  const child =
    returned.child ??
    (pupil === null ? '' : (childCodes(room.names, setOf(room))[room.names.indexOf(pupil)] ?? ''))
  const [number, question, answer, how] = HEADINGS
  const shown: Matrix = {
    name: 'Questions',
    values: [
      [pupil === null ? TITLE : `${TITLE} for ${shortName(pupil)}`],
      ...(pupil === null ? [[NAME_LABEL, null, returned.name ?? null]] : []),
      [number, question, answer, how],
      ...asked.map((text, at) => [at + 1, text, answers[at] ?? null, '']),
      [`For your teacher: set ${set}${child === '' ? '' : `, child ${child}`}.`],
    ],
  }
  const hidden: Matrix = {
    name: 'Columnwise',
    values: [
      [MARK],
      ['Set', set],
      ['Child', child],
      [...PARTS_HEADINGS],
      ...sent.map((text, at) => [at + 1, text, `C${at + 3}`]),
    ],
  }
  return returned.isHiddenLost ? [shown] : [shown, hidden]
}

export function setOf({ questions }: Class): string {
  return setCode(questions.map(questionOf))
}

/** Sheets as the bytes of a workbook, by exceljs. */
export async function workbookOf(sheets: readonly Matrix[]): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook()
  for (const { name, values } of sheets) workbook.addWorksheet(name).addRows(values.map((row) => [...row]))
  return new Uint8Array(await workbook.xlsx.writeBuffer())
}
