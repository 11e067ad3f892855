import { uniformInt } from 'pure-rand/distribution/uniformInt'
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator'

/** Choices by a seeded generator, so that every case can be had again. */
export class Chance {
  constructor(private readonly generator: RandomGenerator) {}

  /** A whole number from `least` to `most`. */
  whole(least: number, most: number): number {
    return uniformInt(this.generator, least, most)
  }

  /** Whether something happens that happens once in `count` times. */
  onceIn(count: number): boolean {
    return this.whole(1, count) === 1
  }

  /** One of the items, each as likely. */
  of<Item>(items: readonly Item[]): Item {
    const item = items[this.whole(0, items.length - 1)]
    if (item === undefined) throw new RangeError('Nothing to choose from.')
    return item
  }

  /** As many things as `least` to `most`. */
  some<Item>(least: number, most: number, make: (index: number) => Item): Item[] {
    return Array.from({ length: this.whole(least, most) }, (_, index) => make(index))
  }
}
