import type { ExchangeType } from '../arithmetic/exchange'
import { STATUSES, type Status } from '../mastery/standing'
import { TEACHING_ORDER } from '../mastery/support'
import { countedNoun, typeInWords, typesInWords } from './words'

/**
 * A type on one occasion: `right` of the `tried` questions; the status before the occasion (null where the type was never
 * seen) and after it.
 */
export interface TypeOnOccasion {
  readonly type: ExchangeType
  readonly right: number
  readonly tried: number
  readonly before: Status | null
  readonly after: Status
}

/** A pupil's occasions of the week, in time order. */
export interface PupilWeek {
  readonly name: string
  readonly occasions: readonly (readonly TypeOnOccasion[])[]
}

/** What is said of a pupil: one or two sentences, all of them true. */
export interface Recognition {
  readonly name: string
  readonly says: readonly string[]
}

/** The fewest answers of a type that are worth a sentence of their own. */
const ENOUGH_OF_A_TYPE = 3

/**
 * The week in words, for every pupil who answered at least one question, in the order of the alphabet: first progress, then
 * accuracy, then the work done. Each pupil is measured by nothing but their own answers; nobody is compared or ranked, and
 * nobody has more than two sentences. A pupil who answered nothing is left out.
 */
export function recognise(pupils: readonly PupilWeek[]): Recognition[] {
  return pupils
    .map(({ name, occasions }) => ({ name, says: sentencesOf(weekOf(occasions)) }))
    .filter(({ says }) => says.length > 0)
    .sort((one, other) => one.name.localeCompare(other.name, 'en-GB'))
}

/** A week's occasions as one for each type: counts added up, the status before the first and after the last. */
function weekOf(occasions: PupilWeek['occasions']): TypeOnOccasion[] {
  const all = occasions.flat()
  return TEACHING_ORDER.flatMap((type) => {
    const own = all.filter((each) => each.type === type && each.tried > 0)
    const [first, last] = [own[0], own.at(-1)]
    if (!first || !last) return []
    const sum = (count: 'right' | 'tried') => own.reduce((total, each) => total + each[count], 0)
    return [{ type, right: sum('right'), tried: sum('tried'), before: first.before, after: last.after }]
  })
}

function sentencesOf(week: readonly TypeOnOccasion[]): string[] {
  const tried = week.reduce((sum, each) => sum + each.tried, 0)
  const right = week.reduce((sum, each) => sum + each.right, 0)
  if (tried === 0) return []
  return [...progress(week), ...accuracy(week, right, tried)].slice(0, 2)
}

/** A type that rose to secure, else one that rose to nearly secure. A rise from “not enough seen” is told as reaching it. */
function progress(week: readonly TypeOnOccasion[]): string[] {
  const risen = week.filter(({ before, after }) => rank(after) > rank(before ?? 'not enough seen'))
  const reached = (status: Status) => risen.filter(({ after }) => after === status).map(({ type }) => type)
  const [secure, nearly] = [reached('secure'), reached('nearly secure')]
  if (secure.length > 0) return [`Now secure in ${typesInWords(secure)}.`]
  return nearly.length > 0 ? [`Now nearly secure in ${typesInWords(nearly)}.`] : []
}

function rank(status: Status): number {
  return STATUSES.indexOf(status)
}

/** All right; else a type all right; else how many were right, where fewer than half what they were right in; else the work done. */
function accuracy(week: readonly TypeOnOccasion[], right: number, tried: number): string[] {
  if (right === tried)
    return [
      tried === 1
        ? 'Answered 1 question and got it right.'
        : `Answered ${tried} questions, all of them right.`,
    ]
  const full = week.filter((each) => each.right === each.tried && each.tried >= ENOUGH_OF_A_TYPE)
  const best = full.reduce<TypeOnOccasion | null>(
    (most, each) => (most === null || each.tried >= most.tried ? each : most),
    null,
  )
  const whole = `Answered ${countedNoun(tried, 'question')}, ${right} of them right.`
  if (best) return [`All ${best.tried} right in ${typeInWords(best.type)}.`, whole]
  if (2 * right >= tried) return [whole]
  const worked = `Worked at ${countedNoun(tried, 'question')}`
  const types = (some: readonly TypeOnOccasion[]) => typesInWords(some.map(({ type }) => type))
  if (right > 0) return [`${worked} and got ${right} right: ${types(week.filter((each) => each.right > 0))}.`]
  return [`${worked}, ${week.length > 2 ? 'among them' : 'on'} ${types(week.slice(-2))}.`]
}
