import { workOut } from '../arithmetic/columns'
import type { Question } from '../arithmetic/question'
import { stepsOf } from '../arithmetic/steps'
import { headOf } from './model/heads'
import { gridOf, type PaperCell, type PaperLine } from './model/grid'
import type { Notation } from './model/notation'
import { paperAfter } from './model/paper'

/** How much of a working's frame is printed: headings, boxes for exchanges and the numbers; headings and boxes; nothing. */
export type Help = 'numbers' | 'frame' | 'none'

/** The help for each of so many questions: it fades over the sheet, and the last questions have none. */
export function fadingHelp(count: number): Help[] {
  return Array.from({ length: count }, (_, index) => {
    const share = (index + 1) / count
    return share <= 0.5 ? 'numbers' : share < 1 ? 'frame' : 'none'
  })
}

/**
 * The frame of a working: headings over the columns, boxes for what is exchanged or carried, where the school writes it, and the numbers
 * where they are wanted. It is the same for every question of a size, so that it does not tell where to exchange. Null for no help.
 */
export function scaffold(question: Question, notation: Notation, help: Help): PaperLine[] | null {
  if (help === 'none') return null
  const { operation } = question.calculation
  const setOut = stepsOf(question).findLastIndex(({ kind }) => kind === 'set-out') + 1
  const lines = gridOf(paperAfter(question, setOut, notation))
  const places = workOut(question.calculation).columns.map(({ place }) => place)
  const hasPoint = places.some((place) => place < 0)
  // An addition may need one column more; there is always one, so that it tells nothing.
  const widened = operation === 'add' && lastIsPrinted(question)
  const columns = [...(widened ? [Math.max(...places) + 1] : []), ...places.toReversed()]
  const across = (cellAt: (place: number) => PaperCell, sign = ''): PaperCell[] => [
    plain(sign),
    ...columns.flatMap((place) => [cellAt(place), ...(place === 0 && hasPoint ? [EMPTY] : [])]),
  ]
  const row = (kind: 'top' | 'bottom'): PaperLine => {
    const cells = lines.find((line) => line.kind === kind)?.cells ?? []
    const [sign = EMPTY, ...digits] = cells
    const shown = help === 'numbers' ? digits : digits.map(({ text }) => plain(text === '.' ? '.' : ''))
    return { kind, cells: [sign, ...(widened ? [EMPTY] : []), ...shown] }
  }
  const boxes: PaperLine = { kind: 'boxes', cells: across(() => EMPTY) }
  const isBelow = operation === 'add' && notation.carry === 'below'
  const over = operation === 'subtract' && notation.exchange === 'above' ? [boxes, boxes] : [boxes]
  return [
    { kind: 'heads', cells: across((place) => plain(headOf(place, question.unit))) },
    ...(isBelow ? [] : over),
    row('top'),
    row('bottom'),
    { kind: 'answer', cells: across(() => EMPTY) },
    ...(isBelow ? [boxes] : []),
  ]
}

const EMPTY: PaperCell = { text: '', crossed: false }

function plain(text: string): PaperCell {
  return { text, crossed: false }
}

/** Whether the leftmost column has printed digits, rather than only a carried ten. */
function lastIsPrinted({ calculation }: Question): boolean {
  const last = workOut(calculation).columns.at(-1)
  return last?.top !== undefined || last?.bottom !== undefined
}
