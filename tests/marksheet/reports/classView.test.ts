import { describe, expect, it } from 'vitest'
import { heatMap, questionViews } from '../../../src/marksheet/reports/classView'
import { review } from '../../../src/marksheet/marking/review'

const [sheet] = review({
  name: 'Heron',
  values: [
    ['Name', '932 − 457', '764 − 239', '874 − 523', '682 − 347'],
    ['Amina K', 525, 535, 351, 345],
    ['Bryn T', 475, 525, 351, 335],
    ['Cara O', 525, 525, '', 'abs'],
    ['Dev R', 465, 525, 351, '33 or 5'],
  ],
})
if (!sheet) throw new Error('a marksheet')

describe('the heat map', () => {
  it('lists families in teaching order, and the pupil who needs most first', () => {
    const { families, rows } = heatMap(sheet.pupils, 'need')
    expect(families).toEqual(['no exchange', 'one exchange', 'two or more exchanges'])
    // Of Cara both answers are wrong, but two answers of two types are too few to flag.
    expect(rows.map(({ pupil }) => pupil.name)).toEqual(['Amina K', 'Cara O', 'Dev R', 'Bryn T'])
    expect(rows[0]?.standings[1]).toMatchObject({ right: 0, tried: 2, status: 'needs support' })
  })

  it('lists pupils by name on request', () => {
    const names = heatMap(sheet.pupils.toReversed(), 'name').rows.map(({ pupil }) => pupil.name)
    expect(names).toEqual(['Amina K', 'Bryn T', 'Cara O', 'Dev R'])
  })

  it('leaves a gap where a pupil was never asked the family', () => {
    const [first, ...others] = sheet.pupils
    if (!first) throw new Error('a pupil')
    const { byFamily } = first.judgement
    const partly = { ...first, judgement: { ...first.judgement, byFamily: byFamily.slice(0, 1) } }
    const row = heatMap([partly, ...others], 'name').rows[0]
    expect(row?.standings.map((standing) => standing?.family ?? null)).toEqual(['no exchange', null, null])
  })
})

describe('the class by question', () => {
  const [first, second, third, fourth] = questionViews([sheet])

  it('counts who was right of those who tried, and says who missed it with what', () => {
    expect(first).toMatchObject({ text: '932 − 457', answer: '475', right: 1, tried: 4 })
    expect(first?.missed.map(({ pupil, typed }) => [pupil, typed])).toEqual([
      ['Amina K', '525'],
      ['Cara O', '525'],
      ['Dev R', '465'],
    ])
    expect(first?.missed[0]?.cell).toEqual({ row: 1, column: 1 })
  })

  it('counts blanks, absences and what cannot be read, none of them as tried', () => {
    expect([third?.tried, third?.counts.blank]).toEqual([3, 1])
    expect([fourth?.tried, fourth?.counts.absent, fourth?.counts.unreadable]).toEqual([2, 1, 1])
  })

  it('puts the most frequent wrong answer first, with the fault that leads to it', () => {
    expect(first?.commonest).toEqual([
      { answer: '525', count: 2, fault: 'takes-smaller-from-larger' },
      { answer: '465', count: 1, fault: null },
    ])
    expect(second?.commonest).toEqual([{ answer: '535', count: 1, fault: expect.any(String) as string }])
  })

  it('takes a question that is asked in several places once', () => {
    const pairs = review({
      name: 'Pairs',
      values: [
        ['Name', 'Q1', 'A1', 'Q2', 'A2'],
        ['Amina K', '932 − 457', 475, '764 − 239', 525],
        ['Bryn T', '764 − 239', 1, '932 − 457', 475],
        ['Cara O', '932 − 457', 2, '764 − 239', 525],
      ],
    })
    expect(questionViews(pairs).map(({ text, right, tried }) => [text, right, tried])).toEqual([
      ['932 − 457', 2, 3],
      ['764 − 239', 2, 3],
    ])
  })
})
