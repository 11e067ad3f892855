import type { CellValue } from '../answers/typed'
import { addressOf, isEmpty, type CellRef, type Matrix } from '../marksheet/layout/matrix'
import { CHILD_CODE, SET_CODE } from './codes'
import { typedIn, type TypedText } from './typed'
import { HEADINGS, MARK, NAME_LABEL, PARTS_HEADINGS, TITLE } from './format'

/**
 * An answer that came back, with the question that stands beside it now. `sent` is the question as it was sent under this number, null where
 * the workbook no longer says.
 */
export interface ReturnedAnswer {
  readonly number: number
  readonly question: string
  readonly sent: string | null
  readonly cell: string
  readonly typed: TypedText
}

/** A home workbook that came back. `set` and `child` are codes, '' where there is none; `name` is what was typed as the name. */
export interface ReturnedHome {
  readonly sheet: string
  readonly set: string
  readonly child: string
  readonly name: string
  readonly answers: readonly ReturnedAnswer[]
}

/** Reads a workbook's sheets as a home workbook that came back, whatever program saved it; null where they are none. */
export function readHome(sheets: readonly Matrix[]): ReturnedHome | null {
  const hidden = sheets.find((sheet) => textAt(sheet, { row: 0, column: 0 }) === MARK)
  const shown = sheets.find((sheet) => textAt(sheet, { row: 0, column: 0 }).startsWith(TITLE))
  const heads = shown && headingsOf(shown)
  if (!shown || !heads) return null
  const sent = new Map(hidden ? sentIn(hidden) : [])
  const line =
    shown.values
      .flat()
      .map(String)
      .find((text) => SET_CODE.test(text)) ?? ''
  return {
    sheet: shown.name,
    set: (hidden && besideWord(hidden, 'Set')) ?? SET_CODE.exec(line)?.[0] ?? '',
    child: (hidden && besideWord(hidden, 'Child')) ?? CHILD_CODE.exec(line)?.[0] ?? '',
    name: besideWord(shown, NAME_LABEL) ?? '',
    answers: shown.values.flatMap((_, row) => {
      const number = wholeNumber(valueAt(shown, { row, column: heads.number }))
      const question = textAt(shown, { row, column: heads.question })
      if (row <= heads.row || number === null || question === '') return []
      const cell = { row, column: heads.answer }
      return [
        {
          number,
          question,
          sent: sent.get(number) ?? null,
          cell: addressOf(cell),
          typed: typedIn(shown, cell),
        },
      ]
    }),
  }
}

function headingsOf(sheet: Matrix) {
  const [number, question, answer] = HEADINGS
  const row = sheet.values.findIndex((cells) =>
    [number, question, answer].every((word) => cells.includes(word)),
  )
  const cells = sheet.values[row]
  return cells
    ? { row, number: cells.indexOf(number), question: cells.indexOf(question), answer: cells.indexOf(answer) }
    : null
}

/** The questions of the hidden sheet by their numbers. */
function sentIn(hidden: Matrix): [number, string][] {
  const head = hidden.values.findIndex((cells) => PARTS_HEADINGS.every((word, at) => cells[at] === word))
  return hidden.values.flatMap((_, row): [number, string][] => {
    const number = wholeNumber(valueAt(hidden, { row, column: 0 }))
    return head < 0 || row <= head || number === null ? [] : [[number, textAt(hidden, { row, column: 1 })]]
  })
}

/** The first text on the right of a cell that holds a word; null where no cell holds it. */
function besideWord(sheet: Matrix, word: string): string | null {
  const cells = sheet.values.find((each) => each.includes(word))
  if (!cells) return null
  const beside = cells.slice(cells.indexOf(word) + 1).find((value) => !isEmpty(value))
  return beside === undefined ? '' : String(beside).trim()
}

function wholeNumber(value: CellValue): number | null {
  return /^\s*\d{1,3}\s*$/.test(String(value ?? '')) ? Number(value) : null
}

const valueAt = (sheet: Matrix, { row, column }: CellRef): CellValue => sheet.values[row]?.[column] ?? null
const textAt = (sheet: Matrix, cell: CellRef) => String(valueAt(sheet, cell) ?? '').trim()
