import { areaAddress, columnLetters, type Area, type CellRef } from '../../marksheet/layout/matrix'
import { areasOf } from '../../marksheet/marking/areas'
import type { TableSheet } from '../../marksheet/marking/plan'
import { isSameSheet, numberedName } from '../../marksheet/setting/sheetNames'
import { pointsFor } from '../edit/columnWidth'
import { passed, passedBack } from '../edit/content'
import type { Edit } from '../edit/edit'
import { nameTaken, protectedSheet } from '../edit/errors'
import { SheetPresence } from '../edit/sheetPresence'
import type { SheetEntry } from './read'
import { CELLS_PER_REQUEST, pieces, type Part } from '../edit/work'

/** The sheet onto which a table goes: of its own name where that is free or holds a sheet of ours, else of a numbered one. */
export function ownSheetFor(
  name: string,
  sheets: readonly SheetEntry[],
): { readonly name: string; readonly present: SheetEntry | null } {
  for (let number = 1; ; number++) {
    const wanted = numberedName(name, number)
    const present = sheets.find((sheet) => isSameSheet(sheet.name, wanted)) ?? null
    if (present === null || present.own) return { name: present?.name ?? wanted, present }
  }
}

/** A cell as it is to be, with its look; `passed` as the client library takes it, `fill` is #RRGGBB. */
interface LaidCell {
  readonly content: unknown
  readonly passed: unknown
  readonly bold: boolean
  readonly wrap: boolean
  readonly fill: string | null
}

/**
 * An edit that lays out a sheet. `key` is the sheet's id, or its name where it is only to be added; `stays` says, once `look` has been asked,
 * whether somebody has changed it since, so that it is left as it is.
 */
export interface SheetEdit extends Edit {
  key(): string
  stays(): boolean
}

/**
 * Lays out a sheet of our own anew, or adds it behind the others; `besides` are cells that other edits fill. Taking back gives a sheet that
 * was there what it held. One that was added is emptied but for its title and hidden, not deleted: deleting clears Excel's own list of what
 * can be undone everywhere, hiding on Windows and Mac. The next time it is used again. Where something else has been typed on it since, it stays.
 */
export function ownSheetEdit(
  table: TableSheet,
  sheets: readonly SheetEntry[],
  besides: Area | null = null,
): SheetEdit {
  const { name, present } = ownSheetFor(table.name, sheets)
  const filled = present?.filled ?? null
  const laid = laidCells(table)
  const extent = {
    top: 0,
    left: 0,
    bottom: Math.max(laid.length - 1, filled?.bottom ?? 0),
    right: Math.max((laid[0]?.length ?? 1) - 1, filled?.right ?? 0),
  }
  const state = new SheetPresence(present?.id ?? name)
  const { key } = state
  const keepers = filled ? rowPieces(filled).map((area) => new Keeper(key, area)) : []
  const lookers = rowPieces(extent).map((area) => new Keeper(key, area))
  const sheetOf = (context: Excel.RequestContext) => context.workbook.worksheets.getItem(key())
  const clear = (sheet: Excel.Worksheet) => {
    sheet.getRange(areaAddress(extent)).clear('All')
  }
  const kept = () => keepers.flatMap((keeper) => keeper.cells())
  const now = () => lookers.flatMap((looker) => looker.cells())
  const stays = () => state.isThere() && isChanged(now(), [laid, kept()], besides)
  const isAsBefore = () => present?.visible === state.isVisible() && isSame(now(), kept())
  return {
    what: `the sheet ${name}`,
    keep: [() => [state.presence(), ...keepers.map((keeper) => keeper.part())]],
    check: () => {
      if (present === null && state.isThere()) throw nameTaken(name)
      if (state.isProtected()) throw protectedSheet(name)
    },
    write: () => [
      {
        cells: 1,
        endsUndo: present?.visible === false,
        queue: (context) => {
          const sheet = present ? sheetOf(context) : context.workbook.worksheets.add(name)
          if (present) clear(sheet)
          if (present?.visible === false) sheet.visibility = 'Visible'
          sheet.showGridlines = false
          table.widths.forEach((characters, column) => {
            const letters = columnLetters(column)
            sheet.getRange(`${letters}:${letters}`).format.columnWidth = pointsFor(characters)
          })
        },
      },
      ...layOut(sheetOf, laid),
      state.added(),
    ],
    look: [() => [state.presence()], () => (state.isThere() ? lookers.map((looker) => looker.part()) : [])],
    putBack: () => {
      if (!state.isThere() || stays() || isAsBefore()) return []
      const hide = present?.visible !== true && state.isVisible()
      return [
        {
          cells: 1,
          endsUndo: hide,
          queue: (context) => {
            const sheet = sheetOf(context)
            clear(sheet)
            if (hide) sheet.visibility = 'Hidden'
          },
        },
        ...layOut(sheetOf, present ? kept() : laid.slice(0, 1)),
      ]
    },
    left: () => (stays() ? [`The sheet ${name} has been changed since, so it stayed.`] : []),
    key,
    stays,
  }
}

/** Whether cells hold something that is neither ours nor what was there before. */
function isChanged(
  now: readonly (readonly LaidCell[])[],
  known: readonly (readonly (readonly LaidCell[])[])[],
  besides: Area | null,
): boolean {
  const isBeside = (row: number, column: number) =>
    besides !== null &&
    row >= besides.top &&
    row <= besides.bottom &&
    column >= besides.left &&
    column <= besides.right
  return now.some((cells, row) =>
    cells.some(
      ({ content }, column) =>
        content !== '' &&
        !isBeside(row, column) &&
        !known.some((each) => String(each[row]?.[column]?.content ?? '') === String(content)),
    ),
  )
}

/** Whether cells hold and look the same; what is beyond the smaller block counts as plain. */
function isSame(some: readonly (readonly LaidCell[])[], others: readonly (readonly LaidCell[])[]): boolean {
  return some.every((cells, row) =>
    cells.every(({ content, bold, wrap, fill }, column) => {
      const other = others[row]?.[column] ?? PLAIN
      return content === other.content && bold === other.bold && wrap === other.wrap && fill === other.fill
    }),
  )
}

const PLAIN: LaidCell = { content: '', passed: '', bold: false, wrap: false, fill: null }

/** The cells of a table as they are laid out; those below its title that stand beside others run over several lines. */
function laidCells({ rows }: TableSheet): LaidCell[][] {
  const width = rows.reduce((most, row) => Math.max(most, row.length), 1)
  return rows.map((cells, row) =>
    Array.from({ length: width }, (_, column) => {
      const { text = '', bold = false, fill = null } = cells[column] ?? {}
      const wrap = row > 0 && cells.length > 1 && column < cells.length
      return { content: text, passed: passed(text), bold, wrap, fill: fill === null ? null : `#${fill}` }
    }),
  )
}

/** Reads what a part of a sheet of ours holds, so that it can be laid out again, or compared. */
class Keeper {
  #range: Excel.Range | undefined
  #looks: OfficeExtension.ClientResult<Excel.CellProperties[][]> | undefined

  constructor(
    private readonly key: () => string,
    private readonly area: Area,
  ) {}

  part(): Part {
    return {
      cells: cellsIn(this.area),
      queue: (context) => {
        const range = context.workbook.worksheets.getItem(this.key()).getRange(areaAddress(this.area))
        range.load('values, formulas')
        this.#looks = range.getCellProperties({
          format: { fill: { color: true }, font: { bold: true }, wrapText: true },
        })
        this.#range = range
      },
    }
  }

  cells(): LaidCell[][] {
    const { values = [], formulas = [] } = (this.#range ?? {}) as {
      values?: unknown[][]
      formulas?: unknown[][]
    }
    return values.map((row, i) =>
      row.map((value, j) => {
        const { fill, font, wrapText } = this.#looks?.value[i]?.[j]?.format ?? {}
        return {
          content: value,
          passed: passedBack(value, formulas[i]?.[j]),
          bold: font?.bold === true,
          wrap: wrapText === true,
          fill: fill?.color && !/^#f{6}$/i.test(fill.color) ? fill.color : null,
        }
      }),
    )
  }
}

const cellsIn = ({ top, left, bottom, right }: Area) => (bottom - top + 1) * (right - left + 1)

function rowPieces(area: Area): Area[] {
  const most = Math.max(1, Math.floor(CELLS_PER_REQUEST / (area.right - area.left + 1)))
  return pieces(area.top, area.bottom, most).map(({ first, last }) => ({ ...area, top: first, bottom: last }))
}

/** Parts that write rows from A1 on with their looks. */
function layOut(
  sheetOf: (context: Excel.RequestContext) => Excel.Worksheet,
  rows: readonly (readonly LaidCell[])[],
): Part[] {
  const width = rows[0]?.length ?? 0
  if (width === 0) return []
  const area = { top: 0, left: 0, bottom: rows.length - 1, right: width - 1 }
  return rowPieces(area).map((piece) => ({
    cells: cellsIn(piece),
    queue: (context) => {
      const sheet = sheetOf(context)
      const own = rows.slice(piece.top, piece.bottom + 1)
      const written = sheet.getRange(areaAddress(piece))
      written.values = own.map((row) => row.map((cell) => cell.passed))
      written.format.verticalAlignment = 'Top'
      const refs = own.flatMap((row, i) =>
        row.map((cell, column) => ({ ...cell, row: piece.top + i, column })),
      )
      const format = (cells: readonly CellRef[], set: (format: Excel.RangeFormat) => void) => {
        for (const block of areasOf(cells)) set(sheet.getRange(areaAddress(block)).format)
      }
      format(
        refs.filter(({ bold }) => bold),
        ({ font }) => {
          font.bold = true
        },
      )
      for (const colour of new Set(refs.flatMap(({ fill }) => fill ?? [])))
        format(
          refs.filter(({ fill }) => fill === colour),
          ({ fill }) => {
            fill.color = colour
          },
        )
      format(
        refs.filter(({ wrap }) => wrap),
        (cells) => {
          cells.wrapText = true
        },
      )
    },
  }))
}
