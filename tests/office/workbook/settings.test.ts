import { describe, expect, it } from 'vitest'
import { planMastery } from '../../../src/marksheet/marking/plan'
import { review } from '../../../src/marksheet/marking/review'
import { DEFAULT_MASTERY } from '../../../src/mastery/settings'
import { DEFAULT_SETTINGS, keepSettings, readSettings } from '../../../src/office/workbook/settings'
import { benchWith, problemIn } from '../host'

const fresh = async () => {
  const bench = await benchWith({ name: 'S', values: [] })
  Office.context.document.settings.remove('columnwise')
  return bench
}

describe('settings', () => {
  it('are the usual ones in a new workbook', async () => {
    await fresh()
    expect(readSettings()).toEqual(DEFAULT_SETTINGS)
  })

  it('are kept in the workbook', async () => {
    const bench = await fresh()
    await keepSettings({ flags: false, mastery: { ...DEFAULT_MASTERY, secure: 0.9 } })
    expect(readSettings()).toEqual({
      ...DEFAULT_SETTINGS,
      flags: false,
      mastery: { ...DEFAULT_MASTERY, secure: 0.9 },
    })
    expect(bench.book.settings.get('columnwise')).toMatchObject({ flags: false, mastery: { secure: 0.9 } })
  })

  it('name the statuses as the teacher likes, also on the Mastery sheet; a word left out or empty is the usual one', async () => {
    await fresh()
    Office.context.document.settings.set('columnwise', {
      words: { 'needs support': ' working towards ', secure: '' },
    })
    const { words } = readSettings()
    expect(words).toEqual({ ...DEFAULT_SETTINGS.words, 'needs support': 'working towards' })
    const rows = [
      ['Name', '932 − 457', '871 − 396'],
      ['Amina K', 1, 2],
    ]
    const texts = planMastery(review({ name: 'S', values: rows }), words)
      .rows.flat()
      .map(({ text }) => text)
    expect(texts).toContain('○ 0 of 2 · working towards')
    expect(texts).toContain('● secure    ◐ nearly secure    ○ working towards    ? not enough seen')
  })

  it('that make no sense are refused with a sentence and not kept', async () => {
    await fresh()
    const { sentence } = await problemIn(keepSettings({ mastery: { ...DEFAULT_MASTERY, secure: 0.2 } }))
    expect(sentence).toMatch(/threshold for secure/)
    expect(readSettings()).toEqual(DEFAULT_SETTINGS)
  })

  it.each([
    [null],
    [7],
    [{ flags: 'yes', mastery: 3 }],
    [{ mastery: { slip: 5 } }],
    [{ mastery: { guess: 0.1, secure: 0.9, nearlySecure: 0.5 } }],
    [{ mastery: { slip: '0.1' } }],
  ])('fall back to the usual ones where the workbook holds %j', async (kept) => {
    await fresh()
    Office.context.document.settings.set('columnwise', kept)
    expect(readSettings()).toEqual(DEFAULT_SETTINGS)
  })
})
