import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { findMarksheets } from '../../../src/marksheet/layout/find'
import { workAgainst, workAtType } from '../../../src/marksheet/reports/needs'
import { planReports, pupilReport } from '../../../src/marksheet/reports/pupilReport'
import { review } from '../../../src/marksheet/marking/review'
import { planWeek } from '../../../src/marksheet/record/week'
import { anyCounts, judged } from '../../mastery/judged'
import { asked } from '../../support/asked'

const like = ['874 − 523', '965 − 342', '932 − 457', '305 − 128'].map(asked)
const wish = { count: 5, seed: 'pages', like }
const [sheet] = review({
  name: 'Heron',
  values: [
    ['Name', '874 − 523', '965 − 342', '932 − 457', '543 − 276'],
    ['Amina K', 351, 623, 525, 333],
    ['Bryn T', 351, 623, 475, 267],
  ],
})
const [amina, bryn] = sheet?.pupils ?? []
if (!amina || !bryn) throw new Error('two pupils')
const textOf = (rows: readonly (readonly { readonly text: string }[])[]) =>
  rows.map((row) => row.map(({ text }) => text).join(' | ')).join('\n')

describe('a pupil’s own report', () => {
  it('says what is secure with its evidence, and what comes next with an example and questions of it', () => {
    const report = pupilReport(amina.name, amina.judgement, wish)
    expect(report.can.map(({ type, right, tried }) => [type, right, tried])).toEqual([['no exchange', 2, 2]])
    expect(report.next?.type).toBe('two exchanges, next to each other')
    expect(report.next?.work.example?.type).toBe('two exchanges, next to each other')
    expect(report.next?.work.questions.length).toBe(5)
  })

  it('does not call answers too few where there are enough and none is right', () => {
    const [cole, away] = review({
      name: 'Week',
      values: [
        ['Name', '874 − 523', '965 − 342', '932 − 457', '605 − 338'],
        ['Cole B', 1, 2, 3, 4],
        ['Dee A', 351, '', '', ''],
      ],
    }).flatMap(({ pupils }) => pupils)
    if (!cole || !away) throw new Error('two pupils')
    const pageOf = ({ name, judgement }: typeof cole) =>
      textOf(planReports([pupilReport(name, judgement, wish)], '6 November 2026').table.rows)
    expect(pageOf(cole)).toContain('I can do this | This is still being learnt: what comes next is below.')
    expect(pageOf(away)).toContain('I can do this | Not enough answers yet to say what is secure.')
  })

  it('has the next type up where everything is secure, and leaves it to the teacher where nothing was answered', () => {
    expect(pupilReport(bryn.name, bryn.judgement, wish).next?.type).toBe('three or more exchanges')
    const absent = pupilReport('Ali D', judged({ 'no exchange': [0, 0] }), wish)
    const page = textOf(planReports([absent], '6 November 2026').table.rows)
    expect(page).toContain('Your teacher will tell you what comes next.')
    expect(page).not.toContain('✓')
  })

  it('says “I can” only of what was all right twice or more, and “mostly right” of more right than wrong', () => {
    fc.assert(
      fc.property(anyCounts, (counts) => {
        const report = pupilReport('Ali D', judged(counts), { ...wish, count: 1 })
        const page = textOf(planReports([report], 'today').table.rows).split('\n')
        for (const line of page) {
          const [, can, right, tried] = /(✓ )?I (?:can|know).* \((\d+) of (\d+)\)$/.exec(line) ?? []
          if (tried === undefined) continue
          if (can !== undefined) expect(Number(tried) >= 2 && right === tried).toBe(true)
          else expect(2 * Number(right)).toBeGreaterThan(Number(tried))
        }
        const shown = page.filter((line) => line.includes('✓')).length
        const allRight = Object.values(counts).filter(([right, tried]) => right === tried && tried >= 2)
        expect(shown).toBe(allRight.length)
      }),
      { numRuns: 40 },
    )
  })

  it('is printed on a page of its own, and names no other pupil', () => {
    const reports = [amina, bryn].map(({ name, judgement }) => pupilReport(name, judgement, wish))
    const { table, breaks } = planReports(reports, '6 November 2026')
    expect(breaks.map((row) => table.rows[row]?.[0]?.text)).toEqual(['Bryn T'])
    const page = textOf(table.rows.slice(0, breaks[0]))
    expect(page).toContain('Amina K | 6 November 2026')
    expect(page).toContain(
      '✓ I can line up the columns and subtract each one, starting on the right. (2 of 2)',
    )
    expect(page).not.toContain('Bryn')
    expect(textOf(table.rows.slice(breaks[0]))).toContain('Next I learn')
  })
})

describe('this week’s page', () => {
  const table = planWeek({
    className: '4H',
    date: '6 November 2026',
    byNeed: [
      {
        need: { kind: 'fault', fault: 'takes-smaller-from-larger', type: null },
        names: ['Amina K', 'Dev R'],
        work: workAgainst('takes-smaller-from-larger', wish),
      },
      {
        need: { kind: 'family', fault: null, type: 'through a zero' },
        names: ['Cara O'],
        work: workAtType('through a zero', wish),
      },
    ],
  })
  const page = textOf(table.rows)

  it('holds every group with its names and next set, and the caution once', () => {
    expect(page).toContain('Group 1 | takes the smaller digit from the larger')
    expect(page).toContain('Group 2 | through a zero')
    expect(page).toContain('What helps | ')
    expect(page).toContain('Pupils | Cara O')
    expect(page).toContain('Pupils | Amina K, Dev R')
    expect(page.match(/Next set \| 1\)/g)?.length).toBe(2)
    expect(page.match(/never a verdict/g)?.length).toBe(1)
  })

  it('reteaches the first group’s fault with an example that meets it, right and wrong', () => {
    const example = workAgainst('takes-smaller-from-larger', wish)
    const text = example.example?.text.replaceAll(' ', '\u00a0') ?? ''
    expect(page).toContain(`Example | ${text} = ${example.example?.answer}`)
    expect(page).toContain(
      `With the fault | ${example.example?.text} = ${example.faulty}. What went wrong here?`,
    )
  })

  it('reteaches the first need where no fault is named, and says so where nobody needs support', () => {
    const need = {
      need: { kind: 'family', fault: null, type: 'through a zero' } as const,
      names: ['Cara O'],
      work: workAtType('through a zero', wish),
    }
    const without = textOf(planWeek({ className: '', date: 'd', byNeed: [need] }).rows)
    expect(without).toContain('Reteach')
    expect(without).not.toContain('What helps')
    const nobody = textOf(planWeek({ className: '', date: 'd', byNeed: [] }).rows)
    expect(nobody).toContain('Nobody is flagged')
    expect(nobody).not.toContain('Reteach')
  })

  it('is not taken for a marksheet', () => {
    const values = table.rows.map((row) => row.map(({ text }) => text))
    expect(findMarksheets({ name: 'This week', values })).toEqual([])
  })
})
