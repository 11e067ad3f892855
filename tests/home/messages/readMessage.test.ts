import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { askedAs } from '../../support/asked'
import { LONGEST_MESSAGE, readMessage } from '../../../src/home/messages/readMessage'
import { writersOf } from '../../../src/home/messages/signature'
import { readMessages } from '../../fuzz/readMessages'

const asked = (texts: readonly string[]) => texts.map(askedAs)
const SIX = asked(['932 − 457', '642 − 321', '305 − 219', '4003 − 2799', '789 + 642', '7214 − 86'])

/** The answers that a message is sure of, by the number of their question, and the questions left for the teacher. */
function read(text: string, questions = SIX, name = 'Ada K.', classmates: readonly string[] = []) {
  const answers = readMessage(text, questions, name, classmates)
  return {
    sure: answers
      .flatMap((answer, index) => (answer.kind === 'sure' ? [`${index + 1}: ${answer.typed}`] : []))
      .join(' · '),
    left: answers.flatMap(({ kind }, index) => (kind === 'left' ? [index + 1] : [])),
  }
}

describe('clear answers in a message', () => {
  it.each([
    ['1) 475 2) 321', '1: 475 · 2: 321'],
    ['1. 475\n2. 321\n3. -\n6. 7,128', '1: 475 · 2: 321 · 6: 7,128'],
    ['1=475 2=321 3=86', '1: 475 · 2: 321 · 3: 86'],
    ['1 475\n2 321\n3 86', '1: 475 · 2: 321 · 3: 86'],
    ['1:45\n2:32\n3:86', '1: 45 · 2: 32 · 3: 86'],
    ['1.475\n2.321\n3.86', '1: 475 · 2: 321 · 3: 86'],
    ['1️⃣ 475 2️⃣ 321', '1: 475 · 2: 321'],
    ['Q3 is 86', '3: 86'],
    ['q1. 475, q2: 321', '1: 475 · 2: 321'],
    ['number 4 was 1,204', '4: 1,204'],
    ['question three is 86', '3: 86'],
    ['4 was 1,204 and 5 was 1,431', '4: 1,204 · 5: 1,431'],
    ['932-457=475', '1: 475'],
    ['642 + 789 = 1431', '5: 1431'],
    ['for 7214 - 86 I got 7128', '6: 7128'],
    ['4003 take away 2799 is 1204', '4: 1204'],
    ['475=932-457', '1: 475'],
    ['932-457=\n475', '1: 475'],
    ['1) 932-457=475', '1: 475'],
    ['475 for q1, 321 for q2', '1: 475 · 2: 321'],
    ['q1 475 for q2 321', '1: 475 · 2: 321'],
    ['475 was my answer to number 1', '1: 475'],
    ['the third one is 86', '3: 86'],
    ['1st 475 2nd 321', '1: 475 · 2: 321'],
    ['Q3 was tricky but I got 86', '3: 86'],
    ['In Q4 Ada wrote 1,204', '4: 1,204'],
    ['475\n321\n86\n1204\n1431\n7128', '1: 475 · 2: 321 · 3: 86 · 4: 1204 · 5: 1431 · 6: 7128'],
    [
      'My answers are 475, 321, 86, 1204, 1431 and 7128. Love Ada x',
      '1: 475 · 2: 321 · 3: 86 · 4: 1204 · 5: 1431 · 6: 7128',
    ],
    ['475, 321, 86, 1204, 7128. I didn’t do number 5', '1: 475 · 2: 321 · 3: 86 · 4: 1204 · 6: 7128'],
    ['I got 475 for Q1 and 12/15 in all. I am 9. Ring 07700 900123 at 4:30', '1: 475'],
    ['1) 475\n\nOn Mon, 23 Nov 2026, Miss Day wrote:\n> 1) 999 2) 998', '1: 475'],
    ['[24/11/2026, 16:32:10] Sam: Q2 is 321', '2: 321'],
    ['From: Sam\nSent: 24 November 2026\nTo: Miss Day\nSubject: homework 3\n\nQ2 is 321', '2: 321'],
  ])('%j', (text, sure) => {
    expect(read(text)).toEqual({ sure, left: [] })
  })

  it('are kept as they were typed, with pounds and commas', () => {
    expect(read('Q1 £4.31\nQ2 1,204p', asked(['£3.45 + 86p', '1,300p − 96p'])).sure).toBe(
      '1: £4.31 · 2: 1,204p',
    )
  })

  it('fill the gap of a missing-number question', () => {
    expect(read('76 - 46 = 30', asked(['□ − 46 = 30'])).sure).toBe('1: 76')
  })

  it('go by the numbers that the questions have themselves', () => {
    expect(read('Q7 is 475', asked(['7) 932 − 457', '8) 642 − 321'])).sure).toBe('1: 475')
  })
})

describe('what is not clear', () => {
  it.each([
    ['Q3 is 86. No wait, 68', [3]],
    ['Q3 is 86 or 68', [3]],
    ['Q3 is 86?', [3]],
    ['maybe Q3 is 86', [3]],
    ['Q3 is 86, Q3 is 68', [3]],
    ['Q3 is not 86', [3]],
    ['my friend got 86 for Q3', [3]],
    ['1) -475', [1]],
    ['1) 4 7 5', [1]],
    ['1) 475 r 2', [1]],
    ['2) 932-457=475', [1, 2]],
    ['q3: eighty six', [3]],
    ['475 321 for q1', [1]],
    ['first I got 500 for number 1 then I changed it to 475', [1]],
    ['Q1 is 475. Q7 is 12', [1]],
    ['I didn’t do 1. 1) 475', [1]],
  ])('is left: %j', (text, left) => {
    expect(read(text)).toEqual({ sure: '', left })
  })

  it.each([
    'I did 1, 2, 3, 4, 5, 6',
    '475, 321, 86, 1204, 1431',
    '475, 321, 86, 1204, 1431, 7128, 12',
    '7128, 1431, 1204, 86, 321, 475 in reverse',
    '1 475 2 321 3 86',
    '1, 475, 2, 321, 3, 86',
    '1,475\n2,321\n3,386\n4,204\n5,431\n6,128',
    'Q5 was 10 times harder',
    'I am 9. We have 2 cats. It took 20 minutes.',
    '932-475=457',
    '',
  ])('or answers nothing: %j', (text) => {
    expect(read(text).sure).toBe('')
  })

  it('is an answer to a calculation that is asked twice', () => {
    expect(read('932-457=475', asked(['932 − 457', '932 − 457'])).sure).toBe('')
  })

  it('is a message too long to be one', () => {
    expect(read('Q1 is 475 '.repeat(LONGEST_MESSAGE)).sure).toBe('')
  })
})

describe('whose message it is', () => {
  const CLASS = ['Ada K.', 'Ben B.', 'Ben M.', 'Cai L.']
  it.each([
    ['1) 475\nLove Ada x', [0]],
    ['1) 475\nAda K', [0]],
    ['Hi Miss, this is Cai. 1) 475', [3]],
    ['Cai’s answers\n1) 475', [3]],
    ['1) 475\nfrom Ben', [1, 2]],
    ['1) 475\nBen M.', [2]],
    ['Hi Ada\n1) 475', []],
    ['1) 475\nSam (Ada’s mum)', []],
    ['1) 475', []],
  ])('is guessed from %j', (text, writers) => {
    expect(writersOf(text, CLASS)).toEqual(writers)
  })

  it('leaves all of it where another child signs', () => {
    expect(read('1) 475\nLove Cai', SIX, 'Ada K.', CLASS.slice(1))).toEqual({ sure: '', left: [1] })
  })
})

describe('whatever a message holds', () => {
  it('never throws, and gives one answer for each question', () => {
    const piece = fc.constantFrom(
      'Q',
      '1',
      '2',
      '475',
      ')',
      '.',
      ' ',
      '\n',
      '=',
      '-',
      ',',
      'is',
      'for',
      '£',
      '?',
      '932-457',
      'sorry',
      '>',
      '\t',
      '️⃣',
    )
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: 'binary' }),
          fc.array(piece).map((all) => all.join('')),
        ),
        (text) => {
          expect(readMessage(text, SIX, 'Ada K.', ['Ben B.'])).toHaveLength(SIX.length)
        },
      ),
      { numRuns: 2000 },
    )
  })

  it('is read as what its sender said, in messages made by somebody who knows', () => {
    const { clear, found, wrong } = readMessages(2_000, 'the share in the tests')
    expect(wrong).toEqual([])
    expect(found / clear).toBeGreaterThan(0.98)
  })
})
