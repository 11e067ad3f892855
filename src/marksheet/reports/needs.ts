import { faultsOfClass } from '../../answers/diagnosis'
import type { FaultId } from '../../answers/faults'
import { printQuestion, type Question } from '../../arithmetic/question'
import { workOut } from '../../arithmetic/columns'
import { exchangesOf, type ExchangeType } from '../../arithmetic/exchange'
import { familyOf } from '../../arithmetic/families'
import { wrongAnswers } from '../../lesson/model/wentWrong'
import { workedQuestion, type WorkedQuestion } from '../../lesson/worked'
import type { Judgement } from '../../mastery/standing'
import type { GroupNeed } from '../../mastery/support'
import { groupBy } from '../layout/groups'
import type { PupilDiagnosis } from '../marking/diagnose'
import { nextSetAgainst, nextSetFor, type NextSet, type SetWish } from '../setting/nextSet'
import type { Review, ReviewedPupil } from '../marking/review'

/** A reviewed pupil with the questions asked. `review` and `index` tell where the pupil is found. */
export interface DiagnosedPupil extends PupilDiagnosis {
  readonly name: string
  readonly review: number
  readonly index: number
  readonly pupil: ReviewedPupil
  readonly questions: readonly Question[]
  readonly judgement: Judgement
}

/** The pupils of a sheet's marksheets, in the sheet's order. */
export function diagnosedPupils(reviews: readonly Review[]): DiagnosedPupil[] {
  return reviews.flatMap((review, at) =>
    review.pupils.map((pupil, index) => {
      const questions = pupil.answers.flatMap((cell) => review.questions[cell.question]?.question ?? [])
      const { name, diagnosis, faults, typing, judgement } = pupil
      return { name, review: at, index, pupil, questions, diagnosis, faults, typing, judgement }
    }),
  )
}

/** What a group works at: a modelled example, with the answer that the group's fault leads to, and questions; or why there are none. */
export interface GroupWork {
  readonly example: WorkedQuestion | null
  readonly faulty: string | null
  readonly questions: readonly Question[]
  readonly problem: string | null
}

/** Work at what a group needs: against its fault, else at its type. */
export function workFor({ fault, type }: GroupNeed, wish: SetWish): GroupWork {
  if (fault !== null) return workAgainst(fault, wish)
  if (type !== null) return workAtType(type, wish)
  return { example: null, faulty: null, questions: [], problem: 'Look at the working first.' }
}

/** Work at a type; the example is one more such question. */
export function workAtType(type: ExchangeType, wish: SetWish): GroupWork {
  return work(nextSetFor(type, { ...wish, count: wish.count + 1 }), null)
}

/** Work against a fault: a pupil who has it gets every one of the questions wrong, and the example meets it. */
export function workAgainst(fault: FaultId, wish: SetWish): GroupWork {
  const seed = `${wish.seed} ${fault}`
  return work(nextSetAgainst(fault, { ...wish, seed, count: wish.count + 1 }), fault)
}

function work(drawn: NextSet, fault: FaultId | null): GroupWork {
  if ('problem' in drawn) return { example: null, faulty: null, questions: [], problem: drawn.problem }
  const first = ofLargestFamily(drawn.questions)
  if (first === undefined) return { example: null, faulty: null, questions: [], problem: null }
  const questions = drawn.questions.filter((question) => question !== first)
  const wrong = wrongAnswers(first, fault).find((each) => each.fault.id === fault)
  return {
    example: workedQuestion(first),
    faulty: wrong?.answer ?? null,
    questions,
    problem: null,
  }
}

/** The first question of the family with most of them, which can spare one. */
function ofLargestFamily(questions: readonly Question[]): Question | undefined {
  const families = groupBy(questions, ({ calculation }) => familyOf(exchangesOf(workOut(calculation)).type))
  return [...families.values()].toSorted((one, other) => other.length - one.length)[0]?.[0]
}

/** Pupils for whom the same fault is named, and the questions (as printed) that show it. */
export interface FaultGroup {
  readonly fault: FaultId
  readonly pupils: readonly DiagnosedPupil[]
  readonly shownBy: readonly string[]
}

/** The faults named in a class, the one with most pupils first. A pupil with two faults is in both groups. */
export function faultGroups(pupils: readonly DiagnosedPupil[]): FaultGroup[] {
  const questions = new Map(pupils.flatMap((each) => each.questions.map((one) => [printQuestion(one), one])))
  const asked = [...questions.values()]
  return faultsOfClass(
    pupils.map(({ diagnosis }) => diagnosis.named),
    asked,
  ).map((found) => ({
    fault: found.fault,
    pupils: found.pupils.flatMap((index) => pupils[index] ?? []),
    shownBy: found.shownBy.flatMap((index) => asked.slice(index, index + 1).map(printQuestion)),
  }))
}
