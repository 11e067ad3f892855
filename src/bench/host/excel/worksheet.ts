import { WHOLE_SHEET, cellArea } from '../../grid/area'
import { readColour } from '../colour'
import type { ExcelContext } from '../excelContext'
import { invalidArgument, invalidOperation } from '../errors'
import { offerEvents } from '../events'
import { HostObject } from '../hostObject'
import { placeOf } from '../place'
import { requireSheetName } from '../sheetName'
import { AutoFilter } from './autoFilter'
import { ChartCollection } from './chartCollection'
import { CommentCollection } from './commentCollection'
import { NamedItemCollection } from './namedItemCollection'
import { PageBreakCollection } from './pageBreakCollection'
import { PageLayout } from './pageLayout'
import { RangeAreas } from './rangeAreas'
import { ShapeCollection } from './shapeCollection'
import { TableCollection } from './tableCollection'
import { WorksheetFreezePanes } from './worksheetFreezePanes'
import { WorksheetProtection } from './worksheetProtection'

const VISIBILITIES = new Set(['Visible', 'Hidden', 'VeryHidden'])

/** A sheet. */
export class Worksheet extends HostObject {
  static override readonly className = 'Worksheet'
  static override readonly scalars = ['id', 'name', 'position', 'showGridlines', 'tabColor', 'visibility']

  constructor(
    readonly context: ExcelContext,
    readonly sheetId: string,
  ) {
    super()
  }

  override get wireId() {
    return this.sheetId
  }
  get id() {
    return this.sheetId
  }
  get name() {
    return this.#info().name
  }
  set name(name: string) {
    this.context.requireStructure()
    const others = this.context.grid.sheets().filter(({ id }) => id !== this.sheetId)
    requireSheetName(
      name,
      others.map((sheet) => sheet.name),
    )
    this.context.grid.renameSheet(this.sheetId, name)
  }
  get position() {
    return this.context.grid.sheets().findIndex(({ id }) => id === this.sheetId)
  }
  set position(position: number) {
    this.context.requireStructure()
    if (!(position >= 0 && position < this.context.grid.sheets().length)) throw invalidArgument()
    this.context.grid.moveSheet(this.sheetId, position)
  }
  get visibility(): string {
    if (this.#info().visible) return 'Visible'
    return this.context.book.sheet(this.sheetId).veryHidden ? 'VeryHidden' : 'Hidden'
  }
  set visibility(visibility: string) {
    if (!VISIBILITIES.has(visibility)) throw invalidArgument()
    if (visibility !== this.visibility) this.context.requireStructure()
    const visible = visibility === 'Visible'
    if (!visible) this.#requireAnotherVisible()
    this.context.book.sheet(this.sheetId).veryHidden = visibility === 'VeryHidden'
    this.context.grid.showSheet(this.sheetId, visible)
  }
  get tabColor() {
    return this.#info().colour
  }
  set tabColor(colour: string) {
    this.context.grid.colourTab(this.sheetId, colour === '' ? '' : readColour(colour))
  }
  get showGridlines() {
    return this.context.grid.gridlines(this.sheetId)
  }
  set showGridlines(shown: boolean) {
    this.context.grid.setGridlines(this.sheetId, shown)
  }
  /** The client writes `showGridlines` under this name. */
  get gridlines() {
    return this.showGridlines
  }
  set gridlines(shown: boolean) {
    this.showGridlines = shown
  }
  get protection() {
    return new WorksheetProtection(this.context, this.sheetId)
  }
  get freezePanes() {
    return new WorksheetFreezePanes(this.context, this.sheetId)
  }
  get autoFilter() {
    return new AutoFilter(this.context, this.sheetId)
  }
  get tables() {
    return new TableCollection(this.context, this.sheetId)
  }
  get names() {
    return new NamedItemCollection(this.context, this.sheetId)
  }
  get charts() {
    return new ChartCollection(this.context, this.sheetId)
  }
  get shapes() {
    return new ShapeCollection(this.context, this.sheetId)
  }
  get comments() {
    return new CommentCollection(this.context, this.sheetId)
  }
  get pageLayout() {
    return new PageLayout(this.context, this.sheetId)
  }
  get horizontalPageBreaks() {
    return new PageBreakCollection(this.context, this.sheetId, 'rowBreaks')
  }
  get verticalPageBreaks() {
    return new PageBreakCollection(this.context, this.sheetId, 'columnBreaks')
  }

  activate() {
    if (!this.#info().visible) throw invalidOperation()
    this.context.grid.activateSheet(this.sheetId)
  }
  /** The last visible sheet cannot be deleted. */
  delete() {
    this.context.requireStructure()
    if (this.#info().visible) this.#requireAnotherVisible()
    this.context.grid.removeSheet(this.sheetId)
    this.context.book.removeSheet(this.sheetId)
    this.context.sheetEvents.push({ event: 'deleted', sheetId: this.sheetId })
  }
  getRange(address?: string) {
    if (address === undefined) return this.context.range(this.sheetId, WHOLE_SHEET)
    const name = this.context.book.names.find(
      (one) =>
        one.name.toLowerCase() === address.toLowerCase() && (one.sheetId ?? this.sheetId) === this.sheetId,
    )
    const place = placeOf(this.context, name?.formula ?? address, this.sheetId)
    if (place.sheetId !== this.sheetId) throw invalidArgument()
    return this.context.range(this.sheetId, place.area)
  }
  getRanges(addresses?: string) {
    const areas = addresses?.split(',').map((address) => this.getRange(address).area) ?? [WHOLE_SHEET]
    return new RangeAreas(this.context, this.sheetId, areas)
  }
  getRangeByIndexes(row: number, col: number, rows: number, cols: number) {
    return this.context.range(this.sheetId, WHOLE_SHEET).getCell(row, col).getAbsoluteResizedRange(rows, cols)
  }
  getCell(row: number, col: number) {
    return this.getRangeByIndexes(row, col, 1, 1)
  }
  getUsedRange(valuesOnly = false) {
    return this.getUsedRangeOrNullObject(valuesOnly) ?? this.context.range(this.sheetId, cellArea(0, 0))
  }
  getUsedRangeOrNullObject(valuesOnly = false) {
    const used = this.context.grid.used(this.sheetId, valuesOnly)
    return used && this.context.range(this.sheetId, used)
  }
  /** The client finds a sheet again by this. */
  _getSheetById(id: string) {
    return this.context.worksheet(this.context.sheetInfo(id).id)
  }

  #info() {
    return this.context.sheetInfo(this.sheetId)
  }
  #requireAnotherVisible() {
    if (!this.context.grid.sheets().some(({ id, visible }) => visible && id !== this.sheetId))
      throw invalidOperation()
  }
}

offerEvents(
  Worksheet.prototype,
  ['changed', 'selectionChanged', 'activated', 'deactivated'],
  ({ context }) => context.registrations,
  ({ sheetId }) => sheetId,
)
