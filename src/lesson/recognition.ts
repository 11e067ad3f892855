import type { ExchangeType } from '../arithmetic/exchange'
import type { Count } from '../mastery/standing'
import { TEACHING_ORDER } from '../mastery/support'
import { countedNoun, typeInWords } from './words'

/** How many were right of those tried, of a type on one occasion. */
export interface TypeCount extends Count {
  readonly type: ExchangeType
}

/** A pupil's answers on one occasion: how many questions were `asked`, answered or not, and the counts of each type. */
export interface Occasion {
  readonly asked: number
  readonly byType: readonly TypeCount[]
}

/** A pupil's occasions of the week, and those before it, in time order. */
export interface PupilWeek {
  readonly name: string
  readonly before: readonly Occasion[]
  readonly week: readonly Occasion[]
}

/** What is said of a pupil: one or two sentences, all of them true. */
export interface Recognition {
  readonly name: string
  readonly says: readonly string[]
}

/** The fewest answers of which it is worth saying that all are right. */
const ENOUGH = 2

/**
 * The week in words, in the order of the alphabet: more right of a type than the time before, then what is all right, then that everything
 * was answered. Each pupil is measured by nothing but their own counts; nobody is compared or ranked, and nobody has more than two sentences.
 * A pupil of whom the counts bear out nothing of the kind is left out, to the teacher.
 */
export function recognise(pupils: readonly PupilWeek[]): Recognition[] {
  return pupils
    .map((pupil) => ({ name: pupil.name, says: sentencesOf(pupil) }))
    .filter(({ says }) => says.length > 0)
    .sort((one, other) => one.name.localeCompare(other.name, 'en-GB'))
}

function sentencesOf(pupil: PupilWeek): string[] {
  const counts = TEACHING_ORDER.map((type) => ({ type, ...sum(countsOf(type, pupil.week)) }))
  return [...progress(pupil), ...allRight(counts), ...everything(pupil.week, sum(counts))].slice(0, 2)
}

/** The type with most gained since the time before, where at least half is right now and no smaller share than then. */
function progress({ before, week }: PupilWeek): string[] {
  const risen = TEACHING_ORDER.flatMap((type) => {
    const now = countsOf(type, week).at(-1)
    const then = countsOf(type, [...before, ...week]).at(-2)
    if (now === undefined || then === undefined) return []
    const isMore = now.right > then.right && share(now) >= share(then) && share(now) >= 1 / 2
    return isMore ? [{ type, now, then, gain: share(now) - share(then) }] : []
  })
  const [most] = risen.toSorted((one, other) => other.gain - one.gain)
  if (most === undefined) return []
  const { type, now, then } = most
  return [`More right than the time before in ${typeInWords(type)}: ${inWords(now)}, after ${inWords(then)}.`]
}

/** All right, else the type with most answers that is all right. */
function allRight(counts: readonly TypeCount[]): string[] {
  const { right, tried } = sum(counts)
  if (tried >= ENOUGH && right === tried) return [`Answered ${tried} questions, all of them right.`]
  const [most] = counts
    .filter((each) => each.tried >= ENOUGH && each.right === each.tried)
    .toSorted((one, other) => other.tried - one.tried)
  return most === undefined ? [] : [`All ${most.tried} right in ${typeInWords(most.type)}.`]
}

function everything(week: readonly Occasion[], { right, tried }: Count): string[] {
  const asked = week.reduce((total, each) => total + each.asked, 0)
  if (asked < ENOUGH || tried < asked || right === tried) return []
  return [`Answered every one of the ${countedNoun(asked, 'question')}.`]
}

/** The counts of a type on each occasion on which it was tried. */
function countsOf(type: ExchangeType, occasions: readonly Occasion[]): Count[] {
  return occasions
    .map(({ byType }) => sum(byType.filter((each) => each.type === type)))
    .filter(({ tried }) => tried > 0)
}

function sum(counts: readonly Count[]): Count {
  const total = (what: keyof Count) => counts.reduce((all, each) => all + each[what], 0)
  return { right: total('right'), tried: total('tried') }
}

const share = ({ right, tried }: Count) => right / tried
const inWords = ({ right, tried }: Count) => `${right} of ${tried}`
