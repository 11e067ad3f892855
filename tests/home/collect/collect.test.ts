import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { arrivalsIn } from '../../../src/home/collect/arrivals'
import { messageArrival } from '../../../src/home/collect/fromMessage'
import { planOf, takenReason, type Plan } from '../../../src/home/collect/plan'
import { targetsOn } from '../../../src/home/collect/targets'
import { addressOf, type Matrix } from '../../../src/marksheet/layout/matrix'
import { HERON, marksheetOf, returnedBy, type Class } from './returned'

const collected = (marksheet: Matrix, ...files: Matrix[][]): Plan => {
  const targets = targetsOn([marksheet])
  return planOf(files.flatMap((sheets, at) => arrivalsIn(`${at + 1}.xlsx`, sheets, targets)))
}
const written = ({ writes }: Plan) =>
  writes.map(({ pupil, cell, content }) => [pupil, addressOf(cell), content])
const reasons = ({ left }: Plan) => left.map(({ file, pupil, reason }) => `${file} ${pupil}: ${reason}`)

describe('home workbooks that came back', () => {
  const blank = marksheetOf(HERON)

  it('go into the blank cells of their own child, blank answers left out', () => {
    const plan = collected(
      blank,
      returnedBy(HERON, 'Cai Lane', { answers: [475, null, 86] }),
      returnedBy(HERON, 'Ben Mill', { answers: [400], isHiddenLost: true }),
    )
    expect(written(plan)).toEqual([
      ['Cai Lane', 'B5', 475],
      ['Cai Lane', 'D5', 86],
      ['Ben Mill', 'B4', 400],
    ])
    expect(plan.left).toEqual([])
  })

  it('keep what was typed, as text where a spreadsheet would make something else of it', () => {
    const plan = collected(blank, returnedBy(HERON, 'Ada Kay', { answers: ['3-4', '=1+1', ' 475 '] }))
    expect(plan.writes.map(({ typed, content }) => [typed, content])).toEqual([
      ['3-4', '3-4'],
      ['=1+1', '=1+1'],
      [' 475 ', ' 475 '],
    ])
  })

  it.each([
    ['without a name', returnedBy(HERON, null, { answers: [475] }), /no name/],
    [
      'with a first name alone',
      returnedBy(HERON, null, { answers: [475], name: 'Ada' }),
      /“Ada” may be Ada Kay/,
    ],
    [
      'with a name that two have',
      returnedBy(HERON, null, { answers: [475], name: 'Ben' }),
      /Ben Brook or Ben Mill/,
    ],
    ['with a name of nobody', returnedBy(HERON, null, { answers: [475], name: 'Zoe' }), /Nobody .* “Zoe”/],
    [
      'of another child',
      returnedBy(HERON, 'Ada Kay', { answers: [475], child: 'C999999' }),
      /not in this marksheet/,
    ],
    [
      'of another set',
      returnedBy({ ...HERON, questions: ['12 + 9'] }, 'Ada Kay', { answers: [21] }),
      /another set/,
    ],
    [
      'with a changed question',
      returnedBy(HERON, 'Ada Kay', { answers: [475], asked: ['932 − 475', '642 − 321', '305 − 219'] }),
      /question 1 was changed/,
    ],
    [
      'with questions in another order',
      returnedBy(HERON, 'Ada Kay', { answers: [321], asked: ['642 − 321', '932 − 457', '305 − 219'] }),
      /question 1 was changed/,
    ],
    [
      'with a question less',
      returnedBy(HERON, 'Ada Kay', { answers: [475], asked: ['932 − 457'] }),
      /question 2 is missing/,
    ],
    ['without answers', returnedBy(HERON, 'Ada Kay', { answers: [] }), /no answers yet/],
    ['that are none', [{ name: 'Shopping', values: [['Milk', 2]] }], /no home workbook/],
  ])('are left with a reason: %s', (_, sheets, reason) => {
    const plan = collected(blank, sheets)
    expect(plan.writes).toEqual([])
    expect(reasons(plan)).toEqual([expect.stringMatching(reason)])
  })

  it('are taken by the whole name, or first name and initial, that was typed', () => {
    for (const name of ['ada kay', 'Kay, Ada', 'Ada K.', 'ADA K'])
      expect(written(collected(blank, returnedBy(HERON, null, { answers: [475], name })))).toEqual([
        ['Ada Kay', 'B2', 475],
      ])
  })

  it('are left where two of one child differ, and put together where they agree', () => {
    const first = returnedBy(HERON, 'Ada Kay', { answers: [475, null, '86'] })
    const differing = collected(blank, first, returnedBy(HERON, 'Ada Kay', { answers: [475, 321, 68] }))
    expect(differing.writes).toEqual([])
    expect(reasons(differing)).toEqual([
      '1.xlsx Ada Kay: 2 files are this child’s, and the answers to 305 − 219 differ.',
      '2.xlsx Ada Kay: 2 files are this child’s, and the answers to 305 − 219 differ.',
    ])
    const agreeing = collected(blank, first, returnedBy(HERON, 'Ada Kay', { answers: ['475 ', 321, 86] }))
    expect(written(agreeing).map(([, cell]) => cell)).toEqual(['B2', 'D2', 'C2'])
    expect(agreeing.left).toEqual([])
  })

  it('leave an answer that became a date or a percentage, and write the others', () => {
    const [shown, hidden] = returnedBy(HERON, 'Ada Kay', { answers: [45_000, 0.5, 86] })
    if (!shown || !hidden) throw new Error('No sheets.')
    const formats = [[], [], ['General', 'General', 'd-mmm'], ['General', 'General', '0%']]
    const plan = collected(blank, [{ ...shown, formats }, hidden])
    expect(written(plan)).toEqual([['Ada Kay', 'D2', 86]])
    expect(reasons(plan)).toEqual([
      '1.xlsx Ada Kay: Question 1: the answer became a date.',
      '1.xlsx Ada Kay: Question 2: the answer became a percentage.',
    ])
  })

  it('never write over a cell that holds something else; the same answer is there already', () => {
    const plan = collected(
      marksheetOf(HERON, [['475', 999]]),
      returnedBy(HERON, 'Ada Kay', { answers: [475, 321, 86] }),
    )
    expect(written(plan)).toEqual([['Ada Kay', 'D2', 86]])
    expect(plan.present).toBe(1)
    expect(plan.taken.map(takenReason)).toEqual(['C2 already holds “999”; “321” is not written over it.'])
  })

  it('take a cell with a formula for filled, though it shows nothing', () => {
    const marksheet = { ...marksheetOf(HERON), formulas: [[], ['', '=IF(1,"","")']] }
    expect(collected(marksheet, returnedBy(HERON, 'Ada Kay', { answers: [475] })).taken).toHaveLength(1)
  })
})

describe('a form’s answers', () => {
  const form = (rows: readonly (readonly (string | number | null)[])[]): Matrix => ({
    name: 'Form responses',
    values: [['Timestamp', 'Your name', 'Q1: 642 - 321', '932 − 457 =', '12 + 9'], ...rows],
  })

  it('go to the pupils with the same names, by their questions and not by their order', () => {
    const plan = collected(marksheetOf(HERON), [
      form([
        ['2026-11-20 16:01', 'Cai Lane', 321, 475, 21],
        ['2026-11-20 16:05', 'Ada Kay', 320, '', ''],
      ]),
    ])
    expect(written(plan)).toEqual([
      ['Cai Lane', 'C5', 321],
      ['Cai Lane', 'B5', 475],
      ['Ada Kay', 'C2', 320],
    ])
    expect(reasons(plan)).toEqual([
      '1.xlsx Cai Lane: 12 + 9: the marksheet does not ask it, or asks it twice.',
    ])
  })

  it('are left where a name is nobody’s or several pupils’, and where a child answered twice', () => {
    const plan = collected(marksheetOf(HERON), [
      form([
        ['1', 'Zoe', 1, 2, null],
        ['2', 'Ben', 3, 4, null],
        ['3', 'Ada Kay', 5, 6, null],
        ['4', 'Ada Kay', 7, 6, null],
      ]),
    ])
    expect(plan.writes).toEqual([])
    expect(reasons(plan)).toEqual([
      '1.xlsx Zoe: Nobody in this marksheet is called “Zoe”.',
      '1.xlsx Ben: “Ben” may be Ben Brook or Ben Mill.',
      '1.xlsx Ada Kay: This child is there twice, and the answers to 642 − 321 differ.',
    ])
  })
})

describe('a message', () => {
  it('goes into the blank cells of its child; what is not sure is left with its question', () => {
    const targets = targetsOn([marksheetOf(HERON)])
    const [ada] = targets
    if (!ada) throw new Error('No pupil.')
    const plan = planOf([messageArrival('mail.txt', '1) 475 2) 321 or 312', ada, [])])
    expect(written(plan)).toEqual([['Ada Kay', 'B2', 475]])
    expect(reasons(plan)).toEqual([expect.stringMatching(/^mail.txt Ada Kay: 642 − 321: /)])
  })
})

describe('whatever comes back', () => {
  const value = fc.oneof(
    fc.constant(null),
    fc.integer({ min: 0, max: 9999 }),
    fc.constantFrom('475', '1,204', '3-4', 'abs', '=A1', ' '),
  )
  const room = fc
    .record({
      names: fc.uniqueArray(
        fc.constantFrom('Ada Kay', 'Ben Brook', 'Ben Mill', 'Cai Lane', 'Dee Hill', 'Eve Day'),
        { minLength: 2 },
      ),
      questions: fc.uniqueArray(fc.constantFrom('932 − 457', '642 − 321', '305 − 219', '789 + 642'), {
        minLength: 2,
      }),
    })
    .chain(({ names, questions }) =>
      fc.record({
        room: fc.constant<Class>({ names, questions }),
        held: fc.array(fc.array(value, { minLength: questions.length, maxLength: questions.length }), {
          minLength: names.length,
          maxLength: names.length,
        }),
        files: fc.array(
          fc.record({
            pupil: fc.oneof(fc.constant(null), fc.constantFrom(...names)),
            name: fc.constantFrom('', 'Ada', 'Ben', 'Cai Lane', 'Eve D.', 'Zoe'),
            answers: fc.array(value, { maxLength: questions.length }),
            isHiddenLost: fc.boolean(),
          }),
          { maxLength: 8 },
        ),
      }),
    )

  it('only blank cells of the child’s own row change, and each to what that child’s file holds', () => {
    fc.assert(
      fc.property(room, ({ room: { names, questions }, held, files }) => {
        const marksheet = marksheetOf({ names, questions }, held)
        const sheets = files.map(({ pupil, ...returned }) =>
          returnedBy({ names, questions }, pupil, returned),
        )
        const { writes } = collected(marksheet, ...sheets)
        const places = new Set<string>()
        for (const { cell, pupil, typed } of writes) {
          const [row, question] = [cell.row - 1, cell.column - 1]
          expect(String(held[row]?.[question] ?? '').trim()).toBe('')
          expect(names[row]).toBe(pupil)
          const own = files.filter(
            (file) =>
              file.pupil === pupil ||
              (file.pupil === null && file.name === 'Cai Lane') ||
              (file.pupil === null && file.name === 'Eve D.'),
          )
          expect(own.map(({ answers }) => String(answers[question] ?? ''))).toContain(typed)
          places.add(addressOf(cell))
        }
        expect(places.size).toBe(writes.length)
      }),
      { numRuns: 500 },
    )
  })
})
