import type { Document, Element } from '@xmldom/xmldom'
import { areaAddress, addressOf, type CellRef } from '../marksheet/layout/matrix'
import { SIGNATURE, type Rule } from '../marksheet/marking/rules'
import { children, ensureChild, insertBeforeAny, make, rootOf } from './parts'

/** What the schema of a worksheet (ECMA-376, CT_Worksheet) puts behind its cells, in order. */
const BEHIND_CELLS = [
  'sheetCalcPr',
  'sheetProtection',
  'protectedRanges',
  'scenarios',
  'autoFilter',
  'sortState',
  'dataConsolidate',
  'customSheetViews',
  'mergeCells',
  'phoneticPr',
  'conditionalFormatting',
  'dataValidations',
  'hyperlinks',
  'printOptions',
  'pageMargins',
  'pageSetup',
  'headerFooter',
  'rowBreaks',
  'colBreaks',
  'customProperties',
  'cellWatches',
  'ignoredErrors',
  'smartTags',
  'drawing',
  'legacyDrawing',
  'legacyDrawingHF',
  'picture',
  'oleObjects',
  'controls',
  'webPublishItems',
  'tableParts',
  'extLst',
]

/**
 * Puts our conditional formats before the teacher's own, which keep their order behind them; rules of ours from an earlier
 * marking are taken out. `styleOf` gives the number of a rule's differential style.
 */
export function writeRules(sheet: Document, rules: readonly Rule[], styleOf: (rule: Rule) => number): void {
  const root = rootOf(sheet)
  removeOwnRules(root)
  for (const rule of Array.from(root.getElementsByTagNameNS('*', 'cfRule'))) {
    const priority = Number(rule.getAttribute('priority'))
    rule.setAttribute('priority', String(priority + rules.length))
  }
  const behind = BEHIND_CELLS.slice(BEHIND_CELLS.indexOf('conditionalFormatting'))
  const elements = rules.map((rule, index) => {
    const formula = make(root, 'formula', {}, [rule.formula])
    const attributes = { type: 'expression', dxfId: styleOf(rule), priority: index + 1 }
    const sqref = rule.areas.map(areaAddress).join(' ')
    return make(root, 'conditionalFormatting', { sqref }, [make(root, 'cfRule', attributes, [formula])])
  })
  const [own] = elements
  if (!own) return
  insertBeforeAny(root, own, behind)
  for (const element of elements.slice(1).toReversed()) root.insertBefore(element, own.nextSibling)
}

function removeOwnRules(root: Element): void {
  for (const format of children(root, 'conditionalFormatting')) {
    for (const rule of children(format, 'cfRule')) {
      if (children(rule, 'formula').some(({ textContent }) => textContent?.includes(SIGNATURE)))
        format.removeChild(rule)
    }
    if (children(format, 'cfRule').length === 0) root.removeChild(format)
  }
}

/** Writes a text into a cell as text, whatever it looks like; an empty text empties the cell. The rest of the row stays. */
export function writeText(sheet: Document, cell: CellRef, text: string, style: number): void {
  const element = emptied(sheet, cell)
  element.setAttribute('s', String(style))
  if (text !== '') fill(element, text)
}

/** Writes a number, or a text as the text it is, into a cell that keeps its style. */
export function writeContent(sheet: Document, cell: CellRef, content: string | number): void {
  fill(emptied(sheet, cell), content)
}

/** The cell, made where there is none, with nothing in it. */
function emptied(sheet: Document, cell: CellRef): Element {
  const data = ensureChild(rootOf(sheet), 'sheetData', BEHIND_CELLS)
  const row = childAt(
    data,
    'row',
    cell.row + 1,
    (each) => Number(each.getAttribute('r')),
    () => make(data, 'row', { r: cell.row + 1 }),
  )
  row.removeAttribute('spans')
  const element = childAt(
    row,
    'c',
    cell.column,
    (each) => cellAt(each.getAttribute('r') ?? '').column,
    () => make(row, 'c', { r: addressOf(cell) }),
  )
  while (element.firstChild) element.removeChild(element.firstChild)
  element.removeAttribute('t')
  return element
}

function fill(element: Element, content: string | number): void {
  if (typeof content === 'number') {
    element.appendChild(make(element, 'v', {}, [String(content)]))
    return
  }
  element.setAttribute('t', 'inlineStr')
  const text = make(element, 't', {}, [content])
  text.setAttributeNS('http://www.w3.org/XML/1998/namespace', 'xml:space', 'preserve')
  element.appendChild(make(element, 'is', {}, [text]))
}

/** Sets the width of a column, in characters, where the sheet does not set it. */
export function widenColumn(sheet: Document, column: number, width: number): void {
  const cols = ensureChild(rootOf(sheet), 'cols', ['sheetData', ...BEHIND_CELLS])
  const number = column + 1
  const isSet = children(cols, 'col').some(
    (col) => Number(col.getAttribute('min')) <= number && number <= Number(col.getAttribute('max')),
  )
  if (isSet) return
  childAt(
    cols,
    'col',
    number,
    (each) => Number(each.getAttribute('min')),
    () => make(cols, 'col', { min: number, max: number, width, customWidth: 1 }),
  )
}

/** The child in an ordered list that has this position, made in its place where there is none. */
function childAt(
  list: Element,
  name: string,
  position: number,
  positionOf: (child: Element) => number,
  create: () => Element,
): Element {
  const next = children(list, name).find((child) => positionOf(child) >= position)
  if (next && positionOf(next) === position) return next
  const created = create()
  list.insertBefore(created, next ?? null)
  return created
}

/** The cell with an address ("B5"). */
export function cellAt(address: string): CellRef {
  const [, letters = '', digits = ''] = /^([A-Z]*)(\d*)$/.exec(address) ?? []
  const column = [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1
  return { row: Number(digits) - 1, column }
}

/** The XML of an empty worksheet whose columns have these widths, in characters. */
export function emptySheet(widths: readonly number[], main: string): string {
  const cols = widths
    .map((width, index) => `<col min="${index + 1}" max="${index + 1}" width="${width}" customWidth="1"/>`)
    .join('')
  return `<worksheet xmlns="${main}"><sheetViews><sheetView workbookViewId="0" showGridLines="0"/></sheetViews><cols>${cols}</cols><sheetData/></worksheet>`
}
