import type { TableCell, TableSheet } from '../../marksheet/marking/plan'
import {
  isRecord,
  linesOf,
  RECORD_COLUMNS,
  RECORD_HEAD,
  RECORD_TITLE,
  type RecordLine,
  type RecordRow,
} from '../../marksheet/record/record'
import { addToLines, type Occasion } from '../../marksheet/record/filing'
import { cellsEdit, type Block, type Content } from '../edit/cells'
import { perform, type Done, type Edit } from '../edit/edit'
import { Problem } from '../edit/errors'
import { ownSheetEdit, ownSheetFor } from '../workbook/ownSheet'
import { readSheet, type SheetEntry } from '../workbook/read'
import { recordTableEdit } from './table'
import { overlayEdits } from '../workbook/tables'
import { UNWATCHED, type Work } from '../edit/work'

/** What the Record sheet is called where that name is free. */
export const RECORD_SHEET = 'Record'

const CAUTION =
  'Every answer marked, one in a row. Personal data: keep and share it as your school’s policy says, and clear it after the year. ' +
  'Rows may be sorted, filtered or taken out; leave the headings as they are.'

/** The Record sheet as read; `sheet` is null where there is none yet, or one that was taken back and holds nothing. */
export interface RecordReading {
  readonly sheet: SheetEntry | null
  readonly lines: readonly RecordLine[]
  readonly rows: readonly RecordRow[]
  /** Rows that cannot be read; they stay as they are. */
  readonly leftAside: number
  /** What the sheet holds below the headings, row by row, in the record's columns. */
  readonly held: readonly RecordLine['cells'][]
  readonly sheets: readonly SheetEntry[]
}

/** Reads the Record sheet among the workbook's sheets, piece by piece where it is long. Throws Problem where its headings were changed. */
export async function readRecordSheet(
  sheets: readonly SheetEntry[],
  work: Work = UNWATCHED,
): Promise<RecordReading> {
  const { present } = ownSheetFor(RECORD_SHEET, sheets)
  const none = { sheet: null, lines: [], rows: [], leftAside: 0, held: [], sheets }
  if (present?.filled == null || present.filled.bottom < RECORD_HEAD) return none
  const { matrix } = await readSheet(present.id, work)
  if (!isRecord(matrix))
    throw new Problem(
      `The headings of the sheet ${present.name} were changed, so it cannot be read as a record.`,
      `Put these into A${RECORD_HEAD + 1} and the cells on its right: ${RECORD_COLUMNS.join(', ')}.`,
    )
  const lines = linesOf(matrix)
  const rows = lines.flatMap(({ row }) => row ?? [])
  const held = matrix.values
    .slice(RECORD_HEAD + 1)
    .map((row) => RECORD_COLUMNS.map((_, column) => row[column] ?? ''))
  return { sheet: present, lines, rows, leftAside: lines.length - rows.length, held, sheets }
}

/** Adds a marking's rows to the Record sheet, in place of an occasion or behind what is there. Throws Problem. */
export async function addToRecordSheet(
  reading: RecordReading,
  added: readonly RecordRow[],
  instead: Occasion | null = null,
  work: Work = UNWATCHED,
): Promise<Done> {
  const edits = editsTo(reading, addToLines(reading.lines, added, instead))
  return perform('adding to Record', edits, work)
}

/** Takes the rows from before a day out of the Record sheet ("2026-09-01"), of all classes. Throws Problem. */
export async function clearRecordBefore(
  reading: RecordReading,
  date: string,
  work: Work = UNWATCHED,
): Promise<Done> {
  const kept = reading.lines.filter(({ row }) => row === null || row.date >= date)
  return perform('clearing of Record', editsTo(reading, kept), work)
}

function editsTo({ sheet, held, sheets }: RecordReading, now: readonly RecordLine[]): Edit[] {
  const rows = Math.max(1, now.length)
  if (sheet !== null) return [cellsEdit(sheet, changes(held, now)), recordTableEdit(sheet, RECORD_HEAD, rows)]
  const { name, present } = ownSheetFor(RECORD_SHEET, sheets)
  const right = RECORD_COLUMNS.length - 1
  const table = { top: RECORD_HEAD, left: 0, bottom: RECORD_HEAD + rows, right }
  const own = ownSheetEdit(sheetWith(now), sheets)
  const old = present && { filled: present.filled, head: RECORD_COLUMNS[0], columns: right + 1 }
  const tables = overlayEdits(own, name, { table, chart: null }, old)
  return [...tables.before, own, tables.after]
}

/** The cells that are to hold something else than they do; rows that are left over are emptied. */
function changes(held: RecordReading['held'], now: readonly RecordLine[]): Block[] {
  const blocks: { top: number; left: number; rows: Content[][] }[] = []
  for (let index = 0; index < Math.max(held.length, now.length); index++) {
    const cells = now[index]?.cells ?? RECORD_COLUMNS.map(() => '')
    if (isSame(held[index], cells)) continue
    const top = RECORD_HEAD + 1 + index
    const last = blocks.at(-1)
    const row = cells.map((value): Content => (typeof value === 'number' ? value : String(value ?? '')))
    if (last && last.top + last.rows.length === top) last.rows.push(row)
    else blocks.push({ top, left: 0, rows: [row] })
  }
  return blocks
}

function isSame(one: RecordLine['cells'] | undefined, other: RecordLine['cells']): boolean {
  return one !== undefined && other.every((value, column) => value === one[column])
}

const WIDTHS = [11, 14, 18, 22, 18, 10, 12, 34]

function sheetWith(lines: readonly RecordLine[]): TableSheet {
  const cell = (text: string, bold = false): TableCell => ({ text, bold, fill: null })
  return {
    name: RECORD_SHEET,
    rows: [
      [cell(RECORD_TITLE, true)],
      [cell(CAUTION)],
      RECORD_COLUMNS.map((title) => cell(title, true)),
      ...lines.map(({ cells }) => cells.map((value) => cell(String(value ?? '')))),
    ],
    widths: WIDTHS,
  }
}
