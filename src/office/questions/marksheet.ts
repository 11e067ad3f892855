import type { MarksheetPlan } from '../../marksheet/setting/layOut'
import { areaAddress, columnLetters, type Area } from '../../marksheet/layout/matrix'
import { isSameSheet, numberedName } from '../../marksheet/setting/sheetNames'
import { passed } from '../edit/content'
import type { SheetRef } from '../edit/cells'
import { pointsFor } from '../edit/columnWidth'
import type { Edit } from '../edit/edit'
import { nameTaken, protectedSheet } from '../edit/errors'
import type { SetBook } from './target'
import { CELLS_PER_REQUEST, pieces, type Part } from '../edit/work'

/** The sheet that a marksheet is laid out on: one that is there and empty, or a new one. */
export interface Place {
  readonly name: string
  readonly kind: 'front' | 'spare' | 'new'
}

/** The place for a marksheet: the sheet in front where it is untouched; else a sheet of that name, numbered where it is taken. */
export function placeFor(wanted: string, { front, sheets, spare }: SetBook): Place {
  if (front.untouched) return { name: front.name, kind: 'front' }
  for (let number = 1; ; number++) {
    const name = numberedName(wanted, number)
    const isNamed = (sheet: SheetRef) => isSameSheet(sheet.name, name)
    const left = spare.find(isNamed)
    if (left) return { name: left.name, kind: 'spare' }
    if (!sheets.some(isNamed)) return { name, kind: 'new' }
  }
}

const HEAD_FILL = '#DCEAF7'
const NOTE_INK = '#595959'
const TITLE_SIZE = 14

/**
 * Lays out a marksheet on an empty sheet and brings it to the front. Taking back empties the sheet, and hides it where it was not in
 * sight before: deleting it would clear Excel's own list of what can be undone, also on the web. Where something else was typed on it meanwhile, it stays.
 */
export function marksheetEdit(plan: MarksheetPlan, { name, kind }: Place, front: SheetRef): Edit {
  const width = plan.widths.length
  const all: Area = { top: 0, left: 0, bottom: plan.rows.length - 1, right: width - 1 }
  let now: { sheet: Excel.Worksheet; used: Excel.Range; front: Excel.Worksheet } | undefined
  let stays = false
  let before: Excel.Worksheet | undefined
  return {
    what: `the sheet ${name}`,
    keep: [
      () => [
        {
          cells: 1,
          queue: ({ workbook: { worksheets } }) => {
            const sheet = worksheets.getItemOrNullObject(name)
            sheet.load('name')
            sheet.protection.load('protected')
            before = sheet
          },
        },
      ],
    ],
    check: () => {
      const isThere = before?.isNullObject === false
      if (kind === 'new' && isThere) throw nameTaken(name)
      if (isThere && before?.protection.protected === true) throw protectedSheet(name)
    },
    write: () => [
      {
        cells: 1,
        endsUndo: kind === 'spare',
        queue: ({ workbook: { worksheets } }) => {
          const sheet = kind === 'new' ? worksheets.add(name) : worksheets.getItem(name)
          if (kind === 'spare') sheet.visibility = 'Visible'
          plan.widths.forEach((characters, column) => {
            columnOf(sheet, column).format.columnWidth = pointsFor(characters)
          })
        },
      },
      ...textsOf(name, plan),
      formatsOf(name, plan),
    ],
    look: [
      () => [
        {
          cells: plan.rows.length * width,
          queue: (context) => {
            const { worksheets } = context.workbook
            const sheet = worksheets.getItemOrNullObject(name)
            now = {
              sheet,
              used: sheet.getUsedRangeOrNullObject(true),
              front: worksheets.getItemOrNullObject(front.id),
            }
            now.sheet.load('name')
            now.used.load('rowIndex, columnIndex, values')
            now.front.load('name')
          },
        },
      ],
    ],
    putBack: () => {
      if (!now || now.sheet.isNullObject) return []
      stays = !now.used.isNullObject && isChanged(plan, now.used)
      return stays ? [] : [takeOff(name, all, kind, now.front.isNullObject ? null : front)]
    },
    left: () => (stays ? [`The sheet ${name} has been changed since, so it stayed.`] : []),
  }
}

function isChanged({ rows }: MarksheetPlan, { rowIndex, columnIndex, values }: Excel.Range): boolean {
  return (values as unknown[][]).some((line, i) =>
    line.some((value, j) => value !== '' && value !== (rows[rowIndex + i]?.[columnIndex + j] ?? '')),
  )
}

function takeOff(name: string, all: Area, kind: Place['kind'], front: SheetRef | null): Part {
  return {
    cells: 1,
    endsUndo: kind !== 'front',
    queue: ({ workbook: { worksheets } }) => {
      const sheet = worksheets.getItem(name)
      sheet.freezePanes.unfreeze()
      sheet.getRange(areaAddress(all)).clear('All')
      for (let column = 0; column <= all.right; column++)
        columnOf(sheet, column).format.columnWidth = STANDARD_WIDTH
      if (kind === 'front') return
      if (front) worksheets.getItem(front.id).activate()
      sheet.visibility = 'Hidden'
    },
  }
}

/** The texts from A1 on; below the head as far right as any stands. Cells without a text, those for answers, are left as they are. */
function textsOf(name: string, { rows, head }: MarksheetPlan): Part[] {
  const above = rows.slice(0, head + 1).map((row) => row.map(passed))
  const right = Math.max(...rows.slice(head + 1).map((row) => row.findLastIndex((text) => text !== '')))
  const below = rows
    .slice(head + 1)
    .map((row) => row.slice(0, right + 1).map((text) => (text === '' ? null : passed(text))))
  const block = (top: number, values: (string | number | null)[][]): Part => {
    const area = { top, left: 0, bottom: top + values.length - 1, right: (values[0]?.length ?? 1) - 1 }
    return {
      cells: values.length * (values[0]?.length ?? 1),
      queue: (context) => {
        context.workbook.worksheets.getItem(name).getRange(areaAddress(area)).values = values
      },
    }
  }
  return [
    block(0, above),
    ...pieces(0, below.length - 1, Math.max(1, Math.floor(CELLS_PER_REQUEST / (right + 1)))).map(
      ({ first, last }) => block(head + 1 + first, below.slice(first, last + 1)),
    ),
  ]
}

function formatsOf(name: string, { head, answers, widths }: MarksheetPlan): Part {
  return {
    cells: 1,
    queue: (context) => {
      const sheet = context.workbook.worksheets.getItem(name)
      const row = (index: number, right: number) =>
        sheet.getRange(areaAddress({ top: index, left: 0, bottom: index, right }))
      const { font } = row(0, 0).format
      font.bold = true
      font.size = TITLE_SIZE
      row(1, 0).format.font.italic = true
      row(1, 0).format.font.color = NOTE_INK
      const heads = row(head, widths.length - 1).format
      heads.font.bold = true
      heads.fill.color = HEAD_FILL
      heads.wrapText = true
      heads.verticalAlignment = 'Center'
      const below = sheet.getRange(areaAddress({ ...answers, top: head }))
      below.format.horizontalAlignment = 'Center'
      const typed = sheet.getRange(areaAddress(answers))
      typed.numberFormat = Array.from({ length: answers.bottom - answers.top + 1 }, () =>
        Array.from({ length: answers.right - answers.left + 1 }, () => 'General'),
      )
      sheet.freezePanes.freezeAt(row(0, 0).getResizedRange(head, 0))
      sheet.activate()
      typed.getCell(0, 0).select()
    },
  }
}

function columnOf(sheet: Excel.Worksheet, column: number): Excel.Range {
  const letters = columnLetters(column)
  return sheet.getRange(`${letters}:${letters}`)
}

/** The width of a column that nobody has set: 8.43 characters. */
const STANDARD_WIDTH = 48
