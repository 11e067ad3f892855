import { foldText } from '../../arithmetic/numeral'
import { groupBy } from '../layout/groups'
import { recordLine, type RecordLine, type RecordRow } from './record'

/** Work as it stands in Record: a class, a day and a sheet. */
export interface Occasion {
  readonly class: string
  readonly date: string
  readonly sheet: string
}

/** Work in Record that a sheet's rows may be the same as, and how the two compare. */
export interface Met extends Occasion {
  readonly answers: number
  readonly pupils: number
  /** How many questions both hold. */
  readonly shared: number
  /** How many rows of these pupils and questions hold another answer now. */
  readonly changed: number
  /** Pupils whom only Record holds, and pupils who are new. */
  readonly gone: readonly string[]
  readonly added: readonly string[]
  /** Whether Record holds just these rows, under this class, day and sheet. */
  readonly same: boolean
}

/** How a sheet's rows go into Record: beside what is there, or in place of some of it. */
export interface Filing {
  readonly instead: Occasion | null
  /** The day under which they go. */
  readonly date: string
}

const nameOf = (row: Occasion) => JSON.stringify([foldText(row.class), row.date, foldText(row.sheet)])
const cellOf = (row: RecordRow) => JSON.stringify([foldText(row.pupil), row.question])

/** What there is in a record that rows may be the same work as: under the name of their sheet, or mostly the same answers of the same pupils. */
export function metIn(record: readonly RecordRow[], rows: readonly RecordRow[]): Met[] {
  const sheets = new Set(rows.map(({ sheet }) => foldText(sheet)))
  const now = groupBy(rows, cellOf)
  const answered = rows.filter(({ typed }) => typed !== '').length
  return [...groupBy(record, nameOf).values()].flatMap((held): Met[] => {
    const [first] = held
    if (first === undefined) return []
    const alike = held.filter((row) => row.typed !== '' && now.get(cellOf(row))?.[0]?.typed === row.typed)
    const isMostlySame = alike.length > 0 && alike.length * 2 > answered
    return sheets.has(foldText(first.sheet)) || isMostlySame ? [compared(held, rows, first)] : []
  })
}

function compared(held: readonly RecordRow[], rows: readonly RecordRow[], first: Occasion): Met {
  const before = groupBy(held, cellOf)
  const changed = rows.filter((row) => {
    const was = before.get(cellOf(row))?.[0]
    return was !== undefined && (was.typed !== row.typed || was.outcome !== row.outcome)
  }).length
  const questions = new Set(rows.map(({ question }) => question))
  const names = (of: readonly RecordRow[]) => new Map(of.map(({ pupil }) => [foldText(pupil), pupil]))
  const [were, are] = [names(held), names(rows)]
  const only = (of: Map<string, string>, other: Map<string, string>) =>
    [...of].flatMap(([key, name]) => (other.has(key) ? [] : [name]))
  const isSameWork = held.length === rows.length && rows.every((row) => before.has(cellOf(row)))
  return {
    class: first.class,
    date: first.date,
    sheet: first.sheet,
    answers: held.length,
    pupils: were.size,
    shared: new Set(held.flatMap(({ question }) => (questions.has(question) ? [question] : []))).size,
    changed,
    gone: only(were, are),
    added: only(are, were),
    same: isSameWork && changed === 0 && rows.every((row) => nameOf(row) === nameOf(first)),
  }
}

/**
 * The ways in which rows can be filed where a record holds what may be the same work, likeliest first. Beside it only where no work of that
 * class, day and sheet is there, since the two could not be told apart.
 */
export function filingsFor(met: readonly Met[], rows: readonly RecordRow[]): Filing[] {
  const [first] = rows
  if (first === undefined) return []
  const isTaken = met.some((each) => nameOf(each) === nameOf(first))
  const instead = met
    .filter((each) => each.shared > 0 || nameOf(each) === nameOf(first))
    .toSorted((a, b) => b.shared - a.shared || a.changed - b.changed)
    .flatMap(({ class: group, date, sheet }): Filing[] =>
      [...new Set([date, first.date])].map((day) => ({ instead: { class: group, date, sheet }, date: day })),
    )
  return isTaken ? instead : [...instead, { instead: null, date: first.date }]
}

/** The record with rows in it: in place of an occasion, where they stand, or behind the others. */
export function addToRecord(
  record: readonly RecordRow[],
  added: readonly RecordRow[],
  instead: Occasion | null = null,
): RecordRow[] {
  return addTo(record, added, instead, {
    rowOf: (row) => row,
    lineOf: (row) => row,
  })
}

/** The lines of the sheet with a marking's rows among them; see `addToRecord`. Lines that make no row stay. */
export function addToLines(
  lines: readonly RecordLine[],
  added: readonly RecordRow[],
  instead: Occasion | null = null,
): RecordLine[] {
  return addTo(lines, added, instead, {
    rowOf: ({ row }) => row,
    lineOf: (row) => ({ row, cells: recordLine(row) }),
  })
}

function addTo<Line>(
  lines: readonly Line[],
  added: readonly RecordRow[],
  instead: Occasion | null,
  how: { readonly rowOf: (line: Line) => RecordRow | null; readonly lineOf: (row: RecordRow) => Line },
): Line[] {
  const replaced = instead && nameOf(instead)
  const waiting = groupBy(added, cellOf)
  const placed = new Set<RecordRow>()
  const kept = lines.flatMap((line): Line[] => {
    const row = how.rowOf(line)
    if (row === null || nameOf(row) !== replaced) return [line]
    const now = waiting.get(cellOf(row))?.shift()
    if (now === undefined) return []
    placed.add(now)
    return [how.lineOf(now)]
  })
  return [...kept, ...added.filter((row) => !placed.has(row)).map(how.lineOf)]
}
