import type { Area } from '../grid/area'
import { subtract } from '../grid/area'
import type { ConditionalRule } from '../grid/grid'

/** The rules with an area cut out of them; a rule left without cells is gone. */
export const removeFromRules = (rules: readonly ConditionalRule[], area: Area): readonly ConditionalRule[] =>
  rules
    .map((rule) => ({ ...rule, areas: rule.areas.flatMap((part) => subtract(part, area)) }))
    .filter((rule) => rule.areas.length > 0)

/** The rules with one replaced. */
export const replaceRule = (
  rules: readonly ConditionalRule[],
  id: string,
  change: (rule: ConditionalRule) => ConditionalRule,
): readonly ConditionalRule[] => rules.map((rule) => (rule.id === id ? change(rule) : rule))

/** The rules with one moved to a priority, 0 being first; a negative one counts from the end. */
export function moveRule(
  rules: readonly ConditionalRule[],
  id: string,
  priority: number,
): readonly ConditionalRule[] {
  const rule = rules.find((one) => one.id === id)
  if (!rule) return rules
  const others = rules.filter((one) => one !== rule)
  const place = priority < 0 ? Math.max(0, rules.length + priority) : Math.min(priority, others.length)
  return [...others.slice(0, place), rule, ...others.slice(place)]
}
