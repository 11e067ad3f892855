import { groupBy } from '../../marksheet/layout/groups'
import { areaAddress, type Area } from '../../marksheet/layout/matrix'
import { planningMastery, type TableCell, type TableSheet } from '../../marksheet/marking/plan'
import type { Review } from '../../marksheet/marking/review'
import { atOnce, type Steps } from '../../marksheet/layout/steps'
import { STATUSES } from '../../mastery/standing'
import { TEACHING_ORDER, type StatusWords } from '../../mastery/support'
import type { Edit } from '../edit/edit'
import { ownSheetEdit, ownSheetFor, type SheetEdit } from '../workbook/ownSheet'
import type { SheetEntry } from '../workbook/read'
import { overlayEdits, type Overlay } from '../workbook/tables'

/** The Mastery sheet with what lies over it, and the class by type as numbers below the pupils. */
interface MasteryPlan {
  readonly table: TableSheet
  readonly overlay: Overlay
  readonly numbers: { readonly area: Area; readonly rows: readonly (readonly number[])[] }
}

const TITLE = 'The class by type, in pupils'
const HEAD = 'Type'
const CHART_ROWS = 18
const ORDER = STATUSES.toReversed()

/**
 * Writes the Mastery sheet: the pupils by type, and below them the class by type as a table of counts with a chart. In place of what the
 * sheet held before where it is ours.
 */
export function masteryEdits(
  reviews: readonly Review[],
  sheets: readonly SheetEntry[],
  words: StatusWords,
): Edit[] {
  return atOnce(masteryEditing(reviews, sheets, words))
}

/** The same, worked out pupil by pupil. */
export function* masteryEditing(
  reviews: readonly Review[],
  sheets: readonly SheetEntry[],
  words: StatusWords,
): Steps<Edit[]> {
  const { table, overlay, numbers } = yield* planOf(reviews, words)
  yield
  const { name, present } = ownSheetFor(table.name, sheets)
  const sheet = ownSheetEdit(table, sheets, numbers.area)
  const old = present && { filled: present.filled, head: HEAD, columns: 1 + ORDER.length }
  const tables = overlayEdits(sheet, name, overlay, old)
  return [...tables.before, sheet, numbersEdit(sheet, name, numbers), tables.after]
}

function* planOf(reviews: readonly Review[], words: StatusWords): Steps<MasteryPlan> {
  const table = yield* planningMastery(reviews, words)
  yield
  const standings = groupBy(
    reviews.flatMap(({ pupils }) => pupils.flatMap(({ judgement }) => judgement.byType)),
    ({ type }) => type,
  )
  yield
  const types = TEACHING_ORDER.filter((type) => standings.has(type))
  const counts = types.map((type) =>
    ORDER.map(
      (status) => (standings.get(type) ?? []).filter((standing) => standing.status === status).length,
    ),
  )
  const top = table.rows.length + 2
  const source = { top, left: 0, bottom: top + types.length, right: ORDER.length }
  const place = { top: source.bottom + 2, left: 0, bottom: source.bottom + 1 + CHART_ROWS, right: 3 }
  return {
    table: {
      ...table,
      rows: [
        ...table.rows,
        [],
        [bold(TITLE)],
        [HEAD, ...ORDER.map((status) => words[status])].map(bold),
        ...types.map((type) => [{ text: type, bold: false, fill: null }]),
      ],
    },
    overlay: { table: source, chart: { title: TITLE, place } },
    numbers: { area: { ...source, top: top + 1, left: 1 }, rows: counts },
  }
}

function bold(text: string): TableCell {
  return { text, bold: true, fill: null }
}

/** Writes numbers onto a sheet that an earlier edit lays out, and takes back with everything else. */
function numbersEdit(sheet: SheetEdit, name: string, { area, rows }: MasteryPlan['numbers']): Edit {
  return {
    what: `the counts on ${name}`,
    keep: [],
    check: () => undefined,
    write: () => [
      {
        cells: rows.flat().length,
        queue: ({ workbook }) => {
          workbook.worksheets.getItem(sheet.key()).getRange(areaAddress(area)).values = rows.map((row) => [
            ...row,
          ])
        },
      },
    ],
    look: [],
    putBack: () => [],
    left: () => [],
  }
}
