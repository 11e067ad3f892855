import { HostCollection } from '../hostObject'
import { CONDITIONAL_SIDES, ConditionalRangeBorder } from './conditionalRangeBorder'
import type { RuleAccess } from './customConditionalFormat'

/** The lines that a conditional format draws around each cell. */
export class ConditionalRangeBorderCollection extends HostCollection<ConditionalRangeBorder> {
  static override readonly className = 'ConditionalRangeBorderCollection'
  static override readonly scalars = ['count']

  constructor(readonly access: RuleAccess) {
    super()
  }
  override all() {
    return CONDITIONAL_SIDES.map(({ side, edge }) => new ConditionalRangeBorder(this.access, side, edge))
  }
  protected override find(key: unknown) {
    return this.all().find((border) => border.wireId === key)
  }
  get count() {
    return CONDITIONAL_SIDES.length
  }
  get top() {
    return this.getItem('EdgeTop')
  }
  get bottom() {
    return this.getItem('EdgeBottom')
  }
  get left() {
    return this.getItem('EdgeLeft')
  }
  get right() {
    return this.getItem('EdgeRight')
  }
}
