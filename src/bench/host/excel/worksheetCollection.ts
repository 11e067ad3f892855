import type { ExcelContext } from '../excelContext'
import { ANY_SHEET, offerEvents } from '../events'
import { HostCollection } from '../hostObject'
import { freeSheetName, requireSheetName } from '../sheetName'
import type { Worksheet } from './worksheet'

/** The sheets, in the order of their tabs. */
export class WorksheetCollection extends HostCollection<Worksheet> {
  static override readonly className = 'WorksheetCollection'

  constructor(readonly context: ExcelContext) {
    super()
  }
  override all() {
    return this.context.grid.sheets().map(({ id }) => this.context.worksheet(id))
  }
  /** By id, or by name in any case. */
  protected override find(key: unknown) {
    const sheets = this.context.grid.sheets()
    const sheet =
      sheets.find(({ id }) => id === key) ??
      sheets.find(({ name }) => name.toLowerCase() === String(key).toLowerCase())
    return sheet && this.context.worksheet(sheet.id)
  }
  override getCount(visibleOnly = false) {
    return this.context.grid.sheets().filter(({ visible }) => visible || !visibleOnly).length
  }
  getActiveWorksheet() {
    return this.context.worksheet(this.context.grid.activeSheet())
  }
  getFirst(visibleOnly = false) {
    return this.#visible(visibleOnly).at(0)
  }
  getLast(visibleOnly = false) {
    return this.#visible(visibleOnly).at(-1)
  }
  /** Adds a sheet at the end; it is not activated. */
  add(name?: string) {
    this.context.requireStructure()
    const taken = this.context.grid.sheets().map((sheet) => sheet.name)
    const newName = name ?? freeSheetName(taken)
    requireSheetName(newName, taken)
    const id = this.context.grid.addSheet(newName)
    this.context.sheetEvents.push({ event: 'added', sheetId: id })
    return this.context.worksheet(id)
  }

  #visible(visibleOnly: boolean) {
    return this.all().filter((sheet) => !visibleOnly || sheet.visibility === 'Visible')
  }
}

offerEvents(
  WorksheetCollection.prototype,
  ['changed', 'selectionChanged', 'added', 'deleted', 'activated', 'deactivated'],
  ({ context }) => context.registrations,
  () => ANY_SHEET,
)
