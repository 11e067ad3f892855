import { HostObject } from '../hostObject'
import { ConditionalRangeBorderCollection } from './conditionalRangeBorderCollection'
import { ConditionalRangeFill } from './conditionalRangeFill'
import { ConditionalRangeFont } from './conditionalRangeFont'
import type { RuleAccess } from './customConditionalFormat'

/** The look that a conditional format gives. */
export class ConditionalRangeFormat extends HostObject {
  static override readonly className = 'ConditionalRangeFormat'
  static override readonly scalars = ['numberFormat']

  constructor(readonly access: RuleAccess) {
    super()
  }
  get fill() {
    return new ConditionalRangeFill(this.access)
  }
  get font() {
    return new ConditionalRangeFont(this.access)
  }
  get borders() {
    return new ConditionalRangeBorderCollection(this.access)
  }
  get numberFormat(): string {
    return this.access.read().style.numberFormat ?? ''
  }
  set numberFormat(numberFormat: string) {
    this.access.change((rule) => ({ ...rule, style: { ...rule.style, numberFormat } }))
  }
}
