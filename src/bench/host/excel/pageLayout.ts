import type { ExcelContext } from '../excelContext'
import { invalidArgument, noPrinter, notOnBench } from '../errors'
import { HostObject } from '../hostObject'
import { placeOf } from '../place'
import { RangeAreas } from './rangeAreas'

const PLAIN = [
  'orientation',
  'paperSize',
  'printGridlines',
  'centerHorizontally',
  'centerVertically',
  'leftMargin',
  'rightMargin',
  'topMargin',
  'bottomMargin',
  'zoom',
] as const

/** Points in each unit of a margin. */
const POINTS: Readonly<Record<string, number>> = { Points: 1, Inches: 72, Centimeters: 72 / 2.54 }

/** How a sheet is printed; margins in points. */
export class PageLayout extends HostObject {
  static override readonly className = 'PageLayout'
  static override readonly scalars = PLAIN

  constructor(
    readonly context: ExcelContext,
    readonly sheetId: string,
  ) {
    super()
  }
  getPrintAreaOrNullObject() {
    const { printArea } = this.#page()
    return printArea && new RangeAreas(this.context, this.sheetId, [printArea])
  }
  getPrintTitleRowsOrNullObject() {
    const { titleRows } = this.#page()
    return titleRows && this.context.range(this.sheetId, titleRows)
  }
  getPrintTitleColumnsOrNullObject() {
    const { titleColumns } = this.#page()
    return titleColumns && this.context.range(this.sheetId, titleColumns)
  }
  setPrintArea(range: unknown) {
    this.#changed().printArea = placeOf(this.context, range, this.sheetId).area
  }
  setPrintTitleRows(range: unknown) {
    this.#changed().titleRows = placeOf(this.context, range, this.sheetId).area
  }
  setPrintTitleColumns(range: unknown) {
    this.#changed().titleColumns = placeOf(this.context, range, this.sheetId).area
  }
  setPrintMargins(
    unit: string,
    margins: Readonly<Partial<Record<'top' | 'bottom' | 'left' | 'right', number>>>,
  ) {
    const points = POINTS[unit]
    if (points === undefined) throw invalidArgument()
    const page = this.#changed()
    for (const [side, length] of Object.entries(margins)) {
      if (side === 'top') page.topMargin = length * points
      else if (side === 'bottom') page.bottomMargin = length * points
      else if (side === 'left') page.leftMargin = length * points
      else if (side === 'right') page.rightMargin = length * points
      else throw notOnBench(`PageLayout.setPrintMargins(${side})`)
    }
  }

  #page() {
    return this.context.book.sheet(this.sheetId).page
  }
  #changed() {
    requirePrinter(this.context)
    return this.#page()
  }
}

/** Throws GeneralException where no printer is set up (the code is a guess). */
function requirePrinter({ book }: ExcelContext): void {
  if (!book.hasPrinter) throw noPrinter()
}

for (const name of PLAIN)
  Object.defineProperty(PageLayout.prototype, name, {
    configurable: true,
    get(this: PageLayout) {
      return this.context.book.sheet(this.sheetId).page[name]
    },
    set(this: PageLayout, value: unknown) {
      requirePrinter(this.context)
      Object.assign(this.context.book.sheet(this.sheetId).page, { [name]: value })
    },
  })
