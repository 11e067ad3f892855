import { requireWellFormed } from '../entry'
import { invalidArgument } from '../errors'
import { HostObject } from '../hostObject'
import type { RuleAccess } from './customConditionalFormat'

/** The formula of a conditional format, written for the first cell of its range. */
export class ConditionalFormatRule extends HostObject {
  static override readonly className = 'ConditionalFormatRule'
  static override readonly scalars = ['formula']

  constructor(readonly access: RuleAccess) {
    super()
  }
  get formula() {
    return this.access.read().formula
  }
  set formula(text: unknown) {
    if (typeof text !== 'string' || text === '') throw invalidArgument()
    const formula = text.startsWith('=') ? text : `=${text}`
    requireWellFormed(formula)
    this.access.change((rule) => ({ ...rule, formula }))
  }
}
