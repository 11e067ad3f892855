import type { CellRef } from '../marksheet/layout/matrix'
import { Parts } from './parts'
import { writeContent } from './sheet'
import { Package } from './xlsx/package'
import { openBook } from './xlsx/workbook'

/** A number or a text for a cell of a sheet. */
export interface Filling {
  readonly sheet: string
  readonly cell: CellRef
  readonly content: string | number
}

/**
 * Writes into cells of an .xlsx file and gives the bytes of the copy. The cells keep their styles; every part of the file but the sheets that
 * are written to keeps its bytes.
 */
export async function fillCells(bytes: Uint8Array, fillings: readonly Filling[]): Promise<Uint8Array> {
  const [parts, book] = [await Parts.open(bytes), await openBook(await Package.open(bytes))]
  for (const { sheet, cell, content } of fillings) {
    const part = book.sheets.find(({ name }) => name === sheet)?.part
    if (part === undefined) throw new Error(`The workbook has no sheet ${sheet}.`)
    writeContent(await parts.xml(part), cell, content)
  }
  return parts.save()
}
