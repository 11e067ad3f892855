import { afterEach, describe, expect, it, vi } from 'vitest'
import type { Bench } from '../../../src/bench/bench'
import { ConditionalRangeFill } from '../../../src/bench/host/excel/conditionalRangeFill'
import { areaAddress } from '../../../src/marksheet/layout/matrix'
import { NOTES_TITLE } from '../../../src/marksheet/marking/notes'
import { planMarking, planMastery } from '../../../src/marksheet/marking/plan'
import { review } from '../../../src/marksheet/marking/review'
import { isFlag, SIGNATURE } from '../../../src/marksheet/marking/rules'
import { moveFormula } from '../../../src/office/edit/address'
import { takeBack } from '../../../src/office/edit/edit'
import { clearSheet, hideFlags, markSheet, type MarkingChoice } from '../../../src/office/marking/markSheet'
import { readSheet } from '../../../src/office/workbook/read'
import { WORKBOOKS } from '../../marksheets'
import {
  benchOf,
  benchWith,
  countSyncs,
  everything,
  largeMarksheet,
  marksheetOf,
  problemIn,
  shown,
} from '../host'

afterEach(() => {
  vi.restoreAllMocks()
})

const ALL: MarkingChoice = { flags: true, mastery: true }

/** Reads the sheet in front and marks it. */
async function mark(choice: MarkingChoice = ALL) {
  const reading = await readSheet()
  return { reading, done: await markSheet(reading, review(reading.matrix), choice) }
}

const rulesOf = (bench: Bench) =>
  bench.grid.conditionalFormats(bench.sheetId(bench.grid.sheets()[0]?.name ?? ''))

const addressOf = ({ areas }: ReturnType<typeof rulesOf>[number]) =>
  areas.map(({ row, col, rows, cols }) =>
    areaAddress({ top: row, left: col, bottom: row + rows - 1, right: col + cols - 1 }),
  )

describe.each(WORKBOOKS)('marking %s', (name) => {
  it('puts every rule of the plan on its cells, in the order of the plan', async () => {
    const bench = await benchOf(name)
    const { reading } = await mark()
    const { rules } = planMarking(reading.matrix, review(reading.matrix))
    const expected = rules.flatMap(({ areas, formula }) => {
      const [first = ''] = areas.map(areaAddress)
      return areas.map((area) => {
        const from = first.replace(/:.*/, '')
        return [areaAddress(area), `=${moveFormula(formula, from, areaAddress(area).replace(/:.*/, ''))}`]
      })
    })
    expect(rulesOf(bench).map((rule) => [addressOf(rule).join(), rule.formula])).toEqual(expected)
  })

  it('leaves every cell of the teacher as it is', async () => {
    const bench = await benchOf(name)
    const before = (await readSheet()).matrix
    await mark()
    const after = (await readSheet()).matrix
    before.values.forEach((row, i) => {
      expect(after.values[i]?.slice(0, row.length)).toEqual(row)
    })
    expect(bench.host.unsupported).toEqual(new Map())
  })

  it('begins the Mastery sheet as it is planned', async () => {
    const bench = await benchOf(name)
    const { reading } = await mark()
    const { rows } = planMastery(review(reading.matrix))
    const written = (await readSheet(bench.sheetId('Mastery'))).matrix.values
    expect(written.slice(0, rows.length).map((row) => row.map(String).join('\t').trimEnd())).toEqual(
      rows.map((row) =>
        row
          .map(({ text }) => text)
          .join('\t')
          .trimEnd(),
      ),
    )
  })

  it('gives the same when it is done again', async () => {
    const bench = await benchOf(name)
    await mark()
    const once = everything(bench)
    await mark()
    expect(everything(bench)).toEqual(once)
  })

  it('is taken back by Undo, and so is marking again', async () => {
    const bench = await benchOf(name)
    const untouched = shown(bench)
    const { done: first } = await mark()
    const marked = shown(bench)
    bench.userEdit(bench.grid.sheets()[0]?.name ?? '', 'ZZ1', [['a word of the teacher']])
    const { done: second } = await mark({ flags: false, mastery: true })
    bench.userEdit(bench.grid.sheets()[0]?.name ?? '', 'ZZ1', [['']])
    expect(await takeBack(second)).toEqual([])
    expect(shown(bench)).toEqual(marked)
    expect(await takeBack(first)).toEqual([])
    expect(shown(bench)).toEqual(untouched)
  })

  it('is cleared without a trace on the sheet', async () => {
    const bench = await benchOf(name)
    const [untouched] = everything(bench)
    await mark()
    await clearSheet(await readSheet())
    expect(everything(bench)[0]).toEqual(untouched)
  })
})

describe('marking', () => {
  it('takes at most 4 requests for 180 pupils and 40 questions, reading and Mastery sheet included', async () => {
    const bench = await benchWith(largeMarksheet(180, 40))
    const syncs = countSyncs(bench)
    await mark()
    expect(syncs()).toBeLessThanOrEqual(4)
    await mark()
    expect(syncs()).toBeLessThanOrEqual(8)
  })

  it('keeps the teacher’s own conditional formats, behind ours, through marking, clearing and Undo', async () => {
    const bench = await benchOf('heron-notes')
    await Excel.run(async (context) => {
      const { custom } = context.workbook.worksheets
        .getActiveWorksheet()
        .getRange('A1:Z40')
        .conditionalFormats.add('Custom')
      custom.rule.formula = '=A1="KEY:"'
      custom.format.fill.color = '#FFFF00'
      await context.sync()
    })
    const own = rulesOf(bench)
    const { done } = await mark()
    expect(rulesOf(bench).at(-1)).toEqual(own[0])
    expect(rulesOf(bench).length).toBeGreaterThan(10)
    await takeBack(done)
    expect(rulesOf(bench)).toEqual(own)
    await mark()
    await clearSheet(await readSheet())
    expect(rulesOf(bench)).toEqual(own)
  })

  it.each(['all', 'inside'] as const)(
    'marks, undoes and clears beside a conditional format of which Excel cannot read %s, and says that it stays',
    async (what) => {
      const bench = await benchOf('heron-notes')
      await mark()
      const [ours, ...rest] = rulesOf(bench)
      const theirs = {
        areas: ours?.areas ?? [],
        type: 'CellValue',
        formula: '',
        stopIfTrue: false,
        style: {},
      }
      bench.grid.setConditionalFormats(bench.sheetId('Heron'), [
        { ...theirs, id: 'made-in-manager' },
        ...(ours ? [ours] : []),
        ...rest,
        { ...theirs, type: 'Custom', formula: '=A1=1', id: 'duplicated' },
      ])
      const unreadable = ['made-in-manager', 'duplicated']
      const marked = rulesOf(bench).map(({ formula }) => formula)
      for (const id of unreadable) bench.book.unreadableFormats.set(id, what)
      const { done } = await mark()
      expect(done.told?.join()).toMatch(
        what === 'all'
          ? /^2 conditional formats on Heron cannot be read/
          : /^One conditional format on Heron/,
      )
      expect(rulesOf(bench)).toHaveLength(marked.length)
      const ids = () => rulesOf(bench).map(({ id }) => id)
      expect(ids().filter((id) => unreadable.includes(id))).toEqual(unreadable)
      expect(await takeBack(done)).toEqual([])
      expect(rulesOf(bench).map(({ formula }) => formula)).toEqual(marked)
      const { told } = await clearSheet(await readSheet())
      expect(told).toEqual(done.told)
      expect(ids()).toEqual(unreadable)
    },
  )

  describe('again', () => {
    const ids = (bench: Bench) => rulesOf(bench).map(({ id }) => id)
    const asMade = (bench: Bench) => rulesOf(bench).map((rule) => [addressOf(rule).join(), rule.formula])

    it('leaves rules in their place that stay the same', async () => {
      const bench = await benchOf('kestrel-plain')
      await mark()
      const before = ids(bench)
      await mark()
      expect(ids(bench)).toEqual(before)
    })

    it('puts those that are new between them, as marking from nothing does, and Undo takes these alone back', async () => {
      const bench = await benchOf('kestrel-plain')
      await mark({ flags: false, mastery: false })
      const before = rulesOf(bench)
      const { done } = await mark()
      const marked = asMade(bench)
      const kept = ids(bench).filter((id) => before.some((rule) => rule.id === id))
      expect(kept.length).toBeGreaterThan(before.length / 2)
      expect(kept.length).toBeLessThan(marked.length)
      await takeBack(done)
      expect(asMade(bench)).toEqual(before.map((rule) => [addressOf(rule).join(), rule.formula]))
      expect(ids(bench).filter((id) => kept.includes(id))).toEqual(kept)
      await clearSheet(await readSheet())
      await mark()
      expect(asMade(bench)).toEqual(marked)
    })

    it('brings all of them to the front where the teacher’s stand before them', async () => {
      const bench = await benchOf('kestrel-plain')
      await mark()
      const [ours] = rulesOf(bench)
      const made = asMade(bench)
      const theirs = { id: 'theirs', type: 'Custom', formula: '=A1=1', stopIfTrue: false, style: {} }
      bench.grid.setConditionalFormats(bench.grid.activeSheet(), [
        { ...theirs, areas: ours?.areas ?? [] },
        ...rulesOf(bench),
      ])
      await mark()
      expect(ids(bench).at(-1)).toBe('theirs')
      expect(asMade(bench).slice(0, -1)).toEqual(made)
    })
  })

  it.each([
    ['an empty text', ''],
    ['null', null],
  ])(
    'gives a rule of its own back without a fill where the teacher took it out, told by %s',
    async (_, none) => {
      vi.spyOn(ConditionalRangeFill.prototype, 'color', 'get').mockImplementation(function (
        this: ConditionalRangeFill,
      ) {
        return (this.access.read().style.fill ?? none) as string
      })
      const bench = await benchOf('heron-notes')
      await mark()
      const id = bench.sheetId('Heron')
      const bare = rulesOf(bench).map((rule) => ({ ...rule, style: { ...rule.style, fill: null } }))
      bench.grid.setConditionalFormats(id, bare)
      const looks = () =>
        rulesOf(bench).map(({ formula, style }) => [formula, style.fill ?? '', style.fontColour])
      const before = looks()
      const { done } = await mark()
      expect(looks()).not.toEqual(before)
      expect(await takeBack(done)).toEqual([])
      expect(looks()).toEqual(before)
    },
  )

  it('leaves rules of its own that Ctrl+Z brought back unreadable, and puts new ones before them', async () => {
    const bench = await benchOf('heron-notes')
    await mark()
    const before = rulesOf(bench)
    for (const { id } of before) bench.book.unreadableFormats.set(id, 'all')
    const { done } = await mark()
    expect(done.told?.join()).toContain('save, close and open the workbook')
    expect(rulesOf(bench).slice(-before.length)).toEqual(before)
    expect(rulesOf(bench)).toHaveLength(2 * before.length)
  })

  it('clears rules of ours that Excel split or a file brought, by their signature', async () => {
    const bench = await benchOf('kestrel-plain')
    const id = bench.grid.activeSheet()
    const area = { row: 4, col: 2, rows: 3, cols: 1 }
    const areas = [area, { ...area, row: 20 }]
    bench.grid.setConditionalFormats(id, [
      {
        id: 'from-file',
        areas,
        type: 'Custom',
        formula: `=AND(${SIGNATURE},C5=1)`,
        stopIfTrue: false,
        style: {},
      },
      { id: 'scale', areas: [area], type: 'ColorScale', formula: '', stopIfTrue: false, style: {} },
    ])
    await clearSheet(await readSheet())
    expect(rulesOf(bench).map((rule) => rule.id)).toEqual(['scale'])
  })

  it('works on a sheet whose name holds commas, quotes and exclamation marks', async () => {
    const bench = await benchWith({
      ...(await marksheetOf('kestrel-plain')),
      name: "Owls, Mrs D's (Year 4)!",
    })
    const before = shown(bench)
    const { done } = await mark()
    const marked = shown(bench)
    const { done: again } = await mark({ flags: false, mastery: true })
    await takeBack(again)
    expect(shown(bench)).toEqual(marked)
    await takeBack(done)
    expect(shown(bench)).toEqual(before)
  })

  it('takes only flags and notes off when flags are hidden, and Undo shows them again', async () => {
    const bench = await benchOf('heron-notes')
    await mark()
    const marked = everything(bench)
    const done = await hideFlags(await readSheet())
    const flags = marked[0]?.rules.filter(({ formula }) => isFlag(formula)) ?? []
    expect(flags.length).toBeGreaterThan(0)
    expect(everything(bench)[0]?.rules).toEqual(marked[0]?.rules.filter((rule) => !flags.includes(rule)))
    expect(JSON.stringify(everything(bench)[0])).not.toContain(NOTES_TITLE)
    await takeBack(done)
    expect(everything(bench)).toEqual(marked)
  })

  it('writes neither flags nor notes while flags are hidden', async () => {
    const bench = await benchOf('heron-notes')
    await mark({ flags: false, mastery: false })
    expect(JSON.stringify(everything(bench))).not.toContain(NOTES_TITLE)
    expect(everything(bench)[0]?.rules.filter(({ formula }) => isFlag(formula))).toEqual([])
    expect(everything(bench)[0]?.rules.length).toBeGreaterThan(0)
    expect(bench.grid.sheets()).toHaveLength(1)
  })

  it('never writes over a note that the teacher has replaced, and Undo leaves it too', async () => {
    const bench = await benchOf('heron-notes')
    const { done } = await mark()
    bench.userEdit('Heron', 'P12', [['see SENCo']])
    await mark()
    const value = () =>
      bench.grid.values(bench.sheetId('Heron'), { row: 11, col: 15, rows: 1, cols: 1 })[0]?.[0]
    expect(value()).toBe('see SENCo')
    const left = await takeBack(done)
    expect(value()).toBe('see SENCo')
    expect(left).toEqual(['One cell on Heron that changed since stayed as it is.'])
  })

  it('writes the Mastery sheet beside one that the teacher made herself', async () => {
    const bench = await benchOf('kestrel-plain')
    const own = bench.grid.addSheet('MASTERY')
    bench.grid.write(own, 0, 0, [['Guitar mastery class']])
    await mark()
    await mark()
    expect(
      bench.grid
        .sheets()
        .map(({ name }) => name)
        .slice(1),
    ).toEqual(['MASTERY', 'Mastery (2)'])
    expect(bench.grid.values(own, { row: 0, col: 0, rows: 1, cols: 1 })).toEqual([['Guitar mastery class']])
  })

  it('refuses a protected sheet before it writes anything, and says what to do', async () => {
    const bench = await benchOf('kestrel-plain')
    await Excel.run(async (context) => {
      context.workbook.worksheets.getActiveWorksheet().protection.protect()
      await context.sync()
    })
    const before = everything(bench)
    const { sentence, next } = await problemIn(mark())
    expect(sentence).toMatch(/is protected, so its cells cannot be coloured/)
    expect(next).toMatch(/Unprotect Sheet/)
    expect(everything(bench)).toEqual(before)
  })

  it('colours a protected sheet that allows formats, and leaves its locked cells alone', async () => {
    const bench = await benchOf('kestrel-plain')
    await Excel.run(async (context) => {
      context.workbook.worksheets.getActiveWorksheet().protection.protect({ allowFormatCells: true })
      await context.sync()
    })
    const [before] = everything(bench)
    const { done } = await mark()
    expect(done.told).toEqual(['Notes beside the names were left out, since the sheet is protected.'])
    expect(everything(bench)[0]?.formulas).toEqual(before?.formulas)
    expect(rulesOf(bench).length).toBeGreaterThan(0)
  })

  it('works on filtered, frozen, hidden and merged cells and in tables', async () => {
    const bench = await benchOf('kestrel-plain')
    const { reading } = await mark({ flags: false, mastery: false })
    const expected = rulesOf(bench).map(({ areas, formula }) => ({ areas, formula }))
    await clearSheet(reading)
    const [marksheet] = review(reading.matrix)
    const area = areaAddress(marksheet?.area ?? { top: 0, left: 0, bottom: 0, right: 0 })
    await Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getActiveWorksheet()
      sheet.freezePanes.freezeRows(2)
      sheet.getRange('A1:C1').merge()
      sheet.getRange('8:9').rowHidden = true
      sheet.tables.add(area, true)
      await context.sync()
    })
    await mark({ flags: false, mastery: false })
    expect(rulesOf(bench).map(({ areas, formula }) => ({ areas, formula }))).toEqual(expected)
  })
})

describe('notes on the sheet in front', () => {
  const values = [
    ['Name', '932 − 457', '305 − 128', '604 − 37', '721 − 356', '', '', '', ''],
    ['Amina K', 475, 177, 567, 365, '', '', '', ''],
    ['Orla B', 525, 223, 633, 435, '', '', '', ''],
  ]

  it('pass over formulas that show nothing and over merged cells', async () => {
    const formulas = values.map((row, i) => row.map((_, j) => (j === 5 && i > 0 ? '=IF(B2>0,"","")' : '')))
    const bench = await benchWith({ name: 'Owls', values, formulas })
    bench.grid.merge(bench.grid.activeSheet(), { row: 1, col: 6, rows: 2, cols: 2 })
    await mark()
    const { matrix } = await readSheet()
    expect(matrix.formulas?.map((row) => row[5])).toEqual(formulas.map((row) => row[5]))
    expect(matrix.values[0]?.[9]).toBe(NOTES_TITLE)
    expect(matrix.values[2]?.[9]).not.toBe('')
  })

  it('leave a formula that gives the words of a note as it is', async () => {
    const formula = `="${NOTES_TITLE}"`
    const formulas = values.map((row, i) => row.map((_, j) => (i === 0 && j === 8 ? formula : '')))
    await benchWith({ name: 'Owls', values, formulas })
    await mark()
    await clearSheet(await readSheet())
    expect((await readSheet()).matrix.formulas?.[0]?.[8]).toBe(formula)
  })
})
