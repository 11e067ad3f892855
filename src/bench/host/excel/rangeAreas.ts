import type { Area } from '../../grid/area'
import { fullAddress } from '../address'
import { clearPlace } from '../clear'
import type { ExcelContext } from '../excelContext'
import { HostCollection, HostObject } from '../hostObject'
import type { Range } from './range'

/** The blocks of a RangeAreas as a collection. */
export class RangeCollection extends HostCollection<Range> {
  static override readonly className = 'RangeCollection'
  readonly #ranges: readonly Range[]

  constructor(ranges: readonly Range[]) {
    super()
    this.#ranges = ranges
  }
  override all() {
    return this.#ranges
  }
  protected override find(): undefined {
    return undefined
  }
}

/** Several blocks of one sheet. */
export class RangeAreas extends HostObject {
  static override readonly className = 'RangeAreas'
  static override readonly scalars = ['address', 'areaCount', 'cellCount']

  constructor(
    readonly context: ExcelContext,
    readonly sheetId: string,
    readonly blocks: readonly Area[],
  ) {
    super()
  }

  get address() {
    const { name } = this.context.sheetInfo(this.sheetId)
    return this.blocks.map((area) => fullAddress(name, area)).join(',')
  }
  get areaCount() {
    return this.blocks.length
  }
  get cellCount() {
    return this.blocks.reduce((sum, { rows, cols }) => sum + rows * cols, 0)
  }
  get areas() {
    return new RangeCollection(this.blocks.map((area) => this.context.range(this.sheetId, area)))
  }
  get worksheet() {
    return this.context.worksheet(this.sheetId)
  }
  clear(applyTo = 'All') {
    for (const area of this.blocks)
      clearPlace({ context: this.context, sheetId: this.sheetId, area }, applyTo)
  }
}
