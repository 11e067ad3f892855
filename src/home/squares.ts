import type { Question } from '../arithmetic/question'
import { layoutOf } from '../lesson/model/grid'
import type { StyleName } from './styles'

/** A question set out in squared cells: lines from the top, each with a text for every column. */
export interface Squares {
  readonly columns: number
  readonly lines: readonly { readonly style: StyleName; readonly texts: readonly string[] }[]
}

/**
 * The two numbers in columns with the sign, free squares above for what is exchanged or carried and below for the digits of the answer. Null
 * where it is for the child to find which calculation is to be set out.
 */
export function squaresOf(question: Question): Squares | null {
  if (question.missing !== 'result') return null
  const [top = [], bottom = []] = layoutOf(question).slice(-3)
  const free = top.map(() => '')
  return {
    columns: top.length,
    lines: [
      { style: 'working', texts: free },
      { style: 'square', texts: top },
      { style: 'square', texts: bottom },
      { style: 'total', texts: free },
    ],
  }
}
