import { workWith, type Fault, type WorkedColumn } from '../../answers/faults'
import type { Question, Unit } from '../../arithmetic/question'
import { stateAfter, stepsOf, type Step } from '../../arithmetic/steps'
import type { Notation } from './notation'

/**
 * A number in its square: a digit, with a small ten before it where it received one, or the number of two digits that it then is;
 * crossed out where another stands over it.
 */
export interface Standing {
  readonly digit: number
  readonly ten: boolean
  readonly crossed: boolean
}

/**
 * One column of the paper. `top`: the printed digit and what was written over it, oldest first; `carried`, `bottom` and `answer`: figures,
 * '' where nothing stands (a wrong answer can have two in one column). `fresh`: the rows in which the last step wrote.
 */
export interface PaperColumn {
  readonly place: number
  readonly top: readonly Standing[]
  readonly bottom: string
  readonly carried: string
  readonly answer: string
  readonly fresh: readonly PaperRow[]
}

export type PaperRow = 'top' | 'bottom' | 'carried' | 'answer'

/** The place to the right of which a row's decimal point stands; null where it has none. */
export type Points = Readonly<Record<'top' | 'bottom' | 'answer', number | null>>

/**
 * Squared paper with a calculation on it, the one description that every drawing of a working reads. `columns` from the left; `above`
 * and `below`: how many rows stay free above the top number for exchange marks and carried tens, and below the answer for carried
 * tens; `current`: the place at work, null where it is none.
 */
export interface Paper {
  readonly notation: Notation
  readonly unit: Unit
  readonly sign: '+' | '−'
  readonly columns: readonly PaperColumn[]
  readonly points: Points
  readonly above: number
  readonly below: number
  readonly current: number | null
}

/** The paper after the first n steps of the written method, with the room that all steps need; RangeError as `stateAfter`. */
export function paperAfter(question: Question, n: number, notation: Notation): Paper {
  const { step, columns } = stateAfter(question, n)
  const drawn = columns.map(({ place, top, bottom, marks, carried, answer }) => ({
    place,
    top: standing(top, marks, notation),
    bottom: figure(bottom),
    carried: figure(carried),
    answer: figure(answer),
    fresh: freshRows(step, place),
  }))
  const last = stateAfter(question, stepsOf(question).length).columns
  return {
    notation,
    unit: question.unit,
    sign: signOf(question),
    columns: drawn.toReversed(),
    points: {
      top: pointOf(drawn, 'top'),
      bottom: pointOf(drawn, 'bottom'),
      answer: pointOf(drawn, 'answer'),
    },
    ...roomFor(
      last.map(({ top, marks, carried }) => ({
        top: standing(top, marks, notation),
        carried: figure(carried),
      })),
      notation,
    ),
    current: step?.place ?? null,
  }
}

/** The paper when all is worked. */
export function finishedPaper(question: Question, notation: Notation): Paper {
  return paperAfter(question, stepsOf(question).length, notation)
}

/** The paper of a pupil who works the whole question with a fault. The sign is the printed one, whatever the pupil made of it. */
export function paperWith(fault: Fault, question: Question, notation: Notation): Paper {
  const worked = workWith([fault], question.calculation)
  const { top, bottom } = question.calculation
  const columns = spread(worked).map(({ place, top: digit, bottom: below, marks, carried, written }) => ({
    place,
    top: standing(digit, marks, notation),
    bottom: figure(below),
    carried: figure(carried),
    answer: written,
    fresh: [],
  }))
  return {
    notation,
    unit: question.unit,
    sign: signOf(question),
    columns: columns.toReversed(),
    points: {
      top: shiftedPoint(worked, 'top', top.places),
      bottom: shiftedPoint(worked, 'bottom', bottom.places),
      answer: pointOf(columns, 'answer'),
    },
    ...roomFor(columns, notation),
    current: null,
  }
}

function signOf({ calculation }: Question): Paper['sign'] {
  return calculation.operation === 'add' ? '+' : '−'
}

function figure(digit: number | undefined): string {
  return digit?.toString() ?? ''
}

/** Any mark takes the place of what stands there, but for a ten that is written beside it. */
function standing(printed: number | undefined, marks: readonly number[], { exchange }: Notation): Standing[] {
  const levels: Standing[] = printed === undefined ? [] : [{ digit: printed, ten: false, crossed: false }]
  for (const mark of marks) {
    const now = levels.pop()
    if (exchange === 'beside' && now && !now.ten && mark === now.digit + 10)
      levels.push({ ...now, ten: true })
    else {
      const ten = exchange === 'beside' && mark >= 10
      levels.push(...(now ? [{ ...now, crossed: true }] : []), {
        digit: ten ? mark % 10 : mark,
        ten,
        crossed: false,
      })
    }
  }
  return levels
}

function freshRows(step: Step | null, place: number): PaperRow[] {
  const rows = (step?.changes ?? []).filter((change) => change.place === place).map(({ row }) => row)
  return [...new Set(rows.map((row) => (row === 'mark' ? 'top' : row)))]
}

function roomFor(
  columns: readonly Pick<PaperColumn, 'top' | 'carried'>[],
  { carry }: Notation,
): Pick<Paper, 'above' | 'below'> {
  const carries = Number(columns.some(({ carried }) => carried !== ''))
  const marks = Math.max(0, ...columns.map(({ top }) => top.length - 1))
  return carry === 'above' ? { above: Math.max(marks, carries), below: 0 } : { above: marks, below: carries }
}

/** The point stands to the right of the ones where a row has digits behind it. */
function pointOf(columns: readonly PaperColumn[], row: keyof Points): number | null {
  return columns.some((column) => column.place < 0 && column[row].length > 0) ? 0 : null
}

/** Where numbers are lined up wrongly, the point moves with its digits. */
function shiftedPoint(worked: readonly WorkedColumn[], row: 'top' | 'bottom', places: number): number | null {
  const last = worked.find((column) => column[row] !== undefined)
  return places === 0 || !last ? null : last.place + places
}

/** The left-hand column with one figure in its square, and the others in squares of their own to its left. */
function spread(worked: readonly WorkedColumn[]): WorkedColumn[] {
  const left = worked.at(-1)
  if (!left || left.written.length < 2) return [...worked]
  const figures = [...left.written].reverse()
  const more = figures.slice(1).map((written, index) => ({
    place: left.place + 1 + index,
    top: undefined,
    bottom: undefined,
    marks: [],
    written,
  }))
  return [...worked.slice(0, -1), { ...left, written: figures[0] ?? '' }, ...more]
}
