import { isFlaggedSentence } from '../../mastery/need'
import { TEACHING_ORDER } from '../../mastery/support'
import { areaAddress, range, viewOf, type Area, type CellRef, type Matrix, type View } from '../layout/matrix'
import { NOTES_TITLE } from '../layout/ownNotes'
import type { Steps } from '../layout/steps'
import type { Review } from './review'

/** A text to write into a cell, always as text, never as a formula; `upright` where it is to run up the cell. */
export interface TextCell extends CellRef {
  readonly text: string
  readonly upright: boolean
}

export { NOTES_TITLE }

const TYPES: ReadonlySet<string> = new Set(TEACHING_ORDER)

/** Whether a value is a note that the add-in wrote: what a pupil needs, or what heads the notes. */
export function isOwnNote(value: unknown): boolean {
  return value === NOTES_TITLE || (typeof value === 'string' && isNote(value))
}

/** What a pupil needs, or the types that version 0.1 wrote. */
function isNote(text: string): boolean {
  return isFlaggedSentence(text) || (text !== '' && text.split('; ').every((part) => TYPES.has(part)))
}

/** Whether a note may be written into a cell that holds this value and formula ('' for none): it is empty, or holds a note of ours. */
export function mayHoldNote(value: unknown, formula: unknown): boolean {
  const isFormula = typeof formula === 'string' && formula.startsWith('=') && formula !== value
  return !isFormula && (value === '' || value === null || isOwnNote(value))
}

/** The last column and row of a sheet, from 0 (Excel specifications and limits, Microsoft). */
const LAST_COLUMN = 16_383
const LAST_ROW = 1_048_575

/**
 * What flagged pupils need, beside each marksheet: in a column behind everything in its rows, or in a row below its columns. Only cells
 * without value, formula or merge, and notes of our own, are written to; `told` says where no such place is left.
 */
export function* planningNotes(
  matrix: Matrix,
  reviews: readonly Review[],
): Steps<{ notes: TextCell[]; told: string[] }> {
  const blocks: Block[] = []
  for (const review of reviews) blocks.push(yield* blockOf(matrix, review))
  const old = yield* oldColumns(blocks)
  const taken = new Set<number>(old.values())
  const all: TextCell[] = []
  const told: string[] = []
  for (const block of blocks) {
    yield
    const { review, view, turned, header, rows, texts, bottom } = block
    const merges = (matrix.merges ?? []).map((area) => (turned ? turnedArea(area) : area))
    const column = old.get(block) ?? freeColumn(view, merges, Math.max(0, header), bottom, taken)
    taken.add(column)
    const notes: TextCell[] = []
    for (const [index, row] of rows.entries()) {
      const text = texts[index] ?? ''
      if (text !== '' || old.has(block)) notes.push({ ...view.ref(row, column), text, upright: turned })
    }
    if (notes.length > 0 && header >= 0)
      notes.unshift({ ...view.ref(header, column), text: NOTES_TITLE, upright: false })
    if (column <= (turned ? LAST_ROW : LAST_COLUMN)) {
      const near = (matrix.merges ?? []).filter((area) => holds(turned ? turnedArea(area) : area, column))
      for (const note of notes) if (isFree({ ...matrix, merges: near }, note)) all.push(note)
    } else if (notes.length > 0) {
      const place = `${areaAddress(review.area)} on ${matrix.name} were left out, since no`
      told.push(
        turned
          ? `The notes below ${place} row below it is free.`
          : `The notes beside ${place} column on its right is free.`,
      )
    }
  }
  return { notes: all, told }
}

/**
 * A marksheet seen with pupils running down: the row over its pupils (below 0 where there is none), their rows, what each needs, and its
 * last row.
 */
interface Block {
  readonly review: Review
  readonly view: View
  readonly turned: boolean
  readonly header: number
  readonly rows: readonly number[]
  readonly texts: readonly string[]
  readonly bottom: number
}

function* blockOf(matrix: Matrix, review: Review): Steps<Block> {
  const turned = review.orientation === 'pupils-across'
  const view = viewOf(matrix, turned)
  const toView = (cell: CellRef) => view.ref(cell.row, cell.column)
  const top = review.questions.reduce((least, question) => Math.min(least, toView(question).row), Infinity)
  const header = top - Number(review.orientation === 'pairs')
  const rows = review.pupils.map(({ nameCells }) => toView(nameCells[0] ?? { row: 0, column: 0 }).row)
  let bottom = 0
  for (const { answers } of review.pupils) {
    yield
    for (const cell of answers) bottom = Math.max(bottom, toView(cell).row)
  }
  const texts = review.pupils.map(({ judgement }) => (judgement.needsSupport ? judgement.need.sentence : ''))
  return { review, view, turned, header, rows, texts, bottom }
}

/**
 * The columns of notes from an earlier marking. Marksheets with one row over them all have their notes in columns of one title: each takes
 * the one with most of its own notes, and those without any then what is left.
 */
function* oldColumns(blocks: readonly Block[]): Steps<Map<Block, number>> {
  const found = new Map<Block, number>()
  const taken = new Set<string>()
  for (const isSame of [true, false]) {
    for (const block of blocks) {
      yield
      if (found.has(block)) continue
      const { view, rows, texts, turned } = block
      let [most, best] = [isSame ? 0 : -1, -1]
      for (const column of ownNotes(block)) {
        if (taken.has(`${turned} ${column}`)) continue
        const same = rows.filter(
          (row, index) => texts[index] !== '' && view.text(row, column) === texts[index],
        )
        if (same.length > most) [most, best] = [same.length, column]
      }
      if (best < 0) continue
      found.set(block, best)
      taken.add(`${turned} ${best}`)
    }
  }
  return found
}

const holds = ({ left, right }: Area, column: number) => left <= column && column <= right

function turnedArea({ top, left, bottom, right }: Area): Area {
  return { top: left, left: top, bottom: right, right: bottom }
}

function isFree({ values, formulas, merges = [] }: Matrix, { row, column }: CellRef): boolean {
  const value = values[row]?.[column] ?? null
  const isMerged = merges.some(
    ({ top, left, bottom, right }) => top <= row && row <= bottom && left <= column && column <= right,
  )
  return mayHoldNote(value, formulas?.[row]?.[column] ?? '') && (!isMerged || isOwnNote(value))
}

/** Columns of notes from an earlier marking: the title over them, or, where there is no row for a title, nothing but notes in them. */
function ownNotes({ view, header, rows }: Block): number[] {
  return range(0, view.columns).filter((column) =>
    header >= 0 ? view.text(header, column) === NOTES_TITLE : holdsNotes(view, column, rows),
  )
}

function holdsNotes(view: View, column: number, rows: readonly number[]): boolean {
  const texts = rows.map((row) => view.text(row, column)).filter((text) => text !== '')
  return texts.length > 0 && texts.every(isNote)
}

/**
 * The first column behind which these rows hold no value, formula or merge, with one left free between, so that a table does not grow
 * into it.
 */
function freeColumn(
  view: View,
  merges: readonly Area[],
  top: number,
  bottom: number,
  taken: ReadonlySet<number>,
): number {
  let last = -1
  for (const area of merges) if (area.top <= bottom && area.bottom >= top) last = Math.max(last, area.right)
  for (let row = top; row <= bottom; row++) {
    for (let column = view.columns - 1; column > last; column--) {
      const value = view.value(row, column)
      if ((value !== null && value !== '') || view.formula(row, column) !== '') last = column
    }
  }
  let free = last + 2
  while (taken.has(free)) free++
  return free
}
