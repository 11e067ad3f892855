import type { ShapeFacts } from '../book'
import type { ExcelContext } from '../excelContext'
import { invalidArgument } from '../errors'
import { HostObject } from '../hostObject'

/** A picture on a sheet; lengths in points. */
export class Shape extends HostObject {
  static override readonly className = 'Shape'
  static override readonly scalars = [
    'altTextDescription',
    'height',
    'id',
    'left',
    'lockAspectRatio',
    'name',
    'top',
    'type',
    'width',
  ]
  readonly #facts: ShapeFacts

  constructor(
    readonly context: ExcelContext,
    readonly sheetId: string,
    facts: ShapeFacts,
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
  get type() {
    return this.#facts.type
  }
  get name() {
    return this.#facts.name
  }
  set name(name: string) {
    this.#facts.name = name
  }
  get altTextDescription() {
    return this.#facts.altText
  }
  set altTextDescription(text: string) {
    this.#facts.altText = text
  }
  get lockAspectRatio() {
    return this.#facts.lockAspectRatio
  }
  set lockAspectRatio(lock: boolean) {
    this.#facts.lockAspectRatio = lock
  }
  get left() {
    return this.#facts.left
  }
  set left(left: number) {
    this.#facts.left = atLeastNothing(left)
  }
  get top() {
    return this.#facts.top
  }
  set top(top: number) {
    this.#facts.top = atLeastNothing(top)
  }
  get width() {
    return this.#facts.width
  }
  /** Where the shape of the picture is kept, the other length follows. */
  set width(width: number) {
    const before = this.#facts.width
    this.#facts.width = atLeastNothing(width)
    if (this.#facts.lockAspectRatio && before > 0) this.#facts.height *= width / before
  }
  get height() {
    return this.#facts.height
  }
  set height(height: number) {
    const before = this.#facts.height
    this.#facts.height = atLeastNothing(height)
    if (this.#facts.lockAspectRatio && before > 0) this.#facts.width *= height / before
  }
  delete() {
    const sheet = this.context.book.sheet(this.sheetId)
    sheet.shapes = sheet.shapes.filter((facts) => facts !== this.#facts)
  }
}

function atLeastNothing(length: number): number {
  if (!(length >= 0)) throw invalidArgument()
  return length
}
