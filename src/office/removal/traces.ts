import { OWN_SHEET } from '../../marksheet/layout/find'
import { offEdits } from '../marking/markSheet'
import { perform, takeBack, type Done } from '../edit/edit'
import { Problem, problemOf } from '../edit/errors'
import { ownNotes } from '../marking/notes'
import { readSheet, type SheetEntry, type SheetReading } from '../workbook/read'
import { CommentsEdit, HAS_COMMENTS } from '../marking/comments'
import { hasOwnRules, leftUnread } from '../marking/conditionalFormats'
import { hasSettings, removeSettings } from '../workbook/settings'
import { askAll, stopIfAsked, UNWATCHED, type Work } from '../edit/work'

/**
 * What Columnwise has left in a workbook. `sheets` are the teacher's that carry colours, flags, notes or comments of ours; `own` the sheets
 * that we laid out, which go for good; `stays` says in sentences what is left because it is the teacher's own by now.
 */
export interface Traces {
  readonly sheets: readonly SheetReading[]
  readonly own: readonly SheetEntry[]
  readonly settings: boolean
  /** Whether a sheet that is not ours is visible, without which Excel deletes none of ours. */
  readonly hasOther: boolean
  readonly stays: readonly string[]
}

/** Looks for our traces on every sheet, hidden ones too: two requests a sheet or a few more. Throws Problem. */
export async function readTraces(work: Work = UNWATCHED): Promise<Traces> {
  const { sheets: entries } = await readSheet(undefined, work)
  const theirs = entries.filter(({ own }) => !own)
  const sheets: SheetReading[] = []
  const stays: string[] = []
  for (const [index, { id, name }] of theirs.entries()) {
    stopIfAsked(work)
    work.progress(index / theirs.length, `Looking at ${name}`)
    const reading = await readSheet(id, work)
    stays.push(...leftOn(reading))
    if (await hasTraces(reading)) sheets.push(reading)
  }
  const hasOther = theirs.some(({ visible }) => visible)
  return { sheets, own: entries.filter(({ own }) => own), settings: hasSettings(), hasOther, stays }
}

async function hasTraces(reading: SheetReading): Promise<boolean> {
  if (ownNotes(reading.matrix).length > 0 || (await hasOwnRules(reading, reading.customFormats))) return true
  return hasOwnComments(reading)
}

async function hasOwnComments(reading: SheetReading): Promise<boolean> {
  if (!canComment()) return false
  const edit = new CommentsEdit(reading, [])
  for (const round of edit.keep) await askAll(round(), UNWATCHED, 'Reading')
  return edit.hasOurs()
}

const canComment = () => Office.context.requirements.isSetSupported('ExcelApi', HAS_COMMENTS)

/** What stays on a sheet of the teacher's, in sentences. */
function leftOn({ name, matrix, unreadableFormats }: SheetReading): string[] {
  const formulas = (matrix.formulas ?? []).flat().filter((formula) => /\bCOLUMNWISE\./i.test(formula)).length
  const isRenamed = String(matrix.values[0]?.[0] ?? '').startsWith(OWN_SHEET)
  const cells = formulas === 1 ? 'One cell' : `${formulas} cells`
  return [
    ...(unreadableFormats > 0 ? [leftUnread(unreadableFormats, name)] : []),
    ...(isRenamed ? [`The sheet ${name} stays: it was laid out by Columnwise, and renamed since.`] : []),
    ...(formulas > 0
      ? [
          `${cells} on ${name} with formulas of Columnwise’s functions stay, and show #NAME? where the add-in is not there.`,
        ]
      : []),
  ]
}

/** What cannot be undone about removing traces, in sentences to show before; none where all can. */
export function goesForGood({ own, settings }: Traces): string[] {
  const names = own.map(({ name }) => name).join(', ')
  const hold = own.length === 1 ? `the sheet ${names} holds` : `the sheets ${names} hold`
  return [
    ...(own.length > 0 ? [`What ${hold} is deleted, and Undo does not bring it back.`] : []),
    ...(own.length > 0 ? ['Excel forgets what could be undone before.'] : []),
    ...(settings ? ['The settings of Columnwise in this workbook go for good.'] : []),
  ]
}

/**
 * Takes our traces out of the workbook: first colours, flags, notes and comments, which `done` can take back; then, for good, our sheets and
 * the settings. Where these cannot be deleted, the first is put back and the Problem says what is gone. Throws Problem.
 */
export async function removeTraces(traces: Traces, work: Work = UNWATCHED): Promise<Done> {
  refuse(traces)
  const { sheets, own, settings } = traces
  const edits = sheets.flatMap((reading) => [
    ...offEdits(reading, 'all'),
    ...(canComment() ? [new CommentsEdit(reading, [])] : []),
  ])
  const done = await perform('removing of Columnwise’s marks', edits, work)
  try {
    if (own.length > 0) await deleteSheets(own)
    if (settings) await removeSettings()
  } catch (error) {
    const problem = problemOf(error)
    const marks = await takeBack(done).then(
      () => '',
      () => ' Colours, flags, notes and comments may be off, and could not be put back.',
    )
    throw new Problem(`${problem.sentence} ${await goneOf(own)}${marks}`, problem.next, { cause: error })
  }
  return done
}

function refuse({ sheets, own, hasOther }: Traces): void {
  const locked = sheets.filter(({ protection }) => protection.isProtected).map(({ name }) => name)
  if (locked.length > 0)
    throw new Problem(
      `Protected, so nothing can be taken off: ${locked.join(', ')}. Nothing was changed.`,
      'Choose Review, then Unprotect Sheet, on each of these sheets, and try again.',
    )
  if (own.length > 0 && !hasOther)
    throw new Problem(
      'A workbook needs one sheet that is not hidden, and all of these are Columnwise’s. Nothing was changed.',
      'Add an empty sheet, or show one of yours, and try again.',
    )
}

async function deleteSheets(own: readonly SheetEntry[]): Promise<void> {
  await Excel.run(async (context) => {
    for (const { id } of own) context.workbook.worksheets.getItem(id).delete()
    await context.sync()
  })
}

/** Which of our sheets are gone, after deleting them has failed. */
async function goneOf(own: readonly SheetEntry[]): Promise<string> {
  const there = await Excel.run(async (context) => {
    const { worksheets } = context.workbook
    worksheets.load('items/id')
    await context.sync()
    return new Set(worksheets.items.map(({ id }) => id))
  }).catch(() => null)
  if (there === null) return 'Some of Columnwise’s sheets may be deleted.'
  const gone = own.filter(({ id }) => !there.has(id)).map(({ name }) => name)
  return gone.length === 0 ? 'No sheet was deleted.' : `Already deleted: ${gone.join(', ')}.`
}
