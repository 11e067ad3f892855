import type { Document } from '@xmldom/xmldom'
import { LOOKS } from '../marksheet/marking/looks'
import { NOTES_TITLE } from '../marksheet/marking/notes'
import type { MarkingPlan, TableSheet } from '../marksheet/marking/plan'
import { OWN_SHEET } from '../marksheet/layout/find'
import { children, make, NS, Parts, rootOf } from './parts'
import { emptySheet, widenColumn, writeRules, writeText } from './sheet'
import { Styles } from './styles'

const NOTE = { bold: false, italic: true, fill: null, wrap: false } as const
const NOTES_WIDTH = 40

/**
 * Applies marking plans and sheets of our own to an .xlsx file and gives the bytes of the marked copy. Only the sheets that are
 * planned for, the styles and the list of sheets are written anew; all other parts of the file keep their bytes.
 */
export async function applyPlans(
  bytes: Uint8Array,
  plans: readonly MarkingPlan[],
  tables: readonly TableSheet[],
): Promise<Uint8Array> {
  const parts = await Parts.open(bytes)
  const book = await Book.open(parts)
  const styles = new Styles(await parts.xml(book.stylesPart()))
  for (const { sheet, rules, notes } of plans) {
    const document = await parts.xml(book.partOf(sheet))
    writeRules(document, rules, ({ look }) => styles.differential(LOOKS[look]))
    for (const { text, upright, ...cell } of notes) {
      writeText(document, cell, text, styles.cell({ ...NOTE, upright }))
      if (!upright && text !== NOTES_TITLE) widenColumn(document, cell.column, NOTES_WIDTH)
    }
  }
  for (const table of tables) writeTable(await book.ownSheet(table), table, styles)
  return parts.save()
}

const DRAWN = [
  { part: /^xl\/charts\/chart\d+\.xml$/, one: 'chart', more: 'charts' },
  { part: /^xl\/media\//, one: 'picture', more: 'pictures' },
  { part: /^xl\/pivotTables\/pivotTable/, one: 'pivot table', more: 'pivot tables' },
  { part: /^xl\/(?:embeddings|ctrlProps|activeX)\//, one: 'embedded object', more: 'embedded objects' },
  { part: /^xl\/vbaProject\.bin$/, one: 'set of macros', more: 'sets of macros' },
] as const

/**
 * What the workbook holds beside its cells ("2 charts"), which a library that writes whole workbooks would lose and the marked copy
 * keeps.
 */
export async function keptBesideCells(bytes: Uint8Array): Promise<string[]> {
  const names = (await Parts.open(bytes)).names()
  return DRAWN.flatMap(({ part, one, more }) => {
    const count = names.filter((name) => part.test(name)).length
    return count === 0 ? [] : [`${count} ${count === 1 ? one : more}`]
  })
}

function writeTable(document: Document, { rows }: TableSheet, styles: Styles): void {
  rows.forEach((cells, row) => {
    cells.forEach(({ text, bold, fill }, column) => {
      const isText = row > 0 && cells.length > 1
      writeText(
        document,
        { row, column },
        text,
        styles.cell({ bold, italic: false, fill, wrap: isText, upright: false }),
      )
    })
  })
}

/** The list of a workbook's sheets and the parts that hold them. */
class Book {
  private constructor(
    private readonly parts: Parts,
    private readonly workbook: Document,
    private readonly relations: Document,
  ) {}

  static async open(parts: Parts): Promise<Book> {
    return new Book(parts, await parts.xml('xl/workbook.xml'), await parts.xml('xl/_rels/workbook.xml.rels'))
  }

  /** The part that holds the sheet with this name. Throws Error where there is none. */
  partOf(sheet: string): string {
    const entry = this.sheets().find((each) => each.getAttribute('name') === sheet)
    return this.target(({ Id }) => Id === entry?.getAttributeNS(NS.relations, 'id'))
  }

  stylesPart(): string {
    return this.target(({ Type }) => Type?.endsWith('/styles') === true)
  }

  /** The sheet with the table's name, emptied, where it is one of our own; else a new one, numbered where the name is taken. */
  async ownSheet({ name, widths }: TableSheet): Promise<Document> {
    for (let number = 1; ; number++) {
      const wanted = number === 1 ? name : `${name} (${number})`
      const taken = this.sheets().find(
        (each) => each.getAttribute('name')?.toLowerCase() === wanted.toLowerCase(),
      )
      const part = taken ? this.partOf(taken.getAttribute('name') ?? '') : await this.addSheet(wanted)
      if (taken && !(await this.isOwn(part))) continue
      this.parts.add(part, emptySheet(widths, NS.main))
      return this.parts.xml(part)
    }
  }

  private async isOwn(part: string): Promise<boolean> {
    const [first] = Array.from((await this.parts.xml(part)).getElementsByTagNameNS('*', 'c'))
    const text =
      first?.getAttribute('t') === 's' ? await this.sharedText(Number(first.textContent)) : first?.textContent
    return text?.startsWith(OWN_SHEET) === true
  }

  private async sharedText(index: number): Promise<string> {
    const strings = await this.parts.xml('xl/sharedStrings.xml')
    return children(rootOf(strings), 'si')[index]?.textContent ?? ''
  }

  private async addSheet(name: string): Promise<string> {
    const used = new Set(this.parts.names())
    let number = 1
    while (used.has(`xl/worksheets/sheet${number}.xml`)) number++
    const part = `xl/worksheets/sheet${number}.xml`
    const relations = rootOf(this.relations)
    const ids = new Set(children(relations).map((each) => each.getAttribute('Id')))
    let id = 1
    while (ids.has(`rId${id}`)) id++
    const relation = this.relations.createElementNS(NS.packageRelations, 'Relationship')
    relation.setAttribute('Id', `rId${id}`)
    relation.setAttribute('Type', `${NS.relations}/worksheet`)
    relation.setAttribute('Target', `/${part}`)
    relations.appendChild(relation)
    const [list] = children(rootOf(this.workbook), 'sheets')
    if (!list) throw new Error('The workbook has no list of sheets.')
    const sheetId = Math.max(0, ...this.sheets().map((each) => Number(each.getAttribute('sheetId')))) + 1
    const entry = make(list, 'sheet', { name, sheetId })
    entry.setAttributeNS(NS.relations, 'r:id', `rId${id}`)
    list.appendChild(entry)
    const types = await this.parts.xml('[Content_Types].xml')
    const override = types.createElementNS(NS.types, 'Override')
    override.setAttribute('PartName', `/${part}`)
    override.setAttribute(
      'ContentType',
      'application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml',
    )
    rootOf(types).appendChild(override)
    return part
  }

  private sheets() {
    return Array.from(this.workbook.getElementsByTagNameNS(NS.main, 'sheet'))
  }

  private target(matches: (relation: Record<string, string | null>) => boolean): string {
    const found = children(rootOf(this.relations))
      .map((each) => ({
        Id: each.getAttribute('Id'),
        Type: each.getAttribute('Type'),
        Target: each.getAttribute('Target'),
      }))
      .find(matches)
    if (!found?.Target) throw new Error('The workbook has no such part.')
    return found.Target.startsWith('/') ? found.Target.slice(1) : `xl/${found.Target}`
  }
}
