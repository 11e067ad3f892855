import { Edits } from './edits'
import { element, rootOf } from './elements'
import type { Package } from './package'
import { relationsPart } from './relations'
import { openBook, readSheets, type Book, type BookSheet } from './workbook'
import { attributesOf, tagsOf } from './xml'

const TYPES = '[Content_Types].xml'
/** The namespace of ids that point to relations (ECMA-376, transitional). */
const RELATIONSHIPS = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships'
const SPREADSHEET = 'application/vnd.openxmlformats-officedocument.spreadsheetml.'

/** The parts of a workbook that are written to, and new ones. */
export class BookParts {
  private readonly ids: Set<string>

  private constructor(
    private readonly file: Package,
    private readonly book: Book,
    /** The namespace of the workbook's parts, which tells strict ones from the others. */
    readonly namespace: string,
  ) {
    this.ids = new Set(book.relations.map(({ id }) => id))
  }

  static async open(file: Package): Promise<BookParts> {
    const book = await openBook(file)
    return new BookParts(file, book, await file.parse(book.part, namespaceIn))
  }

  /** The part of the sheet with exactly this name. Throws RangeError where there is none. */
  partOf(sheet: string): string {
    const found = this.book.sheets.find(({ name }) => name === sheet)
    if (!found) throw new RangeError(`The workbook has no sheet ${sheet}.`)
    return found.part
  }

  /** The sheet with this name, in small or capital letters, which Excel holds to be the same. */
  named(sheet: string): BookSheet | undefined {
    return this.book.sheets.find(({ name }) => name.toLowerCase() === sheet.toLowerCase())
  }

  /** What stands in A1 of a sheet, as text. */
  async firstText(sheet: BookSheet): Promise<string> {
    const [read] = await readSheets(this.file, this.book, [sheet])
    return String(read?.cells.find(({ row, column }) => row === 0 && column === 0)?.value ?? '')
  }

  /** The style part, made where the workbook has none. */
  async stylesPart(): Promise<string> {
    const known = this.book.relations.find(({ kind }) => kind === 'styles')
    if (known) return known.part
    const part = this.free((number) => `xl/styles${number}.xml`)
    this.file.put(part, `<styleSheet xmlns="${this.namespace}"></styleSheet>`)
    await this.relate(part, 'styles')
    return part
  }

  /** Adds a sheet behind all others and gives the name of its part, which is still to be written. */
  async addSheet(name: string): Promise<string> {
    const part = this.free((number) => `xl/worksheets/sheet${number}.xml`)
    const id = await this.relate(part, 'worksheet')
    const xml = await this.file.text(this.book.part)
    const { tag, children } = rootOf(xml)
    const list = children.find((child) => child.name === 'sheets')
    if (list?.tag.kind !== 'open') throw new SyntaxError('The workbook has no list of sheets.')
    const entries = xml.slice(list.tag.end, list.contentEnd)
    const [, prefix = 'r'] = /\s([^\s:=]+):id\s*=/.exec(entries) ?? []
    const ids = [...entries.matchAll(/\ssheetId\s*=\s*["'](\d+)/g)].map(([, number]) => Number(number))
    const sheetId = ids.reduce((most, each) => Math.max(most, each), 0) + 1
    // Some writers declare the prefix on each entry alone, so the new entry declares it too.
    const [, namespace = RELATIONSHIPS] =
      new RegExp(`\\sxmlns:${prefix}\\s*=\\s*["']([^"']*)`).exec(xml) ?? []
    const edits = new Edits(xml)
    edits.insert(
      list.contentEnd,
      element(`${tag.prefix}sheet`, {
        [`xmlns:${prefix}`]: namespace,
        name,
        sheetId,
        [`${prefix}:id`]: id,
      }),
    )
    this.file.put(this.book.part, edits.result())
    return part
  }

  private free(name: (number: number) => string): string {
    let number = 1
    while (this.file.has(name(number))) number++
    return name(number)
  }

  /** Makes a new part one of the workbook's and gives the id by which the workbook knows it. */
  private async relate(part: string, kind: 'styles' | 'worksheet'): Promise<string> {
    let number = 1
    while (this.ids.has(`rId${number}`)) number++
    const id = `rId${number}`
    this.ids.add(id)
    const like = this.book.relations.find((each) => each.kind === 'worksheet')
    const type = (like?.type ?? '').replace(/[^/]*$/, kind)
    await this.append(relationsPart(this.book.part), 'Relationship', {
      Id: id,
      Type: type,
      Target: `/${part}`,
    })
    await this.append(TYPES, 'Override', { PartName: `/${part}`, ContentType: `${SPREADSHEET}${kind}+xml` })
    return id
  }

  private async append(
    part: string,
    name: string,
    attributes: Readonly<Record<string, string>>,
  ): Promise<void> {
    const edits = await this.file.parse(part, (xml) => {
      const { tag, close } = rootOf(xml)
      const all = new Edits(xml)
      all.insert(close, element(tag.prefix + name, attributes))
      return all
    })
    this.file.put(part, edits.result())
  }
}

function namespaceIn(xml: string): string {
  const [root] = tagsOf(xml)
  const { prefix } = root ?? { prefix: '' }
  return root ? (attributesOf(xml, root).get(prefix === '' ? 'xmlns' : prefix.slice(0, -1)) ?? '') : ''
}
