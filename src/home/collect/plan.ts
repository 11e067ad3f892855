import { addressOf, isEmpty, type CellRef } from '../../marksheet/layout/matrix'
import { contentOf, isSameAnswer, typedIn } from '../typed'
import type { Arrival } from './arrivals'
import type { Target } from './targets'

/** An answer for a blank cell of the marksheet. */
export interface Write {
  readonly sheet: string
  readonly cell: CellRef
  readonly pupil: string
  readonly question: string
  readonly typed: string
  readonly content: string | number
}

/** A cell that holds something else than what came in for it. `held` is what it holds, as text. */
export interface Taken extends Write {
  readonly file: string
  readonly held: string
}

/** What is left out, with the reason in a sentence. `pupil` is the marksheet's name, or the name that the file goes by. */
export interface Left {
  readonly file: string
  readonly pupil: string
  readonly reason: string
}

/** What would be written, what cells hold something else, how many answers are there already, and what is left out. */
export interface Plan {
  readonly writes: readonly Write[]
  readonly taken: readonly Taken[]
  readonly present: number
  readonly left: readonly Left[]
}

/**
 * What arrivals would write: into blank cells only, each child's answers into that child's own. Of two arrivals for one child that differ in
 * an answer, neither is written; where they agree, their answers are put together.
 */
export function planOf(arrivals: readonly Arrival[]): Plan {
  const left: Left[] = arrivals.flatMap(({ file, target, shown, told, doubt }) => {
    const pupil = target?.pupil.name ?? shown
    return [...(doubt === null ? [] : [doubt]), ...told].map((reason) => ({ file, pupil, reason }))
  })
  const byTarget = new Map<Target, Arrival[]>()
  for (const arrival of arrivals) {
    if (arrival.doubt !== null || !arrival.target) continue
    byTarget.set(arrival.target, [...(byTarget.get(arrival.target) ?? []), arrival])
  }
  const planned = { writes: [] as Write[], taken: [] as Taken[], present: 0, left }
  for (const [target, own] of byTarget) {
    const differing = differenceIn(own)
    if (differing !== null) {
      const text = target.questions[differing]?.text.trim() ?? ''
      const files = [...new Set(own.map(({ file }) => file))]
      const who = files.length > 1 ? `${files.length} files are this child’s` : 'This child is there twice'
      const reason = `${who}, and the answers to ${text} differ.`
      left.push(...files.map((file) => ({ file, pupil: target.pupil.name, reason })))
    } else for (const arrival of own) planInto(planned, target, arrival)
  }
  return planned
}

/** The first question for which arrivals hold different answers; null where they agree. */
function differenceIn(arrivals: readonly Arrival[]): number | null {
  const seen = new Map<number, string>()
  for (const { answers } of arrivals)
    for (const { question, typed } of answers) {
      const before = seen.get(question)
      if (before !== undefined && !isSameAnswer(before, typed)) return question
      seen.set(question, before ?? typed)
    }
  return null
}

function planInto(
  planned: { writes: Write[]; taken: Taken[]; present: number; left: Left[] },
  target: Target,
  { file, answers }: Arrival,
): void {
  for (const { question, typed } of answers) {
    const [cell, asked] = [target.pupil.answers[question], target.questions[question]]
    if (!cell || !asked) continue
    const { row, column } = cell
    const write: Write = {
      sheet: target.matrix.name,
      cell: { row, column },
      pupil: target.pupil.name,
      question: asked.text,
      typed,
      content: contentOf(typed),
    }
    const held = typedIn(target.matrix, cell)
    if (held.kind === 'nothing') {
      if (planned.writes.some((other) => isSamePlace(other, write))) continue
      planned.writes.push(write)
    } else if (held.kind === 'typed' && isSameAnswer(held.typed, typed)) planned.present++
    else
      planned.taken.push({ ...write, file, held: held.kind === 'typed' ? held.typed : shownIn(target, cell) })
  }
}

const isSamePlace = (one: Write, other: Write) =>
  one.sheet === other.sheet && addressOf(one.cell) === addressOf(other.cell)

function shownIn({ matrix }: Target, { row, column }: CellRef): string {
  const value = matrix.values[row]?.[column] ?? null
  return isEmpty(value) ? '' : String(value)
}

/** Why a cell that holds something else is left, in a sentence. */
export function takenReason({ cell, held, typed }: Taken): string {
  return `${addressOf(cell)} already holds “${held}”; “${typed}” is not written over it.`
}
