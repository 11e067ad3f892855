import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { markAnswer } from '../../../src/answers/typed'
import { findMarksheets } from '../../../src/marksheet/layout/find'
import { readSheet } from '../../../src/office/workbook/read'
import {
  linesOf,
  outcomeOf,
  rightContent,
  typedContent,
  walkFrom,
  type Order,
} from '../../../taskpane/mark/entry/places'
import { Session } from '../../../taskpane/mark/entry/session'
import { Runner } from '../../../taskpane/common/runner'
import { benchWith, everything, marksheetOf } from '../../office/host'

const VALUES = [
  ['Name', '932 − 457', '£5.00 − £1.60'],
  ['Ada', '', ''],
  ['Ben', 525, ''],
  ['Cy', '', ''],
]

/** A session over the small marksheet above. */
async function entering(order: Order = 'question', filledToo = false, values = VALUES) {
  const bench = await benchWith({ name: 'S', values })
  const reading = await readSheet()
  const lines = linesOf(reading.matrix, findMarksheets(reading.matrix), order)
  const runner = new Runner()
  const session = new Session(runner, reading, walkFrom(lines, 0, filledToo))
  const cells = () => bench.grid.values(reading.id, { row: 1, col: 1, rows: 3, cols: 2 })
  return { bench, runner, session, cells }
}

describe('the places to walk', () => {
  it('run down one question after the other, or along one pupil after the other; filled ones are left out', async () => {
    const addresses = async (order: Order, filledToo = false) =>
      (await entering(order, filledToo)).session.places.map(({ address }) => address)
    expect(await addresses('question')).toEqual(['B2', 'B4', 'C2', 'C3', 'C4'])
    expect(await addresses('pupil')).toEqual(['B2', 'C2', 'C3', 'B4', 'C4'])
    expect(await addresses('question', true)).toEqual(['B2', 'B3', 'B4', 'C2', 'C3', 'C4'])
  })

  it('cover every answer of a class once, in both orders', async () => {
    const matrix = await marksheetOf('wren-across')
    const marksheets = findMarksheets(matrix)
    const all = (order: Order) =>
      walkFrom(linesOf(matrix, marksheets, order), 0, true).map(({ address }) => address)
    const cells = marksheets.flatMap(({ pupils }) => pupils.flatMap(({ answers }) => answers))
    expect(all('question')).toHaveLength(cells.length)
    expect(new Set(all('question'))).toEqual(new Set(all('pupil')))
  })
})

describe('entering', () => {
  it.each([
    ['abs', ['b', 's', 'Enter'], '5'],
    ['Absent', ['b', 's', 'e', 'n', 't', 'Enter'], 'Enter'],
    ['A', [], 'Enter'],
    ['a, then what is no part of the word', [], 's'],
  ])('takes %s for absent once, and nothing of it for the next pupil', async (_, swallowed, next) => {
    const { session, cells } = await entering()
    session.absent()
    expect(swallowed.map(session.swallows)).toEqual(swallowed.map(() => true))
    expect(session.swallows(next)).toBe(false)
    expect(session.swallows('b')).toBe(false)
    await session.settled()
    expect(cells()).toEqual([
      ['abs', 'abs'],
      [525, ''],
      ['', ''],
    ])
  })

  it('puts in the right answer, a typed one, absent and blank, each as it is entered', async () => {
    const { session, cells } = await entering()
    session.right()
    session.typed('525')
    session.right()
    session.absent()
    session.blank()
    await session.settled()
    expect(cells()).toEqual([
      [475, 3.4],
      [525, 'abs'],
      [525, '-'],
    ])
    expect([...session.state().entered.values()].map(({ outcome }) => outcome)).toEqual([
      'correct',
      'incorrect',
      'correct',
      'absent',
      'blank',
    ])
    expect(session.place).toBeUndefined()
    session.right()
    expect(session.state().index).toBe(5)
  })

  it('takes one key for an absent child: its blank cells say so, and entry comes to none of them again', async () => {
    const { bench, runner, session, cells } = await entering('question', true)
    const before = everything(bench)
    const walked: string[] = []
    for (let key = 0; session.place && key < 9; key++) {
      walked.push(`${session.place.pupil} ${session.place.question.charAt(0)}`)
      if (session.place.pupil === 'Cy') session.right()
      else session.absent()
    }
    await session.settled()
    expect(walked).toEqual(['Ada 9', 'Ben 9', 'Cy 9', 'Cy £'])
    expect(cells()).toEqual([
      ['abs', 'abs'],
      ['abs', 'abs'],
      [475, 3.4],
    ])
    await runner.undo()
    expect(everything(bench)).toEqual(before)
  })

  it('never puts absent over an answer that stands already, but where entry has come to it', async () => {
    const { session, cells } = await entering('pupil', true)
    session.skip()
    session.skip()
    session.skip()
    expect(session.place).toMatchObject({ pupil: 'Ben', address: 'C3' })
    session.absent()
    await session.settled()
    expect(cells()[1]).toEqual([525, 'abs'])
  })

  it('tells two of one name apart', async () => {
    const { session, cells } = await entering('question', false, [
      ['Name', '932 − 457', '£5.00 − £1.60'],
      ['Ada', '', ''],
      ['Ben', '', ''],
      ['Ada', '', ''],
    ])
    session.absent()
    await session.settled()
    expect(cells()).toEqual([
      ['abs', 'abs'],
      ['', ''],
      ['', ''],
    ])
  })

  it('takes a mistaken absent back: one step back, another answer, and the child’s other cells are blank again', async () => {
    const { session, cells } = await entering('pupil')
    session.absent()
    expect(session.place?.pupil).toBe('Ben')
    session.back()
    expect(session.place?.address).toBe('B2')
    session.typed('475')
    expect(session.place?.address).toBe('C2')
    await session.settled()
    expect(session.state().entered.size).toBe(1)
    expect(cells()[0]).toEqual([475, ''])
  })

  it('is safe to stop at any time: what was entered is written', async () => {
    const { session, cells } = await entering()
    session.typed('400')
    await session.settled()
    expect(cells()[0]?.[0]).toBe(400)
    expect(session.state()).toMatchObject({ index: 1, writing: 0, problem: null })
  })

  it('goes back and enters again; Undo gives the cells what they held before', async () => {
    const { bench, runner, session, cells } = await entering()
    const before = everything(bench)
    session.right()
    session.right()
    session.back()
    session.back()
    session.typed('4?5')
    session.skip()
    session.right()
    await session.settled()
    expect(cells()).toEqual([
      ['4?5', 3.4],
      [525, ''],
      [475, ''],
    ])
    expect(runner.state().undo?.title).toBe('quick entry on S')
    await runner.undo()
    expect(everything(bench)).toEqual(before)
    expect(runner.state().undo).toBeNull()
  })

  it('goes back to an answer that could not be written, says why, and drops those typed after it', async () => {
    const { bench, session, cells } = await entering()
    bench.host.editing = true
    session.right()
    session.right()
    session.right()
    await session.settled()
    bench.host.editing = false
    expect(session.state()).toMatchObject({ index: 0, writing: 0 })
    expect(session.state().problem?.sentence).toMatch(
      /answer of Ada in B2 was not written: Excel is waiting for a cell/,
    )
    expect(session.state().entered.size).toBe(0)
    session.right()
    await session.settled()
    expect(session.state().problem).toBeNull()
    expect(cells()[0]?.[0]).toBe(475)
    expect(cells()[2]?.[0]).toBe('')
  })

  it('goes back to an absent child who could not be written, all of that child’s cells as they were', async () => {
    const { bench, session, cells } = await entering()
    bench.host.editing = true
    session.absent()
    await session.settled()
    bench.host.editing = false
    expect(session.state()).toMatchObject({ index: 0, writing: 0 })
    expect(session.state().entered.size).toBe(0)
    session.absent()
    await session.settled()
    expect(cells()[0]).toEqual(['abs', 'abs'])
  })

  it('starts a new undo where the entry so far has been undone', async () => {
    const { runner, session, cells } = await entering()
    session.right()
    await session.settled()
    await runner.undo()
    session.right()
    await session.settled()
    expect(cells()[0]?.[0]).toBe('')
    expect(cells()[2]?.[0]).toBe(475)
    await runner.undo()
    expect(cells()[2]?.[0]).toBe('')
  })
})

describe('what is written', () => {
  it('is never made into a date or a formula, and reads as what was typed', async () => {
    const { bench, session } = await entering()
    for (const typed of ['3-4', '=1+1', '1/2', ' 475 ']) {
      session.typed(typed)
      session.back()
      await session.settled()
      const [[value] = []] = bench.grid.values(bench.grid.activeSheet(), { row: 1, col: 1, rows: 1, cols: 1 })
      expect(String(value)).toBe(typed.trim())
      expect(bench.grid.format(bench.grid.activeSheet(), 1, 1).numberFormat).toBe('General')
    }
  })

  it('comes out as the typed text itself would', () => {
    const key = { value: '475', unit: '', numeral: { digits: 475n, places: 0 } } as never
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ maxLength: 12 }),
          fc.nat().map(String),
          fc.constantFrom('475', '0475', '475.0', '4,75'),
        ),
        (typed) => {
          expect(outcomeOf(typedContent(typed), key)).toBe(markAnswer(typed, key))
        },
      ),
    )
  })

  it('is correct where it is the right answer', () => {
    const matrix = { name: 'S', values: VALUES }
    for (const { places } of linesOf(matrix, findMarksheets(matrix), 'question'))
      for (const { key } of places) expect(outcomeOf(rightContent(key), key)).toBe('correct')
  })
})
