import { describe, expect, it } from 'vitest'
import { shareRead, tryCases, type KindName } from './fuzzing'

/** A fast share of `npm run fuzz`, with cases of its own. */
const SHARE: Readonly<Record<KindName, number>> = {
  'texts read as questions': 20_000,
  'typed answers marked': 20_000,
  'whole sheets': 100,
  'several classes on a sheet, no answer another child’s': 1_000,
  'marksheets of which no cell may be lost': 60,
  'notes, each in a free cell and where it was': 100,
  'messages, no answer that was not given': 500,
}

describe('whatever stands in a sheet', () => {
  it.each(Object.entries(SHARE) as [KindName, number][])(
    'throws nothing and loses nothing: %s (%i)',
    (kind, cases) => {
      const { failures } = tryCases(kind, cases, 'the share in the tests')
      expect(failures.map(({ why, input }) => `${why} ${JSON.stringify(input).slice(0, 500)}`)).toEqual([])
    },
  )

  it('is read for nearly all of several classes side by side or below each other', () => {
    expect(shareRead(1_000, 'the share in the tests')).toBeGreaterThan(0.97)
  })
})
