import type { CellRef } from '../marksheet/layout/matrix'
import { COPY_MARK } from './copyMark'
import { fillSheet } from './sheet'
import { BookParts } from './xlsx/bookParts'
import { Package } from './xlsx/package'

/** A number or a text for a cell of a sheet. */
export interface Filling {
  readonly sheet: string
  readonly cell: CellRef
  readonly content: string | number
}

/**
 * Writes into cells of an .xlsx file and gives the bytes of the copy. The cells keep their styles; every part of the file but the sheets that
 * are written to keeps its bytes. Throws Unreadable.
 */
export async function fillCells(bytes: Uint8Array, fillings: readonly Filling[]): Promise<Uint8Array> {
  const file = await Package.open(bytes)
  const book = await BookParts.open(file)
  for (const sheet of new Set(fillings.map((filling) => filling.sheet))) {
    const part = book.partOf(sheet)
    const cells = fillings
      .filter((filling) => filling.sheet === sheet)
      .map(({ cell, content }) => ({ ...cell, content, style: null }))
    file.put(part, await file.parse(part, (xml) => fillSheet(xml, cells)))
  }
  return file.save(COPY_MARK)
}
