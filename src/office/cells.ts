import { areaAddress, type Area } from '../marksheet/matrix'
import { holds, passed, passedBack, type Content } from './content'
import type { Edit } from './edit'
import { Problem } from './errors'
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
  /** Whether a cell that holds this value may be written to. Left out, every cell may. */
  readonly isFree?: (value: unknown) => boolean
}

/**
 * Writes contents into cells. Refuses, with their addresses, cells that are not free. Taking back gives every cell what it held, except
 * those that by now hold something else than what was written.
 */
export function cellsEdit(sheet: SheetRef, blocks: readonly Block[], options: CellsOptions = {}): Edit {
  const all = blocks.flatMap(piecesOf).map((block) => new Piece(sheet, block, options))
  const where = all.map(({ address }) => address).join(', ')
  return {
    what: `cells ${where} on ${sheet.name}`,
    keep: [() => all.map((piece) => piece.keep())],
    check: () => {
      const taken = all.flatMap((piece) => piece.taken())
      if (taken.length === 0) return
      throw new Problem(
        `${listed(taken)} on ${sheet.name} ${taken.length === 1 ? 'is' : 'are'} not empty, and nothing of yours is overwritten.`,
        'Empty these cells or choose another place, then try again.',
      )
    },
    write: () => all.map((piece) => piece.write()),
    look: [() => all.map((piece) => piece.look())],
    putBack: () => all.map((piece) => piece.putBack()),
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
  const shown = addresses.slice(0, MOST_LISTED).join(', ')
  const more = addresses.length - MOST_LISTED
  const cells = addresses.length === 1 ? 'Cell' : 'Cells'
  return more > 0 ? `${cells} ${shown} and ${more} more` : `${cells} ${shown}`
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

/** A part of a block that one request can hold. */
class Piece {
  readonly address: string
  /** How many cells taking back left alone. */
  left = 0
  readonly #cells: number
  readonly #area: Area
  #before: { values: unknown[][]; formulas: unknown[][]; italic: boolean | null } | undefined
  #loaded: Excel.Range | undefined

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
    const slant = this.options.italic === undefined ? '' : ', format/font/italic'
    return this.#load(`values, formulas${slant}`)
  }

  taken(): string[] {
    const range = this.#loaded
    if (!range) return []
    const values = range.values as unknown[][]
    const italic = this.options.italic === undefined ? null : range.format.font.italic
    this.#before = { values, formulas: range.formulas as unknown[][], italic }
    const { isFree } = this.options
    if (!isFree) return []
    return values.flatMap((row, i) =>
      row.flatMap((value, j) =>
        this.block.rows[i]?.[j] === null || isFree(value) ? [] : [this.#addressAt(i, j)],
      ),
    )
  }

  write(): Part {
    return this.#part((range) => {
      range.values = this.block.rows.map((row) => row.map(passed))
      if (this.options.italic !== undefined) range.format.font.italic = this.options.italic
    })
  }

  look(): Part {
    return this.#load('values, formulas')
  }

  putBack(): Part {
    return this.#part((range) => {
      const [before, now] = [this.#before, this.#loaded]
      this.left = 0
      if (!before || !now) return
      range.values = this.block.rows.map((row, i) =>
        row.map((content, j) => {
          if (content === null) return null
          const value: unknown = now.values[i]?.[j]
          const had = before.values[i]?.[j]
          if (value === had) return null
          if (holds(content, value, now.formulas[i]?.[j])) return passedBack(had, before.formulas[i]?.[j])
          this.left++
          return null
        }),
      )
      if (before.italic !== null) range.format.font.italic = before.italic
    })
  }

  #load(properties: string): Part {
    return this.#part((range) => {
      range.load(properties)
      this.#loaded = range
    })
  }

  #part(queue: (range: Excel.Range) => void): Part {
    return {
      cells: this.#cells,
      queue: (context) => {
        queue(context.workbook.worksheets.getItem(this.sheet.id).getRange(this.address))
      },
    }
  }

  #addressAt(i: number, j: number): string {
    const cell = { top: this.#area.top + i, left: this.#area.left + j }
    return areaAddress({ ...cell, bottom: cell.top, right: cell.left }).replace(/:.*/, '')
  }
}
