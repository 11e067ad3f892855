import type { ExcelContext } from '../excelContext'
import { HostObject } from '../hostObject'

const TEXTS = [
  'author',
  'category',
  'comments',
  'company',
  'keywords',
  'manager',
  'subject',
  'title',
] as const

/** What the workbook says about itself. */
export class DocumentProperties extends HostObject {
  static override readonly className = 'DocumentProperties'
  static override readonly scalars = TEXTS

  constructor(readonly context: ExcelContext) {
    super()
  }
}

for (const name of TEXTS)
  Object.defineProperty(DocumentProperties.prototype, name, {
    configurable: true,
    get(this: DocumentProperties) {
      return this.context.book.properties.get(name) ?? ''
    },
    set(this: DocumentProperties, text: string) {
      this.context.book.properties.set(name, text)
    },
  })
