import type { Part } from './work'

/** A sheet by its id, or by its name where it is yet to be added: whether it is there, protected, in sight. */
export class SheetPresence {
  #sheet: Excel.Worksheet | undefined
  #added: Excel.Worksheet | undefined

  constructor(private readonly from: string) {}

  /** The sheet's id once it is known, else its name. */
  readonly key = (): string => {
    try {
      return this.#added?.id ?? this.from
    } catch {
      return this.from
    }
  }

  /** Notes the id of the sheet, once it is written. */
  added(): Part {
    return {
      cells: 1,
      queue: (context) => {
        this.#added = context.workbook.worksheets.getItem(this.from)
        this.#added.load('id')
      },
    }
  }

  /** Asks whether the sheet is there, in sight, protected. */
  presence(): Part {
    return {
      cells: 1,
      queue: (context) => {
        const sheet = context.workbook.worksheets.getItemOrNullObject(this.key())
        sheet.load('visibility')
        sheet.protection.load('protected')
        this.#sheet = sheet
      },
    }
  }

  isThere(): boolean {
    return this.#sheet?.isNullObject === false
  }

  isProtected(): boolean {
    return this.isThere() && this.#sheet?.protection.protected === true
  }

  isVisible(): boolean {
    return this.isThere() && this.#sheet?.visibility === 'Visible'
  }
}
