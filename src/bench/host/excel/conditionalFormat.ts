import type { ConditionalRule } from '../../grid/grid'
import { moveRule, replaceRule } from '../conditionalRules'
import type { ExcelContext } from '../excelContext'
import { invalidOperation, itemNotFound } from '../errors'
import { HostObject } from '../hostObject'
import { CustomConditionalFormat } from './customConditionalFormat'
import { RangeAreas } from './rangeAreas'

/** One conditional format. */
export class ConditionalFormat extends HostObject {
  static override readonly className = 'ConditionalFormat'
  static override readonly scalars = ['id', 'priority', 'stopIfTrue', 'type']

  constructor(
    readonly context: ExcelContext,
    readonly sheetId: string,
    readonly ruleId: string,
  ) {
    super()
  }

  override get wireId() {
    return this.ruleId
  }
  get id() {
    return this.#listed().id
  }
  get type() {
    return this.#listed().type
  }
  get priority() {
    this.#rule()
    return this.#rules().findIndex(({ id }) => id === this.ruleId)
  }
  set priority(priority: number) {
    this.#rule()
    this.#set(moveRule(this.#rules(), this.ruleId, priority))
  }
  get stopIfTrue() {
    return this.#rule().stopIfTrue
  }
  set stopIfTrue(stopIfTrue: boolean) {
    this.#set(replaceRule(this.#rules(), this.ruleId, (rule) => ({ ...rule, stopIfTrue })))
  }
  get custom() {
    const custom = this.customOrNullObject
    if (!custom) throw invalidOperation()
    return custom
  }
  get customOrNullObject() {
    if (this.#rule().type !== 'Custom') return null
    return new CustomConditionalFormat({
      read: () => this.#rule(),
      change: (change) => {
        this.context.requireOption(this.sheetId, 'allowFormatCells')
        this.#set(replaceRule(this.#rules(), this.ruleId, change))
      },
    })
  }
  getRange() {
    const range = this.getRangeOrNullObject()
    if (!range) throw invalidOperation()
    return range
  }
  /** The range, unless the format is on several. */
  getRangeOrNullObject() {
    const { areas } = this.#rule()
    const [area] = areas
    return area && areas.length === 1 ? this.context.range(this.sheetId, area) : null
  }
  getRanges() {
    return new RangeAreas(this.context, this.sheetId, this.#rule().areas)
  }
  delete() {
    this.context.requireOption(this.sheetId, 'allowFormatCells')
    this.#rule()
    this.#set(this.#rules().filter(({ id }) => id !== this.ruleId))
  }

  #rules() {
    return this.context.grid.conditionalFormats(this.sheetId)
  }
  /** The format, where the client library can read what is inside it. */
  #rule(): ConditionalRule {
    if (this.context.book.unreadableFormats.has(this.ruleId)) throw itemNotFound()
    return this.#listed()
  }
  /** The format, where the client library can at least list it. */
  #listed(): ConditionalRule {
    if (this.context.book.unreadableFormats.get(this.ruleId) === 'all') throw itemNotFound()
    const rule = this.#rules().find((one) => one.id === this.ruleId)
    if (!rule) throw itemNotFound()
    return rule
  }
  #set(rules: readonly ConditionalRule[]) {
    this.context.grid.setConditionalFormats(this.sheetId, rules)
  }
}
