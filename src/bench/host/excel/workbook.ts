import { cellArea } from '../../grid/area'
import type { ExcelContext } from '../excelContext'
import { itemNotFound } from '../errors'
import { HostObject } from '../hostObject'
import { Application } from './application'
import { CommentCollection } from './commentCollection'
import { CustomXmlPartCollection } from './customXmlPartCollection'
import { DocumentProperties } from './documentProperties'
import { NamedItemCollection } from './namedItemCollection'
import type { Range } from './range'
import { SettingCollection } from './settingCollection'
import { TableCollection } from './tableCollection'
import { WorkbookProtection } from './workbookProtection'
import { WorksheetCollection } from './worksheetCollection'

/** The workbook: the root of all that the client asks for. */
export class Workbook extends HostObject {
  static override readonly className = 'Workbook'
  static override readonly scalars = ['name']

  constructor(
    readonly context: ExcelContext,
    /** The ranges that events told of, by the reference they were told with. */
    readonly eventRanges: ReadonlyMap<string, Range>,
  ) {
    super()
  }

  get name() {
    return this.context.book.name
  }
  get application() {
    return new Application(this.context)
  }
  get protection() {
    return new WorkbookProtection(this.context)
  }
  get worksheets() {
    return new WorksheetCollection(this.context)
  }
  get tables() {
    return new TableCollection(this.context, null)
  }
  get names() {
    return new NamedItemCollection(this.context, null)
  }
  get settings() {
    return new SettingCollection(this.context)
  }
  get customXmlParts() {
    return new CustomXmlPartCollection(this.context)
  }
  get properties() {
    return new DocumentProperties(this.context)
  }
  get comments() {
    return new CommentCollection(this.context, null)
  }
  getSelectedRange() {
    const { sheetId, area } = this.context.grid.selection()
    return this.context.range(sheetId, area)
  }
  getActiveCell() {
    const { sheetId, area } = this.context.grid.selection()
    return this.context.range(sheetId, cellArea(area.row, area.col))
  }
  _getRangeForEventByReferenceId(id: string) {
    const range = this.eventRanges.get(id)
    if (!range) throw itemNotFound()
    return range
  }
  _getRangeOrNullObjectForEventByReferenceId(id: string) {
    return this.eventRanges.get(id) ?? null
  }
}
