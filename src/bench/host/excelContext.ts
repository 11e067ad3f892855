import type { Area } from '../grid/area'
import type { HostContext } from './context'
import type { Range } from './excel/range'
import type { Worksheet } from './excel/worksheet'

/** The shared context, with makers of the objects that nearly every class hands out. */
export interface ExcelContext extends HostContext {
  readonly range: (sheetId: string, area: Area) => Range
  readonly worksheet: (sheetId: string) => Worksheet
}
