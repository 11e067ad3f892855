import { readTyped, markAnswer, type AnswerKey, type CellValue } from '../../answers/typed'
import { hasNameWords, isHeadingLabel, isRemark, isWholeName, looksLikeName } from './labels'
import { readMark } from './ticks'
import { rowLabel } from './words'
import { isEmpty, type View } from './matrix'
import { isHeadingRow, nameIn, type NameColumns } from './names'
import type { Steps } from './steps'

/** A column of answers with what they are compared with. */
export interface AnswerColumn {
  readonly column: number
  readonly key: AnswerKey
}

interface Row {
  readonly row: number
  readonly name: string
  /** The answer columns that hold something in this row. */
  readonly filled: readonly AnswerColumn[]
}

/**
 * The rows, from `first` to before `end`, that belong to pupils. A row with answers is a pupil's unless it holds the key, a sum, or words
 * that describe the questions. A row with no answers is one where its name stands among the others', down to the last answer or
 * in one block with them: a pupil may have answered nothing, a heading or a note under the marksheet is nobody. Row by row.
 */
export function* pupilRows(
  view: View,
  names: NameColumns,
  columns: readonly AnswerColumn[],
  first: number,
  end: number,
): Steps<number[]> {
  const rows: Row[] = []
  for (let row = first; row < end; row++) {
    yield
    const read = readRow(view, names, columns, row)
    if (startsOthers(view, read)) break
    rows.push(read)
  }
  const answered = rows.filter(({ name, filled }) => name !== '' && filled.length > 0)
  const worked = new Set(answered.filter((row) => isWorked(view, row)))
  yield
  const remarks = answered.filter(({ name }) => isRemark(name)).length
  const numerals = answered.filter(({ name }) => isNumeral(name)).length
  const named = answered.filter(({ name }) => !isNumeral(name) && rowLabel(name) === 'person').length
  const isOddNumeral = ({ name }: Row) => isNumeral(name) && 4 * named > numerals
  const isPupil = (row: Row, index: number) =>
    rowLabel(row.name) !== 'nobody' &&
    !isOddNumeral(row) &&
    !isShares(view, row) &&
    !areOthersNames(view, row) &&
    !(2 * remarks < answered.length && isRemarkRow(view, row)) &&
    !isHeadingRow(view, names, row.row) &&
    (!worked.has(row) || 2 * worked.size > answered.length) &&
    !(index === 0 && isDescription(view, row)) &&
    !isSum(view, row, answered.length)
  const pupils = new Set(answered.filter(isPupil))
  yield
  const last = answered.findLast((row) => pupils.has(row))?.row ?? first - 1
  const companions = filledBeside(view, names, columns, [...pupils])
  let inBlock = true
  for (const row of rows) {
    if (row.name === '' && row.filled.length === 0)
      inBlock &&= pupils.size === 0 || row.row < (answered[0]?.row ?? end)
    if (row.name === '' || row.filled.length > 0 || isOddNumeral(row) || isHeadingRow(view, names, row.row))
      continue
    const isAmong = row.row < last || inBlock
    const hasCompanions =
      companions.length === 0 || companions.some((column) => !isEmpty(view.value(row.row, column)))
    if (isAmong && hasCompanions && isNameAlone(row.name, names.kind === 'headed' && row.row < last))
      pupils.add(row)
  }
  return rows.filter((row) => pupils.has(row)).map(({ row }) => row)
}

function readRow(view: View, names: NameColumns, columns: readonly AnswerColumn[], row: number): Row {
  const filled = columns.filter(({ column }) => !isEmpty(view.value(row, column)))
  return { row, name: nameIn(view, names, row), filled }
}

function valuesOf(view: View, { row, filled }: Row): CellValue[] {
  return filled.map(({ column }) => view.value(row, column))
}

function countRight(view: View, { row, filled }: Row): number {
  return filled.filter(({ column, key }) => markAnswer(view.value(row, column), key) === 'correct').length
}

/** Whether most of a row is worked out from other cells, unlike the "=39" that a pupil types. */
function isWorked(view: View, { row, filled }: Row): boolean {
  const worked = filled.filter(({ column }) => {
    const formula = view.formula(row, column)
    return formula !== '' && /[a-z(]/i.test(formula)
  })
  return 2 * worked.length > filled.length
}

/** Whether a number stands for a name, a code say; among names it is a year or a count. */
function isNumeral(name: string): boolean {
  return /^\d+$/.test(name)
}

/** A row of numbers, none a right answer, of a size that counts, shares or percentages of a class have. */
function isSum(view: View, row: Row, pupils: number): boolean {
  if (rowLabel(row.name) === 'person' || countRight(view, row) > 0) return false
  const numbers = valuesOf(view, row).map((value) => Number(String(value).replace('%', '')))
  return numbers.every((number) => Number.isFinite(number) && number <= Math.max(100, pupils))
}

/** Whether nothing but whole names ("Ada B") stands where answers would, of a class beside this one. */
function areOthersNames(view: View, { row, filled }: Row): boolean {
  const texts = filled.map(({ column }) => view.text(row, column))
  return texts.length > 0 && texts.every(isWholeName)
}

/** Whether whole names of another class, two of them or more and no number, stand where answers would: from here on the rows are its own. */
function startsOthers(view: View, { row, filled }: Row): boolean {
  const names = filled.map(({ column }) => view.text(row, column)).filter(isWholeName)
  const numbers = filled.filter(({ column }) => isNumber(view.value(row, column)))
  return numbers.length === 0 && new Set(names).size > 1 && new Set(names).size === names.length
}

/** Shares of a class: percentages with their sign, or fractions of 1 where whole numbers are asked for. */
function isShares(view: View, row: Row): boolean {
  const values = valuesOf(view, row)
  if (values.every((value) => /^\s*\d+(?:\.\d+)? ?%\s*$/.test(String(value)))) return true
  const isFraction = (value: CellValue) => typeof value === 'number' && value >= 0.01 && value < 1
  return (
    countRight(view, row) === 0 &&
    values.some(isFraction) &&
    values.every((value) => isFraction(value) || value === 0 || value === 1) &&
    row.filled.every(({ key }) => !/[./]/.test(key.value))
  )
}

/** A remark in place of a name, and no right answer in the row. */
function isRemarkRow(view: View, row: Row): boolean {
  return isRemark(row.name) && countRight(view, row) === 0 && valuesOf(view, row).some(isNumber)
}

function isNumber(value: CellValue): boolean {
  return readTyped(value).kind === 'number'
}

/** Words about the questions under their row: several texts and no number, absence or blank among them. */
function isDescription(view: View, row: Row): boolean {
  return row.filled.length >= 2 && valuesOf(view, row).every(isWords)
}

function isWords(value: CellValue): boolean {
  return readTyped(value).kind === 'unreadable' && readMark(value) === null && /^\D{3,}$/.test(String(value))
}

/** Whether a name without answers is a pupil's; under a heading for names any text that is no heading counts. */
function isNameAlone(name: string, isSure: boolean): boolean {
  if (isHeadingLabel(name)) return false
  return isSure || /^\d+$/.test(name) || (looksLikeName(name) && hasNameWords(name))
}

/** The columns beside the names (numbers, groups) that are filled for nearly every pupil who answered. */
function filledBeside(
  view: View,
  names: NameColumns,
  columns: readonly AnswerColumn[],
  rows: readonly Row[],
): number[] {
  const asked = columns[0]?.column ?? 0
  const beside = Array.from({ length: asked }, (_, column) => column).filter(
    (column) => column !== names.first && column !== names.surname,
  )
  return beside.filter(
    (column) =>
      rows.filter(({ row }) => !isEmpty(view.value(row, column))).length >= 0.8 * Math.max(1, rows.length),
  )
}
