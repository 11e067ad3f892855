import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { printQuestion } from '../../src/arithmetic/question'
import { RECIPES } from '../../src/items/recipes'
import { drawInverseChecks, drawMissingNumbers, drawMistakes } from '../../src/lesson/checks'
import { diceGrid } from '../../src/lesson/dice'
import { barInWords, triangleInWords } from '../../src/lesson/drawings'
import { escapeText } from '../../src/lesson/escape'
import type { Block, Handout, Sheet } from '../../src/lesson/handout'
import { makeLesson, type Lesson } from '../../src/lesson/lessonSet'
import { homeLetter, lessonHandout, practiceSheets, togetherSheet } from '../../src/lesson/lessonSheets'
import { gridOf } from '../../src/lesson/model/grid'
import { NOTATION } from '../../src/lesson/model/notation'
import { printablePage } from '../../src/lesson/page'
import { personalSets } from '../../src/lesson/personal'
import { checksHandout, personalHandout } from '../../src/lesson/questionSheets'
import { diceHandout, storyHandout, triangleHandout } from '../../src/lesson/starterSheets'
import { drawStories } from '../../src/lesson/stories/story'
import { trianglePuzzle } from '../../src/lesson/triangle'
import { MAKING, rowsOf, setNumbersOn } from './making'
import { judged } from '../mastery/judged'

/** The value of a reading, or an error with its problem. */
function given<T extends object>(reading: T): Exclude<T, { readonly problem: string }> {
  if ('problem' in reading) throw new Error(String(reading.problem))
  return reading as Exclude<T, { readonly problem: string }>
}

const recipes = fc.constantFrom(...RECIPES)
const lessonFor = (index: number): Lesson => {
  const recipe = RECIPES[index % RECIPES.length]
  if (!recipe) throw new Error('There are no recipes.')
  return given(makeLesson({ recipe, seed: index })).lesson
}

/** Every block of a sheet, those kept together taken apart. */
function blocksOf({ blocks }: Sheet): Block[] {
  return blocks.flatMap((block) =>
    block.kind === 'together'
      ? blocksOf({ title: '', reader: 'pupil', blocks: block.blocks })
      : block.kind === 'halves'
        ? blocksOf({ title: '', reader: 'pupil', blocks: block.halves.flat() })
        : [block],
  )
}
const roomsIn = (sheet: Sheet) =>
  blocksOf(sheet).flatMap((block) => (block.kind === 'rooms' ? block.rooms : []))

const HANDOUTS: readonly (readonly [string, Handout])[] = [
  ['lesson', lessonHandout(lessonFor(60), MAKING)],
  ['dice', diceHandout([given(diceGrid(6, 6, 1)).grid], '7')],
  ['triangles', triangleHandout([trianglePuzzle(1, 1), trianglePuzzle(2, 1), trianglePuzzle(3, 1)], '7')],
  [
    'stories',
    storyHandout(given(drawStories({ types: ['any', 'any'], digits: 4, seed: 1 }, 4)).stories, '7'),
  ],
  [
    'personal',
    personalHandout(
      given(personalSets({ pupils: [{ name: 'Amina K', judgement: judged() }], year: 4, seed: 1 })).sets,
      MAKING,
    ),
  ],
  [
    'checks',
    checksHandout(
      given(drawMissingNumbers({ kind: lessonFor(60).recipe.kind, count: 4, seed: 1 })).questions,
      given(drawInverseChecks({ kind: lessonFor(60).recipe.kind, count: 3, seed: 1 })).checks,
      given(drawMistakes({ kind: lessonFor(60).recipe.kind, count: 3, seed: 1 })).mistakes,
      MAKING,
    ),
  ],
]

describe.each(HANDOUTS)('the printed page of the hand-out: %s', (_, handout) => {
  const html = printablePage(handout)

  it('is one page of HTML without script, from nothing outside', () => {
    expect(html).toMatch(/^<!doctype html>\n<html lang="en-GB">/)
    expect(html).not.toMatch(/<script|javascript:|\son\w+=|https?:|src=|href=|url\(|@import|<link|<iframe/i)
    expect(html).toMatch(/@page \{ size: A4/)
  })

  it('has a section for every sheet, each on a page of its own, and every tag closed', () => {
    expect(html.match(/<section /g)).toHaveLength(handout.sheets.length)
    expect(html).toContain('.sheet { break-after: page; }')
    const open: string[] = []
    for (const [, end, tag, self] of html
      .replace(/<style>[^]*<\/style>/, '')
      .matchAll(/<(\/?)(\w+)[^>]*?(\/?)>/g)) {
      if (tag === undefined || tag === 'meta' || self === '/') continue
      if (end === '') open.push(tag)
      else expect(open.pop()).toBe(tag)
    }
    expect(open).toEqual([])
  })

  it('has the set number small on every sheet', () => {
    expect(html.match(/<p class="set">Set 7<\/p>/g)).toHaveLength(setNumbersOn(handout))
  })

  it('shows every title and text', () => {
    for (const sheet of handout.sheets) {
      if (sheet.title !== '') expect(html).toContain(`<h1>${escapeText(sheet.title)}</h1>`)
      for (const block of blocksOf(sheet))
        if (block.kind === 'text' || block.kind === 'heading') expect(html).toContain(escapeText(block.text))
      for (const { text } of roomsIn(sheet)) expect(html).toContain(escapeText(text))
    }
    expect(html).not.toMatch(/undefined|NaN|\[object/)
  })

  it('ends with the teacher’s sheet, or the letter: pupils’ sheets come first', () => {
    const readers = handout.sheets.map(({ reader }) => reader)
    expect(readers.at(-1)).toBe('adult')
    expect(readers.lastIndexOf('pupil')).toBeLessThan(readers.indexOf('adult'))
  })
})

describe('text on a printed page', () => {
  it('is escaped, whatever it is', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        const escaped = escapeText(text)
        expect(escaped).not.toMatch(/[<>"']/)
        const back = escaped
          .replaceAll('&lt;', '<')
          .replaceAll('&gt;', '>')
          .replaceAll('&quot;', '"')
          .replaceAll('&#39;', "'")
          .replaceAll('&amp;', '&')
        expect(back).toBe(text)
      }),
    )
  })

  it('a name with markup in it stays a name', () => {
    const name = '<img src=x onerror="alert(1)"> & co'
    const sets = given(personalSets({ pupils: [{ name, judgement: judged() }], year: 4, seed: 1 })).sets
    const html = printablePage(personalHandout(sets, MAKING))
    expect(html).not.toContain('<img')
    expect(html).toContain('&lt;img src=x onerror=&quot;alert(1)&quot;&gt; &amp; co: my own questions')
  })
})

describe('the sheets of a lesson', () => {
  it('the grades apart, each with a name line, its own objective and criteria, and room for every question', () => {
    fc.assert(
      fc.property(recipes, fc.integer(), (recipe, seed) => {
        const { lesson } = given(makeLesson({ recipe, seed, practice: 3, recap: 2 }))
        const sheets = practiceSheets(lesson, MAKING.notation)
        expect(sheets.map(({ title }) => title)).toEqual(['The way in', 'The objective', 'Deeper'])
        sheets.forEach((sheet, index) => {
          const set = lesson.practice[index]
          expect(sheet.blocks).toContainEqual({ kind: 'fields', names: ['Name', 'Date'] })
          expect(sheet.blocks).toContainEqual({ kind: 'text', text: recipe.objective })
          expect(sheet.blocks).toContainEqual({ kind: 'ticks', items: set?.criteria })
          const rooms = roomsIn(sheet).filter(({ label }) => label !== '')
          expect(rooms.map(({ text }) => text)).toEqual(set?.questions.map(({ text }) => text))
          for (const { above } of rooms) expect(above).toBe('Estimate')
          if (set?.grade === 'Deeper')
            expect(
              sheet.blocks.some((block) => block.kind === 'text' && block.text.startsWith('Check: ')),
            ).toBe(true)
          else expect(roomsIn(sheet).filter(({ text }) => text === 'Check')).toHaveLength(2)
          for (const { columns, rows } of rooms) {
            expect(columns * 7.5).toBeLessThanOrEqual(86)
            expect(rows).toBeGreaterThan(
              Math.max(...(set?.questions ?? []).map(({ question }) => rowsOf(question).length)),
            )
          }
          expect(new Set(rooms.map(({ columns }) => columns)).size).toBe(1)
        })
        expect(roomsIn(togetherSheet(lesson)).map(({ text }) => text)).toEqual([
          ...[...lesson.recap, lesson.partner].map(({ text }) => text),
          'Check',
        ])
      }),
      { numRuns: 30 },
    )
  })

  it('the answer sheet has the working and the answer of every question', () => {
    const lesson = lessonFor(61)
    const answers = lessonHandout(lesson, MAKING).sheets.find(({ title }) => title.startsWith('Answers'))
    const workings = answers?.blocks.flatMap((block) => (block.kind === 'workings' ? block.workings : []))
    const all = [
      lesson.model,
      lesson.partner,
      ...lesson.practice.flatMap(({ questions }) => questions),
      ...lesson.recap,
      ...lesson.exit,
    ]
    expect(workings?.map(({ text, answer, paper }) => ({ text, answer, rows: gridOf(paper) }))).toEqual(
      all.map(({ text, answer, question }) => ({ text, answer, rows: rowsOf(question) })),
    )
    all.forEach(({ estimate, check }, index) => {
      if (estimate !== null) expect(workings?.[index]?.notes).toContain(`Estimate: ${estimate}`)
      expect(workings?.[index]?.notes).toContain(`Check: ${check}`)
    })
  })

  it('pupils’ sheets give no answer to a question on them', () => {
    for (const index of [0, 20, 60, 90, 120]) {
      const lesson = lessonFor(index)
      const html = printablePage({ title: '', set: '', sheets: practiceSheets(lesson, MAKING.notation) })
      for (const { answer, text } of lesson.practice.flatMap(({ questions }) => questions))
        if (!text.includes(answer) && answer.length > 2) expect(html).not.toContain(`>${answer}<`)
      const written = [...html.matchAll(/<table class="written">.*?<\/table>/g)].map(([table]) =>
        table.replace(/<[^>]+>/g, ' '),
      )
      expect(written.at(-1)).toContain('□')
      const [begun = '', ...framed] = written.slice(0, -1)
      expect(begun).toMatch(/\d/)
      expect(framed.length).toBeLessThan(lesson.practice[0]?.questions.length ?? 0)
    }
  })
})

describe('the letter home', () => {
  it('says what is learnt, shows the example and how to help, in short sentences without terms of the trade', () => {
    for (let index = 0; index < RECIPES.length; index += 7) {
      const lesson = lessonFor(index)
      const letter = homeLetter(lesson, NOTATION)
      const texts = blocksOf(letter).flatMap((block) =>
        block.kind === 'text' || block.kind === 'heading'
          ? [block.text]
          : block.kind === 'list'
            ? block.items
            : [],
      )
      const all = texts.join(' ')
      expect(all).toContain(lesson.recipe.objective)
      expect(all).toContain(lesson.model.text)
      expect(all).toContain(`${lesson.partner.text}. The answer is ${lesson.partner.answer}.`)
      expect(all).not.toMatch(
        /decomposition|algorithm|misconception|assessment|regroup|objective|curriculum/i,
      )
      const sentences = texts.flatMap((text) => text.split(/(?<=[.?”:]) /))
      for (const sentence of sentences) expect(sentence.split(' ').length).toBeLessThanOrEqual(22)
    }
  })
})

describe('missing numbers and checks', () => {
  const { kind } = lessonFor(60).recipe
  const { questions } = given(drawMissingNumbers({ kind, count: 5, seed: 2 }))
  const { checks } = given(drawInverseChecks({ kind, count: 4, seed: 2 }))

  it('give every question and every check a room of its own, a check with a line for its answer', () => {
    const [pupil] = checksHandout(questions, checks, [], MAKING).sheets
    const rooms = pupil ? roomsIn(pupil) : []
    expect(rooms.map(({ text, line }) => [text, line])).toEqual([
      ...questions.map((question) => [printQuestion(question), '']),
      ...checks.map(({ text }) => [text, 'Answer']),
    ])
    const html = printablePage({
      title: '',
      set: '',
      sheets: checksHandout([], checks, [], MAKING).sheets.slice(0, 1),
    })
    expect(html.match(/<span>Answer<\/span>/g)).toHaveLength(checks.length)
  })

  it('leave out the heading of what there is none of', () => {
    const headings = (sheets: readonly Sheet[]) =>
      sheets.flatMap(({ blocks }) => blocks.flatMap((block) => (block.kind === 'heading' ? block.text : [])))
    expect(headings(checksHandout(questions, [], [], MAKING).sheets)).toEqual([
      'Find the missing numbers',
      'Missing numbers',
    ])
    expect(headings(checksHandout([], checks, [], MAKING).sheets)).toEqual([
      'Right or not? Check with the inverse',
      'Checks',
    ])
  })
})

describe('personal answers', () => {
  it('keep those of a pupil on one page', () => {
    const pupils = ['Amina K', 'Bryn T', 'Caris W'].map((name) => ({ name, judgement: judged() }))
    const { sets } = given(personalSets({ pupils, year: 4, seed: 1 }))
    const answers = personalHandout(sets, MAKING).sheets.at(-1)
    expect(answers?.blocks.map(({ kind: each }) => each)).toEqual(['together', 'together', 'together'])
  })
})

describe('what a drawing shows, in words', () => {
  it('is on the printed page too, and hides from pupils what is hidden from their eyes', () => {
    const [story] = given(drawStories({ types: ['any', 'any'], digits: 3, seed: 4 }, 1)).stories
    if (!story) throw new Error('There is no story.')
    const [pupil, teacher] = storyHandout([story], '7').sheets.map((sheet) =>
      printablePage({ title: '', set: '', sheets: [sheet] }),
    )
    for (const bar of story.bars) {
      const asked = [bar.whole, ...bar.parts].find(({ role }) => role === 'asked')
      expect(barInWords(bar, 'all')).toContain(`${asked?.label ?? ''} ${asked?.amount ?? ''}`)
      expect(barInWords(bar, 'told')).toContain(`${asked?.label ?? ''} ?`)
      expect(pupil).toContain(`aria-label="${escapeText(barInWords(bar, 'told'))}"`)
      expect(teacher).toContain(`aria-label="${escapeText(barInWords(bar, 'all'))}"`)
    }
    expect(triangleInWords(17, [1, null, 2, 3, null, null, 4, null, null])).toBe(
      'Every side makes 17. From the top clockwise: 1, empty, 2, 3, empty, empty, 4, empty, empty.',
    )
  })
})

describe('starter and puzzle sheets', () => {
  it('the dice sheet has the questions for pupils; the answers, ways to count and length for the teacher', () => {
    const { grid } = given(diceGrid(4, 5, 'x'))
    const [play, teacher] = diceHandout([grid], '7').sheets
    const cells = (sheet: Sheet | undefined) =>
      sheet?.blocks.flatMap((block) => (block.kind === 'grid' ? block.rows.flat() : [])) ?? []
    expect(cells(play)).toHaveLength(20)
    for (const { text, note } of cells(play)) expect([/^\d\d − \d$/.test(text), note]).toEqual([true, ''])
    for (const { text, note } of cells(teacher)) {
      const [, top, bottom, total] = /^(\d\d) − (\d) = (\d+)$/.exec(text) ?? []
      expect(Number(top) - Number(bottom)).toBe(Number(total))
      expect(note).toMatch(/^count (?:on|back)$/)
    }
    expect(JSON.stringify(teacher?.blocks)).toContain(
      `takes ${Math.round(grid.rolls.value)} rolls on average`,
    )
  })

  it('triangles are drawn with nine circles and the given numbers, at the side total', () => {
    const puzzle = trianglePuzzle(2, 5)
    const html = printablePage({
      ...triangleHandout([puzzle], '7'),
      sheets: triangleHandout([puzzle], '7').sheets.slice(0, 1),
    })
    expect(html.match(/<circle /g)).toHaveLength(9)
    const numbers = [...html.matchAll(/class="number">(\d)</g)].map(([, number]) => Number(number))
    expect(numbers).toEqual(puzzle.given.filter((number) => number !== null))
    expect(html).toContain(`class="total">${puzzle.total}<`)
  })

  it('story sheets hide what is to be found, answer sheets show it', () => {
    const { stories } = given(drawStories({ types: ['any', 'any'], digits: 3, seed: 9 }, 3))
    const { sheets, title } = storyHandout(stories, '7')
    const [pupil, teacher] = sheets.map((sheet) => printablePage({ title, set: '7', sheets: [sheet] }))
    for (const { bars, answer } of stories) {
      const hidden = bars
        .flatMap(({ whole, parts }) => [whole, ...parts])
        .filter(({ role }) => role !== 'told')
      for (const { amount } of hidden) expect(teacher).toContain(`class="amount">${amount}<`)
      expect(pupil).not.toContain(escapeText(answer))
      expect(teacher).toContain(escapeText(answer))
    }
    expect(pupil?.match(/class="amount">\?</g)).toHaveLength(6)
    expect(pupil?.match(/class="amount"><\/text>/g)).toHaveLength(3)
  })
})
