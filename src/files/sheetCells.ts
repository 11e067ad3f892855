import { addressOf, type CellRef } from '../marksheet/layout/matrix'
import { cellAt } from './xlsx/address'
import type { Edits } from './xlsx/edits'
import { element, written, type Root } from './xlsx/elements'
import { attributesOf, tagsOf, type Tag } from './xlsx/xml'

/**
 * A number, or a text that is written as the text it is, whatever it looks like, for a cell; an empty text empties it. `style` is the
 * number of its style in the workbook, null where the cell keeps its own.
 */
export interface CellChange extends CellRef {
  readonly content: string | number
  readonly style: number | null
}

/** Writes into cells, which are made where there are none; the rest of their rows stays. */
export function writeCells(xml: string, root: Root, edits: Edits, changes: readonly CellChange[]): void {
  const data = root.children.find(({ name }) => name === 'sheetData')
  if (changes.length === 0 || !data) return
  const { prefix } = root.tag
  const rows = new Map<number, CellChange[]>()
  for (const change of changes) {
    const row = rows.get(change.row)
    if (row) row.push(change)
    else rows.set(change.row, [change])
  }
  for (const cells of rows.values()) cells.sort((a, b) => a.column - b.column)
  const { rowPlaces, cellPlaces } = placesOf(xml, rows)
  for (const [number, cells] of [...rows].sort(([a], [b]) => a - b)) {
    const { start, tagEnd, contentEnd, end } = rowPlaces.get(number) ?? gap(data.contentEnd)
    const tag = start === end ? `<${prefix}row r="${number + 1}">` : xml.slice(start, tagEnd)
    const open = tag.replace(/\sspans\s*=\s*(?:"[^"]*"|'[^']*')/, '').replace(/\s*\/>$/, '>')
    if (contentEnd < end) {
      edits.replace(start, tagEnd, open)
      for (const cell of cells) {
        const place = cellPlaces.get(addressOf(cell)) ?? gap(contentEnd)
        const [, own] = /\ss\s*=\s*["'](\d+)/.exec(xml.slice(place.start, place.tagEnd)) ?? []
        edits.replace(place.start, place.end, cellXml(prefix, cell, own))
      }
    } else {
      const written = cells.map((cell) => cellXml(prefix, cell))
      edits.replace(start, end, `${open}${written.join('')}</${prefix}row>`)
    }
  }
  // How far a sheet reaches is told in a hint that need not be there, and would now be too small.
  const hint = root.children.find(({ name }) => name === 'dimension')
  if (hint) edits.replace(hint.tag.start, hint.end, '')
}

/** Writes a cell; `own` is the number of the style that it has. */
export function cellXml(prefix: string, { content, style, ...cell }: CellChange, own?: string): string {
  const s = style ?? own
  const place = { r: addressOf(cell), ...(s === undefined ? {} : { s }) }
  if (content === '') return element(`${prefix}c`, place)
  if (typeof content === 'number')
    return element(`${prefix}c`, place, element(`${prefix}v`, {}, String(content)))
  const text = element(`${prefix}t`, { 'xml:space': 'preserve' }, written(content))
  return element(`${prefix}c`, { ...place, t: 'inlineStr' }, element(`${prefix}is`, {}, text))
}

/** Where an element stands in the text; where there is none, all four are the place at which it would stand. */
interface Place {
  readonly start: number
  readonly tagEnd: number
  contentEnd: number
  end: number
}

const gap = (at: number): Place => ({ start: at, tagEnd: at, contentEnd: at, end: at })
const placeOf = ({ start, end }: Tag): Place => ({ start, tagEnd: end, contentEnd: end, end })

/** The places of some rows and cells; none for what would stand last. Rows and cells are numbered as when they are read. */
function placesOf(xml: string, wanted: ReadonlyMap<number, readonly CellRef[]>) {
  const rowPlaces = new Map<number, Place>()
  const cellPlaces = new Map<string, Place>()
  const numbers = [...wanted.keys()].sort((a, b) => a - b)
  let [list, row, column, next, nextCell] = ['', -1, -1, 0, 0]
  let cells: readonly CellRef[] = []
  for (const tag of tagsOf(xml)) {
    if (tag.depth === 1) list = tag.name
    if (list !== 'sheetData') continue
    if (tag.depth === 2 && tag.name === 'row') {
      if (tag.kind !== 'close') {
        const r = attributesOf(xml, tag).get('r')
        row = r === undefined ? row + 1 : Number(r) - 1
        for (let number; (number = numbers[next]) !== undefined && number < row; next++)
          if (!rowPlaces.has(number)) rowPlaces.set(number, gap(tag.start))
        cells = wanted.get(row) ?? []
        column = -1
        nextCell = 0
        if (cells.length > 0) rowPlaces.set(row, placeOf(tag))
      } else if (cells.length > 0) close(rowPlaces.get(row), tag)
    } else if (cells.length > 0 && tag.depth === 3 && tag.name === 'c') {
      if (tag.kind !== 'close') {
        const r = attributesOf(xml, tag).get('r')
        column = r === undefined ? column + 1 : (cellAt(r)?.column ?? -1)
        for (let cell; (cell = cells[nextCell]) && cell.column < column; nextCell++)
          if (!cellPlaces.has(addressOf(cell))) cellPlaces.set(addressOf(cell), gap(tag.start))
        cellPlaces.set(addressOf({ row, column }), placeOf(tag))
      } else close(cellPlaces.get(addressOf({ row, column })), tag)
    }
  }
  return { rowPlaces, cellPlaces }
}

function close(place: Place | undefined, { start, end }: Tag): void {
  if (place) [place.contentEnd, place.end] = [start, end]
}
