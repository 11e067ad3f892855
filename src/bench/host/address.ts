import type { Area } from '../grid/area'
import { MAX_COLS, MAX_ROWS } from '../grid/area'
import { invalidArgument } from './errors'

/** The letters of a zero-based column: 0 is A, 26 is AA. */
export function columnName(col: number): string {
  let name = ''
  for (let n = col + 1; n > 0; n = Math.floor((n - 1) / 26))
    name = String.fromCharCode(65 + ((n - 1) % 26)) + name
  return name
}

/** The zero-based column of letters. */
export const columnIndex = (letters: string): number =>
  [...letters.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1

/** A sheet name as Excel writes it in front of an address. */
export const quoteSheet = (name: string): string =>
  /^[A-Za-z_][\w.]*$/.test(name) ? name : `'${name.replace(/'/g, "''")}'`

/** An area as an A1 address without a sheet: B2, B2:C3, B:C, 2:3. */
export function areaAddress(area: Area): string {
  const left = columnName(area.col)
  const right = columnName(area.col + area.cols - 1)
  const top = area.row + 1
  const bottom = area.row + area.rows
  if (area.cols === MAX_COLS) return `${top}:${bottom}`
  if (area.rows === MAX_ROWS) return `${left}:${right}`
  return area.rows === 1 && area.cols === 1 ? `${left}${top}` : `${left}${top}:${right}${bottom}`
}

/** An A1 address with its sheet's name. */
export const fullAddress = (sheetName: string, area: Area): string =>
  `${quoteSheet(sheetName)}!${areaAddress(area)}`

const span = (from: number, to: number, limit: number): [start: number, count: number] => {
  const start = Math.min(from, to)
  const end = Math.max(from, to)
  if (start < 0 || end >= limit) throw invalidArgument()
  return [start, end - start + 1]
}

const unquote = (name: string): string =>
  name.startsWith("'") ? name.slice(1, -1).replace(/''/g, "'") : name

/**
 * Reads an A1 address such as `B2`, `$B$2:C3`, `B:C`, `2:3`, with or without a sheet in front.
 * Throws InvalidArgument for anything else.
 */
export function parseAddress(text: string): { sheet?: string; area: Area } {
  const [, sheet, plain] = /^(?:('(?:[^']|'')+'|[^'!]+)!)?(.*)$/s.exec(text.trim()) ?? []
  const address = (plain ?? '').replace(/\$/g, '')
  const cells = /^([a-z]{1,3})(\d{1,7})(?::([a-z]{1,3})(\d{1,7}))?$/i.exec(address)
  const columns = /^([a-z]{1,3}):([a-z]{1,3})$/i.exec(address)
  const rowsOnly = /^(\d{1,7}):(\d{1,7})$/.exec(address)
  let rows: [number, number] = [0, MAX_ROWS]
  let cols: [number, number] = [0, MAX_COLS]
  if (cells) {
    const [, c1 = '', r1 = '', c2 = c1, r2 = r1] = cells
    rows = span(Number(r1) - 1, Number(r2) - 1, MAX_ROWS)
    cols = span(columnIndex(c1), columnIndex(c2), MAX_COLS)
  } else if (columns) cols = span(columnIndex(columns[1] ?? ''), columnIndex(columns[2] ?? ''), MAX_COLS)
  else if (rowsOnly) rows = span(Number(rowsOnly[1]) - 1, Number(rowsOnly[2]) - 1, MAX_ROWS)
  else throw invalidArgument()
  const area = { row: rows[0], col: cols[0], rows: rows[1], cols: cols[1] }
  return sheet === undefined ? { area } : { sheet: unquote(sheet), area }
}
