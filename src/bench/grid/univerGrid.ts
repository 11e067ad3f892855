import { CellValueType } from '@univerjs/core'
import type { ICellData, Nullable } from '@univerjs/core'
import type { FUniver } from '@univerjs/core/facade'
import type {} from '@univerjs/engine-formula/facade'
import type {} from '@univerjs/sheets-conditional-formatting/facade'
import type {} from '@univerjs/sheets-formula/facade'
import type {} from '@univerjs/sheets-note/facade'
import type { FWorkbook } from '@univerjs/sheets/facade'
import type { Area } from './area'
import { bounding, cellArea, eachCell, intersect } from './area'
import { cellText } from './cellText'
import { fittedWidth } from './fit'
import type { CellFormat, CellNote, CellValue, ConditionalRule, Content, Grid, GridListener } from './grid'
import { UniverBuffer } from './univerBuffer'
import { UniverFormats } from './univerFormats'
import { UniverConditional } from './univerConditional'
import { UniverSheets } from './univerSheets'
import { UniverHeights } from './univerHeights'
import { fromUniverRange, toUniverRange } from './univerRules'

const SET_CELLS = 'sheet.mutation.set-range-values'
const EDIT = 'sheet.operation.set-cell-edit-visible'
/** How long a calculation may take before a read goes ahead without it, in milliseconds. */
const CALCULATION_LIMIT = 20_000

/** Univer's grid, on a page or headless. Writes are gathered and told to Univer at the next read or flush. */
export class UniverGrid extends UniverSheets implements Grid {
  readonly #buffer = new UniverBuffer()
  readonly #formats: UniverFormats
  readonly #heights: UniverHeights
  readonly #conditional = new UniverConditional(
    (id) => this.sheet(id),
    (id, area) => this.fit(id, area),
  )
  readonly #listeners: GridListener[] = []
  #toldSelection = ''
  #writing = false
  #hasFormulas = false
  #calculation: Promise<void> | undefined

  constructor(
    readonly api: FUniver,
    workbook: FWorkbook,
  ) {
    super(workbook)
    this.#heights = new UniverHeights(api, workbook)
    this.#formats = new UniverFormats(workbook, this.#buffer)
  }

  override removeSheet(id: string): void {
    this.flush()
    this.#heights.callOff(id)
    super.removeSheet(id)
  }

  used(id: string, valuesOnly: boolean): Area | null {
    let used: Area | null = null
    this.data(id)
      .getCellMatrix()
      .forValue((row, col, cell) => {
        if (!isFilled(cell) && (valuesOnly || !cell?.s)) return
        used = used ? bounding(used, cellArea(row, col)) : cellArea(row, col)
      })
    return used
  }
  values(id: string, area: Area): CellValue[][] {
    const sheet = this.data(id)
    const matrix = sheet.getCellMatrix()
    return lines(area, (row, col) => {
      const raw = matrix.getValue(row, col)
      return valueOf(isFilled(raw) ? raw : this.#hasFormulas ? sheet.getCell(row, col) : raw)
    })
  }
  formulas(id: string, area: Area): CellValue[][] {
    const matrix = this.data(id).getCellMatrix()
    const values = this.values(id, area)
    return lines(area, (row, col) => {
      const cell = matrix.getValue(row, col)
      if (typeof cell?.f === 'string' && cell.f !== '') return cell.f
      if (typeof cell?.si === 'string') return this.sheet(id).getRange(row, col).getFormula()
      return values[row - area.row]?.[col - area.col] ?? ''
    })
  }
  write(id: string, row: number, col: number, contents: readonly (readonly Content[])[]): void {
    const cols = contents[0]?.length ?? 0
    if (cols === 0) return
    this.fit(id, { row, col, rows: contents.length, cols })
    this.#hasFormulas ||= contents.some((line) =>
      line.some((content) => typeof content === 'object' && content !== null),
    )
    this.#buffer.write(id, row, col, contents)
  }

  format(id: string, row: number, col: number): CellFormat {
    return this.#formats.read(id, row, col)
  }
  setFormat(id: string, area: Area, patch: Partial<CellFormat>): void {
    this.#formats.write(id, this.fit(id, area), patch)
  }
  clearFormat(id: string, area: Area): void {
    this.flush()
    const cells: Record<number, Record<number, ICellData>> = {}
    eachCell(this.fit(id, area), (row, col) => {
      ;(cells[row] ??= {})[col] = { s: null, custom: null }
    })
    this.#mutate(id, cells, false)
  }
  autofit(id: string, area: Area, what: 'columns' | 'rows'): void {
    const used = this.used(id, true)
    const cells = used && intersect(area, used)
    if (!cells) return
    if (what === 'rows') {
      this.sheet(id).setRowAutoHeight(cells.row, cells.rows)
      return
    }
    const texts = lines(cells, (row, col) => {
      const [line] = this.values(id, cellArea(row, col))
      return cellText(line?.[0] ?? '', this.format(id, row, col).numberFormat)
    })
    for (let j = 0; j < cells.cols; j++) {
      const width = fittedWidth(texts.map((line) => line[j] ?? ''))
      if (width !== null) this.setColumnWidth(id, cells.col + j, 1, width)
    }
  }
  merges(id: string): readonly Area[] {
    return this.sheet(id)
      .getMergeData()
      .map((range) => fromUniverRange(range.getRange()))
  }
  merge(id: string, area: Area): void {
    this.flush()
    this.unmerge(id, area)
    const fitted = this.fit(id, area)
    this.sheet(id).getRange(toUniverRange(fitted)).merge({ isForceMerge: true })
    const first = this.formulas(id, fitted)
    const kept = first.map((line, i) => line.map((_, j): Content => (i === 0 && j === 0 ? null : '')))
    this.write(id, fitted.row, fitted.col, kept)
  }
  unmerge(id: string, area: Area): void {
    this.flush()
    for (const merged of this.merges(id))
      if (intersect(merged, area)) this.sheet(id).getRange(toUniverRange(merged)).breakApart()
  }
  conditionalFormats(id: string): readonly ConditionalRule[] {
    return this.#conditional.read(id)
  }
  setConditionalFormats(id: string, rules: readonly ConditionalRule[]): void {
    this.#conditional.set(id, rules)
  }
  notes(id: string): readonly CellNote[] {
    return this.sheet(id)
      .getNotes()
      .map(({ row, col, note }) => ({ row, col, text: note }))
  }
  setNote(id: string, row: number, col: number, text: string | null): void {
    const cell = this.sheet(id).getRange(row, col)
    if (text === null) cell.deleteNote()
    else
      cell.createOrUpdateNote({
        row,
        col,
        id: `note-${row}-${col}`,
        note: text,
        width: 200,
        height: 80,
        show: false,
      })
  }

  selection(): { sheetId: string; area: Area } {
    const range = this.workbook.getActiveRange()
    return range
      ? { sheetId: range.getSheetId(), area: fromUniverRange(range.getRange()) }
      : { sheetId: this.activeSheet(), area: cellArea(0, 0) }
  }
  select(id: string, area: Area): void {
    this.flush()
    this.activateSheet(id)
    const fitted = toUniverRange(this.fit(id, area))
    this.sheet(id).getRange(fitted).activate()
    this.#tellSelection(id, area)
  }
  listen(listener: GridListener): void {
    this.api.addEvent(this.api.Event.SheetValueChanged, ({ effectedRanges, payload }) => {
      const byPerson = 'trigger' in payload.params && payload.params.trigger !== undefined
      if (this.#writing || !byPerson) return
      this.#hasFormulas ||= effectedRanges.some((range) =>
        range
          .getFormulas()
          .flat()
          .some((text) => text !== ''),
      )
      for (const range of effectedRanges)
        listener.edited(range.getSheetId(), fromUniverRange(range.getRange()))
    })
    this.workbook.onSelectionChange(([range]) => {
      if (range) this.#tellSelection(this.activeSheet(), fromUniverRange(range))
    })
    this.api.addEvent(this.api.Event.ActiveSheetChanged, ({ activeSheet }) => {
      listener.activated(activeSheet.getSheetId())
    })
    this.workbook.onCommandExecuted(({ id, params }) => {
      if (id === EDIT) listener.editing((params as { visible: boolean }).visible)
    })
    this.#listeners.push(listener)
  }

  override flush(): void {
    if (!this.#buffer.isEmpty) {
      for (const [id, { cells, contents }] of this.#buffer.take()) {
        this.#mutate(id, cells, contents)
        if (contents && this.#hasFormulas) this.#awaitCalculation()
      }
    }
    this.#conditional.flush()
  }
  calculating(): Promise<void> | undefined {
    this.flush()
    return this.#calculation
  }

  /** Tells a selection once: Univer does not tell those made by program, or tells them again. */
  #tellSelection(sheetId: string, area: Area): void {
    const selection = JSON.stringify([sheetId, area])
    if (selection === this.#toldSelection) return
    this.#toldSelection = selection
    for (const listener of this.#listeners) listener.selected(sheetId, area)
  }
  #mutate(id: string, cellValue: Record<number, Record<number, ICellData>>, calculate: boolean): void {
    this.#writing = true
    try {
      const params = { unitId: this.workbook.getId(), subUnitId: id, cellValue }
      this.api.syncExecuteCommand(SET_CELLS, params, calculate ? undefined : { onlyLocal: true })
    } finally {
      this.#writing = false
    }
  }
  #awaitCalculation(): void {
    const calculation = this.api
      .getFormula()
      .onCalculationResultApplied(CALCULATION_LIMIT)
      .catch(() => undefined)
      .then(() => {
        if (this.#calculation === calculation) this.#calculation = undefined
      })
    this.#calculation = calculation
  }
}

const isFilled = (cell: Nullable<ICellData>): boolean =>
  Boolean(cell) &&
  ((cell?.v !== undefined && cell.v !== null && cell.v !== '') || Boolean(cell?.f) || Boolean(cell?.si))

function valueOf(cell: Nullable<ICellData>): CellValue {
  const value = cell?.v
  if (value === undefined || value === null) return ''
  return cell?.t === CellValueType.BOOLEAN ? Boolean(value) : value
}

const lines = <T>(area: Area, cell: (row: number, col: number) => T): T[][] =>
  Array.from({ length: area.rows }, (_, i) =>
    Array.from({ length: area.cols }, (_, j) => cell(area.row + i, area.col + j)),
  )
