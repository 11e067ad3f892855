import type { ExcelContext } from '../excelContext'
import { HostCollection } from '../hostObject'
import { Setting } from './setting'

/** What the add-in keeps in the workbook. */
export class SettingCollection extends HostCollection<Setting> {
  static override readonly className = 'SettingCollection'

  constructor(readonly context: ExcelContext) {
    super()
  }
  override all() {
    return [...this.context.book.settings.keys()].map((key) => new Setting(this.context, key))
  }
  protected override find(key: unknown) {
    return this.all().find((setting) => setting.key === key)
  }
  /** Adds a setting, or overwrites the one with that key. */
  add(key: string, value: unknown) {
    this.context.book.settings.set(key, value)
    return new Setting(this.context, key)
  }
}
