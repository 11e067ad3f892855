import { answerKey, markAnswer } from '../../answers/typed'
import { keptApart } from './apart'
import { groupBy } from './groups'
import { viewOf, type Matrix } from './matrix'
import { withoutNotes } from './ownNotes'
import { isWithin, only, piecesOf } from './pieces'
import { atOnce, type Steps } from './steps'
import { type Marksheet, type Spot, cellKey } from './marksheet'
import { allSpreadAgain, gathered } from './spread'
import { questionSpots, splitByNeighbours } from './spots'
import { pairsIn, hasRoomBeside } from './pairs'
import { pupilsBelow } from './columns'

export type { AnswerCell, FoundPupil, FoundQuestion, Marksheet, Orientation } from './marksheet'

/** The first words of the sheets that the add-in writes itself; a sheet that starts with them holds no marksheet. */
export const OWN_SHEET = 'Columnwise · '

/**
 * Finds the marksheets on a sheet: pupils down and questions across, the transpose, question–answer pairs along a pupil's row,
 * several of them on one sheet, and form exports. None found is an empty list. Order: as they stand, from the top, then from
 * the left.
 */
export function findMarksheets(matrix: Matrix): Marksheet[] {
  return atOnce(finding(matrix))
}

/** The same, row by row where rows are many. */
export function* finding(sheet: Matrix): Steps<Marksheet[]> {
  if (String(sheet.values[0]?.[0] ?? '').startsWith(OWN_SHEET)) return []
  const matrix = withoutNotes(sheet)
  const { matrix: whole, spots, parts } = gathered(matrix, yield* questionSpots(viewOf(matrix, false)))
  const found = yield* readingInPieces(whole, spots)
  return allSpreadAgain(found, parts).sort((a, b) => a.area.top - b.area.top || a.area.left - b.area.left)
}

/**
 * Reads the pieces between empty columns, or else between empty rows, by themselves where two or more hold questions and each makes sense
 * alone: every question in it has pupils. A reading across such a gap could give one class's answers to another. Else reads the whole.
 */
function* readingInPieces(matrix: Matrix, spots: readonly Spot[]): Steps<Marksheet[]> {
  for (const between of ['columns', 'rows'] as const) {
    const asking = piecesOf(matrix, between)
      .map((area) => ({ area, own: spots.filter((spot) => isWithin(area, spot)) }))
      .filter(({ own }) => own.length > 0)
    if (asking.length < 2) continue
    const found: Marksheet[] = []
    let isWhole = true
    for (const { area, own } of asking) {
      const piece = yield* readingInPieces(only(matrix, area), own)
      isWhole &&= leftOver(own, piece).length === 0
      if (!isWhole) break
      found.push(...piece)
    }
    if (isWhole) return found
  }
  return yield* readingWhole(matrix, spots)
}

function* readingWhole(matrix: Matrix, spots: readonly Spot[]): Steps<Marksheet[]> {
  if (spots.length === 0) return []
  const upright = viewOf(matrix, false)
  const { heading, blocks } = splitByNeighbours(upright, spots)
  const found = [
    ...blocks.flatMap((block) => pairsIn(upright, block, spots)),
    ...(yield* pupilsBelow(upright, heading, spots, 'pupils-down')),
  ]
  const single = groupBy(leftOver(heading, found), ({ row }) => row)
  found.push(
    ...[...single.values()].flatMap((row) =>
      hasRoomBeside(upright, row) ? pairsIn(upright, row, spots) : [],
    ),
  )
  const turned = (all: readonly Spot[]) =>
    all.map((spot) => ({ ...spot, row: spot.column, column: spot.row }))
  found.push(
    ...(yield* pupilsBelow(
      viewOf(matrix, true),
      turned(leftOver(spots, found)),
      turned(spots),
      'pupils-across',
    )),
  )
  yield
  return keptApart(found.filter((each) => isPlausible(matrix, each)))
}

function leftOver(spots: readonly Spot[], found: readonly Marksheet[]): Spot[] {
  const taken = new Set(found.flatMap(({ questions }) => questions.map(cellKey)))
  return spots.filter((spot) => !taken.has(cellKey(spot)))
}

/** Results, reading ages and ranges look like bare questions ("3-1"); where answers stand below such, one must be right. */
function isPlausible({ values }: Matrix, { orientation, questions, pupils }: Marksheet): boolean {
  if (!questions.every(({ text }) => /^\s*\d{1,3}-\d{1,3}\s*$/.test(text))) return true
  const keys = questions.map(({ question }) => answerKey(question))
  const outcomes = pupils.flatMap(({ answers }) =>
    answers.flatMap(({ row, column, question }) => {
      const key = keys[question]
      return key ? markAnswer(values[row]?.[column] ?? null, key) : []
    }),
  )
  return (
    outcomes.includes('correct') ||
    (orientation !== 'pairs' && outcomes.every((outcome) => outcome === 'blank'))
  )
}
