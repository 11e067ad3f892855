import type { Area } from '../../grid/area'
import type { ConditionalRule } from '../../grid/grid'
import { moveRule, replaceRule } from '../conditionalRules'
import type { ExcelContext } from '../excelContext'
import { invalidOperation, itemNotFound } from '../errors'
import { HostObject } from '../hostObject'
import { moveReferences } from '../references'
import { CustomConditionalFormat } from './customConditionalFormat'
import { RangeAreas } from './rangeAreas'

/**
 * One conditional format. Its formula is given and taken for the first cell of the range that it was asked through (issue 5194 of office-js,
 * whose words leave open whether what is given follows that range or the format's own: here it follows the range).
 */
export class ConditionalFormat extends HostObject {
  static override readonly className = 'ConditionalFormat'
  static override readonly scalars = ['id', 'priority', 'stopIfTrue', 'type']

  constructor(
    readonly context: ExcelContext,
    readonly sheetId: string,
    readonly ruleId: string,
    /** The range whose collection it was asked for from. */
    readonly through: Area,
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
      read: () => seenFrom(this.#rule(), this.through),
      change: (change) => {
        this.context.requireOption(this.sheetId, 'allowFormatCells')
        const changed = (rule: ConditionalRule) => {
          const seen = seenFrom(rule, this.through)
          const { formula, ...rest } = change(seen)
          return formula === seen.formula
            ? { ...rest, formula: rule.formula }
            : { ...rest, formula: movedFrom(formula, this.through, rule) }
        }
        this.#set(replaceRule(this.#rules(), this.ruleId, changed))
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

/** A rule with its formula as it reads in the first cell of a range. */
function seenFrom(rule: ConditionalRule, { row, col }: Area): ConditionalRule {
  const [own] = rule.areas
  return own ? { ...rule, formula: moveReferences(rule.formula, row - own.row, col - own.col) } : rule
}

/** A formula written for the first cell of a range, as it reads in the rule's own first cell. */
function movedFrom(formula: string, { row, col }: Area, { areas: [own] }: ConditionalRule): string {
  return own ? moveReferences(formula, own.row - row, own.col - col) : formula
}
