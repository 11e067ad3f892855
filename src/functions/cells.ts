import { answerKey, type AnswerKey, type CellValue } from '../answers/typed'
import { readQuestion, type Question } from '../arithmetic/question'

/** What a function gives back for one cell. */
export type Given = string | number | boolean | CustomFunctions.Error

/** A question as read from a cell, with what its typed answers are compared with. */
export interface AskedQuestion {
  readonly question: Question
  readonly key: AnswerKey
}

/** A question cell as read: a question, nothing where the cell is empty, or a sentence where it holds something else. */
export type Asked = AskedQuestion | { readonly problem: string } | null

/** #VALUE! with a sentence: what was passed cannot be used. */
export function unusable(sentence: string): CustomFunctions.Error {
  return new CustomFunctions.Error(CustomFunctions.ErrorCode.invalidValue, sentence)
}

/** #N/A with a sentence: there is nothing to give. */
export function nothingToGive(sentence: string): CustomFunctions.Error {
  return new CustomFunctions.Error(CustomFunctions.ErrorCode.notAvailable, sentence)
}

/**
 * What a host passes for one cell, as a plain value. Cells with data types and error values come as objects that hold a
 * `basicValue`; a parameter that was left out comes as null or undefined, or as the host's own call object.
 */
export function cellOf(passed: unknown): CellValue {
  if (typeof passed === 'string' || typeof passed === 'number' || typeof passed === 'boolean') return passed
  if (typeof passed !== 'object' || passed === null || !('basicValue' in passed)) return null
  return cellOf(passed.basicValue)
}

/** Whether a cell may be an empty one: some hosts pass it as null, some as the number 0, formulas with &"" as ''. */
export function mayBeEmpty(cell: CellValue): boolean {
  return cell === null || cell === 0 || (typeof cell === 'string' && cell.trim() === '')
}

/** Reads a question cell. */
export function askedIn(passed: unknown): Asked {
  const cell = cellOf(passed)
  if (mayBeEmpty(cell)) return null
  const reading = readQuestion(String(cell))
  return 'problem' in reading ? reading : { ...reading, key: answerKey(reading.question) }
}

/** What is given for a question; an empty text for an empty cell, an error for a cell that holds something else. */
export function giveFor(asked: Asked, give: (asked: AskedQuestion) => Given): Given {
  if (asked === null) return ''
  return 'problem' in asked ? unusable(asked.problem) : give(asked)
}

/** What stands for an error among other cells, where one error would make some hosts give errors for all. */
const NO_QUESTION = 'no question'
const TOO_LONG = 'too long'

/** The cells, a word in place of each error; an error that is the only cell is thrown, as any host understands it. */
export function thrownIfAlone(cells: Given[][]): Given[][] {
  const [[only] = []] = cells
  if (cells.flat().length === 1 && only instanceof CustomFunctions.Error) throw only
  return cells.map((row) => row.map(inWords))
}

function inWords(cell: Given): Given {
  if (!(cell instanceof CustomFunctions.Error)) return cell
  return cell.code === CustomFunctions.ErrorCode.notAvailable ? TOO_LONG : NO_QUESTION
}
