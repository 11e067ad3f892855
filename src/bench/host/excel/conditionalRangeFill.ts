import { readColour } from '../colour'
import { HostObject } from '../hostObject'
import type { RuleAccess } from './customConditionalFormat'

/** The background that a conditional format gives; '' for none. */
export class ConditionalRangeFill extends HostObject {
  static override readonly className = 'ConditionalRangeFill'
  static override readonly scalars = ['color']

  constructor(readonly access: RuleAccess) {
    super()
  }
  get color(): string {
    return this.access.read().style.fill ?? ''
  }
  set color(colour: unknown) {
    const fill = readColour(colour)
    this.access.change((rule) => ({ ...rule, style: { ...rule.style, fill } }))
  }
  clear() {
    this.access.change((rule) => ({ ...rule, style: { ...rule.style, fill: null } }))
  }
}
