import { uniformInt } from 'pure-rand/distribution/uniformInt'
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator'

/** A whole number from `least` to `most`, both included, each as likely as any other. */
export function wholeBetween(least: number, most: number, generator: RandomGenerator): number {
  return uniformInt(generator, least, most)
}

/** One of the items, each as likely as any other. RangeError where there is none. */
export function pickFrom<T>(items: readonly T[], generator: RandomGenerator): T {
  if (items.length === 0) throw new RangeError('There is nothing to pick from.')
  return items[uniformInt(generator, 0, items.length - 1)] as T
}

/** The items in random order, every order equally likely (Fisher–Yates). */
export function shuffled<T>(items: readonly T[], generator: RandomGenerator): T[] {
  const left = [...items]
  return items.flatMap(() => left.splice(uniformInt(generator, 0, left.length - 1), 1))
}

/** One of the items, each with a chance in proportion to its weight, a whole number from 0. RangeError where all are 0. */
export function pickByWeight<T>(
  items: readonly T[],
  weightOf: (item: T) => number,
  generator: RandomGenerator,
): T {
  const total = items.reduce((sum, item) => sum + weightOf(item), 0)
  if (total < 1) throw new RangeError('There is nothing to pick from.')
  let rest = uniformInt(generator, 0, total - 1)
  for (const item of items) {
    rest -= weightOf(item)
    if (rest < 0) return item
  }
  throw new RangeError('A weight is no whole number from 0.')
}
