import { cellArea } from '../../grid/area'
import type { ExcelContext } from '../excelContext'
import type { CommentFacts } from '../book'
import { HostObject } from '../hostObject'

/** One comment. */
export class Comment extends HostObject {
  static override readonly className = 'Comment'
  static override readonly scalars = ['authorName', 'content', 'id', 'resolved']
  readonly #facts: CommentFacts

  constructor(
    readonly context: ExcelContext,
    readonly sheetId: string,
    facts: CommentFacts,
  ) {
    super()
    this.#facts = facts
  }
  override get wireId() {
    return this.#facts.id
  }
  get id() {
    return this.#facts.id
  }
  get authorName() {
    return this.#facts.author
  }
  get content() {
    return this.#facts.content
  }
  set content(content: string) {
    this.context.requireOption(this.sheetId, 'allowEditObjects')
    this.#facts.content = content
  }
  get resolved() {
    return this.#facts.resolved
  }
  set resolved(resolved: boolean) {
    this.#facts.resolved = resolved
  }
  getLocation() {
    return this.context.range(this.sheetId, cellArea(this.#facts.row, this.#facts.col))
  }
  delete() {
    this.context.requireOption(this.sheetId, 'allowEditObjects')
    const sheet = this.context.book.sheet(this.sheetId)
    sheet.comments = sheet.comments.filter((facts) => facts !== this.#facts)
  }
  /** Whether the comment is on that cell. */
  readonly isOn = (sheetId: string, row: number, col: number): boolean =>
    sheetId === this.sheetId && row === this.#facts.row && col === this.#facts.col
}
