import { printedCells, type Worksheet } from '../lesson/cells/worksheet'
import { OWN_SHEET } from '../marksheet/find'
import { addressArea } from './address'
import { perform, type Done, type Edit } from './edit'
import { problemOf, protectedSheet } from './errors'
import {
  cellsHeld,
  emptied,
  isChanged,
  layOutParts,
  noteFor,
  ROWS_AT_ONCE,
  rowsAddress,
  rowsOf,
  type HandoutCells,
} from './handoutCells'
import { askAll, pieces, UNWATCHED, type Part, type Work } from './work'

/** A sheet of the workbook, by its name and whether it is in sight. */
export interface NamedSheet {
  readonly name: string
  readonly visible: boolean
}

/** An edit that lays out a sheet to print; `name` is the sheet's own, known once the edit was carried out. */
export interface HandoutEdit extends Edit {
  name(): string
}

/**
 * Writes a hand-out's worksheets and brings the first to the front: in three requests, in more where they are large. Gives the names of
 * the sheets. Throws Problem.
 */
export async function writeHandout(
  worksheets: readonly Worksheet[],
  work: Work = UNWATCHED,
): Promise<{ readonly done: Done; readonly sheets: readonly string[] }> {
  const present = await readNames(work)
  const edits = worksheets.map((worksheet, index) => handoutEdit(worksheet, present, index === 0))
  const title = `sheets of ${worksheets[0]?.name ?? 'a hand-out'}`
  const done = await perform(title, edits, work)
  return { done, sheets: edits.map((edit) => edit.name()) }
}

async function readNames(work: Work): Promise<NamedSheet[]> {
  let all: Excel.WorksheetCollection | undefined
  const part: Part = {
    cells: 1,
    queue: ({ workbook }) => {
      all = workbook.worksheets
      all.load('items/name, items/visibility')
    },
  }
  try {
    await askAll([part], work, 'Reading')
  } catch (error) {
    throw problemOf(error)
  }
  return (all?.items ?? []).map(({ name, visibility }) => ({ name, visible: visibility === 'Visible' }))
}

/**
 * Lays out sheets of a hand-out on a sheet of our own: a new one, or one of that name that is ours, which is laid out anew; where the
 * name is a teacher's, on a numbered one. Taking back gives a sheet that was there what it held and how it looked. One that was added
 * is emptied but for its note and hidden, not deleted: deleting would clear Excel's own list of what can be undone. Where something else
 * has been typed on it since, it stays.
 */
export function handoutEdit(
  worksheet: Worksheet,
  sheets: readonly NamedSheet[],
  comesToFront = false,
): HandoutEdit {
  const cells = rowsOf(printedCells(worksheet.sheets))
  const candidates = sheets
    .filter(({ name }) => isNamed(name, worksheet.name))
    .map((sheet) => new Held(sheet))
  let name = worksheet.name
  let before: Held | null = null
  let kept: HandoutCells | null = null
  let there: Excel.Worksheet | undefined
  let now: Held | null = null
  let stays = false
  const found = (context: Excel.RequestContext) => context.workbook.worksheets.getItem(name)
  return {
    get what() {
      return `the sheet ${name}`
    },
    name: () => name,
    keep: [
      () => candidates.map((each) => each.look()),
      () => candidates.filter((each) => each.isOurs()).flatMap((each) => each.rest()),
    ],
    check: () => {
      ;({ name, before } = placeOf(worksheet.name, candidates))
      if (before?.isProtected() === true) throw protectedSheet(name)
      kept = before && cellsHeld(before.values())
    },
    write: () => [
      {
        cells: 1,
        queue: (context) => {
          const sheet = before ? found(context) : context.workbook.worksheets.add(name)
          if (before) emptied(sheet, Math.max(before.rows(), (kept?.rows.length ?? 0) + 1))
          sheet.visibility = 'Visible'
          sheet.getRange('A1').values = [[noteFor(worksheet.name)]]
        },
      },
      ...layOutParts(found, worksheet.name, cells),
      {
        cells: 1,
        queue: (context) => {
          if (comesToFront) found(context).activate()
        },
      },
    ],
    look: [
      () => [
        {
          cells: 1,
          queue: ({ workbook }) => {
            const sheet = workbook.worksheets.getItemOrNullObject(name)
            sheet.load('name')
            there = sheet
          },
        },
      ],
      () => {
        now = there === undefined || there.isNullObject ? null : new Held({ name, visible: true })
        return now ? [now.look()] : []
      },
      () => now?.rest() ?? [],
    ],
    putBack: () => {
      if (now?.isOurs() !== true) return []
      stays = isChanged(now.values(), cells)
      if (stays) return []
      return [
        {
          cells: 1,
          queue: (context) => {
            const sheet = found(context)
            emptied(sheet, cells.rows.length + 1)
            sheet.getRange('A1').values = [[noteFor(worksheet.name)]]
            if (before?.sheet.visible !== true) sheet.visibility = 'Hidden'
          },
        },
        ...(kept ? layOutParts(found, worksheet.name, kept) : []),
      ]
    },
    left: () => (stays ? [`The sheet ${name} has been changed since, so it stayed.`] : []),
  }
}

/** Whether a sheet has a name, or the same with a number behind it. */
function isNamed(sheet: string, name: string): boolean {
  return sheet.replace(/ \(\d+\)$/, '').toLowerCase() === name.toLowerCase()
}

/** The first of a name and its numbered ones that is free, or ours. */
function placeOf(
  wanted: string,
  candidates: readonly Held[],
): { readonly name: string; readonly before: Held | null } {
  for (let number = 1; ; number++) {
    const name = number === 1 ? wanted : `${wanted} (${number})`
    const present = candidates.find(({ sheet }) => sheet.name.toLowerCase() === name.toLowerCase())
    if (!present) return { name, before: null }
    if (present.isOurs()) return { name: present.sheet.name, before: present }
  }
}

/** A sheet that may be ours, and what it holds: its first rows at once, the others where there are more. */
class Held {
  #first: Excel.Range | undefined
  #used: Excel.Range | undefined
  #rest: Excel.Range[] = []
  #protection: Excel.WorksheetProtection | undefined

  constructor(readonly sheet: NamedSheet) {}

  look(): Part {
    return {
      cells: ROWS_AT_ONCE,
      queue: (context) => {
        const sheet = context.workbook.worksheets.getItem(this.sheet.name)
        this.#first = sheet.getRange(rowsAddress(0, ROWS_AT_ONCE - 1)).getUsedRangeOrNullObject(true)
        this.#used = sheet.getUsedRangeOrNullObject(true)
        const { protection } = sheet
        this.#first.load('values, address')
        this.#used.load('address')
        protection.load('protected')
        this.#protection = protection
      },
    }
  }

  isOurs(): boolean {
    return String(this.values()[0]?.[0] ?? '').startsWith(OWN_SHEET)
  }

  isProtected(): boolean {
    return this.#protection?.protected === true
  }

  /** Asks for the rows that the first look did not bring. */
  rest(): Part[] {
    return pieces(ROWS_AT_ONCE, this.rows() - 1, ROWS_AT_ONCE).map(({ first, last }) => ({
      cells: ROWS_AT_ONCE,
      queue: (context) => {
        const range = context.workbook.worksheets.getItem(this.sheet.name).getRange(rowsAddress(first, last))
        range.load('values')
        this.#rest.push(range)
      },
    }))
  }

  /** How many rows are filled. */
  rows(): number {
    return !this.#used || this.#used.isNullObject ? 0 : addressArea(this.#used.address).bottom + 1
  }

  /** The cells' values from row and column 0 on. */
  values(): unknown[][] {
    if (!this.#first || this.#first.isNullObject) return []
    const { top, left } = addressArea(this.#first.address)
    if (top > 0 || left > 0) return []
    const first = this.#first.values as unknown[][]
    if (this.#rest.length === 0) return first
    const empty = Array.from({ length: ROWS_AT_ONCE - first.length }, () => [])
    return [...first, ...empty, ...this.#rest.flatMap(({ values }) => values as unknown[][])]
  }
}
