import type { ExcelContext } from '../excelContext'
import { HostCollection } from '../hostObject'
import { placeOf } from '../place'
import { Chart } from './chart'

/** The charts of a sheet; the bench keeps what is said of them and draws none. */
export class ChartCollection extends HostCollection<Chart> {
  static override readonly className = 'ChartCollection'
  static override readonly scalars = ['count']

  constructor(
    readonly context: ExcelContext,
    readonly sheetId: string,
  ) {
    super()
  }
  override all() {
    return this.context.book
      .sheet(this.sheetId)
      .charts.map((facts) => new Chart(this.context, this.sheetId, facts))
  }
  protected override find(key: unknown) {
    return this.all().find((chart) => chart.id === key || chart.name === key)
  }
  get count() {
    return this.getCount()
  }
  add(chartType: string, source: unknown) {
    this.context.requireOption(this.sheetId, 'allowEditObjects')
    const number = this.context.book.nextId()
    const facts = {
      id: `{chart-${number}}`,
      name: `Chart ${number}`,
      chartType,
      title: '',
      source: placeOf(this.context, source, this.sheetId).area,
      left: 0,
      top: 0,
      width: 360,
      height: 216,
    }
    this.context.book.sheet(this.sheetId).charts.push(facts)
    return new Chart(this.context, this.sheetId, facts)
  }
}
