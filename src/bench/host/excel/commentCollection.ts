import type { ExcelContext } from '../excelContext'
import { invalidArgument, itemNotFound } from '../errors'
import { HostCollection } from '../hostObject'
import { placeOf } from '../place'
import { Comment } from './comment'

/** The comments of a sheet, or of the whole workbook (`sheetId` null). */
export class CommentCollection extends HostCollection<Comment> {
  static override readonly className = 'CommentCollection'

  constructor(
    readonly context: ExcelContext,
    readonly sheetId: string | null,
  ) {
    super()
  }
  override all() {
    const sheets = this.context.grid.sheets().filter(({ id }) => this.sheetId === null || id === this.sheetId)
    return sheets.flatMap(({ id }) =>
      this.context.book.sheet(id).comments.map((facts) => new Comment(this.context, id, facts)),
    )
  }
  protected override find(id: unknown) {
    return this.all().find((comment) => comment.wireId === id)
  }
  add(cell: unknown, content: string) {
    const { sheetId, area } = cellOf(this.context, cell)
    this.context.requireOption(sheetId, 'allowEditObjects')
    const id = `{comment-${this.context.book.nextId()}}`
    const facts = { id, row: area.row, col: area.col, author: 'Bench user', content, resolved: false }
    this.context.book.sheet(sheetId).comments.push(facts)
    return new Comment(this.context, sheetId, facts)
  }
  getItemByCell(cell: unknown) {
    const { sheetId, area } = cellOf(this.context, cell)
    const comment = this.all().find((one) => one.isOn(sheetId, area.row, area.col))
    if (!comment) throw itemNotFound()
    return comment
  }
}

/**
 * The cell of a comment: a range, or a full address with the sheet's name, even on a sheet's own collection; one cell only (the client
 * library's declarations in @types/office-js).
 */
function cellOf(context: ExcelContext, cell: unknown) {
  const place = placeOf(context, cell, null)
  if (place.area.rows !== 1 || place.area.cols !== 1) throw invalidArgument()
  return place
}
