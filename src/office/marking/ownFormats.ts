import type { Look } from '../../marksheet/marking/looks'
import { SIGNATURE } from '../../marksheet/marking/rules'
import { blocksOf } from '../edit/address'
import type { SheetRef } from '../edit/cells'
import { FormatList } from '../edit/formatList'
import { pieces, type Part } from '../edit/work'

/** A conditional format of ours that stands on the sheet; `addresses` are its blocks. */
export interface OwnFormat {
  readonly id: string
  readonly addresses: readonly string[]
  readonly formula: string
  readonly look: Look
  readonly priority: number
}

/** Gives the conditional formats of a sheet. */
export function conditionalFormats(
  { workbook }: Excel.RequestContext,
  { id }: SheetRef,
): Excel.ConditionalFormatCollection {
  return workbook.worksheets.getItem(id).getRange().conditionalFormats
}

/** How many cells looking into a conditional format weighs in a request: some 1,400 bytes. */
const LOOK_WEIGHT = 10
/** How many formats one part of a request is about. */
const TOGETHER = 100

/** Formats in as many lists as there are to be parts. */
export function together<Item>(items: readonly Item[]): Item[][] {
  return pieces(0, items.length - 1, TOGETHER).map(({ first, last }) => items.slice(first, last + 1))
}

interface Loaded {
  readonly format: Excel.ConditionalFormat
  /** The same, asked for through the first of its blocks. */
  readonly own: Excel.ConditionalFormat
  readonly border: Excel.ConditionalRangeBorder
  readonly ranges: Excel.RangeAreas
}

/**
 * Loads a conditional format; its formula through the first of its own blocks, since Excel writes formulas for the first cell of the range
 * that they are asked for through (issue 5194 of office-js).
 */
function lookInto(formats: Excel.ConditionalFormatCollection, id: string): Loaded {
  const format = formats.getItem(id)
  const ranges = format.getRanges()
  const own = ranges.areas.getItemAt(0).conditionalFormats.getItem(id)
  own.load('custom/rule/formula')
  format.load(
    'id, priority, custom/format/numberFormat, custom/format/fill/color, custom/format/font/color, ' +
      'custom/format/font/bold, custom/format/font/italic, custom/format/font/underline',
  )
  const border = format.custom.format.borders.getItem('EdgeTop')
  border.load('style')
  ranges.load('address')
  return { format, own, border, ranges }
}

/** The conditional formats by formula of a sheet, listed and looked into. */
export class Listing {
  readonly #list: FormatList
  readonly #loaded = new Map<string, Loaded>()
  #missed = 0

  constructor(private readonly sheet: SheetRef) {
    this.#list = new FormatList((context) => conditionalFormats(context, sheet))
  }

  list(): Part[] {
    return [this.#list.part]
  }

  details(ids: readonly string[] = this.#list.customIds()): Part[] {
    this.#loaded.clear()
    this.#missed = 0
    return [this.#there(), ...together(ids).map((own) => this.#look(own))]
  }

  /** How many of the sheet's conditional formats could not be read. */
  unreadable(): number {
    return this.#list.unreadable + this.#missed
  }

  own(): OwnFormat[] {
    return [...this.#loaded.values()]
      .filter(({ own }) => own.custom.rule.formula.includes(SIGNATURE))
      .map(({ format, own, border, ranges }) => ({
        id: format.id,
        addresses: blocksOf(ranges.address),
        formula: own.custom.rule.formula,
        priority: format.priority,
        look: lookOf(format.custom.format, border.style),
      }))
  }

  /** Asks for the sheet itself, so that one that is gone is not taken for one whose formats cannot be read. */
  #there(): Part {
    return {
      cells: 1,
      queue: ({ workbook }) => {
        workbook.worksheets.getItem(this.sheet.id).load('id')
      },
    }
  }

  #look(ids: readonly string[]): Part {
    return {
      cells: LOOK_WEIGHT * ids.length,
      queue: (context) => {
        const formats = conditionalFormats(context, this.sheet)
        for (const id of ids) this.#loaded.set(id, lookInto(formats, id))
      },
      apart: () =>
        Promise.resolve(
          ids.map((id) => ({
            ...this.#look([id]),
            missed: () => {
              this.#loaded.delete(id)
              this.#missed++
            },
          })),
        ),
    }
  }
}

/** The digits of a colour; '' where there is none, as where a fill was taken out in the rules manager. */
const digitsOf = (colour: string | null) => colour?.replace('#', '') ?? ''

function lookOf({ fill, font, numberFormat }: Excel.ConditionalRangeFormat, border: string): Look {
  return {
    fill: digitsOf(fill.color),
    ink: digitsOf(font.color),
    bold: font.bold,
    italic: font.italic,
    underline: font.underline === 'Single',
    border: border === 'Dash' ? 'dashed' : null,
    numberFormat: String(numberFormat ?? '') || null,
  }
}
