import type { CellValue } from '../../answers/typed'
import { addressOf, type Area, type CellRef } from '../../marksheet/layout/matrix'
import { areaAt, cellAt } from './address'
import { TextItem } from './texts'
import { Unreadable } from './unreadable'
import { attributesOf, plainText, tagsOf, unescaped, type Tag } from './xml'

/**
 * A cell that holds a value or a formula. A formula ("=SUM(B2:E2)", '' for none) stands beside the value that it had when the file was
 * saved, null where it had none; one that is shared with other cells is given as the first of them has it. Errors are texts ("#N/A"),
 * dates day numbers. `format` is the number format's code.
 */
export interface Cell extends CellRef {
  readonly value: CellValue
  readonly format: string
  readonly formula: string
}

/** A worksheet as the file keeps it: only cells that hold something, however far apart they stand. */
export interface Sheet {
  readonly name: string
  /** Whether days are counted from 1904, as the whole workbook has it, in place of 1900. */
  readonly is1904: boolean
  readonly cells: readonly Cell[]
  readonly merges: readonly Area[]
}

/** What a sheet's cells refer to, and how many filled cells and signs in them may still be read. */
export interface Known {
  readonly sheet: string
  readonly texts: readonly string[]
  readonly formats: readonly string[]
  readonly is1904: boolean
  readonly budget: { cells: number; characters: number }
}

/** The cells that hold something and the merged areas of a worksheet's part (ECMA-376, CT_Worksheet). Throws Unreadable or SyntaxError. */
export function readCells(xml: string, known: Known): { cells: Cell[]; merges: Area[] } {
  const reader = new CellReader(xml, known)
  const merges: Area[] = []
  let list = ''
  for (const tag of tagsOf(xml)) {
    if (tag.depth === 0 && tag.name !== 'worksheet')
      throw new Unreadable(`its sheet “${known.sheet}” is no worksheet but <${tag.name}>.`)
    if (tag.depth === 1) list = tag.name
    else if (list === 'sheetData') reader.take(tag)
    else if (list === 'mergeCells' && tag.name === 'mergeCell' && tag.kind !== 'close') {
      const ref = attributesOf(xml, tag).get('ref') ?? ''
      const area = areaAt(ref)
      if (!area) throw new Unreadable(`its sheet “${known.sheet}” merges “${ref}”, which are no cells.`)
      reader.spend(0)
      merges.push(area)
    }
  }
  reader.refuseRepeated()
  return { cells: reader.cells, merges }
}

/** Takes a sheet's rows and cells tag by tag. Addresses may be left out: a row follows the one before it, a cell likewise. */
class CellReader {
  readonly cells: Cell[] = []
  private at: CellRef = { row: -1, column: -1 }
  private attributes = new Map<string, string>()
  private value = ''
  private formula: string | null = null
  private inline: TextItem | null = null
  /** Where the text of the element in hand begins, and what tells the formula in hand apart. */
  private start = 0
  private shared = ''
  private readonly formulas = new Map<string, string>()
  private isOrdered = true

  constructor(
    private readonly xml: string,
    private readonly known: Known,
  ) {}

  take(tag: Tag): void {
    const { depth, name, kind } = tag
    if (depth === 2 && name === 'row' && kind !== 'close') this.startRow(tag)
    else if (depth === 3 && name === 'c') {
      if (kind !== 'close') this.startCell(tag)
      if (kind !== 'open') this.endCell()
    } else if (depth === 4) this.takeChild(tag)
    else if (depth > 4) this.inline?.take(tag)
  }

  /** Refuses a sheet on which a cell stands twice: either could be the child's answer. */
  refuseRepeated(): void {
    if (this.isOrdered) return
    const seen = new Set<string>()
    for (const cell of this.cells) {
      const address = addressOf(cell)
      if (seen.has(address)) throw this.refusal('stands there twice.', cell)
      seen.add(address)
    }
  }

  private startRow(tag: Tag): void {
    const r = attributesOf(this.xml, tag).get('r')
    const row = r === undefined ? this.at.row + 1 : (cellAt(`A${r}`)?.row ?? -1)
    if (row < 0) throw new Unreadable(`its sheet “${this.known.sheet}” has no row ${r ?? ''}.`)
    this.at = { row, column: -1 }
  }

  private startCell(tag: Tag): void {
    this.attributes = attributesOf(this.xml, tag)
    const r = this.attributes.get('r')
    const at = r === undefined ? { ...this.at, column: this.at.column + 1 } : cellAt(r)
    if (!at || cellAt(addressOf(at)) === null)
      throw new Unreadable(`its sheet “${this.known.sheet}” has no cell “${r ?? addressOf(this.at)}”.`)
    this.at = at
    this.value = ''
    this.formula = null
    this.inline = null
  }

  private takeChild({ name, kind, start, end, ...tag }: Tag): void {
    if (name === 'is' && kind === 'open') this.inline = new TextItem(this.xml, 4)
    if (name === 'f' && kind !== 'close') {
      const attributes = attributesOf(this.xml, { ...tag, name, kind, start, end })
      this.shared = attributes.get('t') === 'shared' ? (attributes.get('si') ?? '') : ''
      this.formula = this.formulas.get(this.shared) ?? ''
    }
    if (kind === 'open') this.start = end
    if (kind !== 'close') return
    const text = () => plainText(this.xml.slice(this.start, start))
    if (name === 'v') this.value = text()
    if (name === 'f' && start > this.start) {
      this.formula = unescaped(text())
      if (this.shared !== '') this.formulas.set(this.shared, this.formula)
    }
  }

  private endCell(): void {
    const value = this.read()
    if (value === null && this.formula === null) return
    const last = this.cells.at(-1)
    const { row, column } = this.at
    if (last && (row < last.row || (row === last.row && column <= last.column))) this.isOrdered = false
    const format = this.known.formats[Number(this.attributes.get('s') ?? 0)] ?? 'General'
    const formula = this.formula === null ? '' : `=${this.formula}`
    this.spend(formula.length + (typeof value === 'string' ? value.length : 0))
    this.cells.push({ row, column, value, format, formula })
  }

  private read(): CellValue {
    const { value } = this
    const type = this.attributes.get('t') ?? 'n'
    if (type === 'inlineStr') return this.inline?.text ?? null
    if (type === 'str') return value === '' && this.formula === null ? null : unescaped(value)
    const text = value.trim()
    if (text === '') return null
    if (type === 'e') return text
    if (type === 'b') return text === '1' || text === 'true'
    if (type === 's') {
      const shared = this.known.texts[/^\d+$/.test(text) ? Number(text) : -1]
      if (shared === undefined) throw this.refusal('refers to a text that is not in the file.')
      return shared
    }
    const number = type === 'd' ? dayOf(text, this.known.is1904) : Number(text)
    if (!Number.isFinite(number)) throw this.refusal(`holds “${text.slice(0, 40)}”, which is no number.`)
    return number
  }

  /** Counts a cell or a merged area with so many signs. */
  spend(characters: number): void {
    const { budget } = this.known
    budget.cells--
    budget.characters -= characters
    if (budget.cells < 0) throw new Unreadable('it has more than a million filled or merged cells.')
    if (budget.characters < 0) throw new Unreadable('its cells hold more text than can be read.')
  }

  private refusal(why: string, cell: CellRef = this.at): Unreadable {
    return new Unreadable(`cell ${addressOf(cell)} of its sheet “${this.known.sheet}” ${why}`)
  }
}

/** The day number of a date that is kept as text ("2026-04-03T10:30:00", "10:30:00"), as strict workbooks may; NaN where it is none. */
function dayOf(text: string, is1904: boolean): number {
  const [, date = '', time = '00:00:00'] = /^(\d+-\d+-\d+)?T?(\d[\d:.]*)?Z?$/.exec(text) ?? []
  const first = is1904 ? '1904-01-01' : '1899-12-30'
  return (Date.parse(`${date || first}T${time}Z`) - Date.parse(first)) / 86_400_000
}
