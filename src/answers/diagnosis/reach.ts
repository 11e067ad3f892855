import type { Question } from '../../arithmetic/question'
import { answerWith, FAULTS, type FaultId } from '../faults'
import type { FaultEvidence } from './naming'

/** A fault in a class: indices of the pupils for whom it is named, and of the questions that show it. */
export interface ClassFault {
  readonly fault: FaultId
  readonly pupils: readonly number[]
  readonly shownBy: readonly number[]
}

/** Indices of the questions that a pupil with these faults at once, and without slips, gets wrong. */
export function reachOf(ids: readonly FaultId[], questions: readonly Question[]): number[] {
  const faults = FAULTS.filter(({ id }) => ids.includes(id))
  return questions.flatMap(({ calculation }, index) =>
    answerWith(faults, calculation) === answerWith([], calculation) ? [] : [index],
  )
}

/** The faults named in a class, `named` by pupil: the fault with most pupils first, then in the catalogue's order. */
export function faultsOfClass(
  named: readonly (readonly FaultEvidence[])[],
  questions: readonly Question[],
): ClassFault[] {
  return [...new Set(FAULTS.map(({ id }) => id))]
    .map((fault) => ({
      fault,
      pupils: named.flatMap((evidence, index) =>
        evidence.some((each) => each.fault === fault) ? [index] : [],
      ),
      shownBy: reachOf([fault], questions),
    }))
    .filter(({ pupils }) => pupils.length > 0)
    .sort((a, b) => b.pupils.length - a.pupils.length)
}
