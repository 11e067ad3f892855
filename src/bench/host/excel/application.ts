import { invalidArgument } from '../errors'
import type { ExcelContext } from '../excelContext'
import { HostObject } from '../hostObject'
import { WorkbookCreated } from './workbookCreated'

const MODES = new Set(['Automatic', 'AutomaticExceptTables', 'Manual'])
const CALCULATIONS = new Set(['Recalculate', 'Full', 'FullRebuild'])

/** Excel as a whole. The bench's grids calculate by themselves and draw when a request is done. */
export class Application extends HostObject {
  static override readonly className = 'Application'
  static override readonly scalars = ['calculationMode', 'calculationState']

  constructor(readonly context: ExcelContext) {
    super()
  }
  get calculationMode() {
    return this.context.book.calculationMode
  }
  set calculationMode(mode: string) {
    if (!MODES.has(mode)) throw invalidArgument()
    this.context.book.calculationMode = mode
  }
  get calculationState() {
    return this.context.grid.calculating() ? 'Calculating' : 'Done'
  }
  calculate(type: string) {
    if (!CALCULATIONS.has(type)) throw invalidArgument()
    this.context.grid.flush()
  }
  createWorkbook(base64File?: string) {
    return new WorkbookCreated(this.context, base64File ?? '')
  }
  suspendScreenUpdatingUntilNextSync() {
    return null
  }
  suspendApiCalculationUntilNextSync() {
    return null
  }
}
