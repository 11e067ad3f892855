import { readQuestion, type Question } from '../../arithmetic/question'
import { answerKey, markAnswer, readTyped } from '../../answers/typed'
import { keptApart } from './apart'
import { endOfNames, firstOwnColumn, isBeside, nearestFirst, startsBlock, type Rows } from './evidence'
import { groupBy } from './groups'
import { areaOf, isEmpty, viewOf, type Area, type CellRef, type Matrix, type View } from './matrix'
import { hasNameWords, isClassHeading, isHeadingLabel, looksLikeName, nameHeading } from './labels'
import { findNameColumns, nameIn, type NameColumns } from './names'
import { isWithin, only, piecesOf } from './pieces'
import { pupilRows } from './rows'
import { atOnce, type Steps } from './steps'

export type Orientation = 'pupils-down' | 'pupils-across' | 'pairs'

/** A cell that holds a question. */
export interface FoundQuestion extends CellRef {
  readonly text: string
  readonly question: Question
}

/** A cell in which a pupil answers a question, given by its index among the marksheet's questions. */
export interface AnswerCell extends CellRef {
  readonly question: number
}

/** A pupil: the cells that hold the name (where they are two, the first is the left or upper one) and those for the answers. */
export interface FoundPupil {
  readonly name: string
  readonly nameCells: readonly CellRef[]
  readonly answers: readonly AnswerCell[]
}

/** A marksheet found on a sheet. `area` reaches from the first name or question to the last answer. */
export interface Marksheet {
  readonly orientation: Orientation
  readonly area: Area
  readonly questions: readonly FoundQuestion[]
  readonly pupils: readonly FoundPupil[]
}

/** The first words of the sheets that the add-in writes itself; a sheet that starts with them holds no marksheet. */
export const OWN_SHEET = 'Columnwise · '

interface Spot extends CellRef {
  readonly text: string
  readonly question: Question
}

/**
 * Finds the marksheets on a sheet: pupils down and questions across, the transpose, question–answer pairs along a pupil's row,
 * several of them on one sheet, and form exports. None found is an empty list. Order: as they stand, from the top, then from
 * the left.
 */
export function findMarksheets(matrix: Matrix): Marksheet[] {
  return atOnce(finding(matrix))
}

/** The same, row by row where rows are many. */
export function* finding(matrix: Matrix): Steps<Marksheet[]> {
  if (String(matrix.values[0]?.[0] ?? '').startsWith(OWN_SHEET)) return []
  const found = yield* readingInPieces(matrix, yield* questionSpots(viewOf(matrix, false)))
  return found.sort((a, b) => a.area.top - b.area.top || a.area.left - b.area.left)
}

/**
 * Reads the pieces between empty columns, or else between empty rows, by themselves where two or more hold questions and each makes sense
 * alone: every question in it has pupils. A reading across such a gap could give one class's answers to another. Else reads the whole.
 */
function* readingInPieces(matrix: Matrix, spots: readonly Spot[]): Steps<Marksheet[]> {
  for (const between of ['columns', 'rows'] as const) {
    const asking = piecesOf(matrix, between)
      .map((area) => ({ area, own: spots.filter((spot) => isWithin(area, spot)) }))
      .filter(({ own }) => own.length > 0)
    if (asking.length < 2) continue
    const found: Marksheet[] = []
    let isWhole = true
    for (const { area, own } of asking) {
      const piece = yield* readingInPieces(only(matrix, area), own)
      isWhole &&= leftOver(own, piece).length === 0
      if (!isWhole) break
      found.push(...piece)
    }
    if (isWhole) return found
  }
  return yield* readingWhole(matrix, spots)
}

function* readingWhole(matrix: Matrix, spots: readonly Spot[]): Steps<Marksheet[]> {
  if (spots.length === 0) return []
  const upright = viewOf(matrix, false)
  const { heading, blocks } = splitByNeighbours(upright, spots)
  const found = [
    ...blocks.flatMap((block) => pairsIn(upright, block, spots)),
    ...(yield* pupilsBelow(upright, heading, spots, 'pupils-down')),
  ]
  const single = groupBy(leftOver(heading, found), ({ row }) => row)
  found.push(
    ...[...single.values()].flatMap((row) =>
      hasRoomBeside(upright, row) ? pairsIn(upright, row, spots) : [],
    ),
  )
  const turned = (all: readonly Spot[]) =>
    all.map((spot) => ({ ...spot, row: spot.column, column: spot.row }))
  found.push(
    ...(yield* pupilsBelow(
      viewOf(matrix, true),
      turned(leftOver(spots, found)),
      turned(spots),
      'pupils-across',
    )),
  )
  yield
  return keptApart(found.filter((each) => isPlausible(matrix, each)))
}

const cellKey = ({ row, column }: CellRef) => `${row},${column}`

function leftOver(spots: readonly Spot[], found: readonly Marksheet[]): Spot[] {
  const taken = new Set(found.flatMap(({ questions }) => questions.map(cellKey)))
  return spots.filter((spot) => !taken.has(cellKey(spot)))
}

/** Results, reading ages and ranges look like bare questions ("3-1"); where answers stand below such, one must be right. */
function isPlausible({ values }: Matrix, { orientation, questions, pupils }: Marksheet): boolean {
  if (!questions.every(({ text }) => /^\s*\d{1,3}-\d{1,3}\s*$/.test(text))) return true
  const keys = questions.map(({ question }) => answerKey(question))
  const outcomes = pupils.flatMap(({ answers }) =>
    answers.flatMap(({ row, column, question }) => {
      const key = keys[question]
      return key ? markAnswer(values[row]?.[column] ?? null, key) : []
    }),
  )
  return (
    outcomes.includes('correct') ||
    (orientation !== 'pairs' && outcomes.every((outcome) => outcome === 'blank'))
  )
}

const MAY_BE_QUESTION = /[-−–—‐‑‒－⁻➖﹣+＋➕⁺]|subtract|take|minus|add|plus|difference|less|sum of|total of/i

function* questionSpots(view: View): Steps<Spot[]> {
  const spots: Spot[] = []
  for (let row = 0; row < view.rows; row++) {
    yield
    for (let column = 0; column < view.columns; column++) {
      const value = view.value(row, column)
      if (typeof value !== 'string' || !MAY_BE_QUESTION.test(value) || isSchoolYear(value)) continue
      const reading = readQuestion(value)
      if ('question' in reading) spots.push({ row, column, text: value, question: reading.question })
    }
  }
  return spots
}

/** "2024-25" and "2024-2025" are school years, not questions. */
function isSchoolYear(text: string): boolean {
  const [, from, to] = /^\s*(?:19|20)(\d\d)\s*[-–]\s*(?:19|20)?(\d\d)\s*$/.exec(text) ?? []
  return from !== undefined && (Number(from) + 1) % 100 === Number(to)
}

/** How far below each other two questions of one list may stand (a sub-heading or an empty row between them). */
const WIDEST_GAP = 3

/**
 * Tells questions that head columns from questions that stand in lists below each other. A row of questions belongs to a list
 * where most of its questions have another one above or below with no answer between them.
 */
function splitByNeighbours(view: View, spots: readonly Spot[]): { heading: Spot[]; blocks: Spot[][] } {
  const listed = new Map<Spot, Spot>()
  const byColumn = groupBy(spots, ({ column }) => column)
  const inList = new Set<Spot>()
  for (const column of byColumn.values()) {
    column.forEach((spot, index) => {
      const above = column[index - 1]
      if (above === undefined || !isSameList(view, above, spot)) return
      listed.set(spot, above)
      inList.add(spot).add(above)
    })
  }
  const heading: Spot[] = []
  const blocks: Spot[][] = []
  for (const row of rowParts(view, spots)) {
    const members = row.filter((spot) => inList.has(spot))
    if (2 * members.length < row.length)
      heading.push(...row.filter((spot) => !inList.has(spot) || !isOfPupilsAcross(view, spot, byColumn)))
    else {
      const aboves = new Set(row.map((spot) => listed.get(spot)))
      const block = blocks.find((each) => each.some((spot) => aboves.has(spot)))
      if (block) block.push(...row)
      else blocks.push([...row])
    }
  }
  return { heading, blocks }
}

/** The questions of each row, parted where a name stands between two of them: what follows is another block's. */
function rowParts(view: View, spots: readonly Spot[]): Spot[][] {
  return [...groupBy(spots, ({ row }) => row).values()].flatMap((row) => {
    const parts: Spot[][] = []
    let previous = -1
    for (const spot of row.toSorted((a, b) => a.column - b.column)) {
      const between = range(previous + 1, spot.column).map((column) => view.text(spot.row, column))
      const isNew = between.some((text) => text !== '' && mayStartBlock(text))
      const part = parts.at(-1)
      if (part && !isNew) part.push(spot)
      else parts.push([spot])
      previous = spot.column
    }
    return parts
  })
}

/** Whether a text may be the name, or the heading of names, with which a block starts. */
function mayStartBlock(text: string): boolean {
  if (!/\p{L}/u.test(text) || readTyped(text).kind !== 'unreadable') return false
  return (looksLikeName(text) && hasNameWords(text)) || nameHeading(text) !== null || isClassHeading(text)
}

function hasNumberBeside(view: View, { row, column }: CellRef): boolean {
  return readTyped(view.value(row, column + 1)).kind === 'number'
}

function isSameList(view: View, above: Spot, below: Spot): boolean {
  if (below.row - above.row > WIDEST_GAP) return false
  for (let row = above.row + 1; row < below.row; row++) {
    const value = view.value(row, above.column)
    if (!isEmpty(value) && readTyped(value).kind !== 'unreadable') return false
  }
  return true
}

/**
 * A list of questions with a pupil's name on the left of each row, the answer on the right of each question. Rows that follow with the
 * same name, or with none, are the same pupil's.
 */
function pairsIn(view: View, block: readonly Spot[], all: readonly Spot[]): Marksheet[] {
  return pairedColumns(view, block).flatMap((own) => pairsOf(view, own, all))
}

/** The questions of a list, parted where a column of names stands between two of its columns. */
function pairedColumns(view: View, block: readonly Spot[]): Spot[][] {
  const parts: Spot[][] = []
  let previous: readonly Spot[] = []
  const byColumn = [...groupBy(block, ({ column }) => column)].sort(([a], [b]) => a - b)
  for (const [index, [column, spots]] of byColumn.entries()) {
    if (headsPupilsAcross(view, spots, byColumn[index + 1]?.[0] ?? view.columns)) break
    const last = previous[0]?.column ?? -1
    const header = Math.min(...spots.map(({ row }) => row)) - 1
    const body = spots.map(({ row }) => row)
    const isNew = range(last + 1, column).some(
      (each) => startsBlock(view, header, last, each, body) === 'sure',
    )
    const part = parts.at(-1)
    if (part && !isNew) part.push(...spots)
    else parts.push([...spots])
    previous = spots
  }
  return parts.map((part) => block.filter((spot) => part.includes(spot)))
}

/** Whether a list of questions is that of pupils who run across: names stand over two or more columns of numbers on its right. */
function headsPupilsAcross(view: View, spots: readonly Spot[], next: number): boolean {
  const column = spots[0]?.column ?? 0
  let top = Math.min(...spots.map(({ row }) => row))
  while (isQuestion(view, top - 1, column)) top--
  const named = range(column + 1, next).filter((each) => {
    const text = view.text(top - 1, each)
    const isAnswered = spots.some(({ row }) => readTyped(view.value(row, each)).kind === 'number')
    return looksLikeName(text) && hasNameWords(text) && isAnswered
  })
  return new Set(named.map((each) => view.text(top - 1, each))).size >= 2
}

/** Whether a question that stands in a list among headings is answered on its right: its pupils run across. */
function isOfPupilsAcross(view: View, spot: Spot, byColumn: ReadonlyMap<number, readonly Spot[]>): boolean {
  return hasNumberBeside(view, spot) || headsPupilsAcross(view, byColumn.get(spot.column) ?? [], view.columns)
}

function isQuestion(view: View, row: number, column: number): boolean {
  return row >= 0 && 'question' in readQuestion(view.text(row, column))
}

function pairsOf(view: View, block: readonly Spot[], all: readonly Spot[]): Marksheet[] {
  const rows = [...groupBy(block, ({ row }) => row)].sort(([a], [b]) => a - b)
  const firstRow = rows[0]?.[0] ?? 0
  const columns = new Set(block.map(({ column }) => column))
  const left = Math.min(...columns)
  const body = rows.map(([row]) => row)
  const others = all.filter((spot) => !block.includes(spot))
  const from = firstOwnColumn(view, others, left, { first: firstRow, last: body.at(-1) ?? firstRow })
  const names = nearestNames(view, firstRow - 1, range(from, left), body)
  if (!names || names.kind === 'codes' || (names.kind === 'likely' && hasNamesAbove(view, firstRow, columns)))
    return []
  const answerColumn = answerColumns(view, columns, body)
  const asked = new Set(block.map(cellKey))
  const answered = block.filter(
    ({ row, column }) => !asked.has(cellKey({ row, column: answerColumn(column) })),
  )
  const pupils: { name: string; nameCells: CellRef[]; answers: AnswerCell[] }[] = []
  for (const [row, spots] of groupBy([...answered.entries()], ([, spot]) => spot.row)) {
    const name = nameIn(view, names, row)
    if (isHeadingLabel(name) || nameHeading(name) !== null) continue
    const last = pupils.at(-1)
    const answers = spots.map(([index, { column }]) => answerCell(view, row, answerColumn(column), index))
    if (last && (name === '' || name === last.name)) last.answers.push(...answers)
    else if (name !== '') pupils.push({ name, nameCells: nameCells(view, names, row), answers })
  }
  return marksheet('pairs', answered.map(foundQuestion(view)), pupils)
}

/**
 * For each question column the column of its answers: the next one, or one behind it that holds more numbers ("=", a working), but none
 * behind names or questions of another block.
 */
function answerColumns(
  view: View,
  questions: ReadonlySet<number>,
  rows: readonly number[],
): (question: number) => number {
  const numbers = (column: number) =>
    rows.filter((row) => readTyped(view.value(row, column)).kind === 'number').length
  const isOthers = (column: number) => {
    const texts = rows
      .filter((row) => readTyped(view.value(row, column)).kind === 'unreadable')
      .map((row) => view.text(row, column))
    const isOne = (text: string) => mayStartBlock(text) || 'question' in readQuestion(text)
    return texts.length >= 2 && texts.every(isOne)
  }
  const found = new Map<number, number>()
  for (const question of questions) {
    const next = range(question + 1, question + 4).filter((_column, index, all) =>
      all.slice(0, index + 1).every((each) => !questions.has(each) && !isOthers(each)),
    )
    found.set(
      question,
      next.reduce((best, column) => (numbers(column) > numbers(best) ? column : best), question + 1),
    )
  }
  return (question) => found.get(question) ?? question + 1
}

/** Whether names of pupils, not headings such as "A1" or "Answer", stand in a row over the columns between questions. */
function hasNamesAbove(view: View, row: number, questions: ReadonlySet<number>): boolean {
  const columns = range(Math.min(...questions) + 1, view.columns).filter((column) => !questions.has(column))
  const isHeading = (text: string) =>
    /^[aq]\.? ?\d|\b(?:ans(?:wers?)?|question|response|working|calculation|sum|mark|typed)\b/i.test(text)
  return [row - 1, row - 2]
    .filter((above) => above >= 0)
    .some((above) => {
      const texts = columns
        .map((column) => view.text(above, column))
        .filter((text) => looksLikeName(text) && !isHeading(text))
      return new Set(texts).size >= 2 && new Set(texts).size === texts.length
    })
}

/**
 * Whether a row by itself can be one pupil's own questions: a number on the right of one of them, or room for an answer on the right of
 * each under a heading of its own.
 */
function hasRoomBeside(view: View, row: readonly Spot[]): boolean {
  const questions = new Set(row.map(({ column }) => column))
  const beside = row.filter((spot) => !questions.has(spot.column + 1))
  const isRoom = (spot: Spot) =>
    /answer|^a\d/i.test(spot.row > 0 ? view.text(spot.row - 1, spot.column + 1) : '')
  return (
    beside.some((spot) => hasNumberBeside(view, spot)) ||
    (beside.length === row.length && beside.every(isRoom))
  )
}

/** Rows of questions with pupils' names on the left of the rows below; a name column between questions starts a new marksheet. */
function* pupilsBelow(
  view: View,
  spots: readonly Spot[],
  all: readonly Spot[],
  orientation: Orientation,
): Steps<Marksheet[]> {
  const headers = [...groupBy(spots, ({ row }) => row)].sort(([a], [b]) => a - b)
  const found: Marksheet[] = []
  for (const [header, row] of headers) {
    const sorted = row.toSorted((a, b) => a.column - b.column)
    for (const { from, spots: own } of segments(view, headers, header, sorted)) {
      yield
      const end = nextHeader(headers, header, own) ?? view.rows
      found.push(...(yield* belowHeader(view, header, own, all, from, end, orientation)))
    }
  }
  return found
}

function nextHeader(
  headers: readonly [number, Spot[]][],
  header: number,
  own: readonly Spot[],
): number | undefined {
  const columns = new Set(own.map(({ column }) => column))
  return headers.find(([row, spots]) => row > header && spots.some(({ column }) => columns.has(column)))?.[0]
}

/**
 * The questions of a header row, parted where a column of names stands between two of them. `from` is the first free column. Questions
 * behind a column that may be names or remarks are left out: they could be another child's.
 */
function segments(
  view: View,
  headers: readonly [number, Spot[]][],
  header: number,
  row: readonly Spot[],
): { from: number; spots: Spot[] }[] {
  const parts: { from: number; spots: Spot[]; isUnsure: boolean }[] = []
  let previous = -1
  for (const spot of row) {
    const end = nextHeader(headers, header, [spot]) ?? view.rows
    const starts = range(previous + 1, spot.column).map((column) =>
      startsBlock(view, header, previous, column, filledRows(view, header + 1, end, [column, spot.column])),
    )
    const part = parts.at(-1)
    const isUnsure = !starts.includes('sure') && starts.includes('unsure')
    if (part && !starts.includes('sure') && !isUnsure) part.spots.push(spot)
    else parts.push({ from: previous + 1, spots: [spot], isUnsure: part !== undefined && isUnsure })
    previous = spot.column
  }
  return parts.filter(({ isUnsure }) => !isUnsure)
}

function* belowHeader(
  view: View,
  header: number,
  spots: readonly Spot[],
  all: readonly Spot[],
  from: number,
  bottom: number,
  orientation: Orientation,
): Steps<Marksheet[]> {
  const columns = spots.map(({ column }) => column)
  const end = endOfNames(view, header, all, columns, bottom)
  const filled = filledRows(view, header + 1, end, columns)
  const rows = { first: header, last: filled.at(-1) ?? header }
  const own = new Set(spots.map(cellKey))
  const others = all.filter((spot) => !own.has(cellKey(spot)) && spot.row < end)
  const candidates = range(
    Math.max(from, firstOwnColumn(view, others, columns[0] ?? 0, rows)),
    columns[0] ?? 0,
  )
  const body = filled.length > 0 ? filled : filledRows(view, header + 1, end, candidates)
  const names =
    nearestNames(view, header, candidates, body) ??
    headedOnTheRight(view, header, (columns.at(-1) ?? 0) + 1, body, others, rows)
  if (!names) return []
  yield
  const keyed = spots.map(({ column, question }) => ({ column, key: answerKey(question) }))
  const pupils: FoundPupil[] = []
  for (const row of yield* pupilRows(view, names, keyed, header + 1, end)) {
    yield
    const answers = columns.map((column, question) => answerCell(view, row, column, question))
    pupils.push({ name: nameIn(view, names, row), nameCells: nameCells(view, names, row), answers })
  }
  return marksheet(orientation, spots.map(foundQuestion(view)), pupils)
}

/** The name columns nearest to the questions; `columns` begin behind the block on the left where there is one. */
function nearestNames(
  view: View,
  header: number,
  columns: readonly number[],
  body: readonly number[],
): NameColumns | null {
  for (const group of nearestFirst(view, header, columns, body)) {
    const names = findNameColumns(view, header, group, body, (columns[0] ?? 0) > 0)
    if (names) return names
  }
  return null
}

/**
 * Name columns on the right of the questions, where a heading says so (a form that asks for the name last) and no other block stands
 * there, whose names they could be.
 */
function headedOnTheRight(
  view: View,
  header: number,
  first: number,
  body: readonly number[],
  others: readonly Spot[],
  rows: Rows,
): NameColumns | null {
  if (others.some((other) => other.column >= first && isBeside(view, other, rows))) return null
  const names = findNameColumns(view, header, range(first, view.columns), body)
  return names?.kind === 'headed' ? names : null
}

function marksheet(orientation: Orientation, questions: FoundQuestion[], pupils: FoundPupil[]): Marksheet[] {
  if (pupils.length === 0) return []
  const area = areaOf([
    questions,
    ...pupils.map(({ nameCells }) => nameCells),
    ...pupils.map(({ answers }) => answers),
  ])
  return [{ orientation, area, questions, pupils }]
}

function answerCell(view: View, row: number, column: number, question: number): AnswerCell {
  const cell = view.ref(row, column)
  return { row: cell.row, column: cell.column, question }
}

const foundQuestion =
  (view: View) =>
  ({ row, column, text, question }: Spot): FoundQuestion => ({ ...view.ref(row, column), text, question })

/** The cells of a pupil's name, in the order in which they stand on the sheet. */
function nameCells(view: View, { first, surname }: NameColumns, row: number): CellRef[] {
  const columns = surname === null ? [first] : [first, surname].sort((a, b) => a - b)
  return columns.map((column) => view.ref(row, column))
}

function filledRows(view: View, first: number, end: number, columns: readonly number[]): number[] {
  return range(first, end).filter((row) => columns.some((column) => !isEmpty(view.value(row, column))))
}

function range(from: number, to: number): number[] {
  return Array.from({ length: Math.max(0, to - from) }, (_, index) => from + index)
}
