import type { ExcelContext } from '../excelContext'
import { HostObject } from '../hostObject'

/** One thing the add-in keeps in the workbook; its value is anything JSON can hold. */
export class Setting extends HostObject {
  static override readonly className = 'Setting'
  static override readonly scalars = ['key', 'value']
  readonly #key: string

  constructor(
    readonly context: ExcelContext,
    key: string,
  ) {
    super()
    this.#key = key
  }
  override get wireId() {
    return this.#key
  }
  get key() {
    return this.#key
  }
  get value(): unknown {
    return this.context.book.settings.get(this.#key)
  }
  set value(value: unknown) {
    this.context.book.settings.set(this.#key, value)
  }
  delete() {
    this.context.book.settings.delete(this.#key)
  }
}
