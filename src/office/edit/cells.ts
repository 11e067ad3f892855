import { areaAddress, type Area } from '../../marksheet/layout/matrix'
import { holds, passed, passedBack, took, type Content } from './content'
import type { Edit } from './edit'
import { Problem, protectedSheet } from './errors'
import { CELLS_PER_REQUEST, pieces, type Part } from './work'

export type { Content } from './content'

/** A sheet that is written to. */
export interface SheetRef {
  readonly id: string
  readonly name: string
}

/** Contents for cells from a row and column (from 0) on; the rows are of equal length. */
export interface Block {
  readonly top: number
  readonly left: number
  readonly rows: readonly (readonly Content[])[]
}

/** How cells are to be written. */
export interface CellsOptions {
  /** Slant the letters, or set them upright; left out, they stay as they are. */
  readonly italic?: boolean
  /** Whether a cell that holds this value, and this formula or the value again, may be written to. Left out, every cell may. */
  readonly isFree?: (value: unknown, formula: unknown) => boolean
  /** What is written, as the beginning of a sentence, where it may be left out of cells that do not take it ("Notes"). */
  readonly mayBeLeftOut?: string
}

/**
 * Writes contents into cells. Refuses, with their addresses, cells that are not free, that are locked, or that a formula next to them
 * fills; and puts everything back where cells do not take what was written, as those inside a merged block. Taking back gives every cell
 * what it held, except those that by now hold something else than what was written.
 */
export function cellsEdit(sheet: SheetRef, blocks: readonly Block[], options: CellsOptions = {}): Edit {
  const all = blocks.flatMap(piecesOf).map((block) => new Piece(sheet, block, options))
  const where = all.map(({ address }) => address).join(', ')
  const lost = () => all.flatMap((piece) => piece.lost())
  return {
    what: `cells ${where} on ${sheet.name}`,
    keep: [() => all.map((piece) => piece.keep())],
    check: () => {
      for (const piece of all) piece.refuse()
      const taken = all.flatMap((piece) => piece.taken())
      if (taken.length === 0) return
      throw new Problem(
        `${listed(taken)} on ${sheet.name} ${taken.length === 1 ? 'is' : 'are'} not empty, and nothing of yours is overwritten.`,
        'Empty these cells or choose another place, then try again.',
      )
    },
    write: () => all.map((piece) => piece.write()),
    verify: () => {
      const cells = lost()
      if (cells.length === 0 || options.mayBeLeftOut !== undefined) return
      throw new Problem(
        `${listed(cells)} on ${sheet.name} ${cells.length === 1 ? 'does' : 'do'} not take what is written.`,
        'Cells may be merged there, or be the heading of a table. Unmerge them or choose another place, then try again.',
      )
    },
    told: () => {
      const cells = options.mayBeLeftOut === undefined ? [] : lost()
      if (cells.length === 0) return []
      return [`${options.mayBeLeftOut} were left out, since cells are merged there: ${shortList(cells)}.`]
    },
    look: [() => all.map((piece) => piece.look())],
    putBack: () => all.flatMap((piece) => piece.putBack()),
    left: () => {
      const left = all.reduce((sum, piece) => sum + piece.left, 0)
      if (left === 0) return []
      const cells = left === 1 ? 'One cell' : `${left} cells`
      return [`${cells} on ${sheet.name} that changed since stayed as ${left === 1 ? 'it is' : 'they are'}.`]
    },
  }
}

const MOST_LISTED = 6

function listed(addresses: readonly string[]): string {
  return `${addresses.length === 1 ? 'Cell' : 'Cells'} ${shortList(addresses)}`
}

function shortList(addresses: readonly string[]): string {
  const shown = addresses.slice(0, MOST_LISTED).join(', ')
  const more = addresses.length - MOST_LISTED
  return more > 0 ? `${shown} and ${more} more` : shown
}

function piecesOf({ top, left, rows }: Block): Block[] {
  const width = rows[0]?.length ?? 0
  if (width === 0) return []
  const most = Math.max(1, Math.floor(CELLS_PER_REQUEST / width))
  return pieces(0, rows.length - 1, most).map(({ first, last }) => ({
    top: top + first,
    left,
    rows: rows.slice(first, last + 1),
  }))
}

/** The requirement set in which a range says whether formulas fill it from outside. */
const KNOWS_SPILLS = '1.12'

type Held = Pick<Excel.Range, 'values' | 'formulas'>

/** A part of a block that one request can hold. */
class Piece {
  readonly address: string
  /** How many cells taking back left alone. */
  left = 0
  readonly #cells: number
  readonly #area: Area
  #before: Held | undefined
  #slants: Slants | undefined
  #slantsNow: Slants | undefined
  #sheet: Excel.Worksheet | undefined
  #loaded: Excel.Range | undefined
  #written: Excel.Range | undefined

  constructor(
    private readonly sheet: SheetRef,
    private readonly block: Block,
    private readonly options: CellsOptions,
  ) {
    const { top, left, rows } = block
    const width = rows[0]?.length ?? 0
    this.#area = { top, left, bottom: top + rows.length - 1, right: left + width - 1 }
    this.#cells = rows.length * width
    this.address = areaAddress(this.#area)
  }

  keep(): Part {
    return this.#part((range, sheet) => {
      range.load('values, formulas, format/protection/locked')
      if (Office.context.requirements.isSetSupported('ExcelApi', KNOWS_SPILLS)) range.load('hasSpill')
      if (this.options.italic !== undefined) this.#slants = new Slants(range)
      sheet.protection.load('protected')
      this.#sheet = sheet
      this.#loaded = range
    })
  }

  /** Throws Problem where the cells are locked, or filled by a formula outside of them. */
  refuse(): void {
    const range = this.#loaded
    if (!range) return
    if (this.#sheet?.protection.protected === true && range.format.protection.locked !== false)
      throw protectedSheet(this.sheet.name)
    if (Office.context.requirements.isSetSupported('ExcelApi', KNOWS_SPILLS) && range.hasSpill !== false)
      throw new Problem(
        `In ${this.address} on ${this.sheet.name} one formula fills several cells, so single ones cannot be written over.`,
        'Choose another place, or turn what the formula gives into plain values first.',
      )
  }

  taken(): string[] {
    const range = this.#loaded
    if (!range) return []
    const { values, formulas } = range
    this.#before = { values, formulas }
    const { isFree } = this.options
    if (!isFree) return []
    return this.#where((content, value, i, j) => content !== null && !isFree(value, formulas[i]?.[j]), values)
  }

  write(): Part {
    return this.#part((range) => {
      range.values = this.block.rows.map((row) => row.map(passed))
      if (this.options.italic !== undefined) range.format.font.italic = this.options.italic
      range.load('values, formulas')
      this.#written = range
    })
  }

  /** The cells that have not taken what was written. */
  lost(): string[] {
    const { values, formulas } = this.#written ?? {}
    if (!values || !formulas) return []
    return this.#where((content, value, i, j) => !took(content, value, formulas[i]?.[j]), values)
  }

  look(): Part {
    return this.#load()
  }

  /** Nothing to do where nothing is changed. */
  putBack(): Part[] {
    const [before, now] = [this.#before, this.#loaded]
    this.left = 0
    if (!before || !now) return []
    const rows = this.block.rows.map((row, i) =>
      row.map((content, j) => {
        if (content === null) return null
        const value: unknown = now.values[i]?.[j]
        const had: unknown = before.values[i]?.[j]
        const formula: unknown = now.formulas[i]?.[j]
        if (value === had && formula === before.formulas[i]?.[j]) return null
        const isOurs = holds(content, value, formula) || value === this.#written?.values[i]?.[j]
        if (isOurs) return passedBack(had, before.formulas[i]?.[j])
        if (value !== had) this.left++
        return null
      }),
    )
    return [...this.#writeBack(rows), ...this.#slantBack()]
  }

  #writeBack(rows: readonly (readonly unknown[])[]): Part[] {
    if (rows.flat().every((value) => value === null)) return []
    return [
      this.#part((range) => {
        range.values = rows.map((row) => [...row])
      }),
    ]
  }

  #slantBack(): Part[] {
    const [before, now, { italic }] = [this.#slants?.rows(), this.#slantsNow?.rows(), this.options]
    if (!before || !now || italic === undefined) return []
    const isOurs = (slanted: boolean, i: number, j: number) => slanted !== italic && now[i]?.[j] === italic
    if (!before.some((row, i) => row.some((slanted, j) => isOurs(slanted, i, j)))) return []
    return [
      this.#part((range) => {
        range.setCellProperties(
          before.map((row, i) =>
            row.map((slanted, j) => (isOurs(slanted, i, j) ? { format: { font: { italic: slanted } } } : {})),
          ),
        )
      }),
    ]
  }

  #load(): Part {
    return this.#part((range) => {
      range.load('values, formulas')
      if (this.options.italic !== undefined) this.#slantsNow = new Slants(range)
      this.#loaded = range
    })
  }

  #part(queue: (range: Excel.Range, sheet: Excel.Worksheet) => void): Part {
    return {
      cells: this.#cells,
      queue: (context) => {
        const sheet = context.workbook.worksheets.getItem(this.sheet.id)
        queue(sheet.getRange(this.address), sheet)
      },
    }
  }

  /** The addresses of the cells whose content and value fit. */
  #where(
    fits: (content: Content, value: unknown, i: number, j: number) => boolean,
    values: readonly (readonly unknown[])[],
  ): string[] {
    return values.flatMap((row, i) =>
      row.flatMap((value, j) =>
        fits(this.block.rows[i]?.[j] ?? null, value, i, j) ? [this.#addressAt(i, j)] : [],
      ),
    )
  }

  #addressAt(i: number, j: number): string {
    const cell = { top: this.#area.top + i, left: this.#area.left + j }
    return areaAddress({ ...cell, bottom: cell.top, right: cell.left }).replace(/:.*/, '')
  }
}

/** Which cells of a range are slanted, one by one: a range as a whole does not tell where they differ. */
class Slants {
  readonly #asked: OfficeExtension.ClientResult<Excel.CellProperties[][]>

  constructor(range: Excel.Range) {
    this.#asked = range.getCellProperties({ format: { font: { italic: true } } })
  }

  /** Row by row; to be asked after the request has been answered. */
  rows(): boolean[][] {
    return this.#asked.value.map((row) => row.map(({ format }) => format?.font?.italic === true))
  }
}
