import type { Area } from '../../grid/area'
import { intersect } from '../../grid/area'
import { removeFromRules } from '../conditionalRules'
import type { ExcelContext } from '../excelContext'
import { notOnBench } from '../errors'
import { HostCollection } from '../hostObject'
import { ConditionalFormat } from './conditionalFormat'

/** The conditional formats that touch a range, first priority first. */
export class ConditionalFormatCollection extends HostCollection<ConditionalFormat> {
  static override readonly className = 'ConditionalFormatCollection'

  constructor(
    readonly context: ExcelContext,
    readonly sheetId: string,
    readonly area: Area,
  ) {
    super()
  }

  override all() {
    return this.#rules()
      .filter((rule) => rule.areas.some((area) => intersect(area, this.area)))
      .map((rule) => new ConditionalFormat(this.context, this.sheetId, rule.id, this.area))
  }
  protected override find(id: unknown) {
    return this.all().find((format) => format.wireId === id)
  }
  /** A new conditional format goes to the top. */
  add(type: string) {
    if (type !== 'Custom') throw notOnBench(`ConditionalFormatCollection.add('${type}')`)
    this.context.requireOption(this.sheetId, 'allowFormatCells')
    const number = this.context.book.nextId().toString(16).toUpperCase().padStart(12, '0')
    const id = `{00000000-000F-0000-0000-${number}}`
    const rule = { id, areas: [this.area], type, formula: '', stopIfTrue: false, style: {} }
    this.context.grid.setConditionalFormats(this.sheetId, [rule, ...this.#rules()])
    return new ConditionalFormat(this.context, this.sheetId, id, this.area)
  }
  clearAll() {
    this.context.requireOption(this.sheetId, 'allowFormatCells')
    this.context.grid.setConditionalFormats(this.sheetId, removeFromRules(this.#rules(), this.area))
  }

  #rules() {
    return this.context.grid.conditionalFormats(this.sheetId)
  }
}
