import type { Area } from '../grid/area'
import { eachCell, intersect, isUnbounded } from '../grid/area'
import type { Grid, SheetInfo } from '../grid/grid'
import type { Book } from './book'
import { accessDenied, itemNotFound } from './errors'
import type { EVENT, Registrations } from './events'

/** A part of a sheet that a request has written. */
export interface Written {
  readonly sheetId: string
  readonly area: Area
}

/** Something that a request did to a sheet as a whole. */
export interface SheetEvent {
  readonly event: Exclude<keyof typeof EVENT, 'changed' | 'selectionChanged'>
  readonly sheetId: string
}

/** What all objects of one host share. */
export class HostContext {
  /** What the request under way has written so far. */
  written: Written[] = []
  /** What it has done to whole sheets. */
  sheetEvents: SheetEvent[] = []

  constructor(
    readonly grid: Grid,
    readonly book: Book,
    readonly registrations: Registrations,
    /** Today, for dates typed without a year. */
    readonly today: () => Date,
  ) {}

  sheetInfo(id: string): SheetInfo {
    const info = this.grid.sheets().find((sheet) => sheet.id === id)
    if (!info) throw itemNotFound()
    return info
  }

  /** Throws AccessDenied when the sheet is protected and a cell of the area is locked. */
  requireUnlocked(sheetId: string, area: Area): void {
    if (!this.book.sheet(sheetId).protection) return
    if (isUnbounded(area)) throw accessDenied()
    eachCell(area, (row, col) => {
      if (this.grid.format(sheetId, row, col).locked) throw accessDenied()
    })
  }

  /** Throws AccessDenied when the workbook's list of sheets is protected. */
  requireStructure(): void {
    if (this.book.protection) throw accessDenied()
  }

  /** Throws AccessDenied when the sheet is protected without the option named, such as `allowFormatCells`. */
  requireOption(sheetId: string, option: string): void {
    const { protection } = this.book.sheet(sheetId)
    if (protection && protection.options[option] !== true) throw accessDenied()
  }

  /** The tables of a sheet that touch an area, or all of them. */
  tablesIn(sheetId: string, area?: Area) {
    return this.book.tables.filter(
      (table) => table.sheetId === sheetId && (!area || intersect(table.area, area) !== null),
    )
  }
}
