import type { ExchangeType } from '../../src/arithmetic/exchange'
import type { Outcome } from '../../src/answers/typed'
import type { CellRef } from '../../src/marksheet/layout/matrix'
import type { Review } from '../../src/marksheet/marking/review'
import { TEACHING_ORDER, typesToSupport } from '../../src/mastery/support'

/** An answer that the teacher has to look at. */
export interface ToLookAt {
  readonly cell: CellRef
  readonly pupil: string
  readonly question: string
  readonly typed: string
}

/** A pupil by name and by the cell that holds it. */
export interface NamedPupil {
  readonly name: string
  readonly cell: CellRef
}

/** The pupils who need support with a type. */
export interface Support {
  readonly type: ExchangeType
  readonly pupils: readonly NamedPupil[]
}

/** What marking found, in a few lines: how many answers came out how, which to look at, who needs support with what; and what it is from. */
export interface Summary {
  readonly counts: Readonly<Record<Outcome, number>>
  readonly toLookAt: readonly ToLookAt[]
  readonly support: readonly Support[]
  readonly reviews: readonly Review[]
}

/** Sums up the reviews of a sheet. The type that most pupils need comes first, else the order of teaching counts. */
export function summaryOf(reviews: readonly Review[]): Summary {
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
  return { counts, toLookAt, support: supportIn(reviews), reviews }
}

function supportIn(reviews: readonly Review[]): Support[] {
  const pupils = reviews.flatMap((review) => review.pupils)
  const needs = pupils.map(({ name, nameCells, judgement }) => ({
    pupil: nameCells.slice(0, 1).map((cell): NamedPupil => ({ name, cell })),
    types: new Set(typesToSupport(judgement)),
  }))
  return TEACHING_ORDER.map((type) => ({
    type,
    pupils: needs.flatMap(({ pupil, types }) => (types.has(type) ? pupil : [])),
  }))
    .filter((each) => each.pupils.length > 0)
    .sort((one, other) => other.pupils.length - one.pupils.length)
}
