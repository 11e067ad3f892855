import type { BorderLine, Edge } from '../../grid/grid'
import { readColour } from '../colour'
import { HostObject } from '../hostObject'
import type { RuleAccess } from './customConditionalFormat'

/** The sides a conditional format can draw on. */
export const CONDITIONAL_SIDES: readonly { readonly side: string; readonly edge: Edge }[] = [
  { side: 'EdgeTop', edge: 'top' },
  { side: 'EdgeBottom', edge: 'bottom' },
  { side: 'EdgeLeft', edge: 'left' },
  { side: 'EdgeRight', edge: 'right' },
]

/** One line that a conditional format draws. */
export class ConditionalRangeBorder extends HostObject {
  static override readonly className = 'ConditionalRangeBorder'
  static override readonly scalars = ['color', 'sideIndex', 'style']
  readonly #side: string
  readonly #edge: Edge

  constructor(
    readonly access: RuleAccess,
    side: string,
    edge: Edge,
  ) {
    super()
    this.#side = side
    this.#edge = edge
  }
  override get wireId() {
    return this.#side
  }
  get sideIndex() {
    return this.#side
  }
  get style(): string {
    return this.#line()?.style ?? 'None'
  }
  set style(style: string) {
    this.#set({ style })
  }
  get color(): string {
    return this.#line()?.colour ?? ''
  }
  set color(colour: unknown) {
    this.#set({ colour: readColour(colour) })
  }

  #line(): BorderLine | undefined {
    return this.access.read().style.borders?.[this.#edge]
  }
  #set(patch: Partial<BorderLine>) {
    const line = { style: 'Continuous', weight: 'Thin', colour: '#000000', ...this.#line(), ...patch }
    this.access.change((rule) => ({
      ...rule,
      style: { ...rule.style, borders: { ...rule.style.borders, [this.#edge]: line } },
    }))
  }
}
