import { columnLetters } from '../../marksheet/layout/matrix'
import type { SheetRef } from './cells'
import { pointsFor } from './columnWidth'
import type { Edit } from './edit'
import type { Part } from './work'

/** Points by which two widths may differ and still be the same to Excel, which rounds them to pixels. */
const SAME = 1

/** Widens columns that are narrower than so many characters, from the column `left` on. Taking back leaves those widened since. */
export function widthsEdit(sheet: SheetRef, left: number, characters: readonly number[]): Edit {
  const columns = characters.map((wanted, index) => new Column(sheet, left + index, pointsFor(wanted)))
  return {
    what: `the widths of columns on ${sheet.name}`,
    keep: [() => columns.map((column) => column.load())],
    check: () => {
      for (const column of columns) column.keep()
    },
    write: () => columns.flatMap((column) => column.widen()),
    look: [() => columns.map((column) => column.load())],
    putBack: () => columns.flatMap((column) => column.putBack()),
    left: () => [],
  }
}

class Column {
  #before = Infinity
  #loaded: Excel.Range | undefined

  constructor(
    private readonly sheet: SheetRef,
    private readonly column: number,
    private readonly wanted: number,
  ) {}

  load(): Part {
    return this.#part((range) => {
      range.load('format/columnWidth')
      this.#loaded = range
    })
  }

  keep(): void {
    this.#before = this.#width()
  }

  widen(): Part[] {
    return this.#before < this.wanted ? [this.#set(this.wanted)] : []
  }

  putBack(): Part[] {
    const isOurs = this.#before < this.wanted && Math.abs(this.#width() - this.wanted) < SAME
    return isOurs ? [this.#set(this.#before)] : []
  }

  #width(): number {
    return this.#loaded?.format.columnWidth ?? Infinity
  }

  #set(width: number): Part {
    return this.#part((range) => {
      range.format.columnWidth = width
    })
  }

  #part(queue: (range: Excel.Range) => void): Part {
    const letters = columnLetters(this.column)
    return {
      cells: 1,
      queue: (context) => {
        queue(context.workbook.worksheets.getItem(this.sheet.id).getRange(`${letters}:${letters}`))
      },
    }
  }
}
