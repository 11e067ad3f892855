import { LOOKS } from '../marksheet/marking/looks'
import { numberedName } from '../marksheet/setting/sheetNames'
import { NOTES_TITLE } from '../marksheet/marking/notes'
import type { MarkingPlan, TableSheet } from '../marksheet/marking/plan'
import { OWN_SHEET } from '../marksheet/layout/find'
import { COPY_MARK } from './copyMark'
import { changeSheet, newSheet } from './sheet'
import { Styles } from './styles'
import { BookParts } from './xlsx/bookParts'
import { Package } from './xlsx/package'

const NOTE = { bold: false, italic: true, fill: null, wrap: false } as const
const NOTES_WIDTH = 40

/**
 * Applies marking plans and sheets of our own to an .xlsx file and gives the bytes of the marked copy. Only the sheets that are planned
 * for, the styles and the list of sheets are written anew, and of these only the places that change. Throws Unreadable.
 */
export async function applyPlans(
  bytes: Uint8Array,
  plans: readonly MarkingPlan[],
  tables: readonly TableSheet[],
): Promise<Uint8Array> {
  const file = await Package.open(bytes)
  const book = await BookParts.open(file)
  const stylesPart = await book.stylesPart()
  const styles = await file.parse(stylesPart, (xml) => new Styles(xml))
  for (const { sheet, rules, notes } of plans) {
    const part = book.partOf(sheet)
    const wide = notes.filter(({ upright, text }) => !upright && text !== NOTES_TITLE)
    const changes = {
      rules: rules.map((rule) => ({ ...rule, style: styles.differential(LOOKS[rule.look]) })),
      cells: notes.map(({ row, column, text, upright }) => ({
        row,
        column,
        content: text,
        style: styles.cell({ ...NOTE, upright }),
      })),
      widths: new Map(wide.map(({ column }) => [column, NOTES_WIDTH])),
    }
    file.put(part, await file.parse(part, (xml) => changeSheet(xml, changes)))
  }
  for (const table of tables)
    file.put(await ownSheet(book, table.name), tableXml(table, book.namespace, styles))
  file.put(stylesPart, styles.result())
  return file.save(COPY_MARK)
}

/** The part of the sheet with a name where it is one of our own; else of a new one, numbered where the name is taken. */
async function ownSheet(book: BookParts, name: string): Promise<string> {
  for (let number = 1; ; number++) {
    const wanted = numberedName(name, number)
    const taken = book.named(wanted)
    if (!taken) return book.addSheet(wanted)
    if ((await book.firstText(taken)).startsWith(OWN_SHEET)) return taken.part
  }
}

function tableXml({ rows, widths }: TableSheet, namespace: string, styles: Styles): string {
  const styled = rows.map((cells, row) =>
    cells.map(({ text, bold, fill }) => {
      const wrap = row > 0 && cells.length > 1
      return { text, style: styles.cell({ bold, italic: false, fill, wrap, upright: false }) }
    }),
  )
  return newSheet(namespace, styled, widths)
}

const DRAWN = [
  { part: /^xl\/charts\/chart\d+\.xml$/, one: 'chart', more: 'charts' },
  { part: /^xl\/media\//, one: 'picture', more: 'pictures' },
  { part: /^xl\/pivottables\/pivottable/, one: 'pivot table', more: 'pivot tables' },
  { part: /^xl\/slicers\//, one: 'slicer', more: 'slicers' },
  { part: /^xl\/(?:embeddings|ctrlprops|activex)\//, one: 'embedded object', more: 'embedded objects' },
  { part: /^xl\/vbaproject\.bin$/, one: 'set of macros', more: 'sets of macros' },
] as const

/**
 * What the workbook holds beside its cells ("2 charts"), which a library that writes whole workbooks would lose and the marked copy
 * keeps.
 */
export async function keptBesideCells(bytes: Uint8Array): Promise<string[]> {
  const names = (await Package.open(bytes)).parts()
  return DRAWN.flatMap(({ part, one, more }) => {
    const count = names.filter((name) => part.test(name)).length
    return count === 0 ? [] : [`${count} ${count === 1 ? one : more}`]
  })
}
