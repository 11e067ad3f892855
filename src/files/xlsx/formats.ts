import { attributesOf, tagsOf } from './xml'

/** The number formats that a file names by number alone (ECMA-376, part 1, 18.8.30). */
const BUILT_IN: Readonly<Record<number, string>> = {
  0: 'General',
  1: '0',
  2: '0.00',
  3: '#,##0',
  4: '#,##0.00',
  9: '0%',
  10: '0.00%',
  11: '0.00E+00',
  12: '# ?/?',
  13: '# ??/??',
  14: 'mm-dd-yy',
  15: 'd-mmm-yy',
  16: 'd-mmm',
  17: 'mmm-yy',
  18: 'h:mm AM/PM',
  19: 'h:mm:ss AM/PM',
  20: 'h:mm',
  21: 'h:mm:ss',
  22: 'm/d/yy h:mm',
  37: '#,##0 ;(#,##0)',
  38: '#,##0 ;[Red](#,##0)',
  39: '#,##0.00;(#,##0.00)',
  40: '#,##0.00;[Red](#,##0.00)',
  45: 'mm:ss',
  46: '[h]:mm:ss',
  47: 'mmss.0',
  48: '##0.0E+0',
  49: '@',
}

/** Excel itself takes 65,490 (Excel specifications and limits, Microsoft). */
const MOST_STYLES = 100_000

/** The number format of each cell style of a workbook, by the style's number. */
export function formatsIn(xml: string): string[] {
  const own = new Map<number, string>()
  const ids: number[] = []
  let list = ''
  for (const tag of tagsOf(xml)) {
    if (tag.depth === 1) list = tag.name
    if (tag.depth !== 2 || tag.kind === 'close') continue
    if (list === 'numFmts' && tag.name === 'numFmt') {
      const attributes = attributesOf(xml, tag)
      own.set(Number(attributes.get('numFmtId')), attributes.get('formatCode') ?? 'General')
    }
    if (list === 'cellXfs' && tag.name === 'xf') ids.push(Number(attributesOf(xml, tag).get('numFmtId') ?? 0))
  }
  if (ids.length > MOST_STYLES) throw new SyntaxError('It holds more styles than a workbook may.')
  return ids.map((id) => own.get(id) ?? BUILT_IN[id] ?? 'General')
}
