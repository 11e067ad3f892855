import { areaAddress } from '../marksheet/layout/matrix'
import { SIGNATURE, type Rule } from '../marksheet/marking/rules'
import type { Edits } from './xlsx/edits'
import { element, written, type Child, type Root } from './xlsx/elements'
import { attributesOf, plainText, tagsOf, type Tag } from './xlsx/xml'

/** A rule with the number of its differential style in the workbook. */
export type StyledRule = Rule & { readonly style: number }

/**
 * Puts our conditional formats at a place before the teacher's own, which keep their order behind them; rules of ours from an earlier
 * marking are taken out.
 */
export function writeRules(
  xml: string,
  root: Root,
  edits: Edits,
  rules: readonly StyledRule[],
  place: number,
): void {
  const { prefix } = root.tag
  const formats = rules.map(({ areas, formula, style }, index) => {
    const rule = element(
      `${prefix}cfRule`,
      { type: 'expression', dxfId: style, priority: index + 1 },
      element(`${prefix}formula`, {}, written(formula)),
    )
    return element(`${prefix}conditionalFormatting`, { sqref: areas.map(areaAddress).join(' ') }, rule)
  })
  if (formats.length > 0) edits.insert(place, formats.join(''))
  const others: RulePlace[] = []
  for (const child of root.children.filter(({ name }) => HOLDS_RULES.includes(name))) {
    const [own, kept] = parted(rulesIn(xml, child))
    others.push(...kept)
    if (own.length > 0 && kept.length === 0) edits.replace(child.tag.start, child.end, '')
    else for (const { start, end } of own) edits.replace(start, end, '')
  }
  const least = others.reduce((lowest, { priority }) => Math.min(lowest, priority), Infinity)
  const shift = Math.max(0, rules.length + 1 - least)
  for (const { start, tagEnd, priority } of others) {
    const tag = xml.slice(start, tagEnd)
    edits.replace(start, tagEnd, tag.replace(PRIORITY, `$1"${priority + shift}"`))
  }
}

/** The children of a worksheet with rules in them: the newer kinds stand in the list of extensions. */
const HOLDS_RULES = ['conditionalFormatting', 'extLst']
const PRIORITY = /(\spriority\s*=\s*)(?:"[^"]*"|'[^']*')/

interface RulePlace {
  readonly start: number
  readonly tagEnd: number
  readonly end: number
  readonly priority: number
  readonly own: boolean
}

function parted(rules: readonly RulePlace[]): [own: RulePlace[], kept: RulePlace[]] {
  return [rules.filter(({ own }) => own), rules.filter(({ own }) => !own)]
}

function rulesIn(xml: string, { tag: { start }, end }: Child): RulePlace[] {
  const piece = xml.slice(start, end)
  const found: RulePlace[] = []
  let rule: Tag | undefined
  for (const tag of tagsOf(piece)) {
    if (tag.name !== 'cfRule') continue
    if (tag.kind !== 'close') rule = tag
    if (tag.kind === 'open' || !rule) continue
    found.push({
      start: start + rule.start,
      tagEnd: start + rule.end,
      end: start + tag.end,
      priority: Number(attributesOf(piece, rule).get('priority')) || 1,
      own: plainText(piece.slice(rule.end, tag.start).replace(/<[^>]*>/g, '')).includes(SIGNATURE),
    })
  }
  return found
}
