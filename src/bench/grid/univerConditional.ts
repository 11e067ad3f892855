import type { FWorksheet } from '@univerjs/sheets/facade'
import type { Area } from './area'
import type { ConditionalRule } from './grid'
import { fromUniverRule, toUniverRule } from './univerRules'

/** The conditional formats of Univer's sheets: changes are gathered and told at the next flush. */
export class UniverConditional {
  /** Rules set but not yet told to Univer, by sheet. */
  readonly #pending = new Map<string, readonly ConditionalRule[]>()
  /** Rules as they were set, for what Univer's own do not hold. */
  readonly #known = new Map<string, ConditionalRule>()

  constructor(
    readonly sheet: (id: string) => FWorksheet,
    /** Cuts an area to what a sheet has of it. */
    readonly fit: (id: string, area: Area) => Area,
  ) {}

  read(id: string): readonly ConditionalRule[] {
    return this.#pending.get(id) ?? this.#shown(id)
  }

  set(id: string, rules: readonly ConditionalRule[]): void {
    this.#pending.set(id, rules)
  }

  flush(): void {
    for (const [id, rules] of this.#pending) this.#apply(id, rules)
    this.#pending.clear()
  }

  /** A rule without a formula is none to Univer: it is held back until it has one. */
  #shown(id: string): readonly ConditionalRule[] {
    return this.sheet(id)
      .getConditionalFormattingRules()
      .map(fromUniverRule)
      .map((rule) => {
        const known = this.#known.get(rule.id)
        return known ? { ...rule, areas: known.areas, style: known.style } : rule
      })
  }

  #apply(id: string, rules: readonly ConditionalRule[]): void {
    const sheet = this.sheet(id)
    const others = new Map(sheet.getConditionalFormattingRules().map((rule) => [rule.cfId, rule]))
    const clip = (area: Area) => this.fit(id, area)
    const wanted = rules.flatMap((rule) => {
      const known = rule.type === 'Custom' ? toUniverRule(rule, clip) : others.get(rule.id)
      return known ?? []
    })
    for (const rule of rules) this.#known.set(rule.id, rule)
    const shown = sheet.getConditionalFormattingRules()
    if (JSON.stringify(shown) === JSON.stringify(wanted)) return
    for (const { cfId } of shown) sheet.deleteConditionalFormattingRule(cfId)
    for (const rule of wanted.toReversed()) sheet.addConditionalFormattingRule(rule)
  }
}
