import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { RECIPES } from '../../src/items/recipes'
import { drawInverseChecks, drawMissingNumbers, drawMistakes } from '../../src/lesson/checks'
import { COLUMNS, linesOf, MARGINS, PAGE_HEIGHT, SIDE, widthOf } from '../../src/lesson/cells/paper'
import type { Cells } from '../../src/lesson/cells/piece'
import {
  lessonWorksheets,
  printedCells,
  worksheetsOf,
  type PrintedCells,
} from '../../src/lesson/cells/worksheet'
import { diceGrid } from '../../src/lesson/dice'
import type { Handout } from '../../src/lesson/handout'
import { makeLesson, type Lesson } from '../../src/lesson/lessonSet'
import { lessonHandout, practiceSheets } from '../../src/lesson/lessonSheets'
import { criteriaIn, withCriteria } from '../../src/lesson/ownCriteria'
import { personalSets } from '../../src/lesson/personal'
import { checksHandout, personalHandout } from '../../src/lesson/questionSheets'
import { diceHandout, storyHandout, triangleHandout } from '../../src/lesson/starterSheets'
import { drawStories } from '../../src/lesson/stories/story'
import { trianglePuzzle } from '../../src/lesson/triangle'
import { MAKING, rowsOf, setNumbersOn } from './making'
import { judged } from '../mastery/judged'

function given<T extends object>(reading: T): Exclude<T, { readonly problem: string }> {
  if ('problem' in reading) throw new Error(String(reading.problem))
  return reading as Exclude<T, { readonly problem: string }>
}

const lessonFor = (index: number): Lesson => {
  const recipe = RECIPES[index % RECIPES.length]
  if (!recipe) throw new Error('There are no recipes.')
  return given(makeLesson({ recipe, seed: index })).lesson
}

const { kind } = lessonFor(60).recipe
const HANDOUTS: readonly (readonly [string, Handout])[] = [
  ['lesson', lessonHandout(lessonFor(60), MAKING)],
  ['dice', diceHandout([given(diceGrid(8, 8, 1)).grid], '7')],
  ['triangles', triangleHandout([trianglePuzzle(1, 1), trianglePuzzle(2, 1), trianglePuzzle(3, 1)], '7')],
  [
    'stories',
    storyHandout(given(drawStories({ types: ['any', 'any'], digits: 4, seed: 1 }, 6)).stories, '7'),
  ],
  [
    'personal',
    personalHandout(
      given(personalSets({ pupils: [{ name: 'Amina K', judgement: judged() }], year: 5, seed: 1, count: 20 }))
        .sets,
      MAKING,
    ),
  ],
  [
    'checks',
    checksHandout(
      given(drawMissingNumbers({ kind, count: 12, seed: 1 })).questions,
      given(drawInverseChecks({ kind, count: 12, seed: 1 })).checks,
      given(drawMistakes({ kind: lessonFor(60).recipe.kind, count: 3, seed: 1 })).mistakes,
      MAKING,
    ),
  ],
]

/** The heights of the pages, in points. */
function pagesOf({ heights, breaks }: PrintedCells): number[] {
  const ends = [...breaks, heights.length]
  return ends.map((end, index) =>
    heights.slice(index === 0 ? 0 : ends[index - 1], end).reduce((sum, height) => sum + height, 0),
  )
}

const textsIn = (printed: PrintedCells) => printed.texts.map(({ text }) => text.trim()).join(' ')

/** Every text of a hand-out but those that the pupil’s or teacher’s eye finds as drawings. */
function wordsOf({ sheets }: Handout): string[] {
  const inBlocks = (blocks: Handout['sheets'][number]['blocks']): string[] =>
    blocks.flatMap((block) => {
      switch (block.kind) {
        case 'heading':
        case 'text':
          return [block.text]
        case 'fields':
          return [...block.names]
        case 'list':
        case 'ticks':
          return [...block.items]
        case 'rooms':
          return block.rooms.flatMap(({ label, text, line }) => [label, text, line])
        case 'worked':
          return []
        case 'stages':
          return block.stages.flatMap(({ says }) => [...says])
        case 'halves':
          return block.halves.flatMap(inBlocks)
        case 'workings':
          return block.workings.flatMap(({ label, text, answer }) => [label, text, answer])
        case 'grid':
          return block.rows.flat().flatMap(({ text, note }) => [text, note])
        case 'triangles':
          return block.triangles.map(({ label }) => label)
        case 'bars':
          return block.bars.flatMap(({ whole, parts }) => [whole, ...parts].map(({ label }) => label))
        case 'together':
          return inBlocks(block.blocks)
      }
    })
  return sheets.flatMap(({ title, blocks }) => [title, ...inBlocks(blocks)]).filter((text) => text !== '')
}

describe('the paper', () => {
  it('takes all columns within the margins of A4, 595 by 842 points, with 5% to spare', () => {
    expect(COLUMNS * SIDE * 1.05).toBeLessThan(595 - MARGINS.left - MARGINS.right)
    expect(PAGE_HEIGHT).toBeLessThan(842 - MARGINS.top - MARGINS.bottom)
  })

  it('breaks sentences between words into lines that fit, and loses nothing', () => {
    const words = fc.array(fc.constantFrom('a', 'column', 'exchange', '1,000', 'hundreds,', 'WWWW'), {
      minLength: 1,
      maxLength: 40,
    })
    fc.assert(
      fc.property(words, fc.integer({ min: 100, max: 500 }), (each, width) => {
        const text = each.join(' ')
        const lines = linesOf(text, width, 13)
        expect(lines.join(' ')).toBe(text)
        for (const line of lines) expect(widthOf(line, 13)).toBeLessThanOrEqual(width)
      }),
    )
  })
})

describe.each(HANDOUTS)('the worksheets of the hand-out: %s', (_, handout) => {
  const worksheets = worksheetsOf(handout)
  const all = worksheets.map(printedCells)

  it('keep pupils’ sheets and answers apart, under names that Excel takes', () => {
    expect(worksheets.map(({ sheets }) => [...new Set(sheets.map(({ reader }) => reader))])).toEqual([
      ['pupil'],
      ['adult'],
    ])
    for (const { name } of worksheets) {
      expect(name.length).toBeLessThanOrEqual(31)
      expect(name).not.toMatch(/[:\\/?*[\]]/)
    }
  })

  it('have the set number small on every sheet', () => {
    const numbers = all.flatMap(({ texts }) => texts.filter(({ text }) => text === 'Set 7'))
    expect(numbers).toHaveLength(setNumbersOn(handout))
  })

  it('hold every word of it', () => {
    const text = all.map(textsIn).join(' ')
    const found = text.replaceAll(/\s+/g, ' ')
    for (const words of wordsOf(handout)) {
      for (const word of words.split(/\s+/)) expect(found).toContain(word)
    }
  })

  it('no page is higher than the paper, and each sheet begins on a new one', () => {
    worksheets.forEach(({ sheets }, index) => {
      const printed = all[index]
      if (!printed) throw new Error('There are no cells.')
      for (const height of pagesOf(printed)) expect(height).toBeLessThanOrEqual(PAGE_HEIGHT)
      expect(printed.breaks.length).toBeGreaterThanOrEqual(sheets.length - 1)
      const starts = [0, ...printed.breaks]
      const firstLines = printed.texts.filter(({ column }) => column === 0)
      for (const { title } of sheets)
        expect(
          starts.some((row) =>
            firstLines.some((each) => each.row === row && each.text !== '' && title.startsWith(each.text)),
          ),
        ).toBe(title !== '')
    })
  })

  it('no squared paper, box or working goes over a page break or beyond the columns', () => {
    for (const { looks, breaks, heights } of all) {
      for (const { cells, lines } of looks) {
        if (lines !== undefined) expect(isTorn(cells, breaks)).toBe(false)
        expect([cells.left >= 0, cells.right < COLUMNS, cells.bottom < heights.length]).toEqual([
          true,
          true,
          true,
        ])
      }
    }
  })

  it('no text lies over another, or runs into one or over the edge of the page', () => {
    for (const { texts, looks } of all) {
      const places = texts.filter(({ text }) => text !== '').map(({ row, column }) => `${row} ${column}`)
      expect(new Set(places).size).toBe(places.length)
      for (const { row, column, text } of texts) {
        const look = (key: 'size' | 'align' | 'bold') =>
          looks.findLast((each) => each[key] !== undefined && holds(each.cells, row, column))?.[key]
        if (look('align') !== undefined || text.length < 2) continue
        const next = Math.min(
          COLUMNS,
          ...texts
            .filter((each) => each.row === row && each.column > column && each.text !== '')
            .map((each) => each.column),
        )
        const width = widthOf(text, Number(look('size') ?? 11), look('bold') === true)
        expect(`${text}: ${width <= (next - column) * SIDE + 2}`).toBe(`${text}: true`)
      }
    }
  })
})

function isTorn({ top, bottom }: Cells, breaks: readonly number[]): boolean {
  return breaks.some((row) => row > top && row <= bottom)
}

function holds({ top, left, bottom, right }: Cells, row: number, column: number): boolean {
  return row >= top && row <= bottom && column >= left && column <= right
}

describe('a lesson’s worksheets', () => {
  it('for every recipe: pages that fit, and room for as many questions as there are', () => {
    for (let index = 0; index < RECIPES.length; index += 5) {
      const lesson = lessonFor(index)
      const worksheets = lessonWorksheets(lesson, MAKING)
      expect(worksheets.map(({ name }) => name)).toEqual(['Lesson', 'Lesson answers', 'Lesson letter'])
      for (const { sheets } of worksheets)
        for (const height of pagesOf(printedCells({ set: '7', sheets })))
          expect(height).toBeLessThanOrEqual(PAGE_HEIGHT)
      const { looks } = printedCells({ set: '7', sheets: practiceSheets(lesson, MAKING.notation) })
      const rooms = looks.filter(({ lines }) => lines === 'squares')
      const questions = lesson.practice.flatMap(({ questions }) => questions).length
      const checks = 2 * 2
      const missingDigits = 1
      expect(rooms).toHaveLength(questions + checks + missingDigits)
    }
  })

  it('give no answer away on the pupils’ practice sheets', () => {
    const lesson = lessonFor(60)
    const { texts } = printedCells({ set: '7', sheets: practiceSheets(lesson, MAKING.notation) })
    for (const { answer } of lesson.practice.flatMap(({ questions }) => questions))
      expect(texts.map(({ text }) => text)).not.toContain(answer)
  })

  it('write a working one sign in a cell, with changed digits struck through', () => {
    const lesson = lessonFor(RECIPES.findIndex(({ kind: { type } }) => type === 'through a zero'))
    const { texts, looks } = printedCells(lessonWorksheets(lesson, MAKING)[1] ?? { set: '', sheets: [] })
    const [model] = looks.filter(({ lines }) => lines === 'squares')
    if (!model) throw new Error('There is no working.')
    const inModel = texts.filter(({ row, column }) => holds(model.cells, row, column))
    const wanted = rowsOf(lesson.model.question).flatMap(({ cells }) =>
      cells.flatMap(({ text }) => (text === '' ? [] : [text])),
    )
    expect(inModel.map(({ text }) => text)).toEqual(wanted)
    const struck = looks.filter(
      ({ struck: isStruck, cells }) => isStruck && holds(model.cells, cells.top, cells.left),
    )
    expect(struck.length).toBeGreaterThan(0)
  })
})

describe('a teacher’s own success criteria', () => {
  it('are the lines as typed without empty ones, ten at most', () => {
    expect(criteriaIn('  I line up the ones.\n\n I check. \r\n')).toEqual(['I line up the ones.', 'I check.'])
    expect(criteriaIn('a\n'.repeat(30))).toHaveLength(10)
  })

  it('stand on the example and on the practice of the objective; other grades keep theirs', () => {
    const lesson = lessonFor(60)
    const own = withCriteria(lesson, ['I check.'])
    expect(own.criteria).toEqual(['I check.'])
    const changed = own.practice.map(({ criteria }) => criteria.join() === 'I check.')
    expect(changed).toEqual(lesson.practice.map(({ criteria }) => criteria.join() === lesson.criteria.join()))
    expect(changed).toContain(true)
    expect(own.practice.map(({ questions }) => questions)).toEqual(
      lesson.practice.map(({ questions }) => questions),
    )
  })
})
