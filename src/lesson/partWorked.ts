import type { Question } from '../arithmetic/question'
import { stepsOf, type Step } from '../arithmetic/steps'
import { gridOf, type PaperLine } from './model/grid'
import type { Notation } from './model/notation'
import { paperAfter } from './model/paper'

/**
 * A working begun for a pupil, who goes on from there: in a subtraction up to the first exchange, before the column that needs it is
 * worked; in an addition up to the first carry; where nothing is exchanged or carried, the first column.
 */
export function partWorked(question: Question, notation: Notation): PaperLine[] {
  return gridOf(paperAfter(question, stepsGiven(stepsOf(question)), notation))
}

/** How many steps are done for the pupil. */
function stepsGiven(steps: readonly Step[]): number {
  const exchange = steps.findIndex(({ kind }) => kind === 'exchange')
  if (exchange >= 0) return steps.findIndex(({ kind }, index) => index > exchange && kind === 'subtract')
  const worked = steps.flatMap(({ kind }, index) =>
    kind === 'subtract' || kind === 'add' || kind === 'carry' ? [index] : [],
  )
  const carry = steps.findIndex(({ kind }) => kind === 'carry')
  const isLast = carry === worked.at(-1)
  const upTo = carry >= 0 && !isLast ? carry : (worked[0] ?? 0)
  return upTo + 1
}
