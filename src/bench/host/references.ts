import { MAX_COLS, MAX_ROWS } from '../grid/area'
import { columnIndex, columnName } from './address'

/** A cell's address in a formula (not in a name, a function or a text), with its dollar signs. */
const REFERENCE = /(?<![\w.$])(\$?)([A-Z]{1,3})(\$?)([1-9]\d{0,6})(?![\w.(])/gi

const around = (place: number, size: number) => ((place % size) + size) % size

/** A formula as it reads when it is moved by rows and columns: references without a dollar sign move along, around the sheet's edges. */
export function moveReferences(formula: string, rows: number, cols: number): string {
  if (rows === 0 && cols === 0) return formula
  const moved = (_: string, fixedCol: string, letters: string, fixedRow: string, digits: string) => {
    const col = fixedCol === '' ? around(columnIndex(letters) + cols, MAX_COLS) : columnIndex(letters)
    const row = fixedRow === '' ? around(Number(digits) - 1 + rows, MAX_ROWS) : Number(digits) - 1
    return `${fixedCol}${columnName(col)}${fixedRow}${row + 1}`
  }
  return formula
    .split(/("(?:[^"]|"")*")/)
    .map((part, index) => (index % 2 === 1 ? part : part.replace(REFERENCE, moved)))
    .join('')
}
