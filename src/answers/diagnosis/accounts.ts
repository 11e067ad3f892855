import type { Question } from '../../arithmetic/question'
import { answerWith, areCompatible, FAULTS, type Fault, type FaultId } from '../faults'

/**
 * One way in which a pupil may be working: as taught (no fault), with one fault, or with two. `answers` holds the answer to
 * each question as valueText writes it. `without`, for a pair: the account of each fault's partner alone, in the order of `ids`.
 */
export interface Account {
  readonly ids: readonly FaultId[]
  readonly answers: readonly string[]
  readonly without: readonly Account[]
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
  const wholes = [...new Set(FAULTS.map(({ id }) => id))]
    .map((id) => FAULTS.filter((fault) => fault.id === id && operations.has(fault.operation)))
    .map((faults) => ({ faults, account: singleAccount(faults, answers(faults), taught) }))
    .filter(({ account }) => differ(account, taught))
  const halves = wholes
    .filter(({ faults }) => faults.length > 1)
    .flatMap(({ faults }) => faults.map((fault) => singleAccount([fault], answers([fault]), taught)))
    .filter((half) => differ(half, taught) && wholes.every(({ account }) => differ(half, account)))
  const pairs = wholes.flatMap((one, index) =>
    wholes
      .slice(index + 1)
      .filter((other) =>
        one.faults.every((each) => other.faults.every((fault) => areCompatible(each, fault))),
      )
      .map((other): Account => ({
        ids: [...one.account.ids, ...other.account.ids],
        answers: answers([...one.faults, ...other.faults]),
        without: [other.account, one.account],
      }))
      .filter((pair) => pair.without.every((single) => differ(pair, single))),
  )
  return [taught, ...wholes.map(({ account }) => account), ...halves, ...pairs]
}

function singleAccount(faults: readonly Fault[], answers: readonly string[], taught: Account): Account {
  return { ids: faults.slice(0, 1).map(({ id }) => id), answers, without: [taught] }
}

function differ(one: Account, other: Account): boolean {
  return one.answers.some((answer, index) => answer !== other.answers[index])
}
