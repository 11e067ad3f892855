import type { ExcelContext } from '../excelContext'
import { accessDenied } from '../errors'
import { HostObject } from '../hostObject'

/** A workbook's protection: while it is on, sheets cannot be added, deleted, renamed, moved, hidden or shown. */
export class WorkbookProtection extends HostObject {
  static override readonly className = 'WorkbookProtection'
  static override readonly scalars = ['protected']

  constructor(readonly context: ExcelContext) {
    super()
  }
  get protected() {
    return this.context.book.protection !== null
  }
  protect(password?: string) {
    if (this.protected) throw accessDenied()
    this.context.book.protection = { password: password ?? null }
  }
  unprotect(password?: string) {
    const { protection } = this.context.book
    if (protection?.password != null && protection.password !== password) throw accessDenied()
    this.context.book.protection = null
  }
}
