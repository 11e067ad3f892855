import type { ConditionalRule } from '../../grid/grid'
import { HostObject } from '../hostObject'
import { ConditionalFormatRule } from './conditionalFormatRule'
import { ConditionalRangeFormat } from './conditionalRangeFormat'

/** How the parts of a conditional format reach the rule they belong to. */
export interface RuleAccess {
  read(): ConditionalRule
  change(change: (rule: ConditionalRule) => ConditionalRule): void
}

/** A conditional format by formula. */
export class CustomConditionalFormat extends HostObject {
  static override readonly className = 'CustomConditionalFormat'

  constructor(readonly access: RuleAccess) {
    super()
  }
  get rule() {
    return new ConditionalFormatRule(this.access)
  }
  get format() {
    return new ConditionalRangeFormat(this.access)
  }
}
