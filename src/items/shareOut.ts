import { workOut } from '../arithmetic/columns'
import { exchangesOf, type ExchangeType } from '../arithmetic/exchange'
import { familyOf, type Family } from '../arithmetic/families'
import type { Question } from '../arithmetic/question'

/** The fewest questions of a family by which a pupil can be judged in it. */
export const FEWEST_TO_JUDGE = 2

/** A type of which there are so many questions to choose from. */
export interface Supply {
  readonly type: ExchangeType
  readonly room: number
}

/**
 * How many of `count` questions each supply gives, so that a pupil can be judged in every family that is touched: at least `least` questions
 * of each, as evenly as can be, the first family getting what is over. Where there are more families than that allows, some are left out,
 * of enough room never the first or, of several, the last. Within a family the types are spread likewise. All of it where there is too little.
 */
export function shareOut(
  supplies: readonly Supply[],
  count: number,
  least: number = FEWEST_TO_JUDGE,
): number[] {
  const families = [...new Set(supplies.map(({ type }) => familyOf(type)))]
  const roomOf = (family: Family) =>
    sum(supplies.map((each) => (familyOf(each.type) === family ? each.room : 0)))
  const large = families.filter((family) => roomOf(family) >= FEWEST_TO_JUDGE)
  const usable = large.length > 0 ? large : families
  const holds = (some: readonly Family[]) => sum(some.map(roomOf)) >= count
  const most = Math.max(1, Math.floor(count / least))
  const byRoom = usable.toSorted((one, other) => roomOf(other) - roomOf(one))
  const roomiest = byRoom.slice(
    0,
    Math.max(most, byRoom.findIndex((_, index) => holds(byRoom.slice(0, index + 1))) + 1),
  )
  const spread = evenly(usable, most)
  const kept = holds(spread) ? spread : families.filter((each) => roomiest.includes(each))
  const shares = filled(kept.map(roomOf), count)
  const short = count - sum(shares)
  const others = families.filter((family) => !kept.includes(family))
  const all = new Map(kept.map((family, index) => [family, shares[index] ?? 0]))
  filled(others.map(roomOf), short).forEach((share, index) => {
    const family = others[index]
    if (family !== undefined) all.set(family, share)
  })
  const given = supplies.map(() => 0)
  for (const [family, share] of all) {
    const own = supplies.flatMap(({ type }, index) => (familyOf(type) === family ? [index] : []))
    const rooms = new Map(own.map((index) => [index, supplies[index]?.room ?? 0]))
    const chosen = evenly(own, share)
    const first = filled(
      chosen.map((index) => rooms.get(index) ?? 0),
      share,
    )
    chosen.forEach((index, at) => (given[index] = first[at] ?? 0))
    const rest = own.filter((index) => !chosen.includes(index))
    const more = filled(
      rest.map((index) => rooms.get(index) ?? 0),
      share - sum(first),
    )
    rest.forEach((index, at) => (given[index] = more[at] ?? 0))
  }
  return given
}

/** `count` of the questions, shared out by their types; questions of a type in their order. */
export function sharedOut(questions: readonly Question[], count: number, least?: number): Question[] {
  const types = questions.map(({ calculation }) => exchangesOf(workOut(calculation)).type)
  const supplies = [...new Set(types)].map((type) => ({
    type,
    room: types.filter((each) => each === type).length,
  }))
  const given = shareOut(supplies, count, least)
  return supplies.flatMap(({ type }, index) =>
    questions.filter((_, at) => types[at] === type).slice(0, given[index]),
  )
}

/** `count` spread over places of limited room, one at a time to the place with fewest, of equals the first. */
function filled(rooms: readonly number[], count: number): number[] {
  const shares = rooms.map(() => 0)
  for (let left = count; left > 0; left--) {
    const open = shares.flatMap((share, index) => (share < (rooms[index] ?? 0) ? [index] : []))
    if (open.length === 0) break
    const least = open.reduce((best, index) => ((shares[index] ?? 0) < (shares[best] ?? 0) ? index : best))
    shares[least] = (shares[least] ?? 0) + 1
  }
  return shares
}

/** At most `most` of the items, evenly chosen, the first and the last among them where there are several. */
function evenly<Item>(items: readonly Item[], most: number): Item[] {
  if (items.length <= most) return [...items]
  const step = (items.length - 1) / Math.max(1, most - 1)
  return Array.from({ length: most }, (_, index) => Math.round(index * step)).flatMap((at) =>
    items.slice(at, at + 1),
  )
}

const sum = (numbers: readonly number[]) => numbers.reduce((total, each) => total + each, 0)
