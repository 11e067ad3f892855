import type { CellFormat } from '../../grid/grid'
import { readColour } from '../colour'
import { invalidArgument } from '../errors'
import { PlacedObject, common } from '../place'

/** Greatest font size Excel takes. */
const MAX_SIZE = 409

/** The letters of a range; null where they differ. */
export class RangeFont extends PlacedObject {
  static override readonly className = 'RangeFont'
  static override readonly scalars = ['bold', 'color', 'italic', 'name', 'size', 'strikethrough', 'underline']

  get bold(): boolean | null {
    return common(this, (format) => format.bold)
  }
  set bold(bold: boolean) {
    this.#set({ bold })
  }
  get italic(): boolean | null {
    return common(this, (format) => format.italic)
  }
  set italic(italic: boolean) {
    this.#set({ italic })
  }
  get underline(): string | null {
    return common(this, (format) => format.underline)
  }
  set underline(underline: string) {
    this.#set({ underline })
  }
  get strikethrough(): boolean | null {
    return common(this, (format) => format.strikethrough)
  }
  set strikethrough(strikethrough: boolean) {
    this.#set({ strikethrough })
  }
  get color(): string | null {
    return common(this, (format) => format.fontColour)
  }
  set color(colour: unknown) {
    this.#set({ fontColour: readColour(colour) })
  }
  get name(): string | null {
    return common(this, (format) => format.fontName)
  }
  set name(fontName: string) {
    this.#set({ fontName })
  }
  get size(): number | null {
    return common(this, (format) => format.fontSize)
  }
  set size(fontSize: number) {
    if (!(fontSize >= 1 && fontSize <= MAX_SIZE)) throw invalidArgument()
    this.#set({ fontSize })
  }

  #set(patch: Partial<CellFormat>) {
    this.context.requireOption(this.sheetId, 'allowFormatCells')
    this.context.grid.setFormat(this.sheetId, this.area, patch)
  }
}
