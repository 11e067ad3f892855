/**
 * A home workbook: a set of questions in an .xlsx file of its own, for one child or for whoever types a name.
 *
 * On the sheet **Questions**: A1 begins with `TITLE`; a row of headings (`HEADINGS`); below it one row for each question with its number,
 * its text as it stands in the marksheet, the one cell for its answer and the one for what is said of it. Where the workbook is for no one
 * child, a cell on the right of `NAME_LABEL` takes the name. A line at the end names the codes of the set and the child.
 *
 * On the hidden sheet **Columnwise**: A1 is `MARK`; rows of a word and what it stands for: `Set` (`setCode`), `Child` (`childCodes`, '' where
 * it is for no one child); from the row of `PARTS_HEADINGS` on, for each question its number, its text as it was sent and the address of
 * its answer. Behind them stand the formulas that the feedback goes by (`feedback.ts`), where there is feedback.
 *
 * Nothing else tells whose it is: no full name, no author, no path, no other child. The way back (`back.ts`) reads the Questions sheet,
 * whose rows hold question and answer side by side, and the hidden sheet for what was sent; one of the two may be lost.
 */
import type { Question } from '../arithmetic/question'

/** What the first cell of the Questions sheet begins with; such a sheet is no marksheet. */
export const TITLE = 'Columnwise · Questions'
/** The first cell of the hidden sheet. */
export const MARK = 'Columnwise · Home workbook'
export const QUESTIONS_SHEET = 'Questions'
export const HIDDEN_SHEET = 'Columnwise'

export const HEADINGS = ['No.', 'Question', 'Answer', 'How it went'] as const
export const NAME_LABEL = 'Your name'
/** The headings of the hidden sheet's list of questions; further columns may follow. */
export const PARTS_HEADINGS = ['No.', 'Question', 'Answer cell'] as const

/** A question as a home workbook asks it: its text as the marksheet has it. */
export interface HomeQuestion {
  readonly text: string
  readonly question: Question
}

/** Whose a home workbook is: the short name that it shows ('' for none) and the code. */
export interface HomeChild {
  readonly name: string
  readonly code: string
}

/** What is in a home workbook. `child` is null where whoever opens it types a name. */
export interface HomeSet {
  readonly child: HomeChild | null
  readonly questions: readonly HomeQuestion[]
}
