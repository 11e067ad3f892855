import { readCells, type Sheet } from './cells'
import { formatsIn } from './formats'
import { ofOtherArchive } from './kinds'
import { Package } from './package'
import { relationsOf, type Relation } from './relations'
import { textsIn } from './texts'
import { Unreadable } from './unreadable'
import { attributesOf, tagsOf, unescaped } from './xml'

/** As many filled cells, and signs in them, as one workbook may have. */
const MOST_CELLS = 1_000_000
const MOST_CHARACTERS = 2 ** 26

/**
 * Reads the worksheets of an .xlsx file in the workbook's order, hidden ones too; sheets that are charts or dialogues are left out. Takes
 * what Office Open XML allows (ECMA-376, transitional and strict, whatever the parts are called), and no more than 128 MB of XML and
 * a million filled cells, so that no file takes the machine's memory, however it was made. Works in a browser too:
 *
 *     const sheets = await readWorkbook(new Uint8Array(await file.arrayBuffer()))
 *     const typed = sheets[0]?.cells.find(({ row, column }) => row === 4 && column === 1)?.value ?? null // B5
 *
 * Throws Unreadable, whose message ends the sentence "Cannot read class.xlsx: ".
 */
export async function readWorkbook(bytes: Uint8Array): Promise<Sheet[]> {
  const file = await Package.open(bytes)
  const book = await openBook(file)
  return readSheets(file, book, book.sheets)
}

/** Reads some of the worksheets of an opened file. Throws Unreadable. */
export async function readSheets(
  file: Package,
  { is1904, relations }: Book,
  sheets: readonly BookSheet[],
): Promise<Sheet[]> {
  const texts = await readPart(file, relations, 'sharedStrings', textsIn)
  const formats = await readPart(file, relations, 'styles', formatsIn)
  const budget = { cells: MOST_CELLS, characters: MOST_CHARACTERS }
  const read: Sheet[] = []
  for (const { name, part, isWorksheet } of sheets) {
    if (!isWorksheet) continue
    const known = { sheet: name, texts, formats, is1904, budget }
    read.push({ name, is1904, ...(await file.parse(part, (xml) => readCells(xml, known))) })
  }
  return read
}

/** A sheet by its name and the part that holds it; sheets that are charts or dialogues have no cells. */
export interface BookSheet {
  readonly name: string
  readonly part: string
  readonly isWorksheet: boolean
}

/** What the main part of a workbook, `part`, says of it. */
export interface Book {
  readonly part: string
  readonly is1904: boolean
  readonly relations: readonly Relation[]
  readonly sheets: readonly BookSheet[]
}

/** Finds the workbook in a file and its worksheets. Throws Unreadable. */
export async function openBook(file: Package): Promise<Book> {
  const main = (await relationsOf(file, '')).find(({ kind }) => kind === 'officeDocument')
  if (!main || !file.has(main.part) || main.part.endsWith('.bin'))
    throw new Unreadable(ofOtherArchive(file.parts()))
  const relations = await relationsOf(file, main.part)
  const { is1904, sheets } = await file.parse(main.part, bookIn)
  const byId = new Map(relations.map((relation) => [relation.id, relation]))
  const found = sheets.map(({ name, id }): BookSheet => {
    const relation = byId.get(id)
    if (!relation) throw new Unreadable(`its sheet “${name}” is missing.`)
    return { name, part: relation.part, isWorksheet: relation.kind === 'worksheet' }
  })
  if (new Set(found.map(({ part }) => part)).size < found.length)
    throw new Unreadable('two of its sheets are the same part of the file.')
  return { part: main.part, is1904, relations, sheets: found }
}

function bookIn(xml: string) {
  const sheets: { name: string; id: string }[] = []
  let [is1904, list] = [false, '']
  for (const tag of tagsOf(xml)) {
    if (tag.kind === 'close') continue
    if (tag.depth === 0 && tag.name !== 'workbook')
      throw new Unreadable('it is not an Excel workbook (.xlsx), whatever its name says.')
    if (tag.depth === 1) list = tag.name
    if (tag.depth === 1 && tag.name === 'workbookPr')
      is1904 = /^(?:1|true)$/.test(attributesOf(xml, tag).get('date1904') ?? '')
    if (tag.depth === 2 && list === 'sheets' && tag.name === 'sheet') {
      const attributes = attributesOf(xml, tag)
      sheets.push({ name: unescaped(attributes.get('name') ?? ''), id: attributes.get('id') ?? '' })
    }
  }
  return { is1904, sheets }
}

/** What the workbook's part of a kind holds; nothing where it has none. */
async function readPart<T>(
  file: Package,
  relations: readonly Relation[],
  kind: string,
  parse: (xml: string) => T[],
): Promise<T[]> {
  const part = relations.find((each) => each.kind === kind)?.part
  return part === undefined ? [] : file.parse(part, parse)
}
