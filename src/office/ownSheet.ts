import { areaAddress, columnLetters, type Area, type CellRef } from '../marksheet/matrix'
import { runs, type TableSheet } from '../marksheet/plan'
import { pointsFor } from './columnWidth'
import { passed, passedBack } from './content'
import type { Edit } from './edit'
import type { SheetEntry } from './read'
import { CELLS_PER_REQUEST, pieces, type Part } from './work'

/** The sheet onto which a table goes: of its own name where that is free or holds a sheet of ours, else of a numbered one. */
export function ownSheetFor(
  name: string,
  sheets: readonly SheetEntry[],
): { readonly name: string; readonly present: SheetEntry | null } {
  for (let number = 1; ; number++) {
    const wanted = number === 1 ? name : `${name} (${number})`
    const present = sheets.find((sheet) => sheet.name.toLowerCase() === wanted.toLowerCase()) ?? null
    if (present === null || present.own) return { name: present?.name ?? wanted, present }
  }
}

/** A cell as it is passed, with its look; `fill` is #RRGGBB. */
interface LaidCell {
  readonly passed: unknown
  readonly bold: boolean
  readonly fill: string | null
}

/**
 * Lays out a sheet of our own anew, or adds it behind the others. Taking back gives a sheet that was there what it held. One that was
 * added is emptied but for its title and hidden, not deleted: deleting would clear Excel's own list of what can be undone. The next time
 * it is used again.
 */
export function ownSheetEdit(table: TableSheet, sheets: readonly SheetEntry[]): Edit {
  const { name, present } = ownSheetFor(table.name, sheets)
  const filled = present?.filled ?? null
  const keepers = filled ? rowPieces(filled).map((area) => new Keeper(name, area)) : []
  let found: Excel.Worksheet | undefined
  const sheetOf = (context: Excel.RequestContext) => context.workbook.worksheets.getItem(name)
  const clear = (sheet: Excel.Worksheet, height: number, width: number) => {
    const bottom = Math.max(height - 1, filled?.bottom ?? 0)
    const right = Math.max(width - 1, filled?.right ?? 0)
    sheet.getRange(areaAddress({ top: 0, left: 0, bottom, right })).clear('All')
  }
  const height = table.rows.length
  const width = Math.max(1, ...table.rows.map((row) => row.length))
  const laid = table.rows.map((row) =>
    Array.from({ length: width }, (_, column): LaidCell => {
      const { text = '', bold = false, fill = null } = row[column] ?? {}
      return { passed: passed(text), bold, fill: fill === null ? null : `#${fill}` }
    }),
  )
  return {
    what: `the sheet ${name}`,
    keep: [() => keepers.map((keeper) => keeper.part())],
    check: () => undefined,
    write: () => [
      {
        cells: 1,
        queue: (context) => {
          const sheet = present ? sheetOf(context) : context.workbook.worksheets.add(name)
          if (present) clear(sheet, height, width)
          sheet.visibility = 'Visible'
          sheet.showGridlines = false
          table.widths.forEach((characters, column) => {
            const letters = columnLetters(column)
            sheet.getRange(`${letters}:${letters}`).format.columnWidth = pointsFor(characters)
          })
        },
      },
      ...layOut(sheetOf, laid, wrapped(table)),
    ],
    look: [
      () => [
        {
          cells: 1,
          queue: (context) => {
            const sheet = context.workbook.worksheets.getItemOrNullObject(name)
            sheet.load('name')
            found = sheet
          },
        },
      ],
    ],
    putBack: () => {
      if (found === undefined || found.isNullObject) return []
      const kept = keepers.flatMap((keeper) => keeper.cells())
      const before = present ? kept : laid.slice(0, 1)
      return [
        {
          cells: 1,
          queue: (context) => {
            const sheet = sheetOf(context)
            clear(sheet, height, width)
            if (present?.visible !== true) sheet.visibility = 'Hidden'
          },
        },
        ...layOut(sheetOf, before, []),
      ]
    },
    left: () => [],
  }
}

/** Reads what a part of a sheet of ours holds, so that it can be laid out again. */
class Keeper {
  #range: Excel.Range | undefined
  #looks: OfficeExtension.ClientResult<Excel.CellProperties[][]> | undefined

  constructor(
    private readonly sheet: string,
    private readonly area: Area,
  ) {}

  part(): Part {
    return {
      cells: cellsIn(this.area),
      queue: (context) => {
        const range = context.workbook.worksheets.getItem(this.sheet).getRange(areaAddress(this.area))
        range.load('values, formulas')
        this.#looks = range.getCellProperties({ format: { fill: { color: true }, font: { bold: true } } })
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
        const { fill, font } = this.#looks?.value[i]?.[j]?.format ?? {}
        return {
          passed: passedBack(value, formulas[i]?.[j]),
          bold: font?.bold === true,
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

/** Parts that write rows from A1 on, bold and filled where they are; `wrapping` are the cells whose text runs over several lines. */
function layOut(
  sheetOf: (context: Excel.RequestContext) => Excel.Worksheet,
  rows: readonly (readonly LaidCell[])[],
  wrapping: readonly CellRef[],
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
        for (const block of runs(cells)) set(sheet.getRange(areaAddress(block)).format)
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
        wrapping.filter(({ row }) => row >= piece.top && row <= piece.bottom),
        (cells) => {
          cells.wrapText = true
        },
      )
    },
  }))
}

/** The cells of a table below its title that stand beside others. */
function wrapped({ rows }: TableSheet): CellRef[] {
  return rows.flatMap((cells, row) =>
    row > 0 && cells.length > 1 ? cells.map((_, column) => ({ row, column })) : [],
  )
}
