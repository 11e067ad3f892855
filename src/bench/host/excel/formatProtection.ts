import type { CellFormat } from '../../grid/grid'
import { PlacedObject, common } from '../place'

/** Which cells a sheet's protection locks; null where they differ. */
export class FormatProtection extends PlacedObject {
  static override readonly className = 'FormatProtection'
  static override readonly scalars = ['locked', 'formulaHidden']

  get locked(): boolean | null {
    return common(this, (format) => format.locked)
  }
  set locked(locked: boolean) {
    this.#set({ locked })
  }
  get formulaHidden(): boolean | null {
    return common(this, (format) => format.formulaHidden)
  }
  set formulaHidden(formulaHidden: boolean) {
    this.#set({ formulaHidden })
  }

  #set(patch: Partial<CellFormat>) {
    this.context.requireOption(this.sheetId, 'allowFormatCells')
    this.context.grid.setFormat(this.sheetId, this.area, patch)
  }
}
