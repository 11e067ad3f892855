import { describe, expect, it } from 'vitest'
import type { Cell } from '../../../src/files/xlsx/cells'
import { readWorkbook } from '../../../src/files/xlsx/workbook'
import { addressOf } from '../../../src/marksheet/layout/matrix'
import { partsOf, relations, row, sheet, workbook, zipped } from './parts'

type Parts = Readonly<Record<string, string | Uint8Array>>

async function cellsOf(rows: string, others: Parts = {}): Promise<Record<string, Cell['value']>> {
  const [first] = await readWorkbook(await zipped(partsOf(rows, others)))
  return Object.fromEntries((first?.cells ?? []).map((cell) => [addressOf(cell), cell.value]))
}

const utf16 = (text: string, isBig: boolean) =>
  new Uint8Array(
    Array.from(`\ufeff${text}`, (sign) => {
      const code = sign.charCodeAt(0)
      return isBig ? [code >> 8, code & 255] : [code & 255, code >> 8]
    }).flat(),
  )

const SHEET = 'xl/worksheets/sheet1.xml'
const PLAIN = { A1: 'Name', B1: '932 − 457', A2: 'Ada K', B2: 475 }
const ROWS = row(1, ['Name', '932 − 457']) + row(2, ['Ada K', 475])

describe('a workbook is read as the standard allows it (ECMA-376)', () => {
  it('with addresses or without: a row follows the one before it, a cell likewise', async () => {
    expect(await cellsOf(ROWS)).toEqual(PLAIN)
    expect(await cellsOf(ROWS.replace(/ r="\w+"/g, ''))).toEqual(PLAIN)
    expect(
      await cellsOf(
        '<row r="3"><c><v>1</v></c><c r="D3"><v>2</v></c><c><v>3</v></c></row><row><c/><c><v>4</v></c></row>',
      ),
    ).toEqual({ A3: 1, D3: 2, E3: 3, B4: 4 })
  })

  it('with a prefix on every element, comments, instructions and other quotes', async () => {
    const prefixed = (xml: string) => xml.replace(/<(\/?)(?=\w)/g, '<$1x:').replaceAll('xmlns=', 'xmlns:x=')
    const parts = partsOf(ROWS)
    const others = Object.fromEntries(
      [SHEET, 'xl/workbook.xml', 'xl/styles.xml', 'xl/_rels/workbook.xml.rels', '_rels/.rels'].map((part) => [
        part,
        prefixed(String(parts[part])),
      ]),
    )
    expect(await cellsOf('', others)).toEqual(PLAIN)
    const odd = sheet(ROWS)
      .replace('<sheetData>', "<!-- <row> --><?a <row> ?><sheetPr codeName='a>\"b'/><sheetData>")
      .replace('>475<', '><![CDATA[4]]>7<!-- 9 -->5<')
    expect(await cellsOf('', { [SHEET]: odd })).toEqual(PLAIN)
  })

  it.each([false, true])('in UTF-16 (big end first: %s)', async (isBig) => {
    const xml = `<?xml version="1.0" encoding="UTF-16"?>${sheet(ROWS)}`
    expect(await cellsOf('', { [SHEET]: utf16(xml, isBig) })).toEqual(PLAIN)
  })

  it('whatever its parts are called and from wherever they are named; strict too', async () => {
    const parts = partsOf(ROWS)
    const strict = (xml: string) =>
      xml
        .replaceAll(
          'http://schemas.openxmlformats.org/officeDocument/2006/relationships',
          'http://purl.oclc.org/ooxml/officeDocument/relationships',
        )
        .replaceAll(
          'http://schemas.openxmlformats.org/spreadsheetml/2006/main',
          'http://purl.oclc.org/ooxml/spreadsheetml/main',
        )
    const file = await zipped({
      '_rels/.rels': strict(relations(['officeDocument', '/the%20book/Main.xml'])),
      'the book/main.xml': strict(String(parts['xl/workbook.xml'])),
      'the book/_rels/main.xml.rels': strict(relations(['worksheet', '../sheets/./one.xml'])),
      'sheets/one.xml': strict(String(parts[SHEET])),
    })
    const [first] = await readWorkbook(file)
    expect(Object.fromEntries((first?.cells ?? []).map((cell) => [addressOf(cell), cell.value]))).toEqual(
      PLAIN,
    )
  })

  it('texts of every kind: shared, in runs with a pronunciation, inline, of a formula, with escapes and spaces', async () => {
    const texts =
      '<sst><si><t>Ada K</t></si><si><r><t xml:space="preserve">Or</t></r><r><rPr><b/></rPr><t>la</t></r><rPh sb="0" eb="1"><t>no</t></rPh><phoneticPr fontId="1"/></si><si/><si><t>_x0041_ &amp; &#66;&#x43;</t></si></sst>'
    const others = {
      'xl/sharedStrings.xml': texts,
      'xl/_rels/workbook.xml.rels': relations(
        ['worksheet', 'worksheets/sheet1.xml'],
        ['sharedStrings', '/xl/sharedStrings.xml'],
      ),
    }
    const shared = (index: number) => `<c t="s"><v>${index}</v></c>`
    expect(
      await cellsOf(
        `<row>${[0, 1, 2, 3].map(shared).join('')}<c t="inlineStr"><is><r><t>In</t></r><r><t> line </t></r></is></c><c t="str"><f>A1</f><v>a\r\nb</v></c></row>`,
        others,
      ),
    ).toEqual({ A1: 'Ada K', B1: 'Orla', C1: '', D1: 'A & BC', E1: 'In line ', F1: 'a\nb' })
  })

  it('truth values, errors, numbers and dates kept as text', async () => {
    expect(
      await cellsOf(
        '<row><c t="b"><v>1</v></c><c t="b"><v>0</v></c><c t="e"><v>#N/A</v></c><c><v>4.75E2</v></c><c><v> 8.6 </v></c><c t="d"><v>2026-04-03T12:00:00</v></c><c><v/></c><c t="str"><v></v></c></row>',
      ),
    ).toEqual({ A1: true, B1: false, C1: '#N/A', D1: 475, E1: 8.6, F1: 46115.5 })
  })

  it('formulas beside the values that they had; shared ones too; with none where they were never worked out', async () => {
    const rows =
      '<row><c t="str"><f>IF(B1&gt;0,"","")</f><v></v></c><c><f t="shared" ref="B1:C1" si="0">SUM(D1:E1)</f><v>0</v></c><c><f t="shared" si="0"/></c></row>'
    const [first] = await readWorkbook(await zipped(partsOf(rows)))
    expect(first?.cells.map(({ value, formula }) => [value, formula])).toEqual([
      ['', '=IF(B1>0,"","")'],
      [0, '=SUM(D1:E1)'],
      [null, '=SUM(D1:E1)'],
    ])
  })

  it('number formats, built in and own, those of differential styles aside; merges; days from 1904', async () => {
    const styles =
      '<styleSheet><numFmts><numFmt numFmtId="164" formatCode="d&quot;.&quot;m"/></numFmts><cellStyleXfs><xf numFmtId="9"/></cellStyleXfs><cellXfs><xf/><xf numFmtId="16"/><xf numFmtId="164"/></cellXfs><dxfs><dxf><numFmt numFmtId="164" formatCode="0"/></dxf></dxfs></styleSheet>'
    const [first] = await readWorkbook(
      await zipped(
        partsOf('', {
          'xl/styles.xml': styles,
          'xl/workbook.xml': workbook(
            '<sheet name="&lt;b>&amp;amp;" sheetId="9" state="hidden" r:id="rId1"/>',
            '<workbookPr date1904="1"/>',
          ),
          [SHEET]: sheet(
            '<row><c><v>1</v></c><c s="1"><v>2</v></c><c s="2"><v>3</v></c></row>',
            '<mergeCells><mergeCell ref="A1:XFD1048576"/><mergeCell ref="B2"/></mergeCells>',
          ),
        }),
      ),
    )
    expect(first).toMatchObject({
      name: '<b>&amp;',
      is1904: true,
      merges: [
        { top: 0, left: 0, bottom: 1_048_575, right: 16_383 },
        { top: 1, left: 1, bottom: 1, right: 1 },
      ],
    })
    expect(first?.cells.map(({ format }) => format)).toEqual(['General', 'd-mmm', 'd"."m'])
  })

  it('without its charts, of which it has no cells', async () => {
    const sheets = await readWorkbook(
      await zipped(
        partsOf(ROWS, {
          'xl/workbook.xml': workbook(
            '<sheet name="Chart" sheetId="1" r:id="rId2"/><sheet name="Owls" sheetId="2" r:id="rId1"/>',
          ),
          'xl/_rels/workbook.xml.rels': relations(
            ['worksheet', 'worksheets/sheet1.xml'],
            ['chartsheet', 'chartsheets/sheet1.xml'],
          ),
        }),
      ),
    )
    expect(sheets.map(({ name }) => name)).toEqual(['Owls'])
  })
})

describe('what cannot be read is refused with a sentence that says what', () => {
  const cases: readonly [string, string, Parts, RegExp][] = [
    [
      'a part that is missing',
      '',
      { 'xl/_rels/workbook.xml.rels': relations(['worksheet', 'no.xml']) },
      /^its part xl\/no\.xml is missing/,
    ],
    [
      'a sheet without a part',
      '',
      { 'xl/_rels/workbook.xml.rels': relations() },
      /^its sheet “Owls” is missing/,
    ],
    [
      'two sheets of one part',
      '',
      { 'xl/workbook.xml': workbook('<sheet name="A" r:id="rId1"/><sheet name="B" r:id="rId1"/>') },
      /same part/,
    ],
    [
      'XML that is cut off',
      '',
      { [SHEET]: '<worksheet><sheetData>' },
      /^its part xl\/worksheets\/sheet1\.xml .*<sheetData> is not closed/,
    ],
    ['a document type', '', { [SHEET]: '<!DOCTYPE a [<!ENTITY b "c">]><worksheet/>' }, /document type/],
    ['an unknown entity', '<row><c t="str"><v>&b;</v></c></row>', {}, /&b;/],
    [
      'another encoding',
      '',
      { [SHEET]: '<?xml version="1.0" encoding="ISO-8859-1"?><worksheet/>' },
      /UTF-8 or UTF-16/,
    ],
    ['bytes that are no UTF-8', '', { [SHEET]: new Uint8Array([60, 255, 254, 62]) }, /UTF-8 or UTF-16/],
    ['another kind of part', '', { [SHEET]: '<chartsheet/>' }, /“Owls” is no worksheet/],
    [
      'a shared text that is not there',
      '<row><c t="s"><v>3</v></c></row>',
      {},
      /^cell A1 of its sheet “Owls” refers to a text/,
    ],
    [
      'a number that is none',
      '<row r="7"><c><v>475x</v></c></row>',
      {},
      /^cell A7 of its sheet “Owls” holds “475x”/,
    ],
    ['a number without end', '<row><c><v>1e999</v></c></row>', {}, /^cell A1 .* no number/],
    ['an address beyond the sheet', '<row><c r="XFE1"><v>1</v></c></row>', {}, /no cell “XFE1”/],
    ['a row beyond the sheet', '<row r="1048577"/>', {}, /no row 1048577/],
    [
      'a cell that stands twice',
      '<row r="1"><c r="A1"><v>1</v></c></row><row r="1"><c r="A1"><v>2</v></c></row>',
      {},
      /^cell A1 .* twice/,
    ],
    [
      'a merge of no cells',
      '',
      { [SHEET]: sheet('', '<mergeCells><mergeCell ref="A0:B2"/></mergeCells>') },
      /“A0:B2”/,
    ],
  ]
  it.each(cases)('%s', async (_what, rows, others, reason) => {
    await expect(readWorkbook(await zipped(partsOf(rows, others)))).rejects.toThrow(reason)
  })

  const text = (sentence: string) => new TextEncoder().encode(sentence)
  const compound = (name: string) =>
    new Uint8Array([
      0xd0,
      0xcf,
      0x11,
      0xe0,
      0xa1,
      0xb1,
      0x1a,
      0xe1,
      ...Array.from(name, (sign) => [sign.charCodeAt(0), 0]).flat(),
    ])
  it.each([
    ['an empty file', () => new Uint8Array(), /^it is empty/],
    ['a list of values', () => text('Name,932 − 457'), /not an Excel workbook/],
    ['a workbook under a password', () => compound('EncryptedPackage'), /password/],
    ['an old workbook', () => compound('Workbook'), /\.xls\)/],
    [
      'an OpenDocument file',
      () => zipped({ mimetype: 'application/vnd.oasis.opendocument.spreadsheet', 'content.xml': '<a/>' }),
      /OpenDocument/,
    ],
    [
      'a binary workbook',
      () =>
        zipped({ '_rels/.rels': relations(['officeDocument', 'xl/workbook.bin']), 'xl/workbook.bin': 'x' }),
      /\.xlsb/,
    ],
    [
      'a text document',
      () =>
        zipped({
          '_rels/.rels': relations(['officeDocument', 'word/document.xml']),
          'word/document.xml': '<document/>',
        }),
      /not an Excel workbook/,
    ],
    ['an archive of something else', () => zipped({ 'a.txt': 'a' }), /archive/],
    [
      'a file that was not copied whole',
      async () => (await zipped(partsOf(ROWS))).slice(0, -200),
      /not copied whole/,
    ],
  ])('%s', async (_what, bytes, reason) => {
    await expect(readWorkbook(await bytes())).rejects.toThrow(reason)
  })
})
