import type { ChartFacts } from '../book'
import { HostObject } from '../hostObject'

/** A chart's title. */
export class ChartTitle extends HostObject {
  static override readonly className = 'ChartTitle'
  static override readonly scalars = ['text']
  readonly #chart: ChartFacts

  constructor(chart: ChartFacts) {
    super()
    this.#chart = chart
  }
  get text() {
    return this.#chart.title
  }
  set text(text: string) {
    this.#chart.title = text
  }
}
