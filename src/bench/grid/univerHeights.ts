import type { FUniver } from '@univerjs/core/facade'
import type { FWorkbook } from '@univerjs/sheets/facade'

const PLANNED = 'sheet.operation.mark-dirty-row-auto-height'
const CANCEL = 'sheet.operation.cancel-mark-dirty-row-auto-height'

/**
 * Univer fits row heights when it is idle, and fails for good when the sheet has gone by then. This notes what is planned,
 * so that it can be called off before a sheet goes.
 */
export class UniverHeights {
  readonly #planned = new Map<string, string[]>()

  constructor(
    readonly api: FUniver,
    readonly workbook: FWorkbook,
  ) {
    workbook.onCommandExecuted(({ id, params }) => {
      if (id !== PLANNED) return
      const { subUnitId, id: task } = params as { subUnitId: string; id: string }
      this.#planned.set(subUnitId, [...(this.#planned.get(subUnitId) ?? []), task])
    })
  }

  /** Calls off what is planned for a sheet. */
  callOff(sheetId: string): void {
    for (const id of this.#planned.get(sheetId) ?? [])
      this.api.syncExecuteCommand(CANCEL, { unitId: this.workbook.getId(), id })
    this.#planned.delete(sheetId)
  }
}
