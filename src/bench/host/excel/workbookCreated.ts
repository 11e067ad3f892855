import type { ExcelContext } from '../excelContext'
import { HostObject } from '../hostObject'

/** A workbook that was made beside the one in front. The bench has one window: what is opened is kept, not shown. */
export class WorkbookCreated extends HostObject {
  static override readonly className = 'WorkbookCreated'

  constructor(
    readonly context: ExcelContext,
    private readonly base64File: string,
  ) {
    super()
  }
  open() {
    this.context.book.openedBeside.push(this.base64File)
  }
}
