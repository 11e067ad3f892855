import type { Area } from '../grid/area'
import type { SpillFacts } from './spills'
import { UndoList } from './undoList'

/** A table of a sheet. */
export interface TableFacts {
  readonly id: string
  readonly sheetId: string
  name: string
  /** Headers (if shown), body and totals (if shown). */
  area: Area
  showHeaders: boolean
  showTotals: boolean
  style: string
  showFilterButton: boolean
  showBandedRows: boolean
}

/** A defined name; `formula` starts with '='. */
export interface NameFacts {
  readonly name: string
  formula: string
  comment: string
  visible: boolean
  /** The sheet it belongs to, or null for the whole workbook. */
  readonly sheetId: string | null
}

/** A filter over a block: the texts let through, by column of the block. */
export interface FilterFacts {
  readonly area: Area
  readonly columns: ReadonlyMap<number, readonly string[]>
}

export interface ChartFacts {
  readonly id: string
  name: string
  chartType: string
  title: string
  readonly source: Area
  left: number
  top: number
  width: number
  height: number
}

/** A picture on a sheet: PNG or JPEG in base64; lengths in points. */
export interface ShapeFacts {
  readonly id: string
  readonly type: string
  readonly image: string
  name: string
  altText: string
  lockAspectRatio: boolean
  left: number
  top: number
  width: number
  height: number
}

export interface CommentFacts {
  readonly id: string
  readonly row: number
  readonly col: number
  readonly author: string
  content: string
  resolved: boolean
}

/** How a sheet is printed; lengths in points, areas as A1 addresses. */
export interface PageFacts {
  orientation: string
  paperSize: string
  printGridlines: boolean
  centerHorizontally: boolean
  centerVertically: boolean
  leftMargin: number
  rightMargin: number
  topMargin: number
  bottomMargin: number
  zoom: Readonly<Record<string, number>>
  printArea: Area | null
  titleRows: Area | null
  titleColumns: Area | null
}

/** What a sheet has besides what its grid draws. */
export interface SheetFacts {
  protection: { readonly options: Readonly<Record<string, unknown>>; readonly password?: string } | null
  veryHidden: boolean
  filter: FilterFacts | null
  spills: SpillFacts[]
  readonly page: PageFacts
  rowBreaks: number[]
  columnBreaks: number[]
  charts: ChartFacts[]
  shapes: ShapeFacts[]
  comments: CommentFacts[]
}

const newSheetFacts = (): SheetFacts => ({
  protection: null,
  veryHidden: false,
  filter: null,
  spills: [],
  page: {
    orientation: 'Portrait',
    paperSize: 'A4',
    printGridlines: false,
    centerHorizontally: false,
    centerVertically: false,
    leftMargin: 50.4,
    rightMargin: 50.4,
    topMargin: 54,
    bottomMargin: 54,
    zoom: { scale: 100 },
    printArea: null,
    titleRows: null,
    titleColumns: null,
  },
  rowBreaks: [],
  columnBreaks: [],
  charts: [],
  shapes: [],
  comments: [],
})

/** What a workbook has besides what its grid draws. */
export class Book {
  name = 'Bench.xlsx'
  calculationMode = 'Automatic'
  tables: TableFacts[] = []
  /** What keeps the list of sheets as it is; null where nothing does. */
  protection: { readonly password: string | null } | null = null
  names: NameFacts[] = []
  readonly settings = new Map<string, unknown>()
  /**
   * Conditional formats that Excel shows and its client library cannot read, by id: nothing of them, or nothing beyond their id and type
   * (made or duplicated in the rules manager, or brought back by Ctrl+Z; issues 5222, 6396, 6827 and 6835 of office-js).
   */
  readonly unreadableFormats = new Map<string, 'all' | 'inside'>()
  /** Whether selecting cells is told, which Excel at times fails to do (issue 6311 of office-js). */
  tellsSelections = true
  /** Whether a printer is set up; without one Excel for Windows takes no page set-up. */
  hasPrinter = true
  /** What Excel's own undo would take back. */
  readonly undo = new UndoList()
  readonly xmlParts = new Map<string, string>()
  readonly properties = new Map<string, string>()
  /** The .xlsx files, in base64, of the workbooks that were opened beside this one. */
  readonly openedBeside: string[] = []
  readonly #sheets = new Map<string, SheetFacts>()
  #ids = 0

  /** A number no other thing of this workbook has. */
  nextId(): number {
    return ++this.#ids
  }

  sheet(id: string): SheetFacts {
    let facts = this.#sheets.get(id)
    if (!facts) this.#sheets.set(id, (facts = newSheetFacts()))
    return facts
  }

  /** Forgets all that belonged to a sheet. */
  removeSheet(id: string): void {
    this.#sheets.delete(id)
    this.tables = this.tables.filter((table) => table.sheetId !== id)
    this.names = this.names.filter((name) => name.sheetId !== id)
  }

  /** Forgets everything, for another workbook to take its place. */
  clear(): void {
    this.#sheets.clear()
    this.tables = []
    this.protection = null
    this.names = []
    this.settings.clear()
    this.unreadableFormats.clear()
    this.undo.steps.length = 0
    this.xmlParts.clear()
    this.properties.clear()
  }
}
