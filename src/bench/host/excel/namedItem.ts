import type { ExcelContext } from '../excelContext'
import type { NameFacts } from '../book'
import { HostError, itemNotFound } from '../errors'
import { HostObject } from '../hostObject'
import { placeOf } from '../place'

/** A defined name. */
export class NamedItem extends HostObject {
  static override readonly className = 'NamedItem'
  static override readonly scalars = ['comment', 'formula', 'name', 'scope', 'type', 'value', 'visible']
  readonly #facts: NameFacts

  constructor(
    readonly context: ExcelContext,
    facts: NameFacts,
  ) {
    super()
    this.#facts = facts
  }
  override get wireId() {
    return this.#facts.name
  }
  get name() {
    return this.#facts.name
  }
  get formula() {
    return this.#facts.formula
  }
  set formula(formula: string) {
    this.#facts.formula = formula
  }
  get comment() {
    return this.#facts.comment
  }
  set comment(comment: string) {
    this.#facts.comment = comment
  }
  get visible() {
    return this.#facts.visible
  }
  set visible(visible: boolean) {
    this.#facts.visible = visible
  }
  get scope() {
    return this.#facts.sheetId === null ? 'Workbook' : 'Worksheet'
  }
  get type() {
    return this.#place() ? 'Range' : 'String'
  }
  get value() {
    return this.#facts.formula.slice(1).replace(/\$/g, '')
  }
  getRange() {
    const range = this.getRangeOrNullObject()
    if (!range) throw itemNotFound()
    return range
  }
  getRangeOrNullObject() {
    const place = this.#place()
    return place && this.context.range(place.sheetId, place.area)
  }
  delete() {
    this.context.book.names = this.context.book.names.filter((name) => name !== this.#facts)
  }

  #place() {
    try {
      return placeOf(this.context, this.#facts.formula, this.#facts.sheetId)
    } catch (error) {
      if (error instanceof HostError) return null
      throw error
    }
  }
}
