import type { Area } from '../../marksheet/layout/matrix'

const LAST_ROW = 1_048_576
const LAST_COLUMN = 16_384

/** An address as Excel gives it ("'Year 4'!B5:N33", "Sheet1!C:C", "4:7") as an area. Throws RangeError for what is none. */
export function addressArea(address: string): Area {
  const bare = address.slice(address.lastIndexOf('!') + 1).replaceAll('$', '')
  const [, left, top, right = left, bottom = top] = /^([A-Z]*)(\d*)(?::([A-Z]*)(\d*))?$/.exec(bare) ?? []
  if (left === undefined || top === undefined || bare === '')
    throw new RangeError(`${address} is no address of cells.`)
  return {
    top: top === '' ? 0 : Number(top) - 1,
    left: left === '' ? 0 : columnNumber(left),
    bottom: bottom === '' ? LAST_ROW - 1 : Number(bottom) - 1,
    right: right === '' || right === undefined ? LAST_COLUMN - 1 : columnNumber(right),
  }
}

function columnNumber(letters: string): number {
  return [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1
}

/** One of the blocks in an address, behind the name of its sheet, which may itself hold commas ("'Owls, Year 4'!B5:B9"). */
const BLOCK = /(?:^|,)(?:'(?:[^']|'')*'!|[^'!,]*!)?([^'!,]+)/g

/** The blocks of an address of several, without the name of the sheet: "B5:B9" and "D5" of "S!B5:B9,S!D5". */
export function blocksOf(address: string): string[] {
  return Array.from(address.matchAll(BLOCK), ([, block = '']) => block.replaceAll('$', ''))
}

/** A cell's address in a formula, such as B5 (not in a name like TB5, and not in a text). */
const CELL = /(?<![A-Z0-9_.$])([A-Z]{1,3}[1-9]\d*)(?![A-Z0-9_(])/gi

/** The formula with one cell's address replaced by another's; texts in quotes stay as they are. */
export function moveFormula(formula: string, from: string, to: string): string {
  return formula
    .split(/("(?:[^"]|"")*")/)
    .map((part, index) =>
      index % 2 === 1 ? part : part.replace(CELL, (cell) => (cell === from ? to : cell)),
    )
    .join('')
}
