import { cellXml, writeCells, type CellChange } from './sheetCells'
import { writeRules, type StyledRule } from './sheetRules'
import { Edits } from './xlsx/edits'
import { behind, element, placeBefore, rootOf, type Root } from './xlsx/elements'
import { attributesOf, tagsOf } from './xlsx/xml'

/** What the schema of a worksheet (ECMA-376, CT_Worksheet) holds, in order. */
const ORDER = [
  'sheetPr',
  'dimension',
  'sheetViews',
  'sheetFormatPr',
  'cols',
  'sheetData',
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

/** What is written on a sheet. `widths` are those of columns, in characters, where the sheet does not set them. */
export interface SheetChanges {
  readonly rules: readonly StyledRule[]
  readonly cells: readonly CellChange[]
  readonly widths: ReadonlyMap<number, number>
}

/** A worksheet's part with the changes; all else keeps its bytes. Throws SyntaxError where it is not well-formed. */
export function changeSheet(xml: string, { rules, cells, widths }: SheetChanges): string {
  const edits = new Edits(xml)
  const root = rootOf(xml)
  writeRules(xml, root, edits, rules, placeBefore(root, behind(ORDER, 'phoneticPr')))
  writeCells(xml, root, edits, cells)
  writeWidths(xml, root, edits, widths)
  return edits.result()
}

/** A worksheet's part with something written into its cells; all else keeps its bytes. */
export function fillSheet(xml: string, cells: readonly CellChange[]): string {
  const edits = new Edits(xml)
  writeCells(xml, rootOf(xml), edits, cells)
  return edits.result()
}

/** Sets the widths of columns where the sheet does not set them. */
function writeWidths(xml: string, root: Root, edits: Edits, widths: ReadonlyMap<number, number>): void {
  const cols = root.children.find(({ name }) => name === 'cols')
  const set: { min: number; max: number; start: number }[] = []
  if (cols)
    for (const tag of tagsOf(xml.slice(cols.tag.start, cols.end))) {
      if (tag.name !== 'col' || tag.kind === 'close') continue
      const attributes = attributesOf(xml.slice(cols.tag.start, cols.end), tag)
      set.push({
        min: Number(attributes.get('min')),
        max: Number(attributes.get('max')),
        start: cols.tag.start + tag.start,
      })
    }
  const made = [...widths]
    .map(([column, width]) => ({ number: column + 1, width }))
    .filter(({ number }) => !set.some(({ min, max }) => min <= number && number <= max))
    .sort((a, b) => a.number - b.number)
    .map(({ number, width }) => ({ number, xml: columnXml(root.tag.prefix, number, width) }))
  if (cols) {
    for (const { number, xml: col } of made)
      edits.insert(set.find(({ min }) => min > number)?.start ?? cols.contentEnd, col)
  } else if (made.length > 0) {
    const list = element(`${root.tag.prefix}cols`, {}, made.map((each) => each.xml).join(''))
    edits.insert(placeBefore(root, behind(ORDER, 'cols')), list)
  }
}

const columnXml = (prefix: string, number: number, width: number) =>
  element(`${prefix}col`, { min: number, max: number, width, customWidth: 1 })

/** A worksheet of our own: rows of texts from A1 and the widths of its columns, in characters. */
export function newSheet(
  namespace: string,
  rows: readonly (readonly { readonly text: string; readonly style: number }[])[],
  widths: readonly number[],
): string {
  const cols = widths.map((width, index) => columnXml('', index + 1, width)).join('')
  const data = rows.map((cells, row) => {
    const all = cells.map(({ text, style }, column) => cellXml('', { row, column, content: text, style }))
    return element('row', { r: row + 1 }, all.join(''))
  })
  return element(
    'worksheet',
    { xmlns: namespace },
    `<sheetViews><sheetView workbookViewId="0" showGridLines="0"/></sheetViews><cols>${cols}</cols><sheetData>${data.join('')}</sheetData>`,
  )
}
