import type { ConditionalStyle } from '../../grid/grid'
import { readColour } from '../colour'
import { HostObject } from '../hostObject'
import type { RuleAccess } from './customConditionalFormat'

/** The letters that a conditional format gives; null (or '' for the colour) where it leaves them alone. */
export class ConditionalRangeFont extends HostObject {
  static override readonly className = 'ConditionalRangeFont'
  static override readonly scalars = ['bold', 'color', 'italic', 'strikethrough', 'underline']

  constructor(readonly access: RuleAccess) {
    super()
  }
  get color(): string {
    return this.access.read().style.fontColour ?? ''
  }
  set color(colour: unknown) {
    this.#set({ fontColour: readColour(colour) })
  }
  get bold(): boolean | null {
    return this.access.read().style.bold ?? null
  }
  set bold(bold: boolean) {
    this.#set({ bold })
  }
  get italic(): boolean | null {
    return this.access.read().style.italic ?? null
  }
  set italic(italic: boolean) {
    this.#set({ italic })
  }
  get underline(): string | null {
    return this.access.read().style.underline ?? null
  }
  set underline(underline: string) {
    this.#set({ underline })
  }
  get strikethrough(): boolean | null {
    return this.access.read().style.strikethrough ?? null
  }
  set strikethrough(strikethrough: boolean) {
    this.#set({ strikethrough })
  }
  clear() {
    this.access.change(({ style, ...rule }) => {
      const { fill, numberFormat, borders } = style
      return { ...rule, style: { fill, numberFormat, borders } as ConditionalStyle }
    })
  }

  #set(patch: ConditionalStyle) {
    this.access.change((rule) => ({ ...rule, style: { ...rule.style, ...patch } }))
  }
}
