import { answerWith, FAULTS, type FaultId } from '../answers/faults'
import type { Question } from '../arithmetic/question'

/** A way of working that a set is to tell from others: as taught, or with a fault. */
export type Way = 'right' | FaultId

/** Two ways of working, and on how many questions of the set they lead to different answers. */
export interface Told {
  readonly ways: readonly [Way, Way]
  readonly questions: number
}

/**
 * A set chosen from candidates: `chosen` are indices into them, in their order. `pairs` tells every pair of ways apart on two
 * questions or more, on one, or on none.
 */
export interface TellingApartSet {
  readonly chosen: readonly number[]
  readonly pairs: readonly Told[]
}

/** A fault shows reliably when a slip cannot hide it: on two questions. */
const ENOUGH = 2

/** The faults that can occur in these questions: all of their operations. */
export function faultsAskedBy(questions: readonly Question[]): FaultId[] {
  const operations = new Set(questions.map(({ calculation }) => calculation.operation))
  return [...new Set(FAULTS.filter(({ operation }) => operations.has(operation)).map(({ id }) => id))]
}

/**
 * Chooses `count` of the candidates, all where there are no more, so that as many pairs of ways as possible lead to different
 * answers on two questions or more, and then on one. `faults` are those to be told from each other and from the right method:
 * all of the candidates' operations, or the open ones of a pupil. The best next question is added until the set is full;
 * then questions are exchanged, one at a time, while that is better. At last no question is left the only one of its group (`groupOf`), by the
 * exchange that costs least, as far as the candidates allow. The same candidates give the same set.
 */
export function chooseTellingApart(
  candidates: readonly Question[],
  count: number,
  faults: readonly FaultId[] = faultsAskedBy(candidates),
  groupOf: (question: Question) => string = () => '',
): TellingApartSet {
  const ways: Way[] = ['right', ...faults]
  const pairs = ways.flatMap((one, index) => ways.slice(index + 1).map((other): [Way, Way] => [one, other]))
  const shows = candidates.map((question) => pairsShownBy(question, ways))
  const chosen = new Set<number>()
  const times = new Uint16Array(pairs.length)
  const put = (index: number, step: 1 | -1) => {
    if (step === 1) chosen.add(index)
    else chosen.delete(index)
    shows[index]?.forEach((shown, pair) => (times[pair] = (times[pair] ?? 0) + step * shown))
  }
  const best = (worth: (times: number) => number) => bestAddition(shows, chosen, times, worth)

  while (chosen.size < Math.min(count, candidates.length)) put(best(towardsEnough).index, 1)
  for (let improved = true; improved;) {
    improved = false
    for (const index of [...chosen]) {
      put(index, -1)
      const kept = gain(shows[index] ?? new Uint8Array(), times, enoughThenOnce)
      const other = best(enoughThenOnce)
      const better = other.gain > kept
      put(better ? other.index : index, 1)
      improved ||= better
    }
  }
  const groups = candidates.map(groupOf)
  for (;;) {
    const [exchange] = exchangesForLone(groups, chosen)
      .map(([out, into]) => {
        put(out, -1)
        const lost = gain(shows[out] ?? new Uint8Array(), times, enoughThenOnce)
        const gained = gain(shows[into] ?? new Uint8Array(), times, enoughThenOnce)
        put(out, 1)
        return { out, into, gain: gained - lost }
      })
      .toSorted((one, other) => other.gain - one.gain)
    if (exchange === undefined) break
    put(exchange.out, -1)
    put(exchange.into, 1)
  }
  return {
    chosen: [...chosen].sort((a, b) => a - b),
    pairs: pairs.map((each, pair) => ({ ways: each, questions: times[pair] ?? 0 })),
  }
}

/** The exchanges, out and in, after which one question fewer is the only one of its group. */
function exchangesForLone(groups: readonly string[], chosen: ReadonlySet<number>): [number, number][] {
  const sizes = new Map<string, number>()
  for (const index of chosen) sizes.set(groups[index] ?? '', (sizes.get(groups[index] ?? '') ?? 0) + 1)
  const sizeOf = (index: number) => sizes.get(groups[index] ?? '') ?? 0
  const all = [...groups.keys()]
  const others = all.filter((index) => !chosen.has(index))
  return [...chosen]
    .filter((index) => sizeOf(index) === 1)
    .flatMap((lone): [number, number][] => [
      ...others
        .filter((into) => into !== lone && sizeOf(into) >= 2)
        .map((into): [number, number] => [lone, into]),
      ...[...chosen]
        .filter((out) => sizeOf(out) >= 3)
        .flatMap((out) =>
          others.filter((into) => groups[into] === groups[lone]).map((into): [number, number] => [out, into]),
        ),
    ])
}

/** How many pairs a set tells apart on enough questions, and on one at least. */
export function countTold({ pairs }: TellingApartSet): { readonly enough: number; readonly once: number } {
  return {
    enough: pairs.filter(({ questions }) => questions >= ENOUGH).length,
    once: pairs.filter(({ questions }) => questions >= 1).length,
  }
}

const towardsEnough = (times: number) => Math.min(times, ENOUGH)
const enoughThenOnce = (times: number) => (times >= ENOUGH ? 1000 : times)

/** For every pair of ways in order, 1 where they lead to different answers to the question. */
function pairsShownBy({ calculation }: Question, ways: readonly Way[]): Uint8Array {
  const answers = ways.map((way) =>
    answerWith(
      FAULTS.filter(({ id }) => id === way),
      calculation,
    ),
  )
  return Uint8Array.from(
    answers.flatMap((one, index) => answers.slice(index + 1).map((other) => Number(one !== other))),
  )
}

function gain(shown: Uint8Array, times: Uint16Array, worth: (times: number) => number): number {
  return shown.reduce((sum, shows, pair) => {
    const now = times[pair] ?? 0
    return shows === 1 ? sum + worth(now + 1) - worth(now) : sum
  }, 0)
}

function bestAddition(
  shows: readonly Uint8Array[],
  chosen: ReadonlySet<number>,
  times: Uint16Array,
  worth: (times: number) => number,
): { readonly index: number; readonly gain: number } {
  return shows.reduce(
    (best, shown, index) => {
      if (chosen.has(index)) return best
      const gained = gain(shown, times, worth)
      return gained > best.gain ? { index, gain: gained } : best
    },
    { index: -1, gain: -1 },
  )
}
