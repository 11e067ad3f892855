import { readColour } from '../colour'
import { PlacedObject, common } from '../place'

/** What Excel gives as the colour of cells without a fill. */
const NO_FILL = '#FFFFFF'

/** The background of a range; null where it differs. */
export class RangeFill extends PlacedObject {
  static override readonly className = 'RangeFill'
  static override readonly scalars = ['color', 'pattern']

  get color(): string | null {
    return common(this, (format) => format.fill ?? NO_FILL)
  }
  set color(colour: unknown) {
    this.#set(readColour(colour))
  }
  get pattern(): string | null {
    return common(this, (format) => (format.fill === null ? 'None' : 'Solid'))
  }
  clear() {
    this.#set(null)
  }

  #set(fill: string | null) {
    this.context.requireOption(this.sheetId, 'allowFormatCells')
    this.context.grid.setFormat(this.sheetId, this.area, { fill })
  }
}
