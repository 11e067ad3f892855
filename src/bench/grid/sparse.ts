import type { Area } from './area'

/** A sheet-sized matrix of which few cells are filled. */
export class Sparse<T> {
  readonly #rows = new Map<number, T[]>()

  get(row: number, col: number): T | undefined {
    return this.#rows.get(row)?.[col]
  }

  set(row: number, col: number, value: T): void {
    let cells = this.#rows.get(row)
    if (!cells) this.#rows.set(row, (cells = []))
    cells[col] = value
  }

  delete(row: number, col: number): void {
    const cells = this.#rows.get(row)
    if (cells) Reflect.deleteProperty(cells, col)
  }

  /** Calls `visit` for each filled cell within the area. */
  each(area: Area, visit: (value: T, row: number, col: number) => void): void {
    for (const [row, cells] of this.#rows) {
      if (row < area.row || row >= area.row + area.rows) continue
      cells.forEach((value, col) => {
        if (col >= area.col && col < area.col + area.cols) visit(value, row, col)
      })
    }
  }
}
