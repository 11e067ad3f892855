import { describe, expect, it } from 'vitest'
import { printQuestion } from '../../../src/arithmetic/question'
import { TOPICS } from '../../../src/items/wish'
import { findMarksheets } from '../../../src/marksheet/layout/find'
import type { Matrix } from '../../../src/marksheet/layout/matrix'
import { planMarksheet } from '../../../src/marksheet/setting/layOut'
import { addToRecordSheet, readRecordSheet } from '../../../src/office/record/record'
import { readSheet } from '../../../src/office/workbook/read'
import { Runner } from '../../../taskpane/common/runner'
import {
  changed,
  factsOf,
  FIRST_CHOICES,
  newSetNumber,
  sheetNameOf,
  titleOf,
  TOPICS_BY_YEAR,
  wishOf,
  type Choices,
} from '../../../taskpane/set/choices'
import { Setter } from '../../../taskpane/set/setter'
import { benchWith, shown } from '../../office/host'
import { asked } from '../../support/asked'

const CLASS: Matrix = {
  name: 'Class',
  values: [['Name'], ['Amira P'], ['Bertie L'], ['Cerys H']],
}

async function setterOn(matrix: Matrix, ...numbers: string[]) {
  const bench = await benchWith(matrix)
  const runner = new Runner()
  const left = [...numbers]
  const setter = new Setter(runner, () => left.shift() ?? '4827')
  await setter.look()
  return { bench, runner, setter }
}

const textsOf = (setter: Setter) => {
  const { made } = setter.state()
  return 'problem' in made ? [] : made.questions.map(printQuestion)
}

describe('choices', () => {
  it('start with a graded set of ten for Year 4', () => {
    expect(wishOf(FIRST_CHOICES)).toEqual({
      operation: 'subtract',
      numbers: { year: 4, topic: 'Four-digit numbers' },
      aim: 'graded',
      count: 10,
    })
  })

  it('fall back to a graded set where the aim does not go with the new numbers or operation', () => {
    const zero = changed(FIRST_CHOICES, { aim: 'through two or more zeros' })
    expect(zero.aim).toBe('through two or more zeros')
    expect(changed(zero, { topic: null, topDigits: 3, bottomDigits: 2 }).aim).toBe('graded')
    expect(changed(zero, { operation: 'both' }).aim).toBe('graded')
    expect(changed(zero, { count: 12 }).aim).toBe('through two or more zeros')
  })

  it('of one’s own carry decimals and unit', () => {
    const own = changed(FIRST_CHOICES, { topic: null, topDigits: 2, bottomDigits: 1, form: 'pounds' })
    expect(wishOf(own).numbers).toEqual({
      own: { topDigits: 2, bottomDigits: 1, topDecimals: 2, bottomDecimals: 2, unit: '£' },
    })
  })

  it('offer every topic once, under its year', () => {
    const offered = TOPICS_BY_YEAR.flatMap(({ topics }) => topics.map(({ index }) => index))
    expect(offered.toSorted((a, b) => a - b)).toEqual(TOPICS.map((_, index) => index))
  })

  it('give titles under which the marksheet is found again', () => {
    for (const operation of ['add', 'subtract', 'both'] as const) {
      for (const topic of [...TOPICS.keys(), null]) {
        const title = titleOf({ ...FIRST_CHOICES, operation, topic }, '4827', 'Year 4 Kingfisher')
        const reading = planMarksheet({ title, names: ['Amira P'], questions: [asked('932 − 457')] })
        if ('problem' in reading) throw new Error(reading.problem)
        const [found] = findMarksheets({ name: 'x', values: reading.plan.rows })
        expect(found?.pupils.map(({ name }) => name)).toEqual(['Amira P'])
      }
    }
  })

  it('name class, operation, topic and set number', () => {
    expect(titleOf(FIRST_CHOICES, '4827', 'Kingfisher')).toBe(
      'Kingfisher: column subtraction, four-digit numbers (set 4827)',
    )
    expect(titleOf({ ...FIRST_CHOICES, operation: 'both', topic: null }, 'otter', '')).toBe(
      'Column addition and subtraction (set otter)',
    )
    expect(sheetNameOf({ ...FIRST_CHOICES, operation: 'add' }, '2026-11-06')).toBe('Addition 6 Nov')
  })
})

describe('what is said about a set', () => {
  const made = { questions: new Array<never>(10), exist: 41280n, avoided: 0, exchanged: 0, told: null }
  const facts = (change: Partial<typeof made>, choices: Choices = FIRST_CHOICES) =>
    factsOf({ ...made, ...change }, choices, '4827').join(' ')

  it('is how many such questions exist, what is in Record and what was exchanged', () => {
    expect(facts({})).toBe('There are 41,280 such questions.')
    expect(facts({ exist: 1n })).toBe('There is one such question.')
    expect(facts({ avoided: 24 })).toBe(
      'There are 41,280 such questions. 24 are in Record and not set again.',
    )
    expect(facts({ avoided: 24, exchanged: 1 })).toMatch(
      /1 question of set 4827 was exchanged for that reason: a parallel class without it in Record gets others there\.$/,
    )
    expect(facts({ avoided: 24, exchanged: 10 })).toMatch(/All questions of set 4827 were exchanged/)
    expect(facts({}, { ...FIRST_CHOICES, aim: 'why' })).toBe('')
  })
})

it('set numbers have four figures', () => {
  expect(newSetNumber(() => 0)).toBe('1000')
  expect(newSetNumber(() => 0.99999)).toBe('9999')
  expect(newSetNumber()).toMatch(/^[1-9]\d{3}$/)
})

describe('the Set area', () => {
  it('draws again with a new number, and gives the same set for a number typed in, in any case', async () => {
    const { setter } = await setterOn(CLASS, '1111', '2222')
    const first = textsOf(setter)
    setter.again()
    expect(setter.state().typed).toBe('2222')
    expect(textsOf(setter)).not.toEqual(first)
    setter.type(' 1111 ')
    expect(textsOf(setter)).toEqual(first)
    setter.type('Otter')
    const otter = textsOf(setter)
    setter.type('otter')
    expect(textsOf(setter)).toEqual(otter)
    setter.type(' ')
    expect(setter.state().made).toMatchObject({ problem: 'Type a set number, or press Another draw.' })
  })

  it('finds the names on the sheet in front, and lays out the marksheet in one action, undone by one', async () => {
    const { bench, runner, setter } = await setterOn(CLASS)
    expect(setter.state().pupils).toMatchObject({ sheet: 'Class', chosen: null })
    const before = shown(bench)
    await setter.layOut()
    expect(runner.state().notice?.sentence).toMatch(/^The marksheet is on the sheet Subtraction \d+ \w{3}\.$/)
    const [found] = findMarksheets((await readSheet()).matrix)
    expect(found?.pupils.map(({ name }) => name)).toEqual(['Amira P', 'Bertie L', 'Cerys H'])
    expect(found?.questions.map(({ text }) => text)).toEqual(textsOf(setter))
    await runner.undo()
    expect(shown(bench)).toEqual(before)
  })

  it('takes names added since, and says so where there are none', async () => {
    const { bench, runner, setter } = await setterOn({ name: 'Empty', values: [['7']] })
    await setter.layOut()
    expect(runner.state().notice).toMatchObject({
      kind: 'problem',
      sentence: 'No names were found on the sheet Empty.',
    })
    bench.grid.write(bench.grid.activeSheet(), 0, 0, [['Name'], ['Amira P'], ['Bertie L']])
    await setter.layOut()
    expect(runner.state().notice?.sentence).toMatch(/^The marksheet is on the sheet Subtraction \d+ \w{3}\.$/)
  })

  it('takes the selected cells for the names until others are selected', async () => {
    const { bench, setter } = await setterOn(CLASS)
    bench.select('Class', 'A2:A3')
    await setter.takeNames()
    expect(setter.state().pupils?.list.names).toEqual(['Amira P', 'Bertie L'])
    await setter.look()
    expect(setter.state().pupils?.list.names).toEqual(['Amira P', 'Bertie L'])
  })

  it('asks before it writes over cells, and writes nothing when the answer is no', async () => {
    const { bench, runner, setter } = await setterOn(CLASS)
    bench.select('Class', 'A2')
    const before = shown(bench)
    await setter.write('down')
    expect(setter.state().asked?.target.taken.map(({ address }) => address)).toEqual(['A2', 'A3', 'A4'])
    await setter.answer(false)
    expect(setter.state().asked).toBeNull()
    expect(shown(bench)).toEqual(before)
    await setter.write('down')
    await setter.answer(true)
    expect((await readSheet()).matrix.values.slice(1).map(([text]) => text)).toEqual(textsOf(setter))
    await runner.undo()
    expect(shown(bench)).toEqual(before)
  })

  it('never sets again what Record holds', async () => {
    const { setter } = await setterOn(CLASS)
    const [first = '', second = ''] = textsOf(setter)
    const reading = await readRecordSheet((await readSheet()).sheets)
    const row = { date: '2026-11-02', class: '', sheet: 'Class', pupil: 'Amira P', typed: '1', type: '' }
    await addToRecordSheet(
      reading,
      [first, second].map((question) => ({ ...row, question, outcome: 'incorrect' as const })),
    )
    const before = textsOf(setter)
    await setter.look()
    expect(setter.state().made).toMatchObject({ avoided: 2, exchanged: 2 })
    expect(textsOf(setter).slice(2)).toEqual(before.slice(2))
    expect(textsOf(setter)).not.toContain(first)
    expect(textsOf(setter)).not.toContain(second)
  })

  it('looks again by itself after something was written', async () => {
    const { bench, runner, setter } = await setterOn({ name: 'Class', values: [['7']] })
    const unwatch = setter.watch()
    bench.grid.write(bench.grid.activeSheet(), 0, 0, [['Name'], ['Amira P']])
    runner.wrote({ title: 'something', edits: [] })
    await expect.poll(() => setter.state().pupils?.list.names).toEqual(['Amira P'])
    unwatch()
  })
})
