import { workOut } from '../../arithmetic/columns'
import type { Question } from '../../arithmetic/question'
import { wordsFor } from '../../arithmetic/places'
import { stateAfter, stepsOf } from '../../arithmetic/steps'
import type { Drawing, Shape } from './drawing'
import { headOf } from './heads'

/**
 * The counters of one column: `there` of the top number, or of both once they are put together; `second` of an addition's bottom number
 * until then; `taken` away in a subtraction.
 */
export interface CounterColumn {
  readonly place: number
  readonly there: number
  readonly second: number
  readonly taken: number
}

/** The most columns of which counters can still be told apart in the pane. */
const MOST_COLUMNS = 6

/** Whether a question has few enough columns to be shown with counters. */
export function hasCounters({ calculation }: Question): boolean {
  return workOut(calculation).columns.length <= MOST_COLUMNS
}

/**
 * Place-value counters after the first n steps, columns from the left. An exchange moves counters and changes no value; what is taken away
 * stays in sight, crossed out. RangeError as `stateAfter`.
 */
export function countersAfter(question: Question, n: number): CounterColumn[] {
  const { columns } = stateAfter(question, n)
  const done = stepsOf(question).slice(0, n)
  const isDone = (kind: string, place: number) =>
    done.some((step) => step.kind === kind && step.place === place)
  const isAddition = question.calculation.operation === 'add'
  return columns
    .map(({ place, top, bottom, marks, carried = 0, answer }): CounterColumn => {
      const [first, second] = [top ?? 0, bottom ?? 0]
      // The column that only a carried ten makes.
      if (top === undefined && bottom === undefined) return { place, there: answer ?? 0, second: 0, taken: 0 }
      if (isAddition && !isDone('add', place)) return { place, there: first + carried, second, taken: 0 }
      if (isAddition) {
        const sent = isDone('carry', place) ? 10 : 0
        return { place, there: first + second + carried - sent, second: 0, taken: 0 }
      }
      const taken = isDone('subtract', place) ? second : 0
      return { place, there: (marks.at(-1) ?? first) - taken, second: 0, taken }
    })
    .reverse()
}

/** The distance of counters and their size, in units of the drawing; five stand in a row, as in a ten frame. */
const APART = 14
const RADIUS = 5.5
const ACROSS = 5
const COLUMN = (ACROSS + 1) * APART
/** Rows of a column: two ten frames. */
const ROWS = 4
const HEAD = 20

/** Draws counters, a column beside the other under their heads, filled up by rows of five as in ten frames. */
export function drawCounters({ unit }: Question, columns: readonly CounterColumn[]): Drawing {
  const width = columns.length * COLUMN
  const height = HEAD + (ROWS + 0.5) * APART
  const shapes = columns.flatMap(({ place, there, second, taken }, index): Shape[] => {
    const left = index * COLUMN
    const kinds = [
      ...Array<string>(there).fill('counter'),
      ...Array<string>(second).fill('counter second'),
      ...Array<string>(taken).fill('counter taken'),
    ]
    return [
      { shape: 'text', kind: 'head', x: left + COLUMN / 2, y: HEAD / 2, text: headOf(place, unit) },
      ...(index > 0
        ? [{ shape: 'line', kind: 'square', x1: left, y1: 0, x2: left, y2: height } as const]
        : []),
      ...kinds.flatMap((kind, at) => counter(kind, left, at)),
    ]
  })
  return { width, height, shapes: [{ shape: 'rect', kind: 'sheet', x: 0, y: 0, width, height }, ...shapes] }
}

function counter(kind: string, left: number, at: number): Shape[] {
  const row = Math.floor(at / ACROSS)
  const cx = left + ((at % ACROSS) + 1) * APART
  const cy = HEAD + (row + 0.5) * APART + (row >= ROWS / 2 ? APART / 2 : 0)
  const crossed: Shape = {
    shape: 'line',
    kind: 'cross',
    x1: cx - RADIUS,
    y1: cy + RADIUS,
    x2: cx + RADIUS,
    y2: cy - RADIUS,
  }
  return [{ shape: 'circle', kind, cx, cy, r: RADIUS }, ...(kind === 'counter taken' ? [crossed] : [])]
}

/** What the counters show, for readers who hear it. */
export function countersInWords({ unit }: Question, columns: readonly CounterColumn[]): string {
  const { countOf } = wordsFor(unit)
  const words = columns.map(({ place, there, second, taken }) =>
    [
      countOf(there, place),
      ...(second > 0 ? [`and ${countOf(second, place)}`] : []),
      ...(taken > 0 ? [`with ${taken} taken away`] : []),
    ].join(' '),
  )
  return `Counters: ${words.join('; ')}.`
}
