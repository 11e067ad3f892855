import { areaAddress, type Area } from '../marksheet/matrix'
import type { Edit } from './edit'
import type { Part } from './work'

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
 * Takes tables and our chart off a sheet of ours that is there, before its cells are laid out anew. `filled` is its filled part, and the
 * table is found again as the last block of it under the heading `head` in column A. Taking back lays both over the cells again.
 */
export function overlayOffEdit(name: string, filled: Area | null, head: string, columns: number): Edit {
  const found = new Found(name)
  let before: Overlay | null = null
  return {
    what: `the tables on ${name}`,
    keep: [() => [found.part(), ...(filled ? [found.titlesPart(filled)] : [])]],
    check: () => {
      const titles = found.titles()
      const table = { top: titles.lastIndexOf(head), left: 0, bottom: titles.length - 1, right: columns - 1 }
      before = table.top < 0 || !found.hasTables() ? null : { table, chart: found.chart() }
    },
    write: () => [found.takeOff()],
    look: [],
    putBack: () => (before ? [layOver(name, before)] : []),
    left: () => [],
  }
}

/** Lays a table and a chart over a sheet whose cells an earlier edit has laid out. Taking back takes them off, before the cells go. */
export function overlayOnEdit(name: string, overlay: Overlay): Edit {
  const found = new Found(name)
  return {
    what: `the tables on ${name}`,
    keep: [],
    check: () => undefined,
    write: () => [layOver(name, overlay)],
    look: [() => [found.part()]],
    putBack: () => [found.takeOff()],
    left: () => [],
  }
}

function layOver(name: string, { table: area, chart }: Overlay): Part {
  return {
    cells: 2,
    queue: ({ workbook }) => {
      const sheet = workbook.worksheets.getItem(name)
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

  constructor(private readonly name: string) {}

  part(): Part {
    return {
      cells: 1,
      queue: ({ workbook }) => {
        this.#sheet = workbook.worksheets.getItemOrNullObject(this.name)
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
        this.#titles = workbook.worksheets.getItem(this.name).getRange(column)
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
        const sheet = workbook.worksheets.getItem(this.name)
        for (const { id } of this.#tables?.items ?? []) sheet.tables.getItem(id).convertToRange()
        if (this.#ourChart()) sheet.charts.getItem(CHART).delete()
      },
    }
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
