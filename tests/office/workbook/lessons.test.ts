import { describe, expect, it } from 'vitest'
import { RECIPES } from '../../../src/items/recipes'
import type { KeptLesson } from '../../../src/lesson/kept'
import { forgetLesson, keepLessons, readLessons } from '../../../src/office/workbook/lessons'
import { hasSettings, readSettings, removeSettings } from '../../../src/office/workbook/settings'
import { benchWith } from '../host'

const lessonOf = (day: string, set: string): KeptLesson => {
  const [recipe] = RECIPES
  if (!recipe) throw new Error('There are no recipes.')
  return { day, set, recipe, practice: 6, recap: 4, recapTypes: [], otherWays: false, criteria: null }
}
const [MONDAY, TUESDAY] = [lessonOf('2026-11-23', '4827'), lessonOf('2026-11-24', '4828')]

describe('the lessons made in a workbook', () => {
  it('are kept in its settings, newest first, apart from what is set there', async () => {
    const bench = await benchWith({ name: 'S', values: [] })
    await removeSettings()
    const before = readSettings()
    expect(readLessons()).toEqual([])
    await keepLessons([MONDAY])
    await keepLessons([TUESDAY, MONDAY])
    expect(readLessons()).toEqual([TUESDAY, MONDAY])
    expect(bench.book.settings.get('columnwise.lessons')).toHaveLength(2)
    expect(readSettings()).toEqual(before)
  })

  it('can be forgotten one by one, and go with the settings when Columnwise is removed', async () => {
    await benchWith({ name: 'S', values: [] })
    await removeSettings()
    await keepLessons([MONDAY, TUESDAY])
    expect(await forgetLesson(TUESDAY)).toEqual([MONDAY])
    expect(hasSettings()).toBe(true)
    await removeSettings()
    expect([hasSettings(), readLessons()]).toEqual([false, []])
  })
})
