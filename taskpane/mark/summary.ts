import type { Outcome } from '../../src/answers/typed'
import type { CellRef } from '../../src/marksheet/layout/matrix'
import type { Review } from '../../src/marksheet/marking/review'
import { whyFlagged } from '../../src/mastery/explain'
import { groupTitle } from '../../src/mastery/need'
import { DEFAULT_MASTERY, type MasterySettings } from '../../src/mastery/settings'
import { supportGroups } from '../../src/mastery/support'

/** An answer that the teacher has to look at. */
export interface ToLookAt {
  readonly cell: CellRef
  readonly pupil: string
  readonly question: string
  readonly typed: string
}

/** A pupil by name and by the cell that holds it, with the evidence of the need. */
export interface NamedPupil {
  readonly name: string
  readonly cell: CellRef
  readonly evidence: string
}

/** Flagged pupils with the same need; `why` says what the flag goes by. */
export interface Support {
  readonly title: string
  readonly why: string
  readonly pupils: readonly NamedPupil[]
}

/** What marking found, in a few lines: how many answers came out how, which to look at, who needs support with what. */
export interface Summary {
  readonly counts: Readonly<Record<Outcome, number>>
  readonly toLookAt: readonly ToLookAt[]
  readonly support: readonly Support[]
}

/** Sums up the reviews of a sheet. Groups come in the order of `supportGroups`. */
export function summaryOf(reviews: readonly Review[], mastery: MasterySettings = DEFAULT_MASTERY): Summary {
  const counts = { correct: 0, incorrect: 0, unreadable: 0, blank: 0, absent: 0 }
  const toLookAt: ToLookAt[] = []
  for (const { pupils, questions } of reviews) {
    for (const { name, answers, outcomes, typed } of pupils) {
      answers.forEach(({ question, ...cell }, index) => {
        const outcome = outcomes[index] ?? 'blank'
        counts[outcome]++
        if (outcome !== 'unreadable') return
        toLookAt.push({
          cell,
          pupil: name,
          question: questions[question]?.text ?? '',
          typed: typed[index] ?? '',
        })
      })
    }
  }
  return { counts, toLookAt, support: supportIn(reviews, mastery) }
}

function supportIn(reviews: readonly Review[], mastery: MasterySettings): Support[] {
  const pupils = reviews.flatMap((review) => review.pupils)
  return supportGroups(pupils, Math.max(1, pupils.length)).map((group) => ({
    title: groupTitle(group.need),
    why: whyFlagged(group.need.kind, mastery),
    pupils: group.pupils.flatMap(({ name, nameCells, judgement }) =>
      nameCells.slice(0, 1).map((cell) => ({ name, cell, evidence: judgement.need.sentence })),
    ),
  }))
}
