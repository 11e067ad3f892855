import type { CellValue } from '../../answers/typed'
import { readQuestion } from '../../arithmetic/question'
import { withPupils } from './apart'
import { groupBy } from './groups'
import { hasNameWords, isClassHeading, looksLikeName, nameHeading } from './labels'
import { cellKey, type Marksheet, type Part, type Spot } from './marksheet'
import { areaOf, isEmpty, range, viewOf, type CellRef, type Matrix, type View } from './matrix'

/**
 * A sheet whose spread questions stand each in one cell: the last of theirs, or the one over the answers. `parts` are the cells that they
 * stood in, by that cell's key.
 */
export interface Gathered {
  readonly matrix: Matrix
  readonly spots: readonly Spot[]
  readonly parts: ReadonlyMap<string, readonly Part[]>
}

/** A question that may be spread along a line of a view: `count` columns from `first`, among them the one of its sign. */
interface Run {
  readonly line: number
  readonly first: number
  readonly count: number
  readonly sign: number
  readonly text: string
  /** What says that it is a question, so that it needs no others beside it. */
  readonly isSure: boolean
}

/** A run that is a question, and the cell that it is put into. */
interface Placed {
  readonly run: Run
  readonly host: CellRef
}

/** A run by whose sign no others stand; `count` is 0 where numbers or a heading of something else stand there. */
interface Single {
  readonly run: Run
  readonly count: number
}

const NUMBER = String.raw`£?\d[\d,. ]*p?`
const NUMERAL = new RegExp(`^${NUMBER}$`)
const ENDED = new RegExp(`^${NUMBER} ?=$`)
const SIGN = /^(?:[-−–—+]|subtract|take(?: away)?|minus|add|plus)$/i
const SIGNED = new RegExp(`^[-−–—+] ?${NUMBER}(?: ?=)?$`)
const SIGN_BEHIND = new RegExp(`^${NUMBER} ?[-−–—+]$`)
/** A label that says what is done with the numbers beside it and those above. */
const DOING = /^(?<doing>(?<sign>[-−–—+])|(?:(?<minus>subtract|take|minus|less)|add|plus)\b.{0,20})$/i
const MAY_SIGN = /^\s*(?:[-−–—+]|subtract|take|minus|less|add|plus)|[-−–—+]\s*$/i
/** What may stand before signs, besides a heading for names. */
const ASKING = /\b(?:questions?|calculations?|sums?|bottom|top|numbers?|signs?|start)\b/i
/** How many cells may lie between two signs of one line across. */
const WIDEST_GAP = 1

/**
 * Puts together the questions that are spread over cells: the numbers above each other or beside each other, the sign before the lower one, in a
 * cell of its own, or in the label of its row. A dash between numbers may be a blank answer, so that a question counts only where it is ended
 * by an equals sign, where a line holds no other numbers, or where signs alone stand in the line of its sign; and no other question heads it.
 */
export function gathered(matrix: Matrix, spots: readonly Spot[]): Gathered {
  const parts = new Map<string, readonly Part[]>()
  const found: Spot[] = []
  const gaps = emptyLines(matrix)
  const signs = withoutTyped(matrix, signCells(matrix), spots, gaps)
  if (signs.length === 0) return { matrix, spots, parts }
  const values = matrix.values.map((row) => [...row])
  const taken = new Set(spots.map(cellKey))
  for (const turned of [true, false]) {
    const view = viewOf(matrix, turned)
    const seen = (cells: readonly CellRef[]) => (turned ? cells.map(turnedCell) : cells)
    const own = turned ? turnedGaps(gaps) : gaps
    const runs = runsIn(view, seen(signs), own)
    const put = ({ host, run }: Placed) => {
      const cells = range(run.first, run.first + run.count).map((column) => view.ref(run.line, column))
      const reading = readQuestion(run.text)
      if ('problem' in reading || cells.some((cell) => taken.has(cellKey(cell)))) return
      for (const cell of cells) {
        taken.add(cellKey(cell))
        write(values, cell, null)
      }
      write(values, host, run.text)
      parts.set(
        cellKey(host),
        cells.map((cell) => ({ ...cell, value: valueIn(matrix, cell) })),
      )
      found.push({ ...host, text: run.text, question: reading.question })
    }
    const { listed, others } = splitBySigns(view, runs, own)
    listed.forEach(put)
    const isHeaded = headedBy(seen([...spots, ...found]), own)
    const single = others.filter(({ run: { line, sign } }) => !isHeaded({ row: line, column: sign }))
    singlesAmong(view, single).forEach(put)
  }
  if (found.length === 0) return { matrix, spots, parts }
  const all = [...spots, ...found].sort((a, b) => a.row - b.row || a.column - b.column)
  return { matrix: { ...matrix, values }, spots: all, parts }
}

/** The cells that a sign may stand in: by itself, before or behind a number, or in a label. */
function signCells({ values }: Matrix): CellRef[] {
  const cells: CellRef[] = []
  for (const [row, line] of values.entries())
    for (const [column, value] of line.entries())
      if (typeof value === 'number' ? value < 0 : typeof value === 'string' && MAY_SIGN.test(value))
        cells.push({ row, column })
  return cells
}

/** The signs that no child typed for an answer: below zero, or a dash for nothing. */
function withoutTyped(
  matrix: Matrix,
  signs: readonly CellRef[],
  spots: readonly Spot[],
  gaps: Gaps,
): readonly CellRef[] {
  if (signs.length === 0 || spots.length === 0) return signs
  const turnedSigns = typedSigns(
    viewOf(matrix, true),
    signs.map(turnedCell),
    spots.map(turnedCell),
    turnedGaps(gaps),
  )
  const typed = new Set(
    [...typedSigns(viewOf(matrix, false), signs, spots, gaps), ...turnedSigns.map(turnedCell)].map(cellKey),
  )
  return signs.filter((cell) => !typed.has(cellKey(cell)))
}

/** The signs under a question and beside a child's name, no empty line between; but not those of a row with an equals sign. */
function typedSigns(
  view: View,
  signs: readonly CellRef[],
  questions: readonly CellRef[],
  { rows, columns }: Gaps,
): CellRef[] {
  const heads = groupBy(questions, ({ column }) => column)
  return signs.filter(({ row, column }) => {
    const isUnder = heads.get(column)?.some((head) => head.row < row && rows[head.row] === rows[row]) === true
    const texts = range((columns[column] ?? -1) + 1, column).map((each) => view.text(row, each))
    return isUnder && !texts.includes('=') && texts.some(isChild)
  })
}

function isChild(text: string): boolean {
  return looksLikeName(text) && hasNameWords(text) && nameHeading(text) === null && !isClassHeading(text)
}

/** For each row and each column the last empty one up to it; -1 before the first. */
interface Gaps {
  readonly rows: readonly number[]
  readonly columns: readonly number[]
}

function emptyLines({ values }: Matrix): Gaps {
  const isEmptyColumn: boolean[] = []
  const isEmptyRow = values.map((line) => {
    let isRowEmpty = true
    for (const [column, value] of line.entries()) {
      isEmptyColumn[column] ??= true
      if (!isEmpty(value)) isRowEmpty = isEmptyColumn[column] = false
    }
    return isRowEmpty
  })
  let last = -1
  const lastOf = (isGap: boolean, place: number) => (last = isGap ? place : place === 0 ? -1 : last)
  return { rows: isEmptyRow.map(lastOf), columns: isEmptyColumn.map(lastOf) }
}

const turnedGaps = ({ rows, columns }: Gaps): Gaps => ({ rows: columns, columns: rows })

/** Whether a question heads a cell: it stands above it or before it, with no empty line between. */
function headedBy(questions: readonly CellRef[], { rows, columns }: Gaps): (cell: CellRef) => boolean {
  const first = new Map<string, number>()
  const above = ({ row, column }: CellRef) => `${column} under ${rows[row] ?? -1}`
  const before = ({ row, column }: CellRef) => `${row} behind ${columns[column] ?? -1}`
  const note = (key: string, place: number) => first.set(key, Math.min(place, first.get(key) ?? Infinity))
  for (const cell of questions) {
    note(above(cell), cell.row)
    note(before(cell), cell.column)
  }
  return (cell) =>
    (first.get(above(cell)) ?? Infinity) < cell.row || (first.get(before(cell)) ?? Infinity) < cell.column
}

/** Marksheets with their gathered questions where they stand. Nobody is a pupil who would answer in a part of a question. */
export function allSpreadAgain(found: readonly Marksheet[], parts: Gathered['parts']): Marksheet[] {
  const asked = new Set([...parts.values()].flat().map(cellKey))
  return found.flatMap((marksheet) => {
    const pupils = marksheet.pupils.filter(({ answers }) => !answers.some((cell) => asked.has(cellKey(cell))))
    const own = pupils.length === marksheet.pupils.length ? marksheet : withPupils(marksheet, pupils)
    return own === null ? [] : [spreadAgain(own, parts)]
  })
}

/** A marksheet with its gathered questions where they stand: in the cell that they begin in, with all their parts. */
export function spreadAgain(marksheet: Marksheet, parts: Gathered['parts']): Marksheet {
  if (parts.size === 0) return marksheet
  const { area } = marksheet
  const questions = marksheet.questions.map((question) => {
    const own = parts.get(cellKey(question))
    const [first] = own ?? []
    return own && first ? { ...question, row: first.row, column: first.column, parts: own } : question
  })
  const cells = questions.flatMap((question): readonly CellRef[] => question.parts ?? [question])
  const corners = [
    { row: area.top, column: area.left },
    { row: area.bottom, column: area.right },
  ]
  return { ...marksheet, area: areaOf([cells, corners]), questions }
}

const turnedCell = ({ row, column }: CellRef): CellRef => ({ row: column, column: row })
const valueIn = ({ values }: Matrix, { row, column }: CellRef): CellValue => values[row]?.[column] ?? null

function write(values: CellValue[][], { row, column }: CellRef, value: CellValue): void {
  const cells = (values[row] ??= [])
  while (cells.length < column) cells.push(null)
  cells[column] = value
}

/** Everything along the lines of a view that reads as a question over several cells. */
function runsIn(view: View, signs: readonly CellRef[], gaps: Gaps): Run[] {
  return [
    ...signs.flatMap((cell) => labelledRuns(view, cell, gaps)),
    ...signs.flatMap(({ row, column }) => signedRun(view, row, column) ?? []),
  ].filter(({ text }) => 'question' in readQuestion(text))
}

/** A run whose sign stands in this cell, alone or with a number; null for none. */
function signedRun(view: View, line: number, column: number): Run | null {
  const text = view.text(line, column)
  const at = (place: number) => view.text(line, place)
  const isNumeral = (place: number) => NUMERAL.test(at(place))
  const isLast = (place: number) => isNumeral(place) || ENDED.test(at(place))
  const run = (first: number, last: number, isSure: boolean): Run => {
    const isEnded = at(last + 1) === '=' || at(last).endsWith('=')
    const end = at(last + 1) === '=' ? last + 2 : last + 1
    const texts = range(first, end).map(at).join(' ')
    return { line, first, count: end - first, sign: column, text: spaced(texts), isSure: isSure || isEnded }
  }
  if (SIGN.test(text) && isNumeral(column - 1) && isLast(column + 1))
    return run(column - 1, column + 1, false)
  if (SIGNED.test(text) && isNumeral(column - 1))
    return run(column - 1, column, typeof view.value(line, column) === 'string')
  if (SIGN_BEHIND.test(text) && isLast(column + 1)) return run(column, column + 1, true)
  return null
}

/** "321 −185 =" as a teacher writes it: "321 − 185". */
function spaced(text: string): string {
  const [, top = '', sign = '', bottom = ''] = /^(.*?\d) *(\D+?) *(£?\d[^=]*?) *=?$/.exec(text) ?? []
  return `${top} ${/^[-−–—]$/.test(sign) ? '−' : sign} ${bottom}`
}

/** Runs of two numbers whose sign stands in this cell, the label of the second one's line across. */
function labelledRuns(view: View, { row: label, column }: CellRef, { rows }: Gaps): Run[] {
  const { doing, sign, minus } = DOING.exec(view.text(label, column))?.groups ?? {}
  const above = range((rows[label] ?? -1) + 1, label)
  if (doing === undefined || above.some((line) => view.text(line, column) !== '')) return []
  const isPair = (line: number) => [column - 1, column].every((place) => NUMERAL.test(view.text(line, place)))
  const from = range(label + 1, view.rows).find((line) => view.text(line, column) !== '') ?? view.rows
  const end = range(from, view.rows).find((line) => !isPair(line)) ?? view.rows
  const lines = range(from, end)
  if (lines.length < (sign === undefined ? 1 : 2)) return []
  const between = (sign ?? minus ?? '+') === '+' ? '+' : '−'
  return lines.map((line) => ({
    line,
    first: column - 1,
    count: 2,
    sign: column,
    text: `${view.text(line, column - 1)} ${between} ${view.text(line, column)}`,
    isSure: true,
  }))
}

/** The runs near whose signs others stand, each put into its last cell, and the others with how many signs theirs is one of (1, or 0). */
function splitBySigns(view: View, runs: readonly Run[], gaps: Gaps): { listed: Placed[]; others: Single[] } {
  const bySign = new Map(runs.map((run) => [`${run.line},${run.sign}`, run]))
  const counted = runs.map((run) => ({ run, count: signsAround(view, run, bySign, gaps) }))
  return {
    listed: counted
      .filter(({ count }) => count > 1)
      .map(({ run }) => ({ run, host: view.ref(run.line, run.first + run.count - 1) })),
    others: counted.filter(({ count }) => count < 2),
  }
}

/** The single runs that are questions: over answers where nothing else stands in their line, else put into their last cell. */
function singlesAmong(view: View, single: readonly Single[]): Placed[] {
  const byLine = groupBy(single, ({ run }) => run.line)
  return single.flatMap(({ run, count }) => {
    const own = (byLine.get(run.line) ?? []).map((each) => each.run)
    if (isAlone(view, run, own)) return [{ run, host: view.ref(run.line, answeredColumn(view, run)) }]
    return count === 1 && run.isSure ? [{ run, host: view.ref(run.line, run.first + run.count - 1) }] : []
  })
}

/** How many signs stand near in the line across in which a run has its own; 0 where numbers or a heading of something else stand there. */
function signsAround(view: View, run: Run, bySign: ReadonlyMap<string, Run>, { rows }: Gaps): number {
  let count = 1
  for (const step of [-1, 1]) {
    let [line, gap, heading, isApart] = [run.line + step, 0, '', false]
    for (; line >= 0 && line < view.rows && gap <= WIDEST_GAP; line += step) {
      if (bySign.has(`${line},${run.sign}`)) [gap, heading, count] = [0, '', count + 1]
      else {
        gap++
        isApart ||= rows[line] === line
        heading ||= view.text(line, run.sign)
        if (!isApart && NUMERAL.test(heading)) return 0
      }
    }
    if (step < 0 && heading !== '' && !mayHeadSigns(heading)) return 0
  }
  return count
}

function mayHeadSigns(text: string): boolean {
  if ('question' in readQuestion(text)) return false
  return (
    !/\p{L}/u.test(text) ||
    ASKING.test(text) ||
    DOING.test(text) ||
    nameHeading(text) !== null ||
    isClassHeading(text)
  )
}

/** Whether a line holds runs and no other numbers: several, or one that is sure or beside a heading for names. */
function isAlone(view: View, run: Run, own: readonly Run[]): boolean {
  const isPart = (column: number) => own.some(({ first, count }) => first <= column && column < first + count)
  const rest = range(0, view.columns)
    .filter((column) => !isPart(column))
    .map((column) => view.text(run.line, column))
  if (rest.some((text) => NUMERAL.test(text))) return false
  return own.length > 1 || run.isSure || rest.some((text) => nameHeading(text) !== null)
}

/** The column of a run in which most cells are filled under it, the last one where none is. */
function answeredColumn(view: View, { line, first, count }: Run): number {
  const end =
    range(line + 1, view.rows).find((row) =>
      range(0, view.columns).every((column) => view.text(row, column) === ''),
    ) ?? view.rows
  const filled = (column: number) =>
    range(line + 1, end).filter((row) => !isEmpty(view.value(row, column))).length
  return range(first, first + count).reduce(
    (best, column) => (filled(column) >= filled(best) ? column : best),
    first,
  )
}
