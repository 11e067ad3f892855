import { describe, expect, it } from 'vitest'
import { diagnosedPupils, diagnosing } from '../../src/marksheet/needs'
import { review } from '../../src/marksheet/review'
import { inPieces } from '../../taskpane/common/pieces'
import { largeSheet } from '../speed/reviewing'

describe('a long reckoning in pieces', () => {
  it('gives all that it gives at once', async () => {
    const reviews = review(largeSheet(60, 12))
    expect(await inPieces(diagnosing(reviews))).toEqual(diagnosedPupils(reviews))
  })

  it('lets others have their turn while it goes on, and stops when it is told to', async () => {
    let turns = 0
    const timer = setInterval(() => turns++, 1)
    function* slow() {
      for (let item = 0; ; item++) {
        const end = performance.now() + 5
        while (performance.now() < end);
        yield item
      }
    }
    const done = await inPieces(slow(), () => turns >= 3)
    clearInterval(timer)
    expect(turns).toBeGreaterThanOrEqual(3)
    expect(done).toEqual(done.map((_, index) => index))
  })
})
