import ExcelJS from 'exceljs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { answerKey, markAnswer, type CellValue } from '../../src/answers/typed'
import { matrixOf } from '../../src/files/matrix'
import { readWorkbook } from '../../src/files/xlsx/workbook'
import { readHome } from '../../src/home/back'
import type { HomeChoices } from '../../src/home/choices'
import type { HomeQuestion } from '../../src/home/format'
import { hintsFor } from '../../src/home/hints'
import { homeWorkbook } from '../../src/home/workbook'
import { askedTexts } from '../home/questions'
import { askedAs } from '../support/asked'
import { allConverted, LIBREOFFICE } from './libreoffice'

const CHOICES: HomeChoices = { feedback: 'hints', when: 'each', paper: 'lines' }

/** An answer that a child types, and what is to be said of it. */
interface Try {
  readonly question: HomeQuestion
  readonly typed: CellValue
  readonly says: RegExp
}

/** A home workbook filled in by another library. */
async function filled(tries: readonly Omit<Try, 'says'>[], choices = CHOICES): Promise<Uint8Array> {
  const made = homeWorkbook({ child: null, questions: tries.map(({ question }) => question) }, choices)
  const book = new ExcelJS.Workbook()
  await book.xlsx.load(made.bytes as unknown as ExcelJS.Buffer)
  const sheet = book.getWorksheet(made.sheet)
  made.items.forEach(({ answerCell }, at) => {
    const typed = tries[at]?.typed ?? null
    if (sheet && typed !== null) sheet.getCell(answerCell).value = typed
  })
  return new Uint8Array(await book.xlsx.writeBuffer())
}

/** What stands in the columns of answers and of how they went, as this project reads the file. */
async function shown(bytes: Uint8Array, count: number): Promise<{ typed: CellValue; says: string }[]> {
  const [page] = (await readWorkbook(bytes)).map(matrixOf)
  return Array.from({ length: count }, (_, at) => {
    const row = page?.matrix.values[5 + at]
    return { typed: row?.[2] ?? null, says: String(row?.[3] ?? '') }
  })
}

const decimal = (thousandths: number) => String(thousandths / 1000)
const grouped = (thousandths: number) =>
  decimal(thousandths).replace(/^\d+/, (whole) => whole.replace(/\B(?=(\d{3})+$)/g, ','))

/** Ways in which children write a number, for the unit of the question; none makes a right one wrong or a wrong one right. */
const DRESSES: readonly (readonly [name: string, write: (thousandths: number, unit: string) => CellValue])[] =
  [
    ['plain', decimal],
    ['a number cell', (value) => value / 1000],
    ['spaces around', (value) => `  ${decimal(value)} `],
    ['a non-breaking space', (value) => `\u00a0${decimal(value)}\u00a0`],
    ['commas', grouped],
    ['spaces in thousands', (value) => grouped(value).replaceAll(',', ' ')],
    ['a full stop', (value) => `${decimal(value)}.`],
    ['an equals sign', (value) => `= ${decimal(value)}`],
    ['the unit', (value, unit) => (unit === '£' ? `£${grouped(value)}` : `${decimal(value)} ${unit}`)],
    ['pence', (value, unit) => (unit === '£' ? `${value / 10}p` : `${decimal(value)}p`)],
    ['zeros behind', (value) => (value % 1000 === 0 ? `${decimal(value)}.00` : `${decimal(value)}0`)],
    ['zeros in front', (value) => `00${decimal(value)}`],
  ]

describe.skipIf(LIBREOFFICE === null)('what a home workbook says, worked out by LibreOffice', () => {
  const samples = fc.sample(askedTexts, { numRuns: 5 * DRESSES.length, seed: 15 })
  const tries = samples.flatMap(({ text, thousandths, unit }, at): Try[] => {
    const question = askedAs(text)
    const [, write] = DRESSES[at % DRESSES.length] ?? DRESSES[0] ?? ['', decimal]
    const wrong = thousandths + (unit === '£' ? 30 : 1000)
    return [
      { question, typed: write(thousandths, unit), says: /^Right$/ },
      { question, typed: write(wrong, unit), says: /^Look again/ },
    ]
  })
  const doubts: Try[] = ['', '   ', '-', '/', 'N/A'].map((typed) => ({
    question: askedAs('932 − 457'),
    typed,
    says: /^$/,
  }))
  const unclear: Try[] = [
    '4 75',
    '475?',
    'about 475',
    '47,5',
    '4,75',
    '3-4',
    'abs',
    '4.7.5',
    '47 5',
    '1/2',
    '5%',
    '4e2',
  ].map((typed) => ({ question: askedAs('932 − 457'), typed, says: /^Type one number$/ }))
  const all = [...tries, ...doubts, ...unclear, { question: askedAs('932 − 457'), typed: null, says: /^$/ }]

  it.each(['en-GB', 'de-DE'])(
    'is right for right, wrong, blank and untidy answers, on a computer set to %s, and leaves them as they were typed',
    async (locale) => {
      const [back = new Uint8Array()] = await allConverted([await filled(all)], 'xlsx', 'xlsx', locale)
      const cells = await shown(back, all.length)
      const wrong = all.flatMap(({ question, typed, says }, at) =>
        says.test(cells[at]?.says ?? '?') ? [] : [[question.text, typed, cells[at]?.says]],
      )
      expect(wrong).toEqual([])
      expect(cells.map(({ typed }) => String(typed ?? '').trim())).toEqual(
        all.map(({ typed }) => String(typed ?? '').trim()),
      )
    },
  )

  it('never contradicts how an answer is marked, whatever is typed', async () => {
    const signs = fc.constantFrom(...'0123456789', ...'475', ...',. £p=-−/k', ' ', '.', '5')
    const typed = fc.oneof(
      fc.string({ unit: signs, maxLength: 9 }),
      fc
        .tuple(
          fc.constantFrom('', '=', '£', '-', ' '),
          fc.constantFrom('475', '5.35', '1,234', '0', '12'),
          fc.constantFrom('', '.', 'p', ' kg', '..', ' .', '.0'),
        )
        .map((parts) => parts.join('')),
      fc.integer({ min: -1e8, max: 1e8 }).map((value) => value / 1000),
      fc.integer({ min: 0, max: 60_000 }),
    )
    const texts = ['932 − 457', '£8.60 − £3.25', '1,300 − 66', '5 − 5', '7.5 kg + 4.5 kg', '90p − 78p']
    const drawn = fc.sample(fc.tuple(fc.constantFrom(...texts), typed), { numRuns: 600, seed: 4 })
    const some = drawn.map(([text, value]) => ({ question: askedAs(text), typed: value }))
    const [back = new Uint8Array()] = await allConverted([await filled(some)], 'xlsx', 'xlsx')
    const cells = await shown(back, some.length)
    const told = some.map(({ question, typed: value }, at) => {
      const outcome = markAnswer(value, answerKey(question.question))
      const says = cells[at]?.says ?? '?'
      const may =
        outcome === 'correct'
          ? /^Right$|^Type one number$/
          : outcome === 'incorrect'
            ? /^Look again|^Type one number$/
            : outcome === 'blank'
              ? /^$/
              : /^Type one number$/
      return { holds: may.test(says), is: [question.text, value, outcome, says] }
    })
    expect(told.filter(({ holds }) => !holds).map(({ is }) => is)).toEqual([])
    const clear = told.filter(({ is: [, , outcome] }) => outcome === 'correct' || outcome === 'incorrect')
    expect(clear.length).toBeGreaterThan(200)
    expect(clear.filter(({ is: [, , , says] }) => says === 'Type one number').length).toBeLessThan(
      clear.length / 20,
    )
  })

  it('is the hint of the fault that gives just that answer', async () => {
    const questions = [
      '932 − 457',
      '305 − 128',
      '4003 − 1567',
      '7214 − 86',
      '467 + 258',
      '4.25 + 1.3',
      '□ − 46 = 30',
    ].map(askedAs)
    const faulty = questions.flatMap((question) =>
      hintsFor(question.question).map(({ answer, says }) => ({ question, typed: answer, says })),
    )
    expect(faulty.length).toBeGreaterThan(30)
    const [back = new Uint8Array()] = await allConverted([await filled(faulty)], 'xlsx', 'xlsx')
    expect((await shown(back, faulty.length)).map(({ says }) => says)).toEqual(
      faulty.map(({ says }) => `Look again. ${says}`),
    )
  })

  it('waits until all are in where the teacher wants it so, and comes back with its codes and answers', async () => {
    const later = { ...CHOICES, when: 'all', paper: 'squares' } as const
    const questions = ['932 − 457', '305 − 128'].map(askedAs)
    const some = questions.map((question, at) => ({ question, typed: at === 0 ? '475' : null }))
    const whole = questions.map((question) => ({ question, typed: '475' }))
    const files = await allConverted([await filled(some, later), await filled(whole, later)], 'xlsx', 'xlsx')
    const sheets = await Promise.all(
      files.map(async (file) => (await readWorkbook(file)).map(matrixOf).map(({ matrix }) => matrix)),
    )
    const column = (at: number) =>
      sheets[at]?.[0]?.values.map((row) => row[3] ?? '').filter((text) => text !== '')
    expect(column(0)).toEqual(['How it went'])
    expect(column(1)).toEqual(['How it went', 'Right', 'Look again'])
    expect(sheets[0]?.[0]?.values[3]?.[0]).toBe('1 of 2 answered. When all are in, you will see how it went.')
    expect(readHome(sheets[1] ?? [])).toMatchObject({
      child: '',
      answers: questions.map(({ text }) => ({
        question: text,
        sent: text,
        typed: { kind: 'typed', typed: '475' },
      })),
    })
  })
})
