import { COLUMNS, FONT, MARGINS, SIDE } from '../../lesson/cells/paper'
import type { Look } from '../../lesson/cells/piece'
import type { PrintedCells } from '../../lesson/cells/worksheet'
import { OWN_SHEET } from '../../marksheet/layout/find'
import { areaAddress, columnLetters, type Area } from '../../marksheet/layout/matrix'
import { addressArea } from '../edit/address'
import { asText, passedBack } from '../edit/content'
import { CELLS_PER_REQUEST, pieces, type Part } from '../edit/work'

/** The rows above what is printed: one, which says whose sheet it is. */
const ABOVE = 1
/** The hidden column, beyond what is printed, that says how the sheet looks, so that it can be laid out again. */
const DESCRIPTION = COLUMNS + 2
/** The last column of a sheet of ours. */
const LAST = DESCRIPTION
/** Letters that a cell holds at most, with some to spare. */
const CHUNK = 30_000

/** A sheet's cells below its note, row by row, as the client library takes them, and how they look and are printed. */
export interface HandoutCells extends Omit<PrintedCells, 'texts'> {
  readonly rows: readonly (readonly unknown[])[]
}

/** The rows of a sheet of ours that one request can hold. */
export const ROWS_AT_ONCE = Math.floor(CELLS_PER_REQUEST / (LAST + 1))

/** The cells of a sheet of ours from a row to another, as an address. */
export function rowsAddress(first: number, last: number): string {
  return areaAddress({ top: first, left: 0, bottom: last, right: LAST })
}

/** What a sheet of ours holds from row and column 0 on. */
export interface HeldCells {
  readonly values: readonly (readonly unknown[])[]
  readonly formulas: readonly (readonly unknown[])[]
}

/** The texts of a sheet from row and column 0 on, below its note. */
export function textsOn(name: string, { heights, texts }: PrintedCells): string[][] {
  const rows = [noteFor(name), ...heights].map(() => Array<string>(COLUMNS).fill(''))
  const all = [{ row: -ABOVE, column: 0, text: noteFor(name) }, ...texts]
  for (const { row, column, text } of all) {
    const cells = rows[row + ABOVE]
    if (cells) cells[column] = text
  }
  return rows
}

/** Printed cells as they are laid out. */
export function cellsOf(printed: PrintedCells): HandoutCells {
  const { heights, breaks, looks } = printed
  return {
    heights,
    breaks,
    looks,
    rows: textsOn('', printed)
      .slice(ABOVE)
      .map((row) => row.map(asText)),
  }
}

/** What a sheet of ours held, so that it can be laid out again; null where it does not say how it looks. */
export function cellsHeld(held: HeldCells): HandoutCells | null {
  const description = held.values.map((row) => String(row[DESCRIPTION] ?? '')).join('')
  try {
    const { heights, breaks, looks } = JSON.parse(description) as Described
    return { rows: rowsHeld(held, heights.length), heights, breaks, looks: looks.map(lookRead) }
  } catch {
    return null
  }
}

/** What stands below the note in a sheet of ours, in so many rows or more, as the client library takes it. */
export function rowsHeld({ values, formulas }: HeldCells, least = 0): unknown[][] {
  return Array.from({ length: Math.max(least, values.length - ABOVE) }, (_, row) =>
    Array.from({ length: DESCRIPTION }, (__, column) =>
      passedBack(values[row + ABOVE]?.[column] ?? '', formulas[row + ABOVE]?.[column] ?? ''),
    ),
  )
}

/** Whether a sheet's cells hold something that is in none of those known, all from row and column 0 on. */
export function isChanged(
  values: readonly (readonly unknown[])[],
  known: readonly (readonly (readonly unknown[])[])[],
): boolean {
  return values.some((line, row) =>
    line
      .slice(0, DESCRIPTION)
      .some((value, column) => value !== '' && !known.some((each) => each[row]?.[column] === value)),
  )
}

/** A look in the description: its cells, and what is set. */
type DescribedLook = readonly [cells: string, Omit<Look, 'cells'>]

interface Described {
  readonly heights: readonly number[]
  readonly breaks: readonly number[]
  readonly looks: readonly DescribedLook[]
}

function lookRead([address, look]: DescribedLook): Look {
  return { ...look, cells: addressArea(address) }
}

function described({ heights, breaks, looks }: HandoutCells): string[] {
  const text = JSON.stringify({
    heights,
    breaks,
    looks: looks.map(({ cells, ...look }): DescribedLook => [areaAddress(cells), look]),
  } satisfies Described)
  return pieces(0, text.length - 1, CHUNK).map(({ first, last }) => text.slice(first, last + 1))
}

/** Takes everything of ours off the first rows of a sheet. */
export function emptied(sheet: Excel.Worksheet, rows: number): void {
  sheet.getRange(rowsAddress(0, Math.max(0, rows - 1))).clear('All')
}

/** The first words of a sheet of ours. */
export function noteFor(name: string): string {
  return `${OWN_SHEET}${name}. Ready to print; this row is not printed.`
}

/**
 * Parts that lay a hand-out out on an empty sheet; `found` gives the sheet. How it is printed comes last, and `leftOut` is called where Excel
 * does not take it: it asks the printer.
 */
export function layOutParts(
  found: (context: Excel.RequestContext) => Excel.Worksheet,
  name: string,
  cells: HandoutCells,
  leftOut: () => void,
): Part[] {
  const { heights, looks } = cells
  return [
    {
      cells: 1,
      queue: (context) => {
        setSizes(found(context), cells)
      },
    },
    ...contentParts(found, cells.rows),
    {
      cells: 1,
      queue: (context) => {
        const area = printed({ top: 0, left: 0, bottom: heights.length - 1, right: COLUMNS - 1 })
        const { format } = found(context).getRange(areaAddress(area))
        format.font.name = FONT
        format.verticalAlignment = 'Center'
      },
    },
    ...pieces(0, looks.length - 1, LOOKS_AT_ONCE).map(({ first, last }): Part => {
      const some = looks.slice(first, last + 1)
      return {
        cells: some.reduce((sum, { lines }) => sum + (lines === undefined ? PLAIN_LOOK : LINED_LOOK), 0),
        queue: (context) => {
          const sheet = found(context)
          for (const look of some) setLook(sheet, look)
        },
      }
    }),
    {
      cells: 1,
      queue: (context) => {
        describe(found(context), name, cells)
      },
    },
    {
      cells: 1,
      leftOut,
      queue: (context) => {
        setPage(found(context), cells)
      },
    },
  ]
}

/** Parts that write what stands below the note of a sheet. */
export function contentParts(
  found: (context: Excel.RequestContext) => Excel.Worksheet,
  rows: HandoutCells['rows'],
): Part[] {
  const width = rows[0]?.length ?? 0
  return pieces(0, rows.length - 1, ROWS_AT_ONCE).map(({ first, last }): Part => ({
    cells: (last - first + 1) * width,
    queue: (context) => {
      const area = printed({ top: first, left: 0, bottom: last, right: width - 1 })
      found(context).getRange(areaAddress(area)).values = rows.slice(first, last + 1).map((row) => [...row])
    },
  }))
}

/** Looks in a part, and what one takes of a request, counted in cells: letters, and lines on up to six sides. */
const LOOKS_AT_ONCE = 500
const PLAIN_LOOK = 3
const LINED_LOOK = 20

const printed = ({ top, left, bottom, right }: Area): Area => ({
  top: top + ABOVE,
  left,
  bottom: bottom + ABOVE,
  right,
})

function setSizes(sheet: Excel.Worksheet, { heights }: HandoutCells): void {
  sheet.showGridlines = false
  sheet.getRange(`A:${columnLetters(COLUMNS - 1)}`).format.columnWidth = SIDE
  for (const { first, last, height } of sameHeights(heights)) {
    const area = printed({ top: first, left: 0, bottom: last, right: 0 })
    sheet.getRange(areaAddress(area)).format.rowHeight = height
  }
}

function setPage(sheet: Excel.Worksheet, { heights, breaks }: HandoutCells): void {
  const { pageLayout, horizontalPageBreaks } = sheet
  pageLayout.setPrintArea(
    areaAddress(printed({ top: 0, left: 0, bottom: heights.length - 1, right: COLUMNS - 1 })),
  )
  pageLayout.orientation = 'Portrait'
  pageLayout.paperSize = 'A4'
  pageLayout.centerHorizontally = true
  pageLayout.topMargin = MARGINS.top
  pageLayout.bottomMargin = MARGINS.bottom
  pageLayout.leftMargin = MARGINS.left
  pageLayout.rightMargin = MARGINS.right
  pageLayout.zoom = { horizontalFitToPages: 1 }
  horizontalPageBreaks.removePageBreaks()
  for (const row of breaks) horizontalPageBreaks.add(`A${row + ABOVE + 1}`)
}

/** Rows below each other that are equally high. */
function sameHeights(
  heights: readonly number[],
): { readonly first: number; readonly last: number; readonly height: number }[] {
  const same: { first: number; last: number; height: number }[] = []
  for (const [row, height] of heights.entries()) {
    const before = same.at(-1)
    if (before?.height === height) before.last = row
    else same.push({ first: row, last: row, height })
  }
  return same
}

const NOTE_INK = '#595959'

function describe(sheet: Excel.Worksheet, name: string, cells: HandoutCells): void {
  const note = sheet.getRange('A1')
  note.values = [[asText(noteFor(name))]]
  note.format.font.italic = true
  note.format.font.color = NOTE_INK
  const chunks = described(cells)
  const area = { top: 0, left: DESCRIPTION, bottom: chunks.length - 1, right: DESCRIPTION }
  const range = sheet.getRange(areaAddress(area))
  range.values = chunks.map((chunk) => [asText(chunk)])
  range.columnHidden = true
}

const SQUARES = '#8C8C8C'
const INK = '#1A1A1A'
const AROUND = ['EdgeTop', 'EdgeBottom', 'EdgeLeft', 'EdgeRight'] as const
const WITHIN = ['InsideVertical', 'InsideHorizontal'] as const

/** The sides, colour and weight of lines. */
const LINES = {
  squares: { sides: [...AROUND, ...WITHIN], colour: SQUARES, weight: 'Thin' },
  box: { sides: AROUND, colour: INK, weight: 'Thin' },
  over: { sides: ['EdgeTop'], colour: INK, weight: 'Medium' },
  under: { sides: ['EdgeBottom'], colour: INK, weight: 'Thin' },
} as const

const ALIGNED = { centre: 'Center', right: 'Right' } as const

function setLook(sheet: Excel.Worksheet, { cells, size, bold, struck, align, lines }: Look): void {
  const { format } = sheet.getRange(areaAddress(printed(cells)))
  if (size !== undefined) format.font.size = size
  if (bold !== undefined) format.font.bold = bold
  if (struck !== undefined) format.font.strikethrough = struck
  if (align !== undefined) format.horizontalAlignment = ALIGNED[align]
  if (lines === undefined) return
  const { sides, colour, weight } = LINES[lines]
  const { top, left, bottom, right } = cells
  for (const side of sides) {
    if (side === 'InsideVertical' && left === right) continue
    if (side === 'InsideHorizontal' && top === bottom) continue
    const border = format.borders.getItem(side)
    border.style = 'Continuous'
    border.weight = weight
    border.color = colour
  }
}
