import {
  answerKey,
  markAnswer,
  readTyped,
  type AnswerKey,
  type CellValue,
  type Outcome,
} from '../../../src/answers/typed'
import { groupedText } from '../../../src/arithmetic/numeral'
import type { FoundPupil, Marksheet } from '../../../src/marksheet/layout/marksheet'
import { addressOf, isEmpty, type CellRef, type Matrix } from '../../../src/marksheet/layout/matrix'
import { valueAt } from '../../../src/marksheet/marking/review'
import { contentOf } from '../../../src/home/typed'
import type { Content } from '../../../src/office/edit/cells'

/** A cell that an answer is entered into. */
export interface Place {
  readonly cell: CellRef
  readonly address: string
  readonly pupil: string
  /** Which child it is, where two have one name too. */
  readonly child: FoundPupil
  readonly question: string
  readonly key: AnswerKey
  /** The right answer as it is read out: "7,128". */
  readonly right: string
  /** What the cell held when entry began. */
  readonly held: CellValue
}

/** A question's cells from the first pupil to the last, or a pupil's from the first question to the last. */
export interface Line {
  readonly title: string
  readonly places: readonly Place[]
}

/** Whether entry walks down one question after the other, or along one pupil after the other. */
export type Order = 'question' | 'pupil'

/** The lines of a sheet's marksheets, in the order in which they are walked. */
export function linesOf(matrix: Matrix, marksheets: readonly Marksheet[], order: Order): Line[] {
  return marksheets.flatMap((marksheet) => {
    const { questions, pupils } = marksheet
    const keys = questions.map(({ question }) => answerKey(question))
    const places = pupils.flatMap((child, pupil) =>
      child.answers.flatMap(({ question, ...cell }) => {
        const [asked, key] = [questions[question], keys[question]]
        if (!asked || !key) return []
        const right = groupedText(key.numeral)
        const held = valueAt(matrix, cell)
        const place: Place = {
          cell,
          address: addressOf(cell),
          pupil: child.name,
          child,
          question: asked.text,
          key,
          right,
          held,
        }
        return { place, line: order === 'question' ? question : pupil }
      }),
    )
    const titles = order === 'question' ? questions.map(({ text }) => text) : pupils.map(({ name }) => name)
    return titles.map((title, line) => ({
      title,
      places: places.filter((each) => each.line === line).map(({ place }) => place),
    }))
  })
}

/** The places to walk from a line on: those of that line and all after it, filled cells among them only where wanted. */
export function walkFrom(lines: readonly Line[], first: number, filledToo: boolean): Place[] {
  return lines.slice(first).flatMap(({ places }) => places.filter(({ held }) => filledToo || isEmpty(held)))
}

/** The right answer as it is written into the cell: a number, where a spreadsheet keeps all its digits. */
export function rightContent({ value }: AnswerKey): Content {
  return contentOf(value)
}

/** What stands for an absent pupil, and for an answer left blank: both are read so when the sheet is marked. */
export const ABSENT = 'abs'
export const BLANK = '-'

/** A typed answer as it is written: a plain number as a number, all else as the text it is, so that 3-4 never becomes a date. */
export function typedContent(typed: string): Content {
  return contentOf(typed.trim())
}

/** How an entered answer compares with the right one. */
export function outcomeOf(content: Content, key: AnswerKey): Outcome {
  return typeof content === 'object' ? 'blank' : markAnswer(content, key)
}

/** Whether a typed answer can be read at all; where not, the teacher is told while it can still be typed again. */
export function isReadable(typed: string, { unit }: AnswerKey): boolean {
  return readTyped(typed, unit).kind !== 'unreadable'
}
