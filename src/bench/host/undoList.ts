import { HostError } from './errors'

/**
 * Members after which Excel for Windows and Mac forgets its list; those that the bench has. (Microsoft Learn, "Undo capabilities with the
 * Excel JavaScript API", read in its form of May 2025.)
 */
const FORGOTTEN_AFTER = new Set([
  'Worksheet.delete',
  'Worksheet.name',
  'Worksheet.position',
  'Worksheet.visibility',
  'WorksheetProtection.protect',
  'WorksheetProtection.unprotect',
  'WorkbookProtection.protect',
  'WorkbookProtection.unprotect',
])

/** What Ctrl+Z takes back in one go. */
export type UndoStep = 'typed' | 'add-in'

/** Excel's own list of what Ctrl+Z takes back: what was typed, and requests of an add-in, one by one or merged. Steps are only counted. */
export class UndoList {
  readonly steps: UndoStep[] = []
  /** Whether Excel refuses to merge requests, whatever they hold. */
  refusesMerging = false
  #merging = false
  #hasStep = false
  #hasWritten = false

  typed(): void {
    this.steps.push('typed')
  }

  /** To be called for each member that a request sets or calls to change something. Throws UndoNotSupported. */
  changing(member: string): void {
    const isForgotten = FORGOTTEN_AFTER.has(member)
    if (this.#merging && (isForgotten || this.refusesMerging))
      throw new HostError('UndoNotSupported', 'Undo is not supported for this operation.')
    if (isForgotten) this.steps.length = 0
    this.#hasWritten = !isForgotten
  }

  /** To be called at the end of each request. */
  requestDone(): void {
    if (this.#hasWritten && !this.#hasStep) this.steps.push('add-in')
    this.#hasStep = this.#merging && (this.#hasStep || this.#hasWritten)
    this.#hasWritten = false
  }

  /** Merges the requests of a run, as `mergeUndoGroup` does. */
  async merged<T>(run: () => Promise<T>): Promise<T> {
    this.#merging = true
    this.#hasStep = false
    try {
      return await run()
    } finally {
      this.#merging = false
      this.#hasStep = false
    }
  }
}
