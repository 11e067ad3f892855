import { applyPlans } from '../../src/files/apply'
import { LOOKS } from '../../src/marksheet/marking/looks'
import type { CellRef } from '../../src/marksheet/layout/matrix'
import { planMarking, planMastery } from '../../src/marksheet/marking/plan'
import { review } from '../../src/marksheet/marking/review'
import { lookOf } from '../../src/marksheet/marking/rules'
import { matricesOf } from '../marksheets'

/** A marked copy of a workbook's bytes, as the command line makes it. */
export async function markedCopy(bytes: Uint8Array): Promise<Uint8Array> {
  const sheets = (await matricesOf(bytes)).map((matrix) => ({ matrix, reviews: review(matrix) }))
  const marked = sheets.filter(({ reviews }) => reviews.length > 0)
  const plans = marked.map(({ matrix, reviews }) => planMarking(matrix, reviews))
  return applyPlans(bytes, plans, [planMastery(marked.flatMap(({ reviews }) => reviews))])
}

/** The fill that the review wants in each answer cell of a workbook's first sheet; null where the cell keeps its own. */
export async function wantedFills(
  bytes: Uint8Array,
): Promise<{ cell: CellRef; typed: string; fill: string | null }[]> {
  const [matrix] = await matricesOf(bytes)
  return review(matrix ?? { name: '', values: [] }).flatMap(({ pupils }) =>
    pupils.flatMap(({ answers, outcomes, typed }) =>
      answers.map((cell, index) => {
        const look = lookOf(outcomes[index] ?? 'blank')
        return { cell, typed: typed[index] ?? '', fill: look && LOOKS[look].fill }
      }),
    ),
  )
}
