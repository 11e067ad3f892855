import type { Marksheet } from './marksheet'
import { areaOf, type CellRef } from './matrix'

/**
 * Marksheets of which no cell is read twice: a pupil is left out of a later one where a cell of the pupil's already has a part in an earlier
 * one. (Only names may be shared.) A marksheet that keeps nobody goes, and so do questions that nobody is left to answer.
 */
export function keptApart(found: readonly Marksheet[]): Marksheet[] {
  if (found.length < 2) return [...found]
  const [asked, named, answered] = [new Set<string>(), new Set<string>(), new Set<string>()]
  return found.flatMap((marksheet): Marksheet[] => {
    const { questions, pupils } = marksheet
    const kept = pupils.filter(
      ({ nameCells, answers }) =>
        answers.every((cell) => ![asked, named, answered].some((taken) => taken.has(keyOf(cell)))) &&
        answers.every(({ question }) => !answered.has(keyOf(questions[question]))) &&
        nameCells.every((cell) => !answered.has(keyOf(cell))),
    )
    const own = kept.length === pupils.length ? marksheet : withPupils(marksheet, kept)
    for (const question of own?.questions ?? []) asked.add(keyOf(question))
    for (const { nameCells, answers } of own?.pupils ?? []) {
      for (const cell of nameCells) named.add(keyOf(cell))
      for (const cell of answers) answered.add(keyOf(cell))
    }
    return own === null ? [] : [own]
  })
}

/** A marksheet with fewer of its pupils and the questions that these answer; null without any. */
export function withPupils(marksheet: Marksheet, pupils: Marksheet['pupils']): Marksheet | null {
  if (pupils.length === 0) return null
  const used = [...new Set(pupils.flatMap(({ answers }) => answers.map(({ question }) => question)))]
  used.sort((a, b) => a - b)
  const places = new Map(used.map((question, place) => [question, place]))
  const questions = used.flatMap((question) => marksheet.questions[question] ?? [])
  const own = pupils.map((pupil) => ({
    ...pupil,
    answers: pupil.answers.map((cell) => ({ ...cell, question: places.get(cell.question) ?? 0 })),
  }))
  const area = areaOf([questions, ...own.flatMap(({ nameCells, answers }) => [nameCells, answers])])
  return { ...marksheet, area, questions, pupils: own }
}

function keyOf(cell: CellRef | undefined): string {
  return cell ? `${cell.row},${cell.column}` : ''
}
