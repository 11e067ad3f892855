import type { Question } from '../../src/arithmetic/question'
import type { Handout, Making } from '../../src/lesson/handout'
import { gridOf } from '../../src/lesson/model/grid'
import { NOTATION, type Notation } from '../../src/lesson/model/notation'
import { finishedPaper } from '../../src/lesson/model/paper'

/** How the hand-outs of the tests are made. */
export const MAKING: Making = { notation: NOTATION, set: '7' }

/** Every notation that a school may choose. */
export const NOTATIONS: readonly Notation[] = (['beside', 'above'] as const).flatMap((exchange) =>
  (['above', 'below'] as const).map((carry) => ({ exchange, carry })),
)

/** The rows of a finished working, in the notation of the tests' hand-outs. */
export function rowsOf(question: Question) {
  return gridOf(finishedPaper(question, MAKING.notation))
}

/** How often the set number stands on a hand-out: on every sheet, and on each half that is cut off. */
export function setNumbersOn({ sheets }: Handout): number {
  return sheets.reduce((sum, { blocks }) => {
    const [first] = blocks
    return sum + (first?.kind === 'halves' ? first.halves.length : 1)
  }, 0)
}
