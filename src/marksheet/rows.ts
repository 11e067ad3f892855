import { readTyped, markAnswer, type AnswerKey, type CellValue } from '../answers/typed'
import { hasNameWords, isHeadingLabel, isKeyLabel, isSumLabel, looksLikeName } from './labels'
import { readMark } from './marks'
import { isEmpty, type View } from './matrix'
import { isHeadingRow, nameIn, type NameColumns } from './names'

/** A column of answers with what they are compared with. */
export interface AnswerColumn {
  readonly column: number
  readonly key: AnswerKey
}

interface Row {
  readonly row: number
  readonly name: string
  readonly values: readonly CellValue[]
  readonly right: number
  readonly worked: number
}

/**
 * The rows, from `first` to before `end`, that belong to pupils. A row with answers is a pupil's unless it holds the key, a sum, or words
 * that describe the questions. A row with no answers is one where its name stands among the others', down to the last answer or
 * in one block with them: a pupil may have answered nothing, a heading or a note under the marksheet is nobody.
 */
export function pupilRows(
  view: View,
  names: NameColumns,
  columns: readonly AnswerColumn[],
  first: number,
  end: number,
): number[] {
  const rows = readRows(view, names, columns, first, end)
  const answered = rows.filter(({ name, values }) => name !== '' && values.length > 0)
  const worked = answered.filter(isWorked).length
  const isPupil = (row: Row, index: number) =>
    !isHeadingRow(view, names, row.row) &&
    (!isWorked(row) || 2 * worked > answered.length) &&
    !(index === 0 && isDescription(row)) &&
    !((index === 0 || index === answered.length - 1) && isKey(row)) &&
    !isSum(row, answered.length)
  const pupils = new Set(answered.filter(isPupil))
  const last = answered.findLast((row) => pupils.has(row))?.row ?? first - 1
  const companions = filledBeside(view, names, columns, [...pupils])
  let inBlock = true
  for (const row of rows) {
    if (row.name === '' && row.values.length === 0)
      inBlock &&= pupils.size === 0 || row.row < (answered[0]?.row ?? end)
    if (row.name === '' || row.values.length > 0 || isHeadingRow(view, names, row.row)) continue
    const isAmong = row.row < last || inBlock
    const hasCompanions =
      companions.length === 0 || companions.some((column) => !isEmpty(view.value(row.row, column)))
    if (isAmong && hasCompanions && isNameAlone(row.name, names.kind === 'headed' && row.row < last))
      pupils.add(row)
  }
  return rows.filter((row) => pupils.has(row)).map(({ row }) => row)
}

function readRows(
  view: View,
  names: NameColumns,
  columns: readonly AnswerColumn[],
  first: number,
  end: number,
): Row[] {
  const rows: Row[] = []
  for (let row = first; row < end; row++) {
    const filled = columns.filter(({ column }) => !isEmpty(view.value(row, column)))
    rows.push({
      row,
      name: nameIn(view, names, row),
      values: filled.map(({ column }) => view.value(row, column)),
      right: filled.filter(({ column, key }) => markAnswer(view.value(row, column), key) === 'correct')
        .length,
      worked: filled.filter(({ column }) => /[a-z(]/i.test(view.formula(row, column))).length,
    })
  }
  return rows
}

/** Whether most of a row is worked out from other cells, unlike the "=39" that a pupil types. */
function isWorked({ values, worked }: Row): boolean {
  return values.length > 0 && 2 * worked > values.length
}

function isKey({ name, values, right }: Row): boolean {
  return isKeyLabel(name) && (right === values.length || right === 0)
}

/** A row of numbers, none a right answer, of a size that counts, shares or percentages of a class have. */
function isSum({ name, values, right }: Row, pupils: number): boolean {
  if (!isSumLabel(name) || right > 0) return false
  const numbers = values.map((value) => Number(String(value).replace('%', '')))
  return numbers.every((number) => Number.isFinite(number) && number <= Math.max(100, pupils))
}

/** Words about the questions under their row: several texts and no number, absence or blank among them. */
function isDescription({ values }: Row): boolean {
  return values.length >= 2 && values.every(isWords)
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
