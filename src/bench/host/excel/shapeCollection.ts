import type { ExcelContext } from '../excelContext'
import { invalidArgument } from '../errors'
import { HostCollection } from '../hostObject'
import { Shape } from './shape'

/** How base64 begins for the two kinds of picture that Excel takes: PNG and JPEG. */
const PICTURES = /^(?:iVBORw0KGgo|\/9j\/)/

/** Side of a picture until it is given a size, in points; the bench does not look into the picture. */
const UNSIZED = 96

/** The pictures of a sheet; the bench keeps them and draws none. */
export class ShapeCollection extends HostCollection<Shape> {
  static override readonly className = 'ShapeCollection'
  static override readonly scalars = []

  constructor(
    readonly context: ExcelContext,
    readonly sheetId: string,
  ) {
    super()
  }
  override all() {
    return this.context.book
      .sheet(this.sheetId)
      .shapes.map((facts) => new Shape(this.context, this.sheetId, facts))
  }
  protected override find(key: unknown) {
    return this.all().find((shape) => shape.id === key || shape.name === key)
  }
  addImage(base64: string) {
    this.context.requireOption(this.sheetId, 'allowEditObjects')
    if (!PICTURES.test(base64)) throw invalidArgument()
    const number = this.context.book.nextId()
    const facts = {
      id: `{shape-${number}}`,
      type: 'Image',
      name: `Picture ${number}`,
      altText: '',
      image: base64,
      lockAspectRatio: true,
      left: 0,
      top: 0,
      width: UNSIZED,
      height: UNSIZED,
    }
    this.context.book.sheet(this.sheetId).shapes.push(facts)
    return new Shape(this.context, this.sheetId, facts)
  }
}
