import type { Area } from '../grid/area'
import { cellArea, eachCell, intersect, isUnbounded } from '../grid/area'
import type { CellFormat } from '../grid/grid'
import { parseAddress } from './address'
import type { ExcelContext } from './excelContext'
import { invalidArgument } from './errors'
import { HostObject } from './hostObject'

/** Base of the host's objects that stand for a block of a sheet: ranges and what belongs to their format. */
export abstract class PlacedObject extends HostObject {
  constructor(
    readonly context: ExcelContext,
    readonly sheetId: string,
    readonly area: Area,
  ) {
    super()
  }
}

/** The block meant by an argument that is a range or an address; an address without a sheet is on `sheetId`. */
export function placeOf(
  context: ExcelContext,
  argument: unknown,
  sheetId: string | null,
): { readonly sheetId: string; readonly area: Area } {
  if (argument instanceof PlacedObject) return argument
  if (typeof argument !== 'string') throw invalidArgument()
  const { sheet, area } = parseAddress(argument.replace(/^=/, ''))
  const named = context.grid.sheets().find((one) => one.name.toLowerCase() === sheet?.toLowerCase())
  const id = sheet === undefined ? sheetId : named?.id
  if (id === null || id === undefined) throw invalidArgument()
  return { sheetId: id, area }
}

/** The cells of a place that can differ from the rest: all of them, or the used ones of whole rows and columns. */
export function cellsOf({ context, sheetId, area }: PlaceView): Area {
  if (!isUnbounded(area)) return area
  const used = context.grid.used(sheetId, false)
  return (used && intersect(used, area)) ?? cellArea(area.row, area.col)
}

/** What a helper needs to know of a place. */
export interface PlaceView {
  readonly context: ExcelContext
  readonly sheetId: string
  readonly area: Area
}

/** A trait that all cells of a place have in common, or null when they differ, as Excel answers. */
export function common<T>(place: PlaceView, trait: (format: CellFormat) => T): T | null {
  const cells = cellsOf(place)
  const format = (row: number, col: number) => place.context.grid.format(place.sheetId, row, col)
  const first = trait(format(cells.row, cells.col))
  let same = true
  eachCell(cells, (row, col) => {
    if (same && trait(format(row, col)) !== first) same = false
  })
  return same ? first : null
}
