import { LOOKS, type Look } from '../../marksheet/marking/looks'
import { areaAddress } from '../../marksheet/layout/matrix'
import { isFlag, SIGNATURE, type Rule } from '../../marksheet/marking/rules'
import { blocksOf, moveFormula } from '../edit/address'
import type { SheetRef } from '../edit/cells'
import type { Edit } from '../edit/edit'
import { FormatList } from '../edit/formatList'
import { askAll, pieces, UNWATCHED, type Part } from '../edit/work'

/** A conditional format on one block of cells, as the client library takes it: its formula (with its =) written for the first cell. */
interface Format {
  readonly address: string
  readonly formula: string
  readonly look: Look
  /** Its place among all of the sheet's, from 0; left out, it comes first. */
  readonly priority?: number
}

/** A conditional format of ours that stands on the sheet; `addresses` are its blocks. */
interface OwnFormat {
  readonly id: string
  readonly addresses: readonly string[]
  readonly formula: string
  readonly look: Look
  readonly priority: number
}

/** Which of our rules are taken off: all of them, or only those that flag names. */
export type Which = 'all' | 'flags'

/**
 * Takes our conditional formats off a sheet and puts others on, before the teacher's own. `known` are the ids of the sheet's conditional
 * formats by formula where they have been read, and `unreadable` how many could not be, which saves a request. Taking back restores ours as
 * they were; the teacher's are never touched, nor are those that Excel cannot read, which are told.
 */
export function rulesEdit(
  sheet: SheetRef,
  rules: readonly Rule[],
  which: Which,
  known?: readonly string[],
  unreadable = 0,
): Edit {
  const listing = new Listing(sheet)
  let kept: readonly OwnFormat[] = []
  let left = 0
  const isOne = ({ formula }: OwnFormat) => which === 'all' || isFlag(formula)
  return {
    what: which === 'all' ? `the colours on ${sheet.name}` : `the flags on ${sheet.name}`,
    keep: known ? [() => listing.details(known)] : [() => listing.list(), () => listing.details()],
    check: () => {
      kept = listing.own().filter(isOne)
      left = listing.unreadable() + unreadable
    },
    told: () => (left === 0 ? [] : [leftUnread(left, sheet.name)]),
    write: () => change(sheet, kept, formatsOf(rules)),
    look: [() => listing.list(), () => listing.details()],
    putBack: () => {
      const now = listing.own().filter(isOne)
      const lost = kept.filter(({ id }) => !now.some((each) => each.id === id))
      const added = now.filter(({ id }) => !kept.some((each) => each.id === id))
      return change(sheet, added, lost.flatMap(restored))
    },
    left: () => [],
  }
}

/** What to tell where Excel cannot read some of a sheet's conditional formats. */
export function leftUnread(count: number, name: string): string {
  const [which, they, them] =
    count === 1
      ? ['One conditional format', 'it stays as it is', 'it']
      : [`${count} conditional formats`, 'they stay as they are', 'them']
  return (
    `${which} on ${name} cannot be read by add-ins until the workbook is opened again, so ${they}. ` +
    `If colours look wrong, save, close and open the workbook, then mark again; or see ${them} under Home, Conditional Formatting, Manage Rules.`
  )
}

/** Whether a sheet carries any of our rules; `known` are the ids of its conditional formats by formula. */
export async function hasOwnRules(sheet: SheetRef, known: readonly string[]): Promise<boolean> {
  const listing = new Listing(sheet)
  await askAll(listing.details(known), UNWATCHED, 'Reading')
  return listing.own().length > 0
}

function formatsOf(rules: readonly Rule[]): Format[] {
  return rules.flatMap(({ areas, formula, look }) => each(areas.map(areaAddress), `=${formula}`, LOOKS[look]))
}

/** A format that was taken off, to be put into its place again. */
function restored({ addresses, formula, look, priority }: OwnFormat): Format[] {
  return each(addresses, formula, look).map((format, index) => ({ ...format, priority: priority + index }))
}

/** A conditional format takes one block: for the others the formula is moved to their first cell. */
function each(addresses: readonly string[], formula: string, look: Look): Format[] {
  const [from = ''] = addresses.map(firstCell)
  return addresses.map((address) => ({
    address,
    look,
    formula: moveFormula(formula, from, firstCell(address)),
  }))
}

const firstCell = (address: string) => address.replace(/:.*/, '')

function conditionalFormats(
  { workbook }: Excel.RequestContext,
  { id }: SheetRef,
): Excel.ConditionalFormatCollection {
  return workbook.worksheets.getItem(id).getRange().conditionalFormats
}

/**
 * How many cells a conditional format weighs in a request: some 300 bytes to take off, 2,000 to put on, twice as many with lines around it,
 * and 1,000 to look into.
 */
const WEIGHT = { off: 2, plain: 14, lined: 28, look: 7 } as const
/** How many formats one part of a request is about. */
const TOGETHER = 100

/**
 * Takes formats off and puts others on. A new one goes to the top, so that those without a place of their own are added from the last to the
 * first; the others follow from the first place to the last.
 */
function change(sheet: SheetRef, off: readonly OwnFormat[], on: readonly Format[]): Part[] {
  const placed = on.filter(({ priority }) => priority !== undefined)
  const first = on.filter(({ priority }) => priority === undefined)
  const inOrder = [...first.toReversed(), ...placed.toSorted((a, b) => (a.priority ?? 0) - (b.priority ?? 0))]
  return [
    ...together(off).map((formats): Part => ({
      cells: WEIGHT.off * formats.length,
      queue: (context) => {
        const all = conditionalFormats(context, sheet)
        for (const { id } of formats) all.getItem(id).delete()
      },
    })),
    ...together(inOrder).map((formats): Part => ({
      cells: formats.reduce((sum, { look }) => sum + (look.border === null ? WEIGHT.plain : WEIGHT.lined), 0),
      queue: (context) => {
        const worksheet = context.workbook.worksheets.getItem(sheet.id)
        for (const format of formats) add(worksheet, format)
      },
    })),
  ]
}

function together<Item>(items: readonly Item[]): Item[][] {
  return pieces(0, items.length - 1, TOGETHER).map(({ first, last }) => items.slice(first, last + 1))
}

const SIDES = ['top', 'bottom', 'left', 'right'] as const

function add(sheet: Excel.Worksheet, { address, formula, look, priority }: Format): void {
  const added = sheet.getRange(address).conditionalFormats.add('Custom')
  const { custom } = added
  const { format } = custom
  custom.rule.formula = formula
  if (look.fill !== '') format.fill.color = `#${look.fill}`
  if (look.ink !== '') format.font.color = `#${look.ink}`
  format.font.bold = look.bold
  format.font.italic = look.italic
  format.font.underline = look.underline ? 'Single' : 'None'
  if (look.numberFormat !== null) format.numberFormat = look.numberFormat
  for (const side of look.border === null ? [] : SIDES) {
    format.borders[side].style = 'Dash'
    format.borders[side].color = `#${look.ink}`
  }
  if (priority !== undefined) added.priority = priority
}

interface Loaded {
  readonly format: Excel.ConditionalFormat
  readonly border: Excel.ConditionalRangeBorder
  readonly ranges: Excel.RangeAreas
}

function lookInto(format: Excel.ConditionalFormat): Loaded {
  const ranges = format.getRanges()
  format.load(
    'id, priority, custom/rule/formula, custom/format/numberFormat, custom/format/fill/color, custom/format/font/color, ' +
      'custom/format/font/bold, custom/format/font/italic, custom/format/font/underline',
  )
  const border = format.custom.format.borders.getItem('EdgeTop')
  border.load('style')
  ranges.load('address')
  return { format, border, ranges }
}

/** The conditional formats by formula of a sheet, listed and looked into. */
class Listing {
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
      .filter(({ format }) => format.custom.rule.formula.includes(SIGNATURE))
      .map(({ format, border, ranges }) => ({
        id: format.id,
        addresses: blocksOf(ranges.address),
        formula: format.custom.rule.formula,
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
      cells: WEIGHT.look * ids.length,
      queue: (context) => {
        const formats = conditionalFormats(context, this.sheet)
        for (const id of ids) this.#loaded.set(id, lookInto(formats.getItem(id)))
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
