import { describe, expect, it } from 'vitest'
import { prepareMastery } from '../../src/mastery/judge'
import { standings, type Evidence } from '../../src/mastery/standing'
import { DEFAULT_MASTERY, settingsProblem, type MasterySettings } from '../../src/mastery/settings'

describe('the settings', () => {
  it('are accepted as they come', () => {
    expect(settingsProblem(DEFAULT_MASTERY)).toBeNull()
  })

  it.each<[Partial<MasterySettings>, string]>([
    [{ slip: 0 }, 'The chance of a slip must lie between 0 and 1, both left out.'],
    [{ slip: NaN }, 'The chance of a slip must lie between 0 and 1, both left out.'],
    [{ guess: 1 }, 'The chance of a right guess must lie between 0 and 1, both left out.'],
    [
      { slip: 0.5, guess: 0.5 },
      'Slip and guess must add up to less than 1, or a right answer would speak against the pupil.',
    ],
    [{ prior: 1 }, 'The chance that a pupil has a skill beforehand must lie between 0 and 1, both left out.'],
    [{ learn: -0.1 }, 'The chance of learning between occasions must be at least 0 and below 1.'],
    [{ forget: 1 }, 'The chance of forgetting between occasions must be at least 0 and below 1.'],
    [
      { learn: 0.6, forget: 0.4 },
      'Learning and forgetting must add up to less than 1, or having a skill would speak against having it later.',
    ],
    [{ needsSupport: 0 }, 'The threshold for needs support must lie between 0 and 1, both left out.'],
    [{ secure: 85 }, 'The threshold for secure must lie between 0 and 1, both left out.'],
    [{ secure: 0.25 }, 'The threshold for secure must be above that for needs support.'],
    [{ fewestTried: 0 }, 'The fewest questions tried must be a whole number from 1 up.'],
    [{ fewestTried: 2.5 }, 'The fewest questions tried must be a whole number from 1 up.'],
  ])('refuse %o with a sentence, and so does judging by them', (change, sentence) => {
    const changed = { ...DEFAULT_MASTERY, ...change }
    expect(settingsProblem(changed)).toBe(sentence)
    expect(() => prepareMastery([], changed)).toThrow(new RangeError(sentence))
    expect(() => standings([], changed)).toThrow(new RangeError(sentence))
  })

  it.each<[string, Evidence[], string]>([
    ['two right of two', [true, true], 'secure'],
    ['two right of three', [true, false, true], 'nearly secure'],
    ['one right of two', [true, false], 'not enough seen'],
    ['none right of two', [false, false], 'needs support'],
    ['one right of one', [true, null, null], 'not enough seen'],
  ])('judge %s as their reasons say', (_, outcomes, status) => {
    const told = outcomes.map((each) => ({ type: 'one exchange, tens to ones' as const, told: each }))
    const { byType, byFamily } = standings([told])
    expect(byType.map((standing) => standing.status)).toEqual([status])
    expect(byFamily.map((standing) => standing.status)).toEqual([status])
  })
})
