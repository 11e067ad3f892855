import { describe, expect, it } from 'vitest'
import { falselyNamed, recovery, type Tally } from '../evidence/held'

const share = ({ hits, pupils }: Tally) => hits / pupils

/** A fast share of `npm run evidence`: simulated pupils whose fault gives three or more of their wrong answers. */
describe('faults that are held always, from a point on, or now and then', () => {
  it.each([['subtract'], ['add']] as const)(
    '%s: are named, and hardly ever for the right method',
    (operation) => {
      const always = recovery('always', [operation], 12, 0.05, 6)
      expect(share(always.any)).toBeGreaterThanOrEqual(0.98)
      expect(share(always.first)).toBeGreaterThanOrEqual(0.97)
      expect(share(recovery('from a point on', [operation], 12, 0.05, 6).first)).toBeGreaterThanOrEqual(0.9)
      expect(share(recovery('now and then', [operation], 12, 0.05, 6).first)).toBeGreaterThanOrEqual(0.8)
      expect(share(falselyNamed([operation], 12, 0.05, 20))).toBeLessThanOrEqual(0.01)
      expect(share(falselyNamed([operation], 12, 0.2, 20))).toBeLessThanOrEqual(0.01)
    },
  )
})
