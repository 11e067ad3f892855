import { describe, expect, it } from 'vitest'
import { TOTALS } from '../../src/lesson/dice'

// The chances of two fair dice, as in any handbook of probability (from memory).
describe('the totals of two fair dice', () => {
  it('are 2 to 12 with chances 1, 2, 3, 4, 5, 6, 5, 4, 3, 2, 1 in 36', () => {
    expect(TOTALS.map(({ total }) => total)).toEqual([2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12])
    expect(TOTALS.map(({ ways }) => ways)).toEqual([1, 2, 3, 4, 5, 6, 5, 4, 3, 2, 1])
  })

  it('counted over the 36 pairs of faces', () => {
    const faces = [1, 2, 3, 4, 5, 6]
    for (const { total, ways } of TOTALS) {
      const pairs = faces.flatMap((one) => faces.filter((other) => one + other === total))
      expect(pairs).toHaveLength(ways)
    }
  })
})
