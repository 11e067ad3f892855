import type { ExcelContext } from '../excelContext'
import { accessDenied } from '../errors'
import { HostObject } from '../hostObject'

const DEFAULTS: Readonly<Record<string, unknown>> = {
  allowAutoFilter: false,
  allowDeleteColumns: false,
  allowDeleteRows: false,
  allowEditObjects: false,
  allowEditScenarios: false,
  allowFormatCells: false,
  allowFormatColumns: false,
  allowFormatRows: false,
  allowInsertColumns: false,
  allowInsertHyperlinks: false,
  allowInsertRows: false,
  allowPivotTables: false,
  allowSort: false,
  selectionMode: 'Normal',
}

/** A sheet's protection: while it is on, locked cells cannot be written, nor anything the options do not allow. */
export class WorksheetProtection extends HostObject {
  static override readonly className = 'WorksheetProtection'
  static override readonly scalars = ['protected', 'options']

  constructor(
    readonly context: ExcelContext,
    readonly sheetId: string,
  ) {
    super()
  }
  get protected() {
    return this.#facts().protection !== null
  }
  get options() {
    return this.#facts().protection?.options ?? null
  }
  protect(options: Readonly<Record<string, unknown>> = {}, password?: string) {
    if (this.protected) throw accessDenied()
    const all = { ...DEFAULTS, ...options }
    this.#facts().protection = password === undefined ? { options: all } : { options: all, password }
  }
  unprotect(password?: string) {
    const { protection } = this.#facts()
    if (protection?.password !== undefined && protection.password !== password) throw accessDenied()
    this.#facts().protection = null
  }

  #facts() {
    return this.context.book.sheet(this.sheetId)
  }
}
