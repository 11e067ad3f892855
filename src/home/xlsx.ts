import { addressOf, areaAddress, type Area, type CellRef } from '../marksheet/layout/matrix'
import { styleNumber, stylesXml, type StyleName } from './styles'
import { zipped } from './zip'

/** A cell: a text, a number, or a formula without its =. */
export interface SheetCell extends CellRef {
  readonly style: StyleName
  readonly holds: string | number | { readonly formula: string }
}

/** A cell to type in, and what is shown and read out when it is chosen. */
export interface Prompt extends CellRef {
  readonly says: string
}

/** A protected sheet. Heights in points by row, widths in characters by column. `repeats`: the row that every printed page begins with. */
export interface Sheet {
  readonly name: string
  readonly hidden: boolean
  readonly cells: readonly SheetCell[]
  readonly widths: readonly number[]
  readonly heights: ReadonlyMap<number, number>
  readonly prompts: readonly Prompt[]
  readonly merges: readonly Area[]
  readonly repeats: number | null
}

const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main'
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships'
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006'
const TYPES = 'application/vnd.openxmlformats-officedocument.spreadsheetml'
const DECLARATION = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n'
/** A4 in portrait, as wide as the page, as many pages as it takes (ECMA-376, pageSetup). */
const PAGE = '<pageSetup paperSize="9" orientation="portrait" fitToWidth="1" fitToHeight="0"/>'

/**
 * An .xlsx file of protected sheets without a password (ECMA-376; elements in the order of its schemas). It names no author, program, day
 * or place. Every program works its formulas out when it opens the file. `comment` ends the archive.
 */
export function xlsxOf(sheets: readonly Sheet[], comment: string): Uint8Array {
  const texts = new Map<string, number>()
  const parts = sheets.map((sheet) => worksheetXml(sheet, texts))
  const numbered = sheets.map((sheet, index) => ({ sheet, number: index + 1 }))
  const styles = sheets.length + 1
  const files: Record<string, string> = {
    '[Content_Types].xml':
      `<Types xmlns="${PACKAGE}/content-types">` +
      `<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
      override('/xl/workbook.xml', 'sheet.main') +
      numbered.map(({ number }) => override(`/xl/worksheets/sheet${number}.xml`, 'worksheet')).join('') +
      override('/xl/styles.xml', 'styles') +
      override('/xl/sharedStrings.xml', 'sharedStrings') +
      '</Types>',
    '_rels/.rels': relations([['rId1', 'officeDocument', 'xl/workbook.xml']]),
    'xl/workbook.xml': workbookXml(sheets),
    'xl/_rels/workbook.xml.rels': relations([
      ...numbered.map(
        ({ number }) => [`rId${number}`, 'worksheet', `worksheets/sheet${number}.xml`] as const,
      ),
      [`rId${styles}`, 'styles', 'styles.xml'],
      [`rId${styles + 1}`, 'sharedStrings', 'sharedStrings.xml'],
    ]),
    'xl/styles.xml': stylesXml(),
    'xl/sharedStrings.xml': `<sst xmlns="${MAIN}">${[...texts.keys()].map((text) => `<si><t xml:space="preserve">${escaped(text)}</t></si>`).join('')}</sst>`,
    ...Object.fromEntries(numbered.map(({ number }, at) => [`xl/worksheets/sheet${number}.xml`, parts[at]])),
  }
  return zipped(
    Object.entries(files).map(([name, text]) => ({ name, text: DECLARATION + text })),
    comment,
  )
}

function override(part: string, type: string): string {
  return `<Override PartName="${part}" ContentType="${TYPES}.${type}+xml"/>`
}

function relations(all: readonly (readonly [id: string, type: string, target: string])[]): string {
  const each = all.map(
    ([id, type, target]) => `<Relationship Id="${id}" Type="${OFFICE}/${type}" Target="${target}"/>`,
  )
  return `<Relationships xmlns="${PACKAGE}/relationships">${each.join('')}</Relationships>`
}

function workbookXml(sheets: readonly Sheet[]): string {
  const listed = sheets.map(({ name, hidden }, at) => {
    const state = hidden ? ' state="hidden"' : ''
    return `<sheet name="${escaped(name)}" sheetId="${at + 1}"${state} r:id="rId${at + 1}"/>`
  })
  const repeated = sheets.flatMap(({ name, repeats }, at) =>
    repeats === null
      ? []
      : `<definedName name="_xlnm.Print_Titles" localSheetId="${at}">${escaped(name)}!$${repeats + 1}:$${repeats + 1}</definedName>`,
  )
  return (
    `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><bookViews><workbookView activeTab="0"/></bookViews>` +
    `<sheets>${listed.join('')}</sheets>` +
    (repeated.length > 0 ? `<definedNames>${repeated.join('')}</definedNames>` : '') +
    '<calcPr calcId="0" fullCalcOnLoad="1"/></workbook>'
  )
}

function worksheetXml(
  { cells, widths, heights, prompts, merges, hidden }: Sheet,
  texts: Map<string, number>,
): string {
  const [first] = prompts
  const active = addressOf(first ?? { row: 0, column: 0 })
  const columns = widths.map(
    (width, at) => `<col min="${at + 1}" max="${at + 1}" width="${width}" customWidth="1"/>`,
  )
  const free = prompts.map(addressOf).join(' ')
  const merged = merges.map((area) => `<mergeCell ref="${areaAddress(area)}"/>`)
  const asked = prompts.map(
    (prompt) =>
      `<dataValidation allowBlank="1" showInputMessage="1" prompt="${escaped(prompt.says)}" sqref="${addressOf(prompt)}"/>`,
  )
  return (
    `<worksheet xmlns="${MAIN}"><sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>` +
    `<sheetViews><sheetView showGridLines="0"${hidden ? '' : ' tabSelected="1"'} workbookViewId="0">` +
    `<selection activeCell="${active}" sqref="${active}"/></sheetView></sheetViews>` +
    `<sheetFormatPr defaultRowHeight="15"/><cols>${columns.join('')}</cols>` +
    `<sheetData>${rowsXml(cells, heights, texts)}</sheetData>` +
    '<sheetProtection sheet="1" objects="1" scenarios="1"/>' +
    (merges.length > 0 ? `<mergeCells count="${merges.length}">${merged.join('')}</mergeCells>` : '') +
    (asked.length > 0 ? `<dataValidations count="${asked.length}">${asked.join('')}</dataValidations>` : '') +
    '<printOptions horizontalCentered="1"/>' +
    `<pageMargins left="0.5" right="0.5" top="0.5" bottom="0.6" header="0.3" footer="0.3"/>${PAGE}` +
    '<headerFooter><oddFooter>&amp;C&amp;P of &amp;N</oddFooter></headerFooter>' +
    (free === ''
      ? ''
      : `<ignoredErrors><ignoredError sqref="${free}" numberStoredAsText="1"/></ignoredErrors>`) +
    '</worksheet>'
  )
}

function rowsXml(
  cells: readonly SheetCell[],
  heights: ReadonlyMap<number, number>,
  texts: Map<string, number>,
): string {
  const rows = new Map<number, SheetCell[]>()
  for (const cell of cells) rows.set(cell.row, [...(rows.get(cell.row) ?? []), cell])
  const numbers = [...new Set([...rows.keys(), ...heights.keys()])].sort((a, b) => a - b)
  return numbers
    .map((row) => {
      const height = heights.get(row)
      const own = (rows.get(row) ?? []).toSorted((a, b) => a.column - b.column)
      const tall = height === undefined ? '' : ` ht="${height}" customHeight="1"`
      return `<row r="${row + 1}"${tall}>${own.map((cell) => cellXml(cell, texts)).join('')}</row>`
    })
    .join('')
}

function cellXml({ style, holds, ...place }: SheetCell, texts: Map<string, number>): string {
  const start = `<c r="${addressOf(place)}" s="${styleNumber(style)}"`
  if (holds === '') return `${start}/>`
  if (typeof holds === 'number') return `${start}><v>${holds}</v></c>`
  if (typeof holds === 'object') return `${start} t="str"><f>${escaped(holds.formula)}</f><v></v></c>`
  const index = texts.get(holds) ?? texts.size
  texts.set(holds, index)
  return `${start} t="s"><v>${index}</v></c>`
}

/** A text as XML has it; signs that XML cannot hold are left out. */
function escaped(text: string): string {
  return text
    .replace(/[\u{0}-\u{8}\u{b}\u{c}\u{e}-\u{1f}\u{d800}-\u{dfff}\u{fffe}\u{ffff}]/gu, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
}
