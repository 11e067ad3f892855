import type { ExcelContext } from '../excelContext'
import { HostObject } from '../hostObject'

/** One XML part. */
export class CustomXmlPart extends HostObject {
  static override readonly className = 'CustomXmlPart'
  static override readonly scalars = ['id', 'namespaceUri']
  readonly #id: string

  constructor(
    readonly context: ExcelContext,
    id: string,
  ) {
    super()
    this.#id = id
  }
  override get wireId() {
    return this.#id
  }
  get id() {
    return this.#id
  }
  /** The namespace of the root element. */
  get namespaceUri() {
    return /<[^?!][^>]*?\sxmlns="([^"]*)"/.exec(this.getXml())?.[1] ?? ''
  }
  getXml() {
    return this.context.book.xmlParts.get(this.#id) ?? ''
  }
  setXml(xml: string) {
    this.context.book.xmlParts.set(this.#id, xml)
  }
  delete() {
    this.context.book.xmlParts.delete(this.#id)
  }
}
