import fc from 'fast-check'
import { FAULTS } from '../../src/answers/faults'
import { review } from '../../src/marksheet/marking/review'
import { beforeAll, describe, expect, it } from 'vitest'
import { loadFunctions, type FunctionsHost } from './host'

const QUESTIONS = ['932 − 457', '305 − 128', '12 − 12']

let host: FunctionsHost
beforeAll(async () => {
  host = await loadFunctions()
})

const column = (cells: readonly unknown[]) => cells.map((cell) => [cell])

describe('MARK', () => {
  const typed = [
    [475, '177', 0],
    ['525', 'abs', '12'],
    ['4 75', '17?', ''],
  ]
  const marks = [
    [true, true, true],
    [false, 'absent', false],
    ['unreadable', 'unreadable', 'blank'],
  ]

  it('marks a class under a row of questions', async () => {
    expect((await host.call('MARK', [QUESTIONS], typed)).value).toEqual(marks)
  })

  it('marks the transposed sheet, with the questions in a column', async () => {
    const turned = (rows: readonly (readonly unknown[])[]) =>
      QUESTIONS.map((_, c) => rows.map((row) => row[c]))
    expect((await host.call('MARK', column(QUESTIONS), turned(typed))).value).toEqual(turned(marks))
  })

  it('marks cell on cell where each answer has its own question', async () => {
    const { value } = await host.call(
      'MARK',
      [
        ['5 − 3', '4 + 4'],
        ['', '9 − 1'],
      ],
      [
        [2, 9],
        [7, 8],
      ],
    )
    expect(value).toEqual([
      [true, false],
      ['', true],
    ])
  })

  it('keeps the shape of the answers, whatever m and n', async () => {
    const size = fc.integer({ min: 1, max: 6 })
    await fc.assert(
      fc.asyncProperty(size, size, async (rows, columns) => {
        const answers = Array.from({ length: rows }, () => Array.from({ length: columns }, () => '7'))
        const over = await host.call('MARK', [Array.from({ length: columns }, () => '10 − 3')], answers)
        const beside = await host.call(
          'MARK',
          Array.from({ length: rows }, () => ['10 − 3']),
          answers,
        )
        const expected = answers.map((row) => row.map(() => true))
        expect([over.value, beside.value]).toEqual([expected, expected])
      }),
    )
  })

  it.each([
    [
      'a row that is too short',
      [['1 + 1', '1 + 2']],
      [
        [2, 3, 4],
        [2, 3, 4],
      ],
    ],
    [
      'a column that is too long',
      [['1 + 1'], ['1 + 2'], ['1 + 3']],
      [
        [2, 3],
        [2, 3],
      ],
    ],
    [
      'one question for a whole range',
      [['1 + 1']],
      [
        [2, 3],
        [2, 3],
      ],
    ],
    ['a row beside a column', [['1 + 1', '1 + 2']], [[2], [3]]],
  ])('refuses %s with #VALUE! and the reason', async (_, questions, answers) => {
    const { value, message } = await host.call('MARK', questions, answers)
    expect(value).toBe('#VALUE!')
    expect(message).toMatch(/one row as wide as the answers, one column as tall, or a range of the same size/)
  })

  it('reads an empty cell as blank, passed as null, as 0 or as an empty text', async () => {
    const { value } = await host.call('MARK', [['5 − 3']], [[null], [0], [''], [' ']])
    expect(value).toEqual(column(['blank', 'blank', 'blank', 'blank']))
  })

  it('reads 0 as an answer where the answer is 0, and an empty text there as blank', async () => {
    const { value } = await host.call('MARK', [['12 − 12']], [[0], ['0'], [''], [null]])
    expect(value).toEqual(column([true, true, 'blank', 'blank']))
  })

  it('reads a typed "0" as a wrong answer where the answer is another', async () => {
    expect((await host.call('MARK', [['5 − 3']], [['0']])).value).toEqual([[false]])
  })

  it('leaves booleans and error values to the teacher', async () => {
    const { value } = await host.call('MARK', [['5 − 3']], [[true], [{ basicValue: '#N/A', type: 'Error' }]])
    expect(value).toEqual(column(['unreadable', 'unreadable']))
  })

  it('marks the rest of a class where one cell, or one question, holds an error', async () => {
    const error = { type: 'Error', basicType: 'Error', basicValue: '#N/A' }
    const typed = await host.call(
      'MARK',
      [['5 − 3', '9 − 1']],
      [
        [2, error],
        [3, 8],
      ],
    )
    expect(typed.value).toEqual([
      [true, 'unreadable'],
      [false, true],
    ])
    const asked = await host.call('MARK', [['5 − 3', error]], [[2, 8]])
    expect(asked.value).toEqual([[true, 'no question']])
  })

  it('gives a word under a cell that is no question', async () => {
    expect((await host.call('MARK', [['Name', '5 − 3']], [['Ada', 2]])).value).toEqual([
      ['no question', true],
    ])
  })
})

describe('WHY', () => {
  it('gives the likeliest fault in words for a wrong answer, and nothing for any other', async () => {
    const { value } = await host.call(
      'WHY',
      [['932 − 457', '789 + 642', '305 − 128']],
      [
        ['525', '321', '177'],
        ['475', 'abs', ''],
        ['3', '17?', null],
      ],
    )
    const [[smaller, dropped, right], ...others] = value as string[][] as [string[], ...string[][]]
    expect(smaller).toMatch(/smaller .*larger/i)
    expect(dropped).toMatch(/carries nothing/i)
    expect(right).toBe('')
    expect(others).toEqual([
      ['', '', ''],
      ['', '', ''],
    ])
  })

  it('gives a whole sentence for each answer that a fault gives', async () => {
    const faulty = ['525', '500', '585', '1389']
    const { value } = await host.call('WHY', [['932 − 457']], column(faulty))
    const sentences = (value as string[][]).flat()
    expect(sentences.every((sentence) => /^[A-Z].*\.$/.test(sentence))).toBe(true)
    expect(new Set(sentences).size).toBe(faulty.length)
  })
})

describe('MASTERY', () => {
  const questions = ['874 − 523', '765 − 432', '305 − 128', '402 − 175', '703 − 256', '482 − 137']

  it('counts right and tried by type, and tells how the pupil stands', async () => {
    const typed = ['351', '333', '223', '373', '553', '']
    expect((await host.call('MASTERY', [questions], [typed])).value).toEqual([
      ['no exchange', 2, 2, 'secure'],
      ['through a zero', 0, 3, 'needs support'],
      ['one exchange, tens to ones', 0, 0, 'not enough seen'],
    ])
  })

  it('counts by skill on asking', async () => {
    const typed = ['351', '333', '177', '227', '447', '345']
    const { value } = await host.call('MASTERY', [questions], [typed], 'Skill')
    expect(value).toContainEqual(['subtract.through-zero', 3, 3, 'secure'])
    expect(value).toContainEqual(['subtract.tens-to-ones', 4, 4, 'secure'])
  })

  it('is the same for a row and a column, and with empty question cells between', async () => {
    const typed = ['351', '333', '223', 'abs', 0, '345']
    const expected = (await host.call('MASTERY', [questions], [typed])).value
    expect((await host.call('MASTERY', column(questions), [typed])).value).toEqual(expected)
    expect((await host.call('MASTERY', [['', ...questions]], [['Ada', ...typed]])).value).toEqual(expected)
    expect((await host.call('MASTERY', [questions], [typed], 'type')).value).toEqual(expected)
  })

  it('takes blank, absent and unreadable answers for no evidence', async () => {
    const { value } = await host.call('MASTERY', [questions], [['', 'abs', '17?', null, 0, '345']])
    expect((value as unknown[][]).map(([type, , tried]) => [type, tried])).toEqual([
      ['no exchange', 0],
      ['through a zero', 0],
      ['one exchange, tens to ones', 1],
    ])
  })

  it.each([
    [
      'another number of answers',
      [['1 + 1', '1 + 2']],
      [[2]],
      null,
      '#VALUE!',
      /as many answers as questions/,
    ],
    ['a header among the questions', [['Name', '1 + 1']], [['Ada', 2]], null, '#VALUE!', /not an addition/],
    ['an unknown wish', [['1 + 1']], [[2]], 'fault', '#VALUE!', /"type", "family" or "skill"/],
    ['no question at all', [['', '']], [[1, 2]], null, '#N/A', /nothing to show/],
  ])('refuses %s with the reason', async (_, asked, typed, by, value, message) => {
    expect(await host.call('MASTERY', asked, typed, by)).toEqual({
      value,
      message: expect.stringMatching(message) as string,
    })
  })
})

describe('WHY, SUPPORT and the review of a sheet', () => {
  it('say the same of every pupil', async () => {
    const asked = ['932 − 457', '764 − 239', '681 − 357', '305 − 128', '958 − 216']
    const typed = [
      ['525', '535', '336', '223', '742'],
      ['475', '525', '324', '177', '742'],
      ['585', '535', '334', '287', '742'],
      ['475', '525', '323', '', 'abs'],
      ['1', '22', '333', '44', '5'],
    ]
    const values = [['Name', ...asked], ...typed.map((row, index) => [`Pupil ${'ABCDE'[index]}`, ...row])]
    const [sheet] = review({ name: 'Heron', values })
    const needs = sheet?.pupils.map(({ judgement }) =>
      judgement.needsSupport ? judgement.need.sentence : '',
    )
    expect((await host.call('SUPPORT', [asked], typed)).value).toEqual(column(needs ?? []))
    const sentenceOf = (fault: string | null) =>
      FAULTS.find(({ id, operation }) => id === fault && operation === 'subtract')?.sentence ?? ''
    expect((await host.call('WHY', [asked], typed)).value).toEqual(
      sheet?.pupils.map(({ faults }) => faults.map(sentenceOf)),
    )
  })
})

describe('SUPPORT', () => {
  const questions = ['874 − 523', '765 − 432', '305 − 128', '402 − 175', '703 − 256']
  const typed = [
    ['351', '333', '177', '227', '447'],
    ['351', '333', '223', '373', '553'],
    ['abs', 'abs', 'abs', 'abs', 'abs'],
    ['1', '2', '3', '4', '5'],
  ]
  const expected = [
    '',
    'takes the smaller digit from the larger in every column, whichever is on top: 3 of 3 wrong answers',
    '',
    'no exchange: 0 of 2',
  ]

  it('gives each flagged pupil’s need with its evidence, down the sheet', async () => {
    expect((await host.call('SUPPORT', [questions], typed)).value).toEqual(column(expected))
  })

  it('gives them across where each pupil has a column', async () => {
    const turned = questions.map((_, c) => typed.map((row) => row[c]))
    expect((await host.call('SUPPORT', column(questions), turned)).value).toEqual([expected])
  })

  it('refuses questions that do not fit with #VALUE! and the reason', async () => {
    const { value, message } = await host.call('SUPPORT', [['1 + 1', '1 + 2']], [[2, 3, 4]])
    expect(value).toBe('#VALUE!')
    expect(message).toMatch(/one row as wide as the answers/)
  })
})
