import { mayHoldNote } from '../../marksheet/marking/notes'
import { areasOf } from '../../marksheet/marking/areas'
import { planning, type MarkingPlan } from '../../marksheet/marking/plan'
import { STATUS_WORDS, type StatusWords } from '../../mastery/support'
import type { Review } from '../../marksheet/marking/review'
import { cellsEdit, type Block } from '../edit/cells'
import { perform, type Done, type Edit } from '../edit/edit'
import { Problem } from '../edit/errors'
import { ownNotes } from './notes'
import type { SheetReading } from '../workbook/read'
import { masteryEditing } from '../reports/mastery'
import { rulesEdit } from './conditionalFormats'
import { inTurns, UNWATCHED, type Work } from '../edit/work'

/** What marking writes besides the colours. */
export interface MarkingChoice {
  /** Flags on the names of pupils who need support, and notes beside them. */
  readonly flags: boolean
  /** The Mastery sheet. */
  readonly mastery: boolean
  /** What statuses are called there. */
  readonly words?: StatusWords
}

/** Colours the answers of a sheet that has been read and reviewed; anew where it was marked before. Throws Problem. */
export async function markSheet(
  reading: SheetReading,
  reviews: readonly Review[],
  choice: MarkingChoice,
  work: Work = UNWATCHED,
): Promise<Done> {
  refuseProtected(reading)
  const plan = await inTurns(planning(reading.matrix, reviews), work)
  const { rules, notes, told } = choice.flags ? plan : withoutFlags(plan)
  const edits: Edit[] = [rulesEdit(reading, rules, 'all', reading.customFormats, reading.unreadableFormats)]
  const blocks = noteBlocks(reading, notes)
  if (blocks.length > 0)
    edits.push(cellsEdit(reading, blocks, { italic: true, isFree: mayHoldNote, mayBeLeftOut: 'Notes' }))
  if (choice.mastery)
    edits.push(
      ...(await inTurns(masteryEditing(reviews, reading.sheets, choice.words ?? STATUS_WORDS), work)),
    )
  const done = await perform(`marking of ${reading.name}`, edits, work)
  const isWithoutNotes = reading.protection.isProtected && notes.length > 0
  const all = [...(done.told ?? []), ...told, ...(isWithoutNotes ? [NO_NOTES] : [])]
  return all.length > 0 ? { ...done, told: all } : done
}

const NO_NOTES = 'Notes beside the names were left out, since the sheet is protected.'

/** Takes all our colours, flags and notes off a sheet. Throws Problem. */
export async function clearSheet(reading: SheetReading, work: Work = UNWATCHED): Promise<Done> {
  refuseProtected(reading)
  return perform(`clearing of ${reading.name}`, [...offEdits(reading, 'all')], work)
}

/** Takes the flags and notes off a sheet, before others look at the screen; the colours stay. Throws Problem. */
export async function hideFlags(reading: SheetReading, work: Work = UNWATCHED): Promise<Done> {
  refuseProtected(reading)
  return perform(`hiding of flags on ${reading.name}`, [...offEdits(reading, 'flags')], work)
}

/** What takes our colours, flags and notes off a sheet, or the flags and notes alone. */
export function offEdits(reading: SheetReading, which: 'all' | 'flags'): Edit[] {
  const blocks = noteBlocks(reading, [])
  return [
    rulesEdit(reading, [], which, reading.customFormats, reading.unreadableFormats),
    ...(blocks.length > 0 ? [cellsEdit(reading, blocks, { italic: false, isFree: mayHoldNote })] : []),
  ]
}

function refuseProtected({ name, protection }: SheetReading): void {
  if (protection.allowsFormats) return
  throw new Problem(
    `The sheet ${name} is protected, so its cells cannot be coloured.`,
    'Choose Review, then Unprotect Sheet, and try again; protect it again afterwards. ' +
      'Or protect it with “Format cells” allowed.',
  )
}

function withoutFlags({ sheet, rules }: MarkingPlan): MarkingPlan {
  return { sheet, rules: rules.filter(({ look }) => look !== 'flag'), notes: [], told: [] }
}

/** The notes as blocks of cells, none where the sheet is protected and its cells are locked; notes of ours that stand elsewhere are emptied. What the teacher wrote over a note stays. */
function noteBlocks({ matrix, protection }: SheetReading, notes: MarkingPlan['notes']): Block[] {
  if (protection.isProtected) return []
  const texts = new Map<string, string>()
  const cells = [...ownNotes(matrix).map((cell) => ({ ...cell, text: '' })), ...notes]
  for (const { row, column, text } of cells)
    if (mayHoldNote(matrix.values[row]?.[column] ?? '', matrix.formulas?.[row]?.[column]))
      texts.set(`${row},${column}`, text)
  const refs = cells.filter(({ row, column }) => texts.has(`${row},${column}`))
  const unique = [...new Map(refs.map((cell) => [`${cell.row},${cell.column}`, cell])).values()]
  return areasOf(unique).map(({ top, left, bottom, right }) => ({
    top,
    left,
    rows: Array.from({ length: bottom - top + 1 }, (_, i) =>
      Array.from({ length: right - left + 1 }, (__, j) => texts.get(`${top + i},${left + j}`) ?? null),
    ),
  }))
}
