import JSZip from 'jszip'

const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main'
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships'
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006'

/** The parts of a small workbook, written by hand after ECMA-376: one sheet, "Owls", with these rows; parts may be put in their place. */
export function partsOf(
  rows: string,
  others: Readonly<Record<string, string | Uint8Array>> = {},
): Record<string, string | Uint8Array> {
  const part = (name: string, type: string) =>
    `<Override PartName="/${name}" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.${type}+xml"/>`
  return {
    '[Content_Types].xml':
      `<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/>` +
      `${part('xl/workbook.xml', 'sheet.main')}${part('xl/worksheets/sheet1.xml', 'worksheet')}${part('xl/styles.xml', 'styles')}</Types>`,
    '_rels/.rels': relations(['officeDocument', 'xl/workbook.xml']),
    'xl/_rels/workbook.xml.rels': relations(['worksheet', 'worksheets/sheet1.xml'], ['styles', 'styles.xml']),
    'xl/workbook.xml': workbook('<sheet name="Owls" sheetId="1" r:id="rId1"/>'),
    'xl/styles.xml': `<styleSheet xmlns="${MAIN}"><fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="1"><xf numFmtId="0"/></cellXfs></styleSheet>`,
    'xl/worksheets/sheet1.xml': sheet(rows),
    ...others,
  }
}

export function workbook(sheets: string, properties = ''): string {
  return `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}">${properties}<sheets>${sheets}</sheets></workbook>`
}

export function sheet(rows: string, behind = ''): string {
  return `<worksheet xmlns="${MAIN}"><sheetData>${rows}</sheetData>${behind}</worksheet>`
}

/** The relations of a part: the last word of each type, and its target; "rId1", "rId2" … */
export function relations(...all: readonly (readonly [string, string])[]): string {
  const each = all.map(
    ([kind, target], index) =>
      `<Relationship Id="rId${index + 1}" Type="${OFFICE}/${kind}" Target="${target}"/>`,
  )
  return `<Relationships xmlns="${PACKAGE}/relationships">${each.join('')}</Relationships>`
}

/** A row of texts and numbers with addresses, as most programs write it. */
export function row(number: number, cells: readonly (string | number)[]): string {
  const written = cells.map((cell, column) => {
    const r = `${String.fromCharCode(65 + column)}${number}`
    return typeof cell === 'number'
      ? `<c r="${r}"><v>${cell}</v></c>`
      : `<c r="${r}" t="inlineStr"><is><t>${cell.replaceAll('&', '&amp;').replaceAll('<', '&lt;')}</t></is></c>`
  })
  return `<row r="${number}">${written.join('')}</row>`
}

/** Rows of a small class in which Orla B takes the smaller digit from the larger throughout. */
export const CLASS = [
  ['Name', '932 − 457', '305 − 128', '604 − 37', '721 − 356'],
  ['Amina K', 475, 177, 567, 365],
  ['Orla B', 525, 223, 633, 435],
] as const
export const CLASS_ROWS = CLASS.map((cells, index) => row(index + 1, cells)).join('')

/** The bytes of a file with these parts. */
export function zipped(parts: Readonly<Record<string, string | Uint8Array>>): Promise<Uint8Array> {
  const zip = new JSZip()
  for (const [name, content] of Object.entries(parts)) zip.file(name, content)
  return zip.generateAsync({ type: 'uint8array', compression: 'DEFLATE' })
}
