import type { Area } from './area'

/** What a cell holds, as Excel's `values` gives it: '' when empty, an error such as `#N/A` as text. */
export type CellValue = string | number | boolean

/** A formula, with the value last calculated for it where one is known. */
export interface Formula {
  readonly formula: string
  readonly value?: CellValue
}

/** What can be put into a cell; null leaves the cell as it is. */
export type Content = CellValue | Formula | null

/** A line on one side of a cell, in Excel's words (`Continuous`, `Thin`, `#RRGGBB`). */
export interface BorderLine {
  readonly style: string
  readonly weight: string
  readonly colour: string
}

/** The sides of one cell. */
export type Edge = 'top' | 'bottom' | 'left' | 'right'

/** How one cell looks. Colours are #RRGGBB; no fill is null. */
export interface CellFormat {
  readonly numberFormat: string
  readonly fill: string | null
  readonly fontColour: string
  readonly fontName: string
  readonly fontSize: number
  readonly bold: boolean
  readonly italic: boolean
  readonly underline: string
  readonly strikethrough: boolean
  readonly horizontal: string
  readonly vertical: string
  readonly wrap: boolean
  readonly indent: number
  readonly locked: boolean
  readonly formulaHidden: boolean
  readonly borders: Readonly<Partial<Record<Edge, BorderLine>>>
}

/** A cell nobody has touched. */
export const PLAIN: CellFormat = {
  numberFormat: 'General',
  fill: null,
  fontColour: '#000000',
  fontName: 'Calibri',
  fontSize: 11,
  bold: false,
  italic: false,
  underline: 'None',
  strikethrough: false,
  horizontal: 'General',
  vertical: 'Bottom',
  wrap: false,
  indent: 0,
  locked: true,
  formulaHidden: false,
  borders: {},
}

/** `format` with `patch` laid over it; borders are laid over side by side. */
export const overlay = (format: CellFormat, patch: Partial<CellFormat>): CellFormat => ({
  ...format,
  ...patch,
  borders: patch.borders ? { ...format.borders, ...patch.borders } : format.borders,
})

/** The look a conditional format gives; what is absent stays as it is. */
export type ConditionalStyle = Partial<
  Pick<
    CellFormat,
    'fill' | 'fontColour' | 'bold' | 'italic' | 'underline' | 'strikethrough' | 'numberFormat' | 'borders'
  >
>

/** One conditional format. A sheet's list runs from first to last priority. */
export interface ConditionalRule {
  readonly id: string
  readonly areas: readonly Area[]
  /** Excel's name of the kind; the bench makes `Custom` only, others may have come with a file. */
  readonly type: string
  readonly formula: string
  readonly stopIfTrue: boolean
  readonly style: ConditionalStyle
}

/** A note (the yellow slip) on a cell. */
export interface CellNote {
  readonly row: number
  readonly col: number
  readonly text: string
}

/** A sheet as the tab bar shows it; `colour` is #RRGGBB or ''. */
export interface SheetInfo {
  readonly id: string
  readonly name: string
  readonly visible: boolean
  readonly colour: string
}

/** What a person does in the grid. */
export interface GridListener {
  /** `before` is what a single cell held, where that is known. */
  edited(sheetId: string, area: Area, before?: CellValue): void
  selected(sheetId: string, area: Area): void
  /** A sheet has come to the front, by a person or by program; it may be told more than once. */
  activated(sheetId: string): void
  /** Whether a cell is being typed in. */
  editing(typing: boolean): void
}

/** A grid that can back the host. Rows and columns are zero-based; widths and heights are in points. */
export interface Grid {
  sheets(): readonly SheetInfo[]
  activeSheet(): string
  /** Adds a sheet at the end without activating it; gives its id. */
  addSheet(name: string): string
  removeSheet(id: string): void
  renameSheet(id: string, name: string): void
  moveSheet(id: string, position: number): void
  showSheet(id: string, visible: boolean): void
  colourTab(id: string, colour: string): void
  activateSheet(id: string): void
  gridlines(id: string): boolean
  setGridlines(id: string, shown: boolean): void
  /** How many rows and columns are frozen. */
  frozen(id: string): { rows: number; cols: number }
  freeze(id: string, rows: number, cols: number): void

  /** The smallest area that holds all contents (and formatted cells, unless `valuesOnly`); null when there are none. */
  used(id: string, valuesOnly: boolean): Area | null
  values(id: string, area: Area): CellValue[][]
  /** Formulas as text where there are any, else values. */
  formulas(id: string, area: Area): CellValue[][]
  write(id: string, row: number, col: number, contents: readonly (readonly Content[])[]): void

  format(id: string, row: number, col: number): CellFormat
  setFormat(id: string, area: Area, patch: Partial<CellFormat>): void
  clearFormat(id: string, area: Area): void
  columnWidth(id: string, col: number): number
  setColumnWidth(id: string, col: number, count: number, width: number): void
  rowHeight(id: string, row: number): number
  setRowHeight(id: string, row: number, count: number, height: number): void
  /** Fits whole columns or rows of the area to their contents. */
  autofit(id: string, area: Area, what: 'columns' | 'rows'): void
  rowHidden(id: string, row: number): boolean
  hideRows(id: string, row: number, count: number, hidden: boolean): void
  columnHidden(id: string, col: number): boolean
  hideColumns(id: string, col: number, count: number, hidden: boolean): void

  merges(id: string): readonly Area[]
  merge(id: string, area: Area): void
  /** Takes apart every merged block that touches the area. */
  unmerge(id: string, area: Area): void
  conditionalFormats(id: string): readonly ConditionalRule[]
  setConditionalFormats(id: string, rules: readonly ConditionalRule[]): void
  notes(id: string): readonly CellNote[]
  /** Puts a note on a cell; null takes it away. */
  setNote(id: string, row: number, col: number, text: string | null): void

  selection(): { sheetId: string; area: Area }
  select(id: string, area: Area): void
  listen(listener: GridListener): void

  /** Shows everything written so far. */
  flush(): void
  /** Resolves when formulas written so far are calculated; undefined when nothing is outstanding. */
  calculating(): Promise<void> | undefined
}
