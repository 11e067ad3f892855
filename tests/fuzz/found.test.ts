import { describe, expect, it } from 'vitest'
import type { CellValue } from '../../src/answers/typed'
import { answerKey, markAnswer } from '../../src/answers/typed'
import { readQuestion } from '../../src/arithmetic/question'
import { addressOf } from '../../src/marksheet/layout/matrix'
import { review } from '../../src/marksheet/marking/review'
import { lookByRules, lookOf } from '../../src/marksheet/marking/rules'
import { asked } from '../support/asked'

/** What fuzzing has found, each with the rule that it broke. */
describe('a question', () => {
  it('has at most three places after the point in pounds too, where it adds pence with a point to pounds', () => {
    expect(readQuestion('£63 + 4.217p')).toEqual({
      problem: expect.stringMatching(/more than .* 3 after it/) as string,
    })
    expect(readQuestion('£63 + 4.2p')).toHaveProperty('question')
  })

  it('is no text that fills a cell: the reader does not go through it again for each of its digits', () => {
    for (const text of [
      `(${'1'.repeat(32_000)}`,
      `=${'1'.repeat(32_000)}`,
      `1 + ${'_ '.repeat(16_000)}!`,
      `${' '.repeat(9_000)}1 + 1${' '.repeat(9_000)}`,
    ])
      expect(readQuestion(text)).toHaveProperty('problem')
  })
})

function outcomeAndLook(text: string, typed: CellValue) {
  const key = answerKey(asked(text))
  return { wanted: lookOf(markAnswer(typed, key)), shown: lookByRules(typed, key) }
}

describe('a conditional format stays neutral', () => {
  it.each([
    ['5.2 kg − 3.1 kg', '2 kg'],
    ['5.2 kg − 3.1 kg', '2.1 kg'],
    ['750 ml − 250 ml', '400 ml'],
    ['932 − 457', 'absent\u2009'],
    ['932 − 457', 'ａｂｓ'],
    ['932 − 457', 'abs\n'],
    ['932 − 457', '/\n'],
    ['932 − 457', 'n/a\u3000'],
  ])('where marking reads more than it can: to %s, %j', (question, typed) => {
    const { wanted, shown } = outcomeAndLook(question, typed)
    expect([null, wanted]).toContain(shown)
  })
})

describe('an answer cell', () => {
  const answersOf = (values: CellValue[][]) =>
    review({ name: 'S', values }).flatMap(({ pupils }) =>
      pupils.flatMap(({ answers }) => answers.map(addressOf)),
    )

  it('counts once, also where the questions of one marksheet stand above another one’s pairs', () => {
    const places = answersOf([
      ['Name', '932 − 457', '305 − 128'],
      ['Ada B', 475, 177],
      ['Ben C', 475, 223],
      ['Cai D', '81 + 9', 90],
      ['Dee E', '640 − 218', 422],
      ['Eve F', 475, 177],
    ])
    expect(places.length).toBeGreaterThan(5)
    expect(places.filter((place, index) => places.indexOf(place) !== index)).toEqual([])
    expect(places).not.toContain('B4')
  })

  it('is no question: of two questions side by side, the ones without room for an answer are left aside', () => {
    const [found] = review({
      name: 'S',
      values: [
        ['Name', 'Q1', 'A1', 'Q2', 'A2'],
        ['Ada B', '932 − 457', '305 − 128', '81 + 9', 90],
        ['Ben C', '640 − 218', 422, '81 + 9', 80],
      ],
    })
    expect(found?.questions.map(addressOf)).toEqual(['D2', 'B3', 'D3'])
    expect(found?.pupils.map(({ answers }) => answers.map(addressOf))).toEqual([['E2'], ['C3', 'E3']])
  })
})
