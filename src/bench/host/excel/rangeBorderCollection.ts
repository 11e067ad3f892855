import type { Area } from '../../grid/area'
import type { ExcelContext } from '../excelContext'
import { HostCollection } from '../hostObject'
import { RangeBorder, SIDES } from './rangeBorder'
import type { Side } from './rangeBorder'

/** The lines around and within a range. */
export class RangeBorderCollection extends HostCollection<RangeBorder> {
  static override readonly className = 'RangeBorderCollection'
  static override readonly scalars = ['count']

  constructor(
    readonly context: ExcelContext,
    readonly sheetId: string,
    readonly area: Area,
  ) {
    super()
  }

  override all() {
    return SIDES.map((side) => this.#border(side))
  }
  protected override find(key: unknown) {
    const side = SIDES.find((one) => one === key)
    return side && this.#border(side)
  }
  get count() {
    return SIDES.length
  }

  #border(side: Side) {
    return new RangeBorder(this.context, this.sheetId, this.area, side)
  }
}
