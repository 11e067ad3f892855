import { isDeepStrictEqual } from 'node:util'
import type { Bench } from '../../src/bench/bench'
import { cellArea, eachCell } from '../../src/bench/grid/area'
import { PLAIN, type CellFormat } from '../../src/bench/grid/grid'
import { OWN_SHEET } from '../../src/marksheet/layout/find'

/** The rows and columns that are looked at for being hidden. */
const FIRST = Array.from({ length: 60 }, (_, index) => index)

/**
 * All that a workbook's sheets hold and look like, without the ids that Excel gives, for comparing before and after. Hidden sheets of ours
 * that hold nothing but their title are left out: that is how an added sheet is taken back.
 */
export function pictureOf({ grid, book }: Bench) {
  const sheets = grid.sheets().filter(({ id, visible }) => visible || !isEmptied(grid, id))
  return {
    settings: Object.fromEntries(book.settings),
    sheets: sheets.map(({ id, name, visible }) => {
      const facts = book.sheet(id)
      const used = grid.used(id, false)
      const cells: Record<string, unknown> = {}
      const formats: Record<string, unknown> = {}
      if (used)
        eachCell(used, (row, col) => {
          const cell = cellArea(row, col)
          const [held, shown] = [grid.formulas(id, cell), grid.values(id, cell)].map((rows) => rows[0]?.[0])
          if (held !== '' || shown !== '') cells[`${row},${col}`] = [held, shown]
          const look = Object.entries(withoutNoLines(grid.format(id, row, col))).filter(
            ([trait, value]) => !isDeepStrictEqual(value, PLAIN[trait as keyof CellFormat]),
          )
          const isBlank = held === '' && look.every(([trait]) => trait === 'vertical')
          if (!isBlank) formats[`${row},${col}`] = Object.fromEntries(look)
        })
      return {
        name,
        visible,
        cells,
        formats,
        hidden: [
          FIRST.filter((row) => grid.rowHidden(id, row)),
          FIRST.filter((col) => grid.columnHidden(id, col)),
        ],
        widths: Array.from({ length: 30 }, (_, col) => grid.columnWidth(id, col)),
        frozen: grid.frozen(id),
        merges: grid.merges(id),
        rules: grid.conditionalFormats(id).map(({ areas, formula, style }) => ({ areas, formula, style })),
        tables: book.tables
          .filter((table) => table.sheetId === id)
          .map(({ area, style, showHeaders }) => ({ area, style, showHeaders })),
        charts: facts.charts.map(withoutId),
        shapes: facts.shapes.map(withoutId),
        comments: facts.comments.toSorted((a, b) => a.row - b.row || a.col - b.col).map(withoutId),
        protection: facts.protection,
      }
    }),
  }
}

/** A line that is set to none is no line. */
function withoutNoLines(format: CellFormat): CellFormat {
  const lines = Object.entries(format.borders).filter(([, line]) => line.style !== 'None')
  return { ...format, borders: Object.fromEntries(lines) }
}

function isEmptied(grid: Bench['grid'], id: string): boolean {
  const used = grid.used(id, true)
  if (used === null) return true
  const [[title] = []] = grid.values(id, used)
  return used.rows * used.cols === 1 && String(title).startsWith(OWN_SHEET)
}

/** Where two pictures of workbooks differ: the path to each difference, and what stands there in both. */
export function differences(one: unknown, other: unknown, path = ''): string[] {
  if (isDeepStrictEqual(one, other)) return []
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null)
    return [`${path}: ${JSON.stringify(one)} → ${JSON.stringify(other)}`]
  const keys = [...new Set([...Object.keys(one), ...Object.keys(other)])]
  return keys.flatMap((key) =>
    differences(
      (one as Record<string, unknown>)[key],
      (other as Record<string, unknown>)[key],
      `${path}/${key}`,
    ),
  )
}

function withoutId(facts: object): Record<string, unknown> {
  return Object.fromEntries(Object.entries(facts).filter(([key]) => key !== 'id'))
}
