import type { Question } from '../../arithmetic/question'
import { answerWith, areCompatible, FAULTS, type Fault, type FaultId } from '../faults'

/**
 * One way in which a pupil may be working: as taught (no fault), with one fault, or with two. `answers` holds the answer to
 * each question as valueText writes it; `without[k]` is the index of the account that is left without the fault `ids[k]`.
 */
export interface Account {
  readonly ids: readonly FaultId[]
  readonly answers: readonly string[]
  readonly without: readonly number[]
}

/**
 * The accounts that can be told from simpler ones by these questions: the method as taught first, then each fault that gives a
 * wrong answer somewhere, then each compatible pair that differs somewhere from both of its faults. A fault known in both
 * operations is one account for both and, where both are asked, one for each.
 */
export function accountsFor(questions: readonly Question[]): Account[] {
  const operations = new Set(questions.map(({ calculation }) => calculation.operation))
  const answers = (faults: readonly Fault[]) =>
    questions.map(({ calculation }) => answerWith(faults, calculation))
  const taught: Account = { ids: [], answers: answers([]), without: [] }
  const single = (faults: readonly Fault[]): Account => ({
    ids: faults.slice(0, 1).map(({ id }) => id),
    answers: answers(faults),
    without: [0],
  })
  const wholes = [...new Set(FAULTS.map(({ id }) => id))]
    .map((id) => FAULTS.filter((fault) => fault.id === id && operations.has(fault.operation)))
    .map((faults) => ({ faults, account: single(faults) }))
    .filter(({ account }) => differ(account, taught))
  const halves = wholes
    .filter(({ faults }) => faults.length > 1)
    .flatMap(({ faults }) => faults.map((fault) => single([fault])))
    .filter((half) => differ(half, taught) && wholes.every(({ account }) => differ(half, account)))
  const pairs = wholes.flatMap((one, index) =>
    wholes.slice(index + 1).flatMap((other, further): Account[] => {
      const together = [...one.faults, ...other.faults]
      if (!one.faults.every((each) => other.faults.every((fault) => areCompatible(each, fault)))) return []
      const pair: Account = {
        ids: [...one.account.ids, ...other.account.ids],
        answers: answers(together),
        without: [index + further + 2, index + 1],
      }
      return differ(pair, one.account) && differ(pair, other.account) ? [pair] : []
    }),
  )
  return [taught, ...wholes.map(({ account }) => account), ...halves, ...pairs]
}

function differ(one: Account, other: Account): boolean {
  return one.answers.some((answer, index) => answer !== other.answers[index])
}
