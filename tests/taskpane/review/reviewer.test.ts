import { describe, expect, it } from 'vitest'
import type { Bench } from '../../../src/bench/bench'
import { nextSetFor } from '../../../src/marksheet/setting/nextSet'
import { planReports, pupilReport } from '../../../src/marksheet/reports/pupilReport'
import { readSheet } from '../../../src/office/workbook/read'
import { Marker } from '../../../taskpane/mark/marker'
import { namesToAsk, Reviewer } from '../../../taskpane/review/reviewer'
import { peopleOnSheet } from '../../../taskpane/review/pupils/people'
import { weekPage } from '../../../taskpane/review/record/week'
import { Front } from '../../../taskpane/common/front'
import { Runner } from '../../../taskpane/common/runner'
import { benchOf, benchWith, everything, shown } from '../../office/host'

const DAY = '2026-11-06'

/** The Review area's state over a bench, once it has looked at the sheet. */
async function reviewing(bench: Bench) {
  Office.context.document.settings.remove('columnwise')
  const runner = new Runner()
  const reviewer = new Reviewer(runner, new Front())
  await reviewer.look()
  const notice = () => runner.state().notice?.sentence
  return { bench, runner, reviewer, state: reviewer.state, notice }
}

const valuesOf = async (bench: Bench, name: string) => (await readSheet(bench.sheetId(name))).matrix.values

const wish = { count: 6, seed: 'a seed', like: [] }

describe('Review', () => {
  it('shows the class without writing anything', async () => {
    const bench = await benchOf('heron-notes')
    const before = everything(bench)
    const { state } = await reviewing(bench)
    expect(state().seen?.pupils.length).toBe(26)
    expect(state().record?.rows).toEqual([])
    expect(everything(bench)).toEqual(before)
  })

  it('keeps the marksheet in view while a sheet of its own is in front', async () => {
    const { bench, reviewer, state } = await reviewing(await benchOf('heron-notes'))
    await reviewer.addToRecord('Heron', DAY, new Map())
    bench.grid.activateSheet(bench.sheetId('Record'))
    await reviewer.look()
    expect(state().seen?.reading.name).toBe('Heron')
    expect(state().record?.rows.length).toBe(260)
  })

  it('goes on to the sheet that came to the front while something was being written', async () => {
    const { bench, reviewer, runner, state } = await reviewing(await benchOf('heron-notes'))
    const id = bench.grid.addSheet('Next week')
    bench.grid.write(id, 0, 0, [
      ['Name', '932 − 457'],
      ['Ada', 475],
      ['Ben', 525],
    ])
    const looks: Promise<void>[] = []
    await runner.run('Laying out', () => {
      bench.grid.activateSheet(id)
      looks.push(reviewer.look(), reviewer.look())
      return Promise.resolve()
    })
    await Promise.all(looks)
    expect(state().seen?.reading.name).toBe('Next week')
  })

  it('is about the sheet that Mark has marked, until another comes to the front', async () => {
    const bench = await benchOf('heron-notes')
    const id = bench.grid.addSheet('Next week')
    bench.grid.write(id, 0, 0, [
      ['Name', '932 − 457'],
      ['Ada', 475],
      ['Ben', 525],
    ])
    const runner = new Runner()
    const front = new Front()
    const [marker, reviewer] = [new Marker(runner, front), new Reviewer(runner, front)]
    await marker.look()
    bench.grid.activateSheet(id)
    await marker.mark()
    await reviewer.look()
    expect(reviewer.state().seen?.reading.name).toBe('Heron')
    front.turn()
    await Promise.all([marker.look(), reviewer.look()])
    expect([marker.state(), reviewer.state()].map(({ seen }) => seen?.reading.name)).toEqual([
      'Next week',
      'Next week',
    ])
  })

  it('adds the answers as they stand to Record, remembers the class, and Undo takes them out', async () => {
    const { bench, reviewer, runner, state, notice } = await reviewing(await benchOf('heron-notes'))
    const before = shown(bench)
    await reviewer.addToRecord('4H', DAY, new Map())
    expect(notice()).toBe('Heron is in Record: 260 answers of 26 pupils.')
    expect(state().settings.className).toBe('4H')
    await reviewer.look()
    expect(new Set(state().record?.rows.map((row) => row.class))).toEqual(new Set(['4H']))
    await runner.undo()
    await reviewer.look()
    expect(state().record?.rows).toEqual([])
    expect(shown(bench)).toEqual(before)
  })

  it('asks before it writes where the sheet is on record, and says where nothing was written', async () => {
    const { bench, reviewer, state, notice } = await reviewing(await benchOf('heron-notes'))
    const days = () => [...new Set(state().record?.rows.map((row) => `${row.class} ${row.date}`))]
    await reviewer.addToRecord('4H', DAY, new Map())
    await reviewer.look()
    const before = everything(bench)
    await reviewer.addToRecord('4H', DAY, new Map())
    expect(notice()).toBe(
      'Nothing was added: Record holds these 260 answers of Heron already, under 4H, 6 November 2026.',
    )
    await reviewer.addToRecord('4K', '2026-11-13', new Map())
    expect(state().filing?.met).toMatchObject([{ class: '4H', date: DAY, shared: 10, changed: 0 }])
    await reviewer.file(null)
    expect(everything(bench)).toEqual(before)
    await reviewer.addToRecord('4K', '2026-11-13', new Map())
    const [keepsDay] = state().filing?.filings ?? []
    await reviewer.file(keepsDay ?? null)
    await reviewer.look()
    expect([days(), state().record?.rows.length]).toEqual([[`4K ${DAY}`], 260])
    await reviewer.addToRecord('4K', '2026-11-20', new Map())
    await reviewer.file(state().filing?.filings.at(-1) ?? null)
    await reviewer.look()
    expect([days(), state().record?.rows.length]).toEqual([[`4K ${DAY}`, '4K 2026-11-20'], 520])
  })

  it('asks anew where an answer was changed after it had asked', async () => {
    const { bench, reviewer, state } = await reviewing(
      await benchWith({
        name: 'S',
        values: [
          ['Name', '932 − 457'],
          ['Ada B', 475],
          ['Ben C', 525],
        ],
      }),
    )
    await reviewer.addToRecord('4H', DAY, new Map())
    bench.userEdit('S', 'B2', [['1']])
    await reviewer.addToRecord('4H', DAY, new Map())
    expect(state().filing?.met[0]?.changed).toBe(1)
    bench.userEdit('S', 'B3', [['2']])
    await reviewer.file(state().filing?.filings[0] ?? null)
    expect(state().filing?.met[0]?.changed).toBe(2)
    await reviewer.file(state().filing?.filings[0] ?? null)
    await reviewer.look()
    expect(state().record?.rows.map(({ typed }) => typed)).toEqual(['1', '2'])
  })

  it('asks which row counts for a name that stands in two, and takes that one only', async () => {
    const { reviewer, state } = await reviewing(
      await benchWith({
        name: 'Form',
        values: [
          ['Name', '932 − 457', '874 − 523'],
          ['Maya I', 525, 351],
          ['Bryn T', 475, 351],
          ['maya i', 475, 351],
        ],
      }),
    )
    const [asked, ...others] = namesToAsk(state().seen?.reviews ?? [])
    expect([asked?.pupils, others]).toEqual([[0, 2], []])
    await reviewer.addToRecord('4H', DAY, new Map([[asked?.key ?? '', 2]]))
    await reviewer.look()
    expect(state().record?.rows.map(({ pupil, typed }) => [pupil, typed])).toEqual([
      ['Bryn T', '475'],
      ['Bryn T', '351'],
      ['maya i', '475'],
      ['maya i', '351'],
    ])
    await reviewer.addToRecord('4H', DAY, new Map([[asked?.key ?? '', null]]))
    await reviewer.file(state().filing?.filings[0] ?? null)
    await reviewer.look()
    expect(new Set(state().record?.rows.map(({ pupil }) => pupil))).toEqual(new Set(['Bryn T']))
  })

  it('takes no row of a name that was not decided', async () => {
    const { reviewer, state } = await reviewing(
      await benchWith({
        name: 'Form',
        values: [
          ['Name', '932 − 457'],
          ['Maya I', 525],
          ['Bryn T', 475],
          ['Maya I', 475],
          ['Cai R', 475],
        ],
      }),
    )
    await reviewer.addToRecord('4H', DAY, new Map())
    await reviewer.look()
    expect(state().record?.rows.map(({ pupil }) => pupil)).toEqual(['Bryn T', 'Cai R'])
  })

  it('clears what is from before a day', async () => {
    const { reviewer, state } = await reviewing(await benchOf('kestrel-plain'))
    await reviewer.addToRecord('4H', '2026-07-01', new Map())
    await reviewer.clearBefore('2026-09-01')
    await reviewer.look()
    expect(state().record?.rows).toEqual([])
  })

  it('says so where Record cannot be read, and still shows the sheet', async () => {
    const { bench, reviewer, state } = await reviewing(await benchOf('kestrel-plain'))
    await reviewer.addToRecord('4H', DAY, new Map())
    bench.userEdit('Record', 'A3', [['When']])
    await reviewer.look()
    expect(state().problem).toContain('headings')
    expect(state().seen?.pupils.length).toBeGreaterThan(0)
  })

  it('writes a next set from the selected cell, as text, and asks before it writes over anything', async () => {
    const { bench, reviewer, runner, state } = await reviewing(await benchOf('kestrel-plain'))
    const set = nextSetFor('through a zero', wish)
    const questions = 'questions' in set ? set.questions : []
    const id = bench.grid.addSheet('Group 1')
    bench.grid.write(id, 0, 2, [['mine']])
    bench.select('Group 1', 'A1')
    await reviewer.writeQuestions(questions, 'across')
    expect(state().asked?.target.taken).toEqual([{ address: 'C1', value: 'mine' }])
    expect(await valuesOf(bench, 'Group 1')).toEqual([['', '', 'mine']])
    await reviewer.answer(false)
    expect(await valuesOf(bench, 'Group 1')).toEqual([['', '', 'mine']])
    await reviewer.writeQuestions(questions, 'across')
    await reviewer.answer(true)
    const [row] = await valuesOf(bench, 'Group 1')
    expect(row?.length).toBe(6)
    expect(row?.every((text) => /^[\d,]+ − [\d,]+$/.test(String(text)))).toBe(true)
    await runner.undo()
    expect(await valuesOf(bench, 'Group 1')).toEqual([['', '', 'mine']])
  })

  it('puts comments on wrong answers only when asked, beside those of others, and takes off its own', async () => {
    const { bench, reviewer, runner, notice } = await reviewing(
      await benchWith({
        name: 'S',
        values: [
          ['Name', '932 − 457', '764 − 239', '874 − 523'],
          ['Amina K', 525, 535, 351],
          ['Bryn T', 475, 525, 999],
        ],
      }),
    )
    const facts = () => bench.book.sheet(bench.sheetId('S')).comments
    facts().push({ id: 'x', row: 1, col: 2, author: 'A', content: 'Seen by me', resolved: false })
    await reviewer.comment(true)
    expect(notice()).toBe('1 comment written.')
    expect(facts().map(({ row, col, content }) => [row, col, content.slice(0, 38)])).toEqual([
      [1, 2, 'Seen by me'],
      [1, 1, 'Columnwise: perhaps: Takes the smaller'],
    ])
    await reviewer.comment(true)
    expect(facts().length).toBe(2)
    await runner.undo()
    expect(facts().length).toBe(2)
    await reviewer.comment(false)
    expect(facts().map(({ content }) => content)).toEqual(['Seen by me'])
    await runner.undo()
    expect(facts().length).toBe(2)
  })

  it('writes the Mastery sheet with a table and a chart of the class, again and again', async () => {
    const { bench, reviewer, runner } = await reviewing(await benchOf('heron-notes'))
    await reviewer.writeMastery()
    const id = bench.sheetId('Mastery')
    const [chart] = bench.book.sheet(id).charts
    expect(chart).toMatchObject({ chartType: 'BarStacked', title: 'The class by type, in pupils' })
    const rows = bench.grid.values(id, chart?.source ?? { row: 0, col: 0, rows: 1, cols: 1 })
    expect(rows[0]).toEqual(['Type', 'secure', 'nearly secure', 'needs support', 'not enough seen'])
    for (const [, ...counts] of rows.slice(1))
      expect(counts.reduce<number>((sum, count) => sum + Number(count), 0)).toBe(26)
    expect(rows.slice(1).every(([, ...counts]) => counts.every((count) => typeof count === 'number'))).toBe(
      true,
    )
    const before = everything(bench)
    bench.userEdit('Heron', 'C6', [['1']])
    await reviewer.writeMastery()
    expect(bench.book.sheet(id).charts.length).toBe(1)
    expect(bench.book.tables.length).toBe(1)
    await runner.undo()
    expect(everything(bench).filter(({ name }) => name === 'Mastery')).toEqual(
      before.filter(({ name }) => name === 'Mastery'),
    )
    expect(bench.book.sheet(id).charts[0]).toMatchObject({ source: chart?.source, left: chart?.left })
    await runner.undo()
    expect(bench.book.sheet(id).charts).toEqual([])
    expect(bench.book.tables).toEqual([])
  })

  it('puts this week’s page on one sheet of paper, and a report for each pupil on one each', async () => {
    const { bench, reviewer, state } = await reviewing(await benchOf('heron-notes'))
    const people = peopleOnSheet(state().seen?.pupils ?? [], [], '')
    const like = people.flatMap(({ asked }) => asked)
    await reviewer.writePages(
      weekPage(people, { size: 5, wish: { ...wish, like }, className: '4H', day: DAY }),
      'one',
    )
    const page = bench.book.sheet(bench.sheetId('This week')).page
    expect(page).toMatchObject({ paperSize: 'A4', zoom: { horizontalFitToPages: 1, verticalFitToPages: 1 } })
    expect((await valuesOf(bench, 'This week'))[1]?.[0]).toBe('4H, 6 November 2026')
    const reports = people.map((each) =>
      pupilReport(each.name, each.judgement, { ...wish, like: each.asked }),
    )
    await reviewer.writePages(planReports(reports, DAY), 'many')
    const sheet = bench.book.sheet(bench.sheetId('Reports'))
    expect(sheet.rowBreaks.length).toBe(people.length - 1)
    const values = await valuesOf(bench, 'Reports')
    expect(sheet.rowBreaks.map((row) => values[row]?.[0])).toEqual(people.slice(1).map(({ name }) => name))
    await reviewer.writePages(planReports(reports.slice(0, 1), DAY), 'many')
    expect(bench.grid.sheets().map(({ name }) => name)).not.toContain('Reports (2)')
    expect(bench.book.sheet(bench.sheetId('Reports')).rowBreaks).toEqual([])
    expect(bench.host.unsupported).toEqual(new Map())
  })
})
