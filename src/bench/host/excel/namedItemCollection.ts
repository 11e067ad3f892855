import type { ExcelContext } from '../excelContext'
import { fullAddress } from '../address'
import { invalidArgument, itemAlreadyExists } from '../errors'
import { HostCollection, HostObject } from '../hostObject'
import { placeOf } from '../place'
import { NamedItem } from './namedItem'

const VALID = /^[A-Za-z_\\][\w.\\]{0,254}$/
const LOOKS_LIKE_CELL = /^(?:[A-Za-z]{1,3}\d{1,7}|[RrCc])$/

/** The defined names of the workbook (`sheetId` null) or of a sheet. */
export class NamedItemCollection extends HostCollection<NamedItem> {
  static override readonly className = 'NamedItemCollection'

  constructor(
    readonly context: ExcelContext,
    readonly sheetId: string | null,
  ) {
    super()
  }
  override all() {
    return this.#own().map((facts) => new NamedItem(this.context, facts))
  }
  protected override find(name: unknown) {
    return this.all().find((item) => item.name.toLowerCase() === String(name).toLowerCase())
  }
  add(name: string, reference: unknown, comment = '') {
    if (!VALID.test(name) || LOOKS_LIKE_CELL.test(name)) throw invalidArgument()
    if (this.find(name)) throw itemAlreadyExists()
    const facts = {
      name,
      formula: this.#formula(reference),
      comment,
      visible: true,
      sheetId: this.sheetId,
    }
    this.context.book.names.push(facts)
    return new NamedItem(this.context, facts)
  }

  #own() {
    return this.context.book.names.filter((name) => name.sheetId === this.sheetId)
  }
  #formula(reference: unknown): string {
    if (!(reference instanceof HostObject)) {
      if (typeof reference !== 'string' || !reference.startsWith('=')) throw invalidArgument()
      return reference
    }
    const { sheetId, area } = placeOf(this.context, reference, this.sheetId)
    const [sheet, cells = ''] = fullAddress(this.context.sheetInfo(sheetId).name, area).split(/!(?=[^!]*$)/)
    return `=${String(sheet)}!${cells.replace(/[A-Z]+|\d+/g, '$$$&')}`
  }
}
