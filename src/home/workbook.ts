import { addressOf } from '../marksheet/layout/matrix'
import { HOME_CHOICES, type HomeChoices } from './choices'
import { QUESTIONS_SHEET, type HomeSet } from './format'
import { hiddenSheet } from './hiddenSheet'
import { placesOf } from './places'
import { questionsSheet } from './questionsSheet'
import { xlsxOf } from './xlsx'

/** Where a question of a home workbook is answered; no feedback cell where there is no feedback. */
export interface HomeItem {
  readonly question: string
  readonly answerCell: string
  readonly feedbackCell: string | null
}

/** A home workbook: the file, the sheet to look at, and its questions. */
export interface HomeWorkbook {
  readonly bytes: Uint8Array
  readonly sheet: string
  readonly items: readonly HomeItem[]
}

const AS_MADE = 'Columnwise: home workbook'

/** Whether a file is a home workbook as it was made, not saved by another program since: then nobody has typed in it. */
export function isHomeAsMade(bytes: Uint8Array): boolean {
  return new TextDecoder().decode(bytes.subarray(-AS_MADE.length)) === AS_MADE
}

/** Makes a home workbook. */
export function homeWorkbook(home: HomeSet, choices: HomeChoices = HOME_CHOICES): HomeWorkbook {
  const places = placesOf(home.questions, choices.paper)
  return {
    bytes: xlsxOf([questionsSheet(home, choices, places), hiddenSheet(home, choices, places)], AS_MADE),
    sheet: QUESTIONS_SHEET,
    items: places.map(({ question, answer, says }) => ({
      question: question.text,
      answerCell: addressOf(answer),
      feedbackCell: choices.feedback === 'none' ? null : addressOf(says),
    })),
  }
}
