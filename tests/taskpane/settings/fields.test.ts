import { describe, expect, it } from 'vitest'
import { DEFAULT_MASTERY } from '../../../src/mastery/settings'
import { DEFAULT_SETTINGS } from '../../../src/office/workbook/settings'
import { draftOf, GROUPS, RATES, readDraft, THRESHOLDS, type Draft } from '../../../taskpane/settings/fields'

const draft = draftOf(DEFAULT_SETTINGS)
const typed = (key: keyof Draft['numbers'], text: string): Draft => ({
  ...draft,
  numbers: { ...draft.numbers, [key]: text },
})

describe('the form of the settings', () => {
  it('shows every number of the mastery model once, and gives back what it was given', () => {
    const keys = [...THRESHOLDS, ...RATES].map(({ key }) => key)
    expect(keys.toSorted()).toEqual(Object.keys(DEFAULT_MASTERY).toSorted())
    expect(readDraft(draft)).toEqual({ settings: DEFAULT_SETTINGS })
  })

  it('has a reason for each that names its default', () => {
    const inPerCent = [...THRESHOLDS, ...RATES].filter(({ perCent }) => perCent)
    const named = inPerCent.filter(({ key, reason }) => reason.includes(`${DEFAULT_MASTERY[key] * 100}%`))
    expect(named.map(({ key }) => key)).toEqual(
      inPerCent.map(({ key }) => key).filter((key) => key !== 'guess'),
    )
    expect([...THRESHOLDS, ...RATES, ...GROUPS].every(({ reason }) => reason.length > 40)).toBe(true)
  })

  it('wants a word of its own for each status', () => {
    const named = (word: string) => readDraft({ ...draft, words: { ...draft.words, secure: word } })
    expect(named(' expected ')).toMatchObject({ settings: { words: { secure: 'expected' } } })
    expect(named('')).toEqual({ problem: 'Each status needs a word or a few, of at most 20 letters.' })
    expect(named('Needs support')).toEqual({ problem: 'Two statuses have the same words.' })
  })

  it('takes per cent with or without the sign, a comma for the point, and spaces', () => {
    for (const text of ['92.5', '92.5%', ' 92,5 % '])
      expect(readDraft(typed('secure', text))).toMatchObject({ settings: { mastery: { secure: 0.925 } } })
  })

  it.each([
    ['secure', 'much', '“Secure from” must be a number, such as 85.'],
    ['slip', '', '“Slips” must be a number, such as 85.'],
    ['secure', '20', 'The threshold for secure must be above that for needs support.'],
    ['slip', '0', 'The chance of a slip must lie between 0% and 100%, both left out.'],
    [
      'guess',
      '95',
      'Slip and guess must add up to less than 100%, or a right answer would speak against the pupil.',
    ],
    ['fewestTried', '1.5', 'The fewest questions tried must be a whole number from 1 up.'],
    ['groupSize', '0', 'The most pupils in a group must be a whole number from 1 up.'],
  ] as const)('refuses %s = "%s" with a sentence', (key, text, problem) => {
    expect(readDraft(typed(key, text))).toEqual({ problem })
  })
})
