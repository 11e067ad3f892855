import { areaAddress, type Area } from '../../marksheet/layout/matrix'
import type { Edit } from '../edit/edit'
import type { SheetEdit } from './ownSheet'
import type { Part } from '../edit/work'

/** Where a chart stands, in points from the sheet's left and upper edge. */
interface Box {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

/** What lies over the cells of a sheet of ours: a table with its heads, and a chart of it; `place` the cells it covers, or its box. */
export interface Overlay {
  readonly table: Area
  readonly chart: { readonly title: string; readonly place: Area | Box } | null
}

/** The chart of ours on a sheet is told by its name. */
const CHART = 'Columnwise chart'
/** How tables on our own sheets look. */
export const TABLE_STYLE = 'TableStyleLight1'

/**
 * Lays a table and a chart over a sheet of ours, in place of what lies over it where it was there before; the edits before and after the one
 * that lays out its cells. `filled` is its filled part (null for a new sheet), in which the old table is found again as the last block
 * under the heading `head` in column A. Taking back lays the old ones over the cells again, unless the sheet stays as it is.
 */
export function overlayEdits(
  sheet: SheetEdit,
  name: string,
  overlay: Overlay,
  old: { readonly filled: Area | null; readonly head: string; readonly columns: number } | null,
): { readonly before: Edit[]; readonly after: Edit } {
  const [kept, now] = [new Found(sheet), new Found(sheet)]
  let before: Overlay | null = null
  const isUntouched = () => sheet.stays() || now.isAs(kept)
  const off = ({ filled, head, columns }: NonNullable<typeof old>): Edit => ({
    what: `the tables on ${name}`,
    keep: [() => [kept.part(), ...(filled ? [kept.titlesPart(filled)] : [])]],
    check: () => {
      const titles = kept.titles()
      const table = { top: titles.lastIndexOf(head), left: 0, bottom: titles.length - 1, right: columns - 1 }
      before = table.top < 0 || !kept.hasTables() ? null : { table, chart: kept.chart() }
    },
    write: () => [kept.takeOff()],
    look: [() => [now.part()]],
    putBack: () => (before && !isUntouched() ? [layOver(sheet, before)] : []),
    left: () => [],
  })
  return {
    before: old ? [off(old)] : [],
    after: {
      what: `the tables on ${name}`,
      keep: [],
      check: () => undefined,
      write: () => [layOver(sheet, overlay)],
      look: [() => [now.part()]],
      putBack: () => (isUntouched() ? [] : [now.takeOff()]),
      left: () => [],
    },
  }
}

function layOver(on: SheetEdit, { table: area, chart }: Overlay): Part {
  return {
    cells: 2,
    queue: ({ workbook }) => {
      const sheet = workbook.worksheets.getItem(on.key())
      const table = sheet.tables.add(areaAddress(area), true)
      table.style = TABLE_STYLE
      table.showFilterButton = chart === null
      if (chart) addChart(sheet, area, chart)
    },
  }
}

function addChart(
  sheet: Excel.Worksheet,
  source: Area,
  { title, place }: NonNullable<Overlay['chart']>,
): void {
  const chart = sheet.charts.add('BarStacked', sheet.getRange(areaAddress(source)), 'Columns')
  chart.name = CHART
  chart.title.text = title
  if ('bottom' in place) {
    const [from = '', to] = areaAddress(place).split(':')
    chart.setPosition(from, to)
  } else {
    chart.left = place.left
    chart.top = place.top
    chart.width = place.width
    chart.height = place.height
  }
}

/** The tables and our chart of a sheet, as they are found. */
class Found {
  #sheet: Excel.Worksheet | undefined
  #tables: Excel.TableCollection | undefined
  #charts: Excel.ChartCollection | undefined
  #titles: Excel.Range | undefined

  constructor(private readonly sheet: SheetEdit) {}

  part(): Part {
    return {
      cells: 1,
      queue: ({ workbook }) => {
        this.#sheet = workbook.worksheets.getItemOrNullObject(this.sheet.key())
        this.#tables = this.#sheet.tables
        this.#charts = this.#sheet.charts
        this.#sheet.load('name')
        this.#tables.load('items/id')
        this.#charts.load('items/name, items/title/text, items/left, items/top, items/width, items/height')
      },
    }
  }

  titlesPart(filled: Area): Part {
    return {
      cells: filled.bottom + 1,
      queue: ({ workbook }) => {
        const column = areaAddress({ ...filled, left: 0, right: 0 })
        this.#titles = workbook.worksheets.getItem(this.sheet.key()).getRange(column)
        this.#titles.load('values')
      },
    }
  }

  /** What column A holds. */
  titles(): string[] {
    const values = (this.#titles?.values ?? []) as unknown[][]
    return values.map(([text]) => String(text))
  }

  takeOff(): Part {
    return {
      cells: 1,
      queue: ({ workbook }) => {
        if (!this.#isThere()) return
        const sheet = workbook.worksheets.getItem(this.sheet.key())
        for (const { id } of this.#tables?.items ?? []) sheet.tables.getItem(id).convertToRange()
        if (this.#ourChart()) sheet.charts.getItem(CHART).delete()
      },
    }
  }

  /** Whether the same tables are there, and a chart of ours or none. */
  isAs(other: Found): boolean {
    return this.#what() === other.#what()
  }

  #what(): string {
    const tables = this.#isThere() ? (this.#tables?.items ?? []).map(({ id }) => id).sort() : []
    return JSON.stringify([tables, this.#isThere() && this.#ourChart() !== undefined])
  }

  hasTables(): boolean {
    return this.#isThere() && (this.#tables?.items ?? []).length > 0
  }

  chart(): Overlay['chart'] {
    const chart = this.#ourChart()
    if (!chart) return null
    const { left, top, width, height } = chart
    return { title: chart.title.text, place: { left, top, width, height } }
  }

  #isThere(): boolean {
    return this.#sheet?.isNullObject === false
  }

  #ourChart(): Excel.Chart | undefined {
    return this.#charts?.items.find(({ name }) => name === CHART)
  }
}
