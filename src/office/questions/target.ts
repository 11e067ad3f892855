import type { CellValue } from '../../answers/typed'
import { KEY_NAME, readAnswerKey, type KeyRow } from '../../marksheet/setting/answerKey'
import { OWN_SHEET } from '../../marksheet/layout/find'
import { addressOf, isEmpty, type Area, type Matrix } from '../../marksheet/layout/matrix'
import { addressArea } from '../edit/address'
import type { SheetRef } from '../edit/cells'
import { problemOf } from '../edit/errors'
import { ownSheetFor } from '../workbook/ownSheet'
import type { SheetEntry } from '../workbook/read'
import { RECORD_SHEET } from '../record/record'
import { askAll, UNWATCHED, type Part, type Work } from '../edit/work'

/** What is known of the workbook when a set is to be written. */
export interface SetBook {
  /** The sheet in front; `untouched` where nothing on it was ever filled or formatted. */
  readonly front: SheetRef & { readonly untouched: boolean }
  /** Every sheet; `own` and `filled` are known of the Record and Answer key sheets. */
  readonly sheets: readonly SheetEntry[]
  /** The hidden sheets on which nothing is filled or formatted. */
  readonly spare: readonly SheetRef[]
  /** What the Answer key holds. */
  readonly key: readonly KeyRow[]
  /** The upper left part of the sheet in front, or of the one asked for, where names are looked for. */
  readonly source: SheetRef & { readonly matrix: Matrix }
}

/** Part of a sheet in which names are looked for: 18,200 cells. */
const NAMES_PART = 'A1:Z700'

/** Reads the workbook for writing a set, with names from the sheet in front or the one with the id, in two requests. Throws Problem. */
export async function readSetBook(
  sourceId?: string,
  work: Work = UNWATCHED,
  besides: readonly Part[] = [],
): Promise<SetBook> {
  try {
    const outline = askOutline()
    await askAll([outline, ...besides], work, 'Reading')
    const { front, sheets } = outline.answer()
    const own = sheets.filter(({ name }) => isNumbered(name)).map(askOwn)
    const hidden = sheets.filter(({ visible }) => !visible).map(askFilled)
    const source = sheets.find(({ id }) => id === (sourceId ?? front.id)) ?? {
      id: sourceId ?? front.id,
      name: front.name,
    }
    const names = askCells(source)
    await askAll([...own, ...hidden, names], work, 'Reading')
    const known = new Map(own.map((each) => [each.sheet.id, each.answer()]))
    const entries = sheets.map((sheet): SheetEntry => {
      const { isOwn = false, filled = null } = known.get(sheet.id) ?? {}
      return { ...sheet, own: isOwn, filled }
    })
    const { present } = ownSheetFor(KEY_NAME, entries)
    const held = present ? known.get(present.id) : undefined
    return {
      front,
      sheets: entries,
      spare: hidden.flatMap((each) => (each.answer() ? [] : [each.sheet])),
      key: held?.isOwn === true ? readAnswerKey({ name: KEY_NAME, values: held.values }) : [],
      source: { ...source, matrix: { name: source.name, values: names.answer() } },
    }
  } catch (error) {
    throw problemOf(error)
  }
}

function isNumbered(name: string): boolean {
  return [KEY_NAME, RECORD_SHEET].some(
    (own) => name.replace(/ \(\d+\)$/, '').toLowerCase() === own.toLowerCase(),
  )
}

type SheetName = Pick<SheetEntry, 'id' | 'name' | 'visible'>

function askOutline(): Part & { answer(): { front: SetBook['front']; sheets: SheetName[] } } {
  let loaded: { all: Excel.WorksheetCollection; front: Excel.Worksheet; used: Excel.Range } | undefined
  return {
    cells: 1,
    queue: ({ workbook: { worksheets } }) => {
      const front = worksheets.getActiveWorksheet()
      loaded = { all: worksheets, front, used: front.getUsedRangeOrNullObject(false) }
      loaded.all.load('items/id, items/name, items/visibility')
      loaded.front.load('id, name')
      loaded.used.load('address')
    },
    answer: () => {
      if (!loaded) throw new RangeError('The outline was not asked for.')
      const { all, front, used } = loaded
      return {
        front: { id: front.id, name: front.name, untouched: used.isNullObject },
        sheets: all.items.map(({ id, name, visibility }) => ({
          id,
          name,
          visible: visibility === 'Visible',
        })),
      }
    },
  }
}

interface Held {
  readonly isOwn: boolean
  readonly filled: Area | null
  readonly values: CellValue[][]
}

/** Asks what a sheet holds that may be ours; of the Record sheet only how far it is filled. */
function askOwn(sheet: SheetName): Part & { readonly sheet: SheetName; answer(): Held } {
  const isKey = sheet.name.toLowerCase().startsWith(KEY_NAME.toLowerCase())
  let loaded: { first: Excel.Range; used: Excel.Range } | undefined
  return {
    sheet,
    cells: 1,
    queue: (context) => {
      const asked = context.workbook.worksheets.getItem(sheet.id)
      loaded = { first: asked.getRange('A1'), used: asked.getUsedRangeOrNullObject(true) }
      loaded.first.load('values')
      loaded.used.load(isKey ? 'address, values' : 'address')
    },
    answer: () => {
      const isOwn = String(loaded?.first.values[0]?.[0]).startsWith(OWN_SHEET)
      if (!loaded || !isOwn) return { isOwn: false, filled: null, values: [] }
      const filled = { ...addressArea(loaded.used.address), top: 0, left: 0 }
      return { isOwn, filled, values: isKey ? (loaded.used.values as CellValue[][]) : [] }
    },
  }
}

/** Asks whether anything on a sheet is filled or formatted. */
function askFilled(sheet: SheetName): Part & { readonly sheet: SheetName; answer(): boolean } {
  let loaded: { used: Excel.Range } | undefined
  return {
    sheet,
    cells: 1,
    queue: (context) => {
      loaded = { used: context.workbook.worksheets.getItem(sheet.id).getUsedRangeOrNullObject(false) }
      loaded.used.load('address')
    },
    answer: () => loaded?.used.isNullObject === false,
  }
}

/** Asks for the values of the part of a sheet that may hold names, as rows from A1 on. */
function askCells({ id }: SheetRef): Part & { answer(): CellValue[][] } {
  let loaded: { used: Excel.Range } | undefined
  return {
    cells: 1,
    queue: (context) => {
      const part = context.workbook.worksheets.getItem(id).getRange(NAMES_PART)
      loaded = { used: part.getUsedRangeOrNullObject(true) }
      loaded.used.load('address, values')
    },
    answer: () => {
      if (!loaded || loaded.used.isNullObject) return []
      const { top, left } = addressArea(loaded.used.address)
      const blank = (count: number) => Array.from({ length: count }, (): CellValue => '')
      const rows = (loaded.used.values as CellValue[][]).map((row) => [...blank(left), ...row])
      return [...Array.from({ length: top }, () => blank(0)), ...rows]
    },
  }
}

/** Cells that questions are to be written into, and those of them that hold something, with what they show. */
export interface Target {
  readonly sheet: SheetRef
  readonly area: Area
  readonly isOwn: boolean
  readonly taken: readonly { readonly address: string; readonly value: unknown }[]
}

export type Direction = 'across' | 'down'

/** Asks for the cells from the selected one on, across or down. */
export function askTarget(count: number, direction: Direction): Part & { answer(): Target } {
  const across = direction === 'across'
  let loaded: { sheet: Excel.Worksheet; cells: Excel.Range; first: Excel.Range } | undefined
  return {
    cells: count,
    queue: ({ workbook }) => {
      const sheet = workbook.worksheets.getActiveWorksheet()
      const cells = workbook.getActiveCell().getResizedRange(across ? 0 : count - 1, across ? count - 1 : 0)
      loaded = { sheet, cells, first: sheet.getRange('A1') }
      loaded.sheet.load('id, name')
      loaded.cells.load('values, rowIndex, columnIndex')
      loaded.first.load('values')
    },
    answer: () => {
      if (!loaded) throw new RangeError('The cells were not asked for.')
      const { sheet, cells, first } = loaded
      const { rowIndex: top, columnIndex: left } = cells
      const values = cells.values as CellValue[][]
      return {
        sheet: { id: sheet.id, name: sheet.name },
        area: { top, left, bottom: across ? top : top + count - 1, right: across ? left + count - 1 : left },
        isOwn: String(first.values[0]?.[0]).startsWith(OWN_SHEET),
        taken: values.flatMap((row, i) =>
          row.flatMap((value, j) =>
            isEmpty(value) ? [] : [{ address: addressOf({ row: top + i, column: left + j }), value }],
          ),
        ),
      }
    },
  }
}
