import { skipN } from 'pure-rand/utils/skipN'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import type { JumpableRandomGenerator } from 'pure-rand/types/JumpableRandomGenerator'

/** Numbers left out at the start: a generator's first numbers follow its seed too closely. */
const WARM_UP = 32

/** FNV-1a, 32 bits, of the text in UTF-8 (Fowler, Noll and Vo; constants from memory). */
export function hashText(text: string): number {
  return (
    new TextEncoder().encode(text).reduce((hash, byte) => Math.imul(hash ^ byte, 0x01000193), 0x811c9dc5) >>>
    0
  )
}

/**
 * The random numbers of a seed, the same for ever: pure-rand's xoroshiro128+, started with the hash of the seed as text (so 7
 * and "7" are one seed), its first 32 numbers left out.
 */
export function generatorFrom(seed: string | number): JumpableRandomGenerator {
  const generator = xoroshiro128plus(hashText(String(seed)))
  skipN(generator, WARM_UP)
  return generator
}
