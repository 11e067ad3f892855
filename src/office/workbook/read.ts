import type { CellValue } from '../../answers/typed'
import { OWN_SHEET } from '../../marksheet/layout/find'
import { areaAddress, type Area, type Matrix } from '../../marksheet/layout/matrix'
import { addressArea } from '../edit/address'
import { FormatList } from '../edit/formatList'
import { codeOf, Problem, problemOf } from '../edit/errors'
import { askAll, CELLS_PER_REQUEST, pieces, stopIfAsked, UNWATCHED, type Part, type Work } from '../edit/work'

/** A sheet of the workbook. `own` where the add-in laid it out; then `filled` reaches from A1 to its last filled cell. */
export interface SheetEntry {
  readonly id: string
  readonly name: string
  readonly visible: boolean
  readonly own: boolean
  readonly filled: Area | null
}

/** What protects a sheet. `allowsFormats` is false where it is protected and its cells may not be formatted. */
export interface Protection {
  readonly isProtected: boolean
  readonly allowsFormats: boolean
}

/**
 * A sheet as read: its cells from A1, what protects it, the ids of its conditional formats by formula, how many of its conditional formats
 * Excel cannot list, and all sheets.
 */
export interface SheetReading {
  readonly id: string
  readonly name: string
  readonly matrix: Matrix
  readonly protection: Protection
  readonly customFormats: readonly string[]
  readonly unreadableFormats: number
  readonly sheets: readonly SheetEntry[]
}

/** The names of the sheets that the add-in writes, numbered where a name was taken. */
const OWN_NAME =
  /^(?:mastery|record|answer key|this week|reports|to share|(?:lesson|roll and cover|number triangles|two-step stories|missing numbers|my own questions)(?: answers| letter)?)(?: \(\d+\))?$/i

/**
 * Reads the active sheet, or the one with the id: two requests for up to 20,000 cells; beyond, rows piece by piece, with progress and
 * stopped when asked. Throws Problem.
 */
export async function readSheet(id?: string, work: Work = UNWATCHED): Promise<SheetReading> {
  try {
    const { used, names, ...outline } = await readOutline(id)
    const own = names.filter(({ name }) => OWN_NAME.test(name)).map((each) => askOwn(each.id))
    const cells = await readRows(outline.id, { ...used, top: 0, left: 0 }, own, work)
    const sheets = names.map((each): SheetEntry => ({
      ...each,
      ...(own.find((one) => one.id === each.id)?.answer() ?? NOT_OWN),
    }))
    return { ...outline, sheets, matrix: { name: outline.name, ...cells } }
  } catch (error) {
    throw problemOf(error)
  }
}

const NOT_OWN = { own: false, filled: null } as const

interface Outline extends Omit<SheetReading, 'matrix' | 'sheets'> {
  readonly used: Area
  readonly names: readonly Pick<SheetEntry, 'id' | 'name' | 'visible'>[]
}

async function readOutline(wanted?: string): Promise<Outline> {
  let id = wanted
  const outline = outlinePart(wanted)
  const formats = new FormatList((context) => sheetIn(context, id).getRange().conditionalFormats)
  const apart = () => {
    id = outline.answer().id
    return formats.part.apart()
  }
  await askAll([outline, { ...formats.part, apart }], UNWATCHED, 'Reading')
  return {
    ...outline.answer(),
    customFormats: formats.customIds(),
    unreadableFormats: formats.unreadable,
  }
}

/** The sheet with the id, or the active one. */
const sheetIn = ({ workbook: { worksheets } }: Excel.RequestContext, id: string | undefined) =>
  id === undefined ? worksheets.getActiveWorksheet() : worksheets.getItem(id)

type Bare = Omit<Outline, 'customFormats' | 'unreadableFormats'>

/** Asks for a sheet, or for the active one, and the names of all. */
function outlinePart(wanted?: string): Part & { answer(): Bare } {
  let loaded: { sheet: Excel.Worksheet; used: Excel.Range; worksheets: Excel.WorksheetCollection } | undefined
  return {
    cells: 1,
    queue: (context) => {
      const { worksheets } = context.workbook
      const sheet = sheetIn(context, wanted)
      const used = sheet.getUsedRangeOrNullObject(true)
      sheet.load('id, name')
      sheet.protection.load('protected, options')
      used.load('address')
      worksheets.load('items/id, items/name, items/visibility')
      loaded = { sheet, used, worksheets }
    },
    answer: () => {
      if (!loaded) throw new Error('The sheet has not been asked for.')
      const { sheet, used, worksheets } = loaded
      const { protected: isProtected, options } = sheet.protection
      return {
        id: sheet.id,
        name: sheet.name,
        used: used.isNullObject ? { top: 0, left: 0, bottom: 0, right: 0 } : addressArea(used.address),
        protection: { isProtected, allowsFormats: !isProtected || options.allowFormatCells === true },
        names: worksheets.items.map((each) => ({
          id: each.id,
          name: each.name,
          visible: each.visibility === 'Visible',
        })),
      }
    },
  }
}

/** The requirement set in which a range tells its merged areas. */
const KNOWS_MERGES = '1.13'

/** Asks for the merged areas of a sheet; none where Excel cannot tell. */
function askMerges(id: string): Part & { answer(): Area[] } {
  let loaded: Excel.RangeAreas | undefined
  return {
    cells: 1,
    queue: (context) => {
      if (!Office.context.requirements.isSetSupported('ExcelApi', KNOWS_MERGES)) return
      loaded = context.workbook.worksheets.getItem(id).getRange().getMergedAreasOrNullObject()
      loaded.load('areas/items/address')
    },
    answer: () =>
      !loaded || loaded.isNullObject ? [] : loaded.areas.items.map(({ address }) => addressArea(address)),
  }
}

/** Asks whether a sheet is one of our own, by what it starts with, and how far it is filled. */
function askOwn(id: string): Part & { readonly id: string; answer(): Pick<SheetEntry, 'own' | 'filled'> } {
  let loaded: { first: Excel.Range; used: Excel.Range } | undefined
  return {
    id,
    cells: 1,
    queue: (context) => {
      const sheet = context.workbook.worksheets.getItem(id)
      loaded = { first: sheet.getRange('A1'), used: sheet.getUsedRangeOrNullObject(true) }
      loaded.first.load('values')
      loaded.used.load('address')
    },
    answer: () => {
      if (!loaded || !String(loaded.first.values[0]?.[0]).startsWith(OWN_SHEET)) return NOT_OWN
      return { own: true, filled: { ...addressArea(loaded.used.address), top: 0, left: 0 } }
    },
  }
}

interface Cells {
  readonly values: readonly CellValue[][]
  readonly formats: readonly string[][]
  readonly formulas: readonly string[][]
}

const joined = (all: readonly Cells[]): Cells => ({
  values: all.flatMap(({ values }) => values),
  formats: all.flatMap(({ formats }) => formats),
  formulas: all.flatMap(({ formulas }) => formulas),
})

async function readRows(
  id: string,
  area: Area,
  besides: readonly Part[],
  work: Work,
): Promise<Cells & { readonly merges: readonly Area[] }> {
  const rows = Math.max(1, Math.floor(CELLS_PER_REQUEST / (area.right + 1)))
  const parts = pieces(area.top, area.bottom, rows)
  const read: Cells[] = []
  let merges: readonly Area[] = []
  for (const [index, { first, last }] of parts.entries()) {
    stopIfAsked(work)
    if (parts.length > 1)
      work.progress(index / parts.length, `Reading row ${(first + 1).toLocaleString('en-GB')}`)
    const piece = { ...area, top: first, bottom: last }
    if (index === 0) {
      const asked = askMerges(id)
      // Excel refuses to tell of more than 512 merged areas; what is written into one is then found out by reading it again.
      const withMerges = await readPiece(id, piece, [...besides, asked]).catch(() => null)
      if (withMerges) merges = asked.answer()
      read.push(withMerges ?? (await readPiece(id, piece, besides)))
    } else read.push(await readPiece(id, piece, []))
  }
  return { ...joined(read), merges }
}

/** Reads an area; where its texts prove too long for one answer, by halves. */
async function readPiece(id: string, area: Area, besides: readonly Part[]): Promise<Cells> {
  try {
    return await Excel.run(async (context) => {
      for (const part of besides) part.queue(context)
      const range = context.workbook.worksheets.getItem(id).getRange(areaAddress(area))
      range.load('values, formulas, numberFormat')
      await context.sync()
      const values = range.values as CellValue[][]
      return {
        values,
        formats: range.numberFormat as string[][],
        formulas: formulasIn(range.formulas as unknown[][], values),
      }
    })
  } catch (error) {
    if (codeOf(error) !== 'ResponsePayloadSizeLimitExceeded' || area.top === area.bottom) throw error
    const middle = Math.floor((area.top + area.bottom) / 2)
    const upper = await readPiece(id, { ...area, bottom: middle }, besides)
    return joined([upper, await readPiece(id, { ...area, top: middle + 1 }, [])])
  }
}

/** The formulas among what cells hold; a text that only looks like one equals its value. */
function formulasIn(held: readonly unknown[][], values: readonly CellValue[][]): string[][] {
  return held.map((row, i) =>
    row.map((formula, j) =>
      typeof formula === 'string' && formula.startsWith('=') && formula !== values[i]?.[j] ? formula : '',
    ),
  )
}

/** Some cells of a sheet, named as Excel names them ("B5:N33"). */
export interface Selection {
  readonly sheetId: string
  readonly sheet: string
  readonly area: Area
}

/** What the teacher has selected, cut to the filled part of the sheet where whole rows or columns are. Throws Problem. */
export async function readSelection(): Promise<Selection> {
  try {
    return await Excel.run(async (context) => {
      const range = context.workbook.getSelectedRange()
      const sheet = context.workbook.worksheets.getActiveWorksheet()
      const used = sheet.getUsedRangeOrNullObject(true)
      range.load('address')
      sheet.load('id, name')
      used.load('address')
      await context.sync()
      const filled = used.isNullObject ? null : addressArea(used.address)
      return { sheetId: sheet.id, sheet: sheet.name, area: cutTo(addressArea(range.address), filled) }
    })
  } catch (error) {
    throw problemOf(error)
  }
}

const MOST_ROWS = 100_000
const MOST_COLUMNS = 1_000

function cutTo(area: Area, filled: Area | null): Area {
  const { top, left } = area
  const tall = area.bottom - top >= MOST_ROWS
  const wide = area.right - left >= MOST_COLUMNS
  if (!tall && !wide) return area
  const nothing = new Problem(
    'The selection holds no filled cells.',
    'Select the cells themselves and try again.',
  )
  if (filled === null) throw nothing
  const cut = {
    top: tall ? Math.max(top, filled.top) : top,
    left: wide ? Math.max(left, filled.left) : left,
    bottom: tall ? Math.min(area.bottom, filled.bottom) : area.bottom,
    right: wide ? Math.min(area.right, filled.right) : area.right,
  }
  if (cut.top > cut.bottom || cut.left > cut.right) throw nothing
  return cut
}

/** Brings a sheet to the front and selects cells on it. Throws Problem. */
export async function goTo(sheetId: string, area: Area): Promise<void> {
  try {
    await Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem(sheetId)
      sheet.activate()
      sheet.getRange(areaAddress(area)).select()
      await context.sync()
    })
  } catch (error) {
    throw problemOf(error)
  }
}
