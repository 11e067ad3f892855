import { DOMParser } from '@xmldom/xmldom'
import JSZip from 'jszip'
import { describe, expect, it } from 'vitest'
import { readWorkbook } from '../../src/files/xlsx/workbook'
import { NOTES_TITLE } from '../../src/marksheet/marking/notes'
import { review } from '../../src/marksheet/marking/review'
import { matricesOf } from '../marksheets'
import { markedCopy } from './marked'
import { CLASS_ROWS, partsOf, relations, row, sheet, workbook, zipped } from './xlsx/parts'

const SHEET = 'xl/worksheets/sheet1.xml'
const prefixed = (xml: string) => xml.replace(/<(\/?)(?=\w)/g, '<$1x:').replaceAll('xmlns=', 'xmlns:x=')
const strict = (xml: string) =>
  xml
    .replaceAll('schemas.openxmlformats.org/officeDocument/2006', 'purl.oclc.org/ooxml/officeDocument')
    .replaceAll('schemas.openxmlformats.org/spreadsheetml/2006', 'purl.oclc.org/ooxml/spreadsheetml')
const utf16 = (xml: string) =>
  new Uint8Array(
    Buffer.from(`\ufeff<?xml version="1.0" encoding="UTF-16" standalone="yes"?>${xml}`, 'utf16le'),
  )
const changed = (change: (xml: string) => string | Uint8Array, names: readonly string[]) => {
  const parts = partsOf(CLASS_ROWS)
  return partsOf(CLASS_ROWS, Object.fromEntries(names.map((name) => [name, change(String(parts[name]))])))
}
const ALL = Object.keys(partsOf(''))
const without = (name: string, parts: Readonly<Record<string, string | Uint8Array>>) =>
  Object.fromEntries(Object.entries(parts).filter(([key]) => key !== name))

/** Workbooks as other programs may write them (ECMA-376). */
const WRITTEN = {
  'with a prefix on every element': changed(prefixed, ALL),
  'in UTF-16': changed(utf16, ALL),
  strict: changed(strict, ALL),
  'without addresses': changed((xml) => xml.replace(/ r="\w+"/g, ''), [SHEET]),
  'without styles': without(
    'xl/styles.xml',
    partsOf(CLASS_ROWS, { 'xl/_rels/workbook.xml.rels': relations(['worksheet', 'worksheets/sheet1.xml']) }),
  ),
  'with empty styles': partsOf(CLASS_ROWS, { 'xl/styles.xml': '<styleSheet><dxfs count="0"/></styleSheet>' }),
  'with targets from the root': changed(
    (xml) => xml.replaceAll('Target="', 'Target="/xl/'),
    ['xl/_rels/workbook.xml.rels'],
  ),
  'with a sheet called <b>&amp;': partsOf(CLASS_ROWS, {
    'xl/workbook.xml': workbook('<sheet name="&lt;b&gt;&amp;amp;" sheetId="7" r:id="rId1"/>'),
  }),
  'that declares the prefix of ids on each sheet': partsOf(CLASS_ROWS, {
    'xl/workbook.xml': workbook('<sheet name="Owls" sheetId="1" r:id="rId1"/>').replace(
      /( xmlns:r="[^"]*")(.*<sheet)/,
      '$2$1',
    ),
  }),
  'with spans, and cells that hold only a look': changed(
    (xml) =>
      xml
        .replace('<row r="3">', '<row r="3" spans="1:9">')
        .replace(/<\/row>(?!<row)/, '<c r="I3" s="0"/></row>'),
    [SHEET],
  ),
}

/** Elements and attributes of a workbook's parts whose prefix is declared nowhere (Namespaces in XML 1.0). */
async function unbound(bytes: Uint8Array): Promise<string[]> {
  const { files } = await JSZip.loadAsync(bytes)
  const parts = Object.entries(files).filter(([name]) => /\.(?:xml|rels)$/.test(name))
  const found = await Promise.all(
    parts.map(async ([name, file]) => {
      const raw = await file.async('uint8array')
      const text = new TextDecoder(raw[0] === 0xff ? 'utf-16le' : 'utf-8').decode(raw)
      const all = [...new DOMParser().parseFromString(text, 'text/xml').getElementsByTagName('*')]
      return all
        .flatMap((element) => [element, ...element.attributes])
        .filter(({ nodeName, namespaceURI }) => nodeName.includes(':') && !namespaceURI)
        .map(({ nodeName }) => `${nodeName} in ${name}`)
    }),
  )
  return found.flat()
}

describe.each(Object.entries(WRITTEN))('a workbook %s', (_what, parts) => {
  it('is marked; what was there stands where it was, and a second marking changes nothing', async () => {
    const bytes = await zipped(parts)
    const copy = await markedCopy(bytes)
    expect(await unbound(copy)).toEqual([])
    const [before, after] = [await readWorkbook(bytes), await readWorkbook(copy)]
    expect(after.map(({ name }) => name)).toEqual([...before.map(({ name }) => name), 'Mastery'])
    const kept = after[0]?.cells.filter(({ column }) => column < 5)
    expect(kept).toEqual(before[0]?.cells)
    const added = after[0]?.cells.filter(({ column }) => column >= 5).map(({ row: at, value }) => [at, value])
    expect(added).toEqual([
      [0, NOTES_TITLE],
      [2, expect.stringMatching(/^takes the smaller digit/)],
    ])
    expect(await reviewOf(copy)).toEqual(await reviewOf(bytes))
    const again = await JSZip.loadAsync(await markedCopy(copy))
    const once = await JSZip.loadAsync(copy)
    const bare = async (zip: JSZip, part: string) =>
      ((await zip.file(part)?.async('string')) ?? '')
        .replace(/ (?:s|dxfId)="\d+"/g, '')
        .replace(/<(?:x:)?c r="G2"\/>/, '')
    for (const part of Object.keys(once.files).filter((each) => !each.includes('styles')))
      expect((await bare(again, part)) === (await bare(once, part)), part).toBe(true)
  })
})

async function reviewOf(bytes: Uint8Array) {
  const [matrix = { name: '', values: [] }] = await matricesOf(bytes)
  return review(matrix)
}

describe('a marked copy', () => {
  it('keeps every sign of a sheet but for what it adds', async () => {
    const rows =
      row(1, ['Name', '932 − 457', '305 − 128', '604 − 37', '721 − 356']) +
      '<row r="2" ht="20" x:own="1"><c r="A2" t="inlineStr"><is><t>Orla B</t></is></c><!-- kept --><c r="B2" cm="1"><v>525</v></c><c r="C2"><v>223</v></c><c r="D2"><v>633</v></c><c r="E2"><v>435</v></c><c r="Z2"/></row>'
    const behind =
      '<phoneticPr fontId="0"/><dataValidations count="0"/><legacyDrawing r:id="rId9"/><extLst><ext uri="a"><b/></ext></extLst>'
    const before = sheet(rows, behind)
    const copy = await JSZip.loadAsync(await markedCopy(await zipped(partsOf('', { [SHEET]: before }))))
    const after = (await copy.file(SHEET)?.async('string')) ?? ''
    const taken = after
      .replace(/^<\?xml[^>]*\?>\n/, '')
      .replace(/<cols>.*?<\/cols>/, '')
      .replace(/<c r="G\d" s="\d+" t="inlineStr">.*?<\/c>/g, '')
      .replace(/<conditionalFormatting .*<\/conditionalFormatting>/, '')
    expect(taken).toBe(before)
    expect(after).toMatch(
      /<phoneticPr[^>]*><conditionalFormatting .*<\/conditionalFormatting><dataValidations/,
    )
    expect(after).toMatch(/<\/c><c r="G2".*<\/c><c r="Z2"\/>/)
  })

  it('is read by an independent reader and by nobody taken for one with other default looks', async () => {
    const copy = await JSZip.loadAsync(await markedCopy(await zipped(WRITTEN['with empty styles'])))
    const styles = (await copy.file('xl/styles.xml')?.async('string')) ?? ''
    expect(styles).toMatch(/<fonts count="3"><font\/>/)
    expect(styles).toMatch(
      /<fills count="\d"><fill><patternFill patternType="none"\/><\/fill><fill><patternFill patternType="gray125"\/>/,
    )
    expect(styles).toMatch(/<cellXfs count="\d"><xf\/>/)
    expect(styles).toMatch(/<dxfs count="[1-9]\d*"><dxf>.*<\/dxfs><\/styleSheet>$/)
  })
})
