import type { IRange } from '@univerjs/core'
import type { IConditionFormattingRule } from '@univerjs/sheets-conditional-formatting'
import { CFRuleType, CFSubRuleType } from '@univerjs/sheets-conditional-formatting'
import type { Area } from './area'
import type { ConditionalRule } from './grid'
import { fromUniverStyle, toUniverStyle } from './univerStyle'

/** An area as Univer's range, ends included. */
export const toUniverRange = (area: Area): IRange => ({
  startRow: area.row,
  endRow: area.row + area.rows - 1,
  startColumn: area.col,
  endColumn: area.col + area.cols - 1,
})

/** Univer's range as an area. */
export const fromUniverRange = (range: IRange): Area => ({
  row: range.startRow,
  col: range.startColumn,
  rows: range.endRow - range.startRow + 1,
  cols: range.endColumn - range.startColumn + 1,
})

/** A conditional format as Univer's rule; null while it has no formula or no look yet. `clip` cuts areas to the sheet. */
export function toUniverRule(
  { id, areas, formula, stopIfTrue, style }: ConditionalRule,
  clip: (area: Area) => Area,
): IConditionFormattingRule | null {
  if (formula === '') return null
  return {
    cfId: id,
    ranges: areas.map((area) => toUniverRange(clip(area))),
    stopIfTrue,
    rule: {
      type: CFRuleType.highlightCell,
      subType: CFSubRuleType.formula,
      value: formula,
      style: toUniverStyle({ ...style, borders: undefined, numberFormat: undefined }),
    },
  }
}

/** Univer's rule as a conditional format; kinds other than by formula keep their kind's name and no formula. */
export function fromUniverRule(rule: IConditionFormattingRule): ConditionalRule {
  const common = { id: rule.cfId, areas: rule.ranges.map(fromUniverRange), stopIfTrue: rule.stopIfTrue }
  if (rule.rule.type !== CFRuleType.highlightCell)
    return { ...common, type: rule.rule.type, formula: '', style: {} }
  const { bg, cl, bl, it, ul, st } = rule.rule.style
  const look = fromUniverStyle(rule.rule.style)
  const style = {
    ...(bg ? { fill: look.fill } : {}),
    ...(cl ? { fontColour: look.fontColour } : {}),
    ...(bl === undefined ? {} : { bold: look.bold }),
    ...(it === undefined ? {} : { italic: look.italic }),
    ...(ul ? { underline: look.underline } : {}),
    ...(st ? { strikethrough: look.strikethrough } : {}),
  }
  if (rule.rule.subType !== CFSubRuleType.formula)
    return { ...common, type: rule.rule.subType, formula: '', style }
  return { ...common, type: 'Custom', formula: rule.rule.value, style }
}
