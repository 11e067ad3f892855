import type { CellValue } from '../../src/answers/typed'
import { addressOf, areaAddress, type Area, type Matrix } from '../../src/marksheet/layout/matrix'
import { NOTES_TITLE } from '../../src/marksheet/marking/notes'
import { planMarking } from '../../src/marksheet/marking/plan'
import { review, type Review } from '../../src/marksheet/marking/review'
import { reviewJson } from '../../src/marksheet/reports/json'
import type { Chance } from './chance'
import { knownClasses } from './classes'

/** A sheet of classes with what else teachers keep beside, below and between them: formulas, merges, totals, comments. */
export function keptSheet(chance: Chance): Matrix {
  const { values } = knownClasses(chance)
  const rows = values.map((row) => [...row])
  const width = Math.max(0, ...rows.map(({ length }) => length))
  const formulas = rows.map((row) => row.map(() => ''))
  const put = (row: number, column: number, value: CellValue, formula = '') => {
    const [cells, own] = [(rows[row] ??= []), (formulas[row] ??= [])]
    while (cells.length <= column) cells.push(null)
    while (own.length <= column) own.push('')
    if (cells[column] !== null) return
    cells[column] = value
    own[column] = formula
  }
  for (let extra = chance.whole(0, 6); extra > 0; extra--) {
    const [row, column] = [chance.whole(0, rows.length + 3), chance.whole(width, width + 4)]
    const kind = chance.whole(1, 4)
    if (kind === 1) put(row, column, chance.of(['', null, 0, 4]), '=IF(B2>0,"","")')
    else if (kind === 2) put(row, column, chance.of(['Seen', 'Working at', ' ', 7, 'see me', 'Total']))
    else if (kind === 3)
      for (let r = 1; r < rows.length; r++) put(r, column, chance.of(['', null]), `=SUM(B${r + 1}:C${r + 1})`)
    else put(row, column, NOTES_TITLE)
  }
  const merges: Area[] = []
  if (chance.onceIn(3)) {
    const [top, left] = [chance.whole(0, rows.length), chance.whole(width, width + 3)]
    merges.push({ top, left, bottom: top + chance.whole(0, 4), right: left + chance.whole(0, 2) })
  }
  for (let row = 0; row < rows.length; row++) {
    rows[row] ??= []
    formulas[row] ??= []
  }
  return { name: 'Kept', values: rows, formulas, merges }
}

/** What does not hold of the notes of a sheet: each in a cell of its own that held nothing, the review as before, the notes where they were. */
export function noteProblems(matrix: Matrix): string[] {
  const reviews = review(matrix)
  const notes = planMarking(matrix, reviews).notes
  const answers = new Set(
    reviews.flatMap(({ pupils }) => pupils.flatMap((pupil) => pupil.answers.map(addressOf))),
  )
  const problems: string[] = []
  const values = matrix.values.map((row) => [...row])
  const seen = new Set<string>()
  for (const { row, column, text } of notes) {
    const address = addressOf({ row, column })
    if (seen.has(address)) problems.push(`Two notes go into ${address}.`)
    seen.add(address)
    const held = matrix.values[row]?.[column] ?? null
    const isMerged = matrix.merges?.some(
      (area) => area.top <= row && row <= area.bottom && area.left <= column && column <= area.right,
    )
    if (answers.has(address)) problems.push(`A note goes into the answer ${address}.`)
    if ((matrix.formulas?.[row]?.[column] ?? '') !== '')
      problems.push(`A note replaces the formula of ${address}.`)
    if (held !== null && held !== '' && held !== NOTES_TITLE)
      problems.push(`A note replaces ${String(held)} in ${address}.`)
    if (isMerged === true && held !== NOTES_TITLE)
      problems.push(`A note goes into the merged cell ${address}.`)
    const cells = (values[row] ??= [])
    while (cells.length <= column) cells.push(null)
    cells[column] = text
  }
  const marked = { ...matrix, values: Array.from(values, (row: CellValue[] | undefined) => row ?? []) }
  const again = review(marked)
  if (told(again) !== told(reviews))
    problems.push(`The review differs: ${areas(reviews)}, then ${areas(again)}.`)
  const places = (all: readonly { row: number; column: number; text: string }[]) =>
    all
      .filter(({ text }) => text !== '')
      .map((note) => `${addressOf(note)} ${note.text}`)
      .sort()
      .join('; ')
  const next = places(planMarking(marked, again).notes)
  if (next !== places(notes)) problems.push(`The notes move: ${places(notes)}, then ${next}.`)
  return problems
}

const told = (reviews: readonly Review[]) => JSON.stringify(reviews.map(reviewJson))
const areas = (reviews: readonly Review[]) => reviews.map(({ area }) => areaAddress(area)).join(' ')
