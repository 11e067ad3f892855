import type { Question } from '../arithmetic/question'
import { stepsOf, type Step } from '../arithmetic/steps'
import type { Notation } from './model/notation'
import { paperAfter, type Paper } from './model/paper'

/** A picture of a working on its way, and what is said from the picture before it to this one. */
export interface Stage {
  readonly paper: Paper
  readonly says: readonly string[]
}

/** The fewest pictures, where there is enough to show, and the most. */
export const STAGES = { least: 4, most: 5 } as const

/** A worked example in pictures: set out, then column by column; the last has the answer and its check. */
export function stagesOf(question: Question, notation: Notation): Stage[] {
  const steps = stepsOf(question)
  const moments = momentsIn(steps)
  return moments.map((moment, index) => {
    const isLast = index === moments.length - 1
    return {
      paper: { ...paperAfter(question, moment, notation), current: null },
      says: steps.slice(moments[index - 1] ?? 0, isLast ? steps.length : moment).map(({ say }) => say),
    }
  })
}

/** After how many steps there is a picture: more columns than pictures share one, fewer are parted after their exchanges. */
function momentsIn(steps: readonly Step[]): number[] {
  const setOut = steps.findLastIndex(({ kind }) => kind === 'set-out') + 1
  const ends = steps.flatMap(({ kind }, index) => {
    const next = steps[index + 1]?.kind
    return kind !== 'set-out' && (next === 'answer' || isNewColumn(steps, index + 1)) ? [index + 1] : []
  })
  const exchanges = steps.flatMap(({ kind }, index) =>
    kind === 'exchange' && steps[index + 1]?.kind !== 'exchange' ? [index + 1] : [],
  )
  const most = STAGES.most - 1
  const columns = ends.filter((_, index) => {
    const group = (at: number) => Math.floor((at * most) / Math.max(ends.length, most))
    return index === ends.length - 1 || group(index) !== group(index + 1)
  })
  const missing = Math.max(0, STAGES.least - 1 - columns.length)
  return [...new Set([setOut, ...exchanges.slice(0, missing), ...columns])].sort((a, b) => a - b)
}

/** Whether a step looks at a column for the first time: not those looks that go on to the left for something to exchange. */
function isNewColumn(steps: readonly Step[], index: number): boolean {
  const [before, step] = [steps[index - 1], steps[index]]
  return step?.kind === 'look' && before?.kind !== 'look'
}
