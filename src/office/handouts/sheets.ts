import { printedCells, type Worksheet } from '../../lesson/cells/worksheet'
import { isSameSheet, numberedName } from '../../marksheet/setting/sheetNames'
import { perform, type Done, type Edit } from '../edit/edit'
import { nameTaken, problemOf, protectedSheet } from '../edit/errors'
import {
  cellsHeld,
  cellsOf,
  contentParts,
  emptied,
  isChanged,
  layOutParts,
  noteFor,
  rowsHeld,
  textsOn,
} from './cells'
import { HeldSheet, type Content } from './heldSheet'
import { askAll, UNWATCHED, type Part, type Work } from '../edit/work'

/** A sheet of the workbook, by its id, its name and whether it is in sight. */
export interface NamedSheet {
  readonly id: string
  readonly name: string
  readonly visible: boolean
}

/** An edit that lays out a sheet to print; `name` is the sheet's own, known once the edit was carried out. */
export interface HandoutEdit extends Edit {
  name(): string
}

/**
 * Writes a hand-out's worksheets and brings the first to the front: in five requests, in more where they are large. Gives the names of
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
      all.load('items/id, items/name, items/visibility')
    },
  }
  try {
    await askAll([part], work, 'Reading')
  } catch (error) {
    throw problemOf(error)
  }
  return (all?.items ?? []).map(({ id, name, visibility }) => ({
    id,
    name,
    visible: visibility === 'Visible',
  }))
}

/**
 * Lays out sheets of a hand-out on a sheet of our own: a new one, or one of that name that is ours, which is laid out anew; where the
 * name is a teacher's, on a numbered one. Taking back gives a sheet that was there what it held and how it looked. One that was added
 * is emptied but for its note and hidden, not deleted: deleting clears Excel's own list of what can be undone everywhere, hiding on Windows
 * and Mac. Where something else has been typed on it since, it stays. How it is printed is left out where Excel does not take that, and told.
 */
export function handoutEdit(
  worksheet: Worksheet,
  sheets: readonly NamedSheet[],
  comesToFront = false,
): HandoutEdit {
  const printed = printedCells(worksheet)
  const cells = cellsOf(printed)
  const laid = textsOn(worksheet.name, printed)
  const { free, present } = placesFor(worksheet.name, sheets)
  const added = new HeldSheet(free)
  const candidates = present.map((sheet) => ({ ...sheet, held: new HeldSheet(sheet.id) }))
  let place: { readonly name: string; readonly held: HeldSheet } = { name: free, held: added }
  let before: Content | null = null
  let stays = false
  let isUnprinted = false
  const leftOut = () => {
    isUnprinted = true
  }
  const found = (context: Excel.RequestContext) => context.workbook.worksheets.getItem(place.held.key())
  return {
    get what() {
      return `the sheet ${place.name}`
    },
    name: () => place.name,
    keep: [
      () => [added.presence(), ...candidates.flatMap(({ held }) => [held.presence(), held.look()])],
      () => candidates.filter(({ held }) => held.isOurs()).flatMap(({ held }) => held.rest()),
    ],
    check: () => {
      const ours = candidates.find(({ held }) => held.isOurs())
      if (ours?.held.isProtected() === true) throw protectedSheet(ours.name)
      if (!ours && added.isThere()) throw nameTaken(free)
      if (ours) place = ours
      before = ours ? ours.held.content() : null
    },
    write: () => [
      {
        cells: 1,
        endsUndo: before?.isVisible === false,
        queue: (context) => {
          const sheet = before ? found(context) : context.workbook.worksheets.add(free)
          if (before) emptied(sheet, before.values.length)
          if (before?.isVisible === false) sheet.visibility = 'Visible'
          sheet.getRange('A1').values = [[noteFor(worksheet.name)]]
        },
      },
      ...layOutParts(found, worksheet.name, cells, leftOut),
      {
        cells: 1,
        queue: (context) => {
          if (comesToFront) found(context).activate()
        },
      },
      ...(before ? [] : [added.added()]),
    ],
    told: () =>
      isUnprinted
        ? [
            `Excel did not take how ${place.name} is to be printed, as happens where no printer is set up. ` +
              'Choose A4, portrait and one page wide under Page Layout before you print.',
          ]
        : [],
    look: [
      () => [place.held.presence()],
      () => (place.held.isThere() ? [place.held.look()] : []),
      () => (place.held.isThere() ? place.held.rest() : []),
    ],
    putBack: () => {
      if (!place.held.isThere()) return []
      const now = place.held.content()
      stays = isChanged(now.values, [laid, before?.values ?? []])
      if (stays || JSON.stringify(now) === JSON.stringify(before)) return []
      const kept = before && cellsHeld(before)
      return [
        {
          cells: 1,
          endsUndo: before?.isVisible !== true,
          queue: (context) => {
            const sheet = found(context)
            emptied(sheet, Math.max(now.values.length, laid.length))
            sheet.getRange('A1').values = [[noteFor(worksheet.name)]]
            if (before?.isVisible !== true) sheet.visibility = 'Hidden'
          },
        },
        ...(kept
          ? layOutParts(found, worksheet.name, kept, leftOut)
          : contentParts(found, before ? rowsHeld(before) : [])),
      ]
    },
    left: () => (stays ? [`The sheet ${place.name} has been changed since, so it stayed.`] : []),
  }
}

/** The first of a name and its numbered ones that is free, and the sheets that have those before it. */
function placesFor(
  wanted: string,
  sheets: readonly NamedSheet[],
): { readonly free: string; readonly present: readonly NamedSheet[] } {
  const present: NamedSheet[] = []
  for (let number = 1; ; number++) {
    const name = numberedName(wanted, number)
    const taken = sheets.find((sheet) => isSameSheet(sheet.name, name))
    if (!taken) return { free: name, present }
    present.push(taken)
  }
}
