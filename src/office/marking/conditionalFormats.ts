import { LOOKS, type Look } from '../../marksheet/marking/looks'
import { areaAddress } from '../../marksheet/layout/matrix'
import { isFlag, type Rule } from '../../marksheet/marking/rules'
import { moveFormula } from '../edit/address'
import type { SheetRef } from '../edit/cells'
import type { Edit } from '../edit/edit'
import { askAll, UNWATCHED, type Part } from '../edit/work'
import { conditionalFormats, Listing, together, type OwnFormat } from './ownFormats'

/** A conditional format on one block of cells, as the client library takes it: its formula (with its =) written for the first cell. */
interface Format {
  readonly address: string
  readonly formula: string
  readonly look: Look
  /** Its place among all of the sheet's, from 0; left out, it comes first. */
  readonly priority?: number
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
    write: () => replace(sheet, kept, formatsOf(rules)),
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

/**
 * Takes formats off and puts others on in front of all, but leaves those alone that are the same, as far as they stand in the order of the
 * others and nothing of the teacher's stands before them.
 */
function replace(sheet: SheetRef, off: readonly OwnFormat[], on: readonly Format[]): Part[] {
  const inOrder = off.toSorted((a, b) => a.priority - b.priority)
  if (inOrder.some(({ priority }, index) => priority !== index)) return change(sheet, off, on)
  const places = new Map(on.map((format, index) => [sameness(format.address, format), index]))
  const staying = new Map<number, OwnFormat>()
  let last = -1
  for (const format of inOrder) {
    const place = places.get(sameness(format.addresses.join(), format)) ?? -1
    if (place <= last) continue
    last = place
    staying.set(place, format)
  }
  const stays = new Set(staying.values())
  const others = inOrder.filter((format) => !stays.has(format))
  if (stays.size === 0) return change(sheet, others, on)
  const placed = on.map((format, priority) => ({ ...format, priority }))
  return change(
    sheet,
    others,
    placed.filter(({ priority }) => !staying.has(priority)),
  )
}

/** What two formats have in common that do the same to the same cells. */
const sameness = (address: string, { formula, look }: Pick<Format, 'formula' | 'look'>) =>
  `${address} ${formula} ${JSON.stringify(Object.entries(look).sort()).toUpperCase()}`

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

/** How many cells a conditional format weighs in a request: some 300 bytes to take off, 2,000 to put on, twice as many with lines around it. */
const WEIGHT = { off: 2, plain: 14, lined: 28 } as const

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
