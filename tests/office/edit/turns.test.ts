import { describe, expect, it } from 'vitest'
import { planMarking, planning } from '../../../src/marksheet/marking/plan'
import { review } from '../../../src/marksheet/marking/review'
import type { Steps } from '../../../src/marksheet/layout/steps'
import { Stopped } from '../../../src/office/edit/errors'
import { inTurns } from '../../../src/office/edit/work'
import { largeSheet } from '../../speed/reviewing'

describe('a long reckoning in turns', () => {
  it('gives what it gives at once', async () => {
    const sheet = largeSheet(60, 12)
    const reviews = review(sheet)
    expect(await inTurns(planning(sheet, reviews))).toEqual(planMarking(sheet, reviews))
  })

  it('lets others have their turn while it goes on, and stops when it is asked to', async () => {
    let turns = 0
    const stop = new AbortController()
    const timer = setInterval(() => {
      if (++turns === 3) stop.abort()
    }, 1)
    function* endless(): Steps<never> {
      for (;;) {
        const end = performance.now() + 5
        while (performance.now() < end);
        yield
      }
    }
    await expect(inTurns(endless(), stop)).rejects.toBeInstanceOf(Stopped)
    clearInterval(timer)
    expect(turns).toBeGreaterThanOrEqual(3)
  })
})
