import { gridOf, type PaperLine } from '../../lesson/model/grid'
import type { Notation } from '../../lesson/model/notation'
import { finishedPaper } from '../../lesson/model/paper'
import type { Question } from '../../arithmetic/question'
import { addressOf, areaAddress, type Area, type CellRef } from '../../marksheet/layout/matrix'
import { cellsEdit, type SheetRef } from '../edit/cells'
import { perform, type Done, type Edit } from '../edit/edit'
import { problemOf, protectedSheet } from '../edit/errors'
import { UNWATCHED, type Part, type Work } from '../edit/work'

/** A written layout, where it goes: its sheet, its cells, and the addresses of those that are not empty. */
export interface LayoutPlace {
  readonly lines: readonly PaperLine[]
  readonly sheet: SheetRef
  readonly area: Area
  readonly taken: readonly string[]
}

/** The finished layout of a question and its place from the selected cell on, to the right and down. Throws Problem. */
export async function layoutPlace(question: Question, notation: Notation): Promise<LayoutPlace> {
  const lines = gridOf(finishedPaper(question, notation))
  try {
    return await Excel.run(async (context) => {
      const first = context.workbook.getActiveCell()
      const sheet = context.workbook.worksheets.getActiveWorksheet()
      const range = first.getResizedRange(lines.length - 1, (lines[0]?.cells.length ?? 1) - 1)
      const { protection } = sheet
      sheet.load('id, name')
      protection.load('protected')
      range.load('values, rowIndex, columnIndex, rowCount, columnCount')
      await context.sync()
      if (protection.protected) throw protectedSheet(sheet.name)
      const { rowIndex: top, columnIndex: left } = range
      const values = range.values as unknown[][]
      return {
        lines,
        sheet: { id: sheet.id, name: sheet.name },
        area: { top, left, bottom: top + range.rowCount - 1, right: left + range.columnCount - 1 },
        taken: values.flatMap((row, i) =>
          row.flatMap((value, j) => (value === '' ? [] : [addressOf({ row: top + i, column: left + j })])),
        ),
      }
    })
  } catch (error) {
    throw problemOf(error)
  }
}

/**
 * Writes a finished written layout into cells: digits as numbers, the signs and the point as texts, small marks,
 * crossed-out digits and the answer lines. `over`: whether cells that are not empty may be written over; otherwise they are refused.
 * Throws Problem.
 */
export async function insertLayout(
  { lines, sheet, area }: LayoutPlace,
  over: boolean,
  work: Work = UNWATCHED,
): Promise<Done> {
  const rows = lines.map(({ cells }) => cells.map(({ text }) => (/^\d+$/.test(text) ? Number(text) : text)))
  const free = over
    ? {}
    : { isFree: (value: unknown, formula: unknown) => (value === '' || value === null) && !formula }
  return perform(
    `layout in ${areaAddress(area)}`,
    [cellsEdit(sheet, [{ top: area.top, left: area.left, rows }], free), looksEdit(sheet, area, lines)],
    work,
  )
}

const SMALL = 9
const SIDES = ['EdgeTop', 'EdgeBottom'] as const

/** Centres the digits, makes marks small, crosses out what was replaced, and rules a line above and below the answer. */
function looksEdit(sheet: SheetRef, area: Area, rows: readonly PaperLine[]): Edit {
  const letters = new Letters(sheet, area, rows)
  const at = area.top + rows.findIndex(({ kind }) => kind === 'answer')
  const lines = cellsOf({ ...area, top: at, bottom: at }).flatMap((cell) =>
    SIDES.map((side) => new Line(sheet, cell, side)),
  )
  return {
    what: `the look of cells ${areaAddress(area)} on ${sheet.name}`,
    keep: [() => [letters.keep(), ...lines.map((line) => line.keep())]],
    check: () => undefined,
    write: () => [letters.write(), ...lines.map((line) => line.write())],
    look: [() => [letters.look(), ...lines.map((line) => line.look())]],
    putBack: () => [...letters.putBack(), ...lines.flatMap((line) => line.putBack())],
    left: () => [],
  }
}

function cellsOf({ top, left, bottom, right }: Area): CellRef[] {
  return Array.from({ length: bottom - top + 1 }, (_, i) =>
    Array.from({ length: right - left + 1 }, (__, j) => ({ row: top + i, column: left + j })),
  ).flat()
}

/** Something about some cells of a sheet. */
function part(sheet: SheetRef, area: Area, queue: (range: Excel.Range) => void): Part {
  return {
    cells: (area.bottom - area.top + 1) * (area.right - area.left + 1),
    queue: (context) => {
      queue(context.workbook.worksheets.getItem(sheet.id).getRange(areaAddress(area)))
    },
  }
}

/** How the letters of the layout stand in their cells. */
class Letters {
  #before: OfficeExtension.ClientResult<Excel.CellProperties[][]> | undefined
  #now: OfficeExtension.ClientResult<Excel.CellProperties[][]> | undefined

  constructor(
    private readonly sheet: SheetRef,
    private readonly area: Area,
    private readonly rows: readonly PaperLine[],
  ) {}

  keep(): Part {
    return this.#asked((properties) => {
      this.#before = properties
    })
  }

  look(): Part {
    return this.#asked((properties) => {
      this.#now = properties
    })
  }

  write(): Part {
    return part(this.sheet, this.area, (range) => {
      range.setCellProperties(
        this.rows.map(({ kind, cells }) => cells.map(({ crossed }) => properties(kind, crossed))),
      )
    })
  }

  /** Nothing to do where the letters stand as they did. */
  putBack(): Part[] {
    const [before, now] = [this.#before?.value, this.#now?.value]
    if (!before || JSON.stringify(before) === JSON.stringify(now)) return []
    return [
      part(this.sheet, this.area, (range) => {
        range.setCellProperties(before.map((row) => row.map(({ format = {} }) => ({ format }))))
      }),
    ]
  }

  #asked(take: (properties: OfficeExtension.ClientResult<Excel.CellProperties[][]>) => void): Part {
    return part(this.sheet, this.area, (range) => {
      take(
        range.getCellProperties({
          format: { font: { size: true, strikethrough: true }, horizontalAlignment: true },
        }),
      )
    })
  }
}

function properties(kind: PaperLine['kind'], crossed: boolean): Excel.SettableCellProperties {
  const isSmall = kind === 'mark' || kind === 'carried'
  const font = { strikethrough: crossed, ...(isSmall ? { size: SMALL } : {}) }
  return { format: { font, horizontalAlignment: 'Center' } }
}

/** A line on one side of a cell. */
class Line {
  readonly #area: Area
  #before: Excel.RangeBorder | undefined
  #now: Excel.RangeBorder | undefined

  constructor(
    private readonly sheet: SheetRef,
    { row, column }: CellRef,
    private readonly side: (typeof SIDES)[number],
  ) {
    this.#area = { top: row, left: column, bottom: row, right: column }
  }

  keep(): Part {
    return this.#border((border) => {
      this.#before = loaded(border)
    })
  }

  look(): Part {
    return this.#border((border) => {
      this.#now = loaded(border)
    })
  }

  write(): Part {
    return this.#border((border) => {
      border.style = 'Continuous'
      border.weight = 'Medium'
    })
  }

  /** Nothing to do where the line is as it was. */
  putBack(): Part[] {
    const [before, now] = [this.#before, this.#now]
    if (
      !before ||
      (before.style === now?.style && before.weight === now.weight && before.color === now.color)
    )
      return []
    return [
      this.#border((border) => {
        border.style = before.style
        if (before.style === 'None') return
        border.weight = before.weight
        border.color = before.color
      }),
    ]
  }

  #border(queue: (border: Excel.RangeBorder) => void): Part {
    return part(this.sheet, this.#area, (range) => {
      queue(range.format.borders.getItem(this.side))
    })
  }
}

function loaded(border: Excel.RangeBorder): Excel.RangeBorder {
  border.load('style, weight, color')
  return border
}
