import { wrongSize } from './errors'
import { HostObject } from './hostObject'
import type { PlaceView } from './place'
import { readMember, writeMember } from './query'

type MakeCell = (row: number, col: number) => HostObject

type Wanted = Readonly<Record<string, unknown>>

function pick(object: HostObject, wanted: Wanted): Record<string, unknown> {
  const picked: Record<string, unknown> = {}
  for (const [name, part] of Object.entries(wanted)) {
    if (part === false || part === undefined || part === null) continue
    const value = readMember(object, name)
    picked[name] = value instanceof HostObject ? pick(value, part as Wanted) : value
  }
  return picked
}

/** The properties wanted of every cell of a place, as Excel's getCellProperties gives them. */
export function getCellProperties(
  place: PlaceView,
  wanted: Wanted,
  cell: MakeCell,
): Record<string, unknown>[][] {
  const { rows, cols } = place.area
  return Array.from({ length: rows }, (_, i) =>
    Array.from({ length: cols }, (_, j) => pick(cell(i, j), wanted)),
  )
}

/** Lays properties over every cell of a place; the matrix must have the place's size. */
export function setCellProperties(place: PlaceView, properties: unknown, cell: MakeCell): void {
  const { rows, cols } = place.area
  const lines = properties as readonly (readonly Wanted[])[]
  if (lines.length !== rows || lines.some((line) => line.length !== cols)) throw wrongSize()
  lines.forEach((line, i) => {
    line.forEach((cellProperties, j) => {
      for (const [name, value] of Object.entries(cellProperties)) writeMember(cell(i, j), name, value)
    })
  })
}
