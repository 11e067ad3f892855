import { isEmpty, type Area, type CellRef, type Matrix } from './matrix'

/** The pieces of a sheet between its empty columns, or between its empty rows, from the left or the top. */
export function piecesOf({ values }: Matrix, between: 'columns' | 'rows'): Area[] {
  const height = values.length
  const width = values.reduce((most, row) => Math.max(most, row.length), 0)
  const isDown = between === 'rows'
  const filled = new Array<boolean>(isDown ? height : width).fill(false)
  values.forEach((cells, row) => {
    cells.forEach((value, column) => {
      if (!isEmpty(value)) filled[isDown ? row : column] = true
    })
  })
  const pieces: Area[] = []
  filled.forEach((isFilled, index) => {
    if (!isFilled) return
    const first = filled[index - 1] === true ? (pieces.pop() ?? null) : null
    const from = first === null ? index : isDown ? first.top : first.left
    pieces.push(
      isDown
        ? { top: from, bottom: index, left: 0, right: width - 1 }
        : { top: 0, bottom: height - 1, left: from, right: index },
    )
  })
  return pieces
}

/** Whether a cell lies in an area. */
export function isWithin({ top, left, bottom, right }: Area, { row, column }: CellRef): boolean {
  return top <= row && row <= bottom && left <= column && column <= right
}

/** The same sheet, every cell where it was, with nothing outside an area. */
export function only(matrix: Matrix, { top, left, bottom, right }: Area): Matrix {
  const cut = <T>(rows: readonly (readonly T[])[], nothing: T): T[][] =>
    rows
      .slice(0, bottom + 1)
      .map((cells, row) =>
        row < top ? [] : cells.slice(0, right + 1).map((cell, column) => (column < left ? nothing : cell)),
      )
  return {
    ...matrix,
    values: cut(matrix.values, null),
    ...(matrix.formulas === undefined ? {} : { formulas: cut(matrix.formulas, '') }),
  }
}
