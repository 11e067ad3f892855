import type { ExcelContext } from '../excelContext'
import { HostCollection } from '../hostObject'
import { CustomXmlPart } from './customXmlPart'

/** The XML parts that add-ins keep in the workbook. */
export class CustomXmlPartCollection extends HostCollection<CustomXmlPart> {
  static override readonly className = 'CustomXmlPartCollection'
  readonly #namespace: string | undefined

  constructor(
    readonly context: ExcelContext,
    namespace?: string,
  ) {
    super()
    this.#namespace = namespace
  }
  override all() {
    return [...this.context.book.xmlParts.keys()]
      .map((id) => new CustomXmlPart(this.context, id))
      .filter((part) => this.#namespace === undefined || part.namespaceUri === this.#namespace)
  }
  protected override find(id: unknown) {
    return this.all().find((part) => part.wireId === id)
  }
  add(xml: string) {
    const id = `{${String(this.context.book.nextId()).padStart(8, '0')}-0000-0000-0000-000000000000}`
    this.context.book.xmlParts.set(id, xml)
    return new CustomXmlPart(this.context, id)
  }
  getByNamespace(namespace: string) {
    return new CustomXmlPartCollection(this.context, namespace)
  }
}
