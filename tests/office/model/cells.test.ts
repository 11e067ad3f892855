import { describe, expect, it } from 'vitest'
import { cellArea } from '../../../src/bench/grid/area'
import { startBench } from '../../../src/bench/node'
import { takeBack } from '../../../src/office/edit/edit'
import type { Notation } from '../../../src/lesson/model/notation'
import { insertLayout, layoutPlace } from '../../../src/office/model/cells'
import { insertPicture } from '../../../src/office/model/picture'
import { selectedQuestion } from '../../../src/office/model/question'
import { asked } from '../../support/asked'
import { benchOf } from '../host'

const PIXEL =
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg=='

const ABOVE: Notation = { exchange: 'above', carry: 'above' }

/** An empty workbook with a cell of its only sheet selected. */
async function emptyBench(selected = 'B3') {
  const bench = await startBench()
  const { id, name } = bench.grid.sheets()[0] ?? { id: '', name: '' }
  bench.select(name, selected)
  return { bench, id, name }
}

const picture = {
  base64: PIXEL,
  width: 150,
  height: 120,
  name: 'Columnwise 52 − 17',
  altText: '52 − 17 in columns',
}

describe('the layout in cells', () => {
  it('stands from the selected cell on: digits as numbers, crossed out where another took their place', async () => {
    const { bench, id } = await emptyBench()
    const question = asked('932 − 457')
    const place = await layoutPlace(question, ABOVE)
    expect(place.taken).toEqual([])
    await insertLayout(place, false)
    expect(bench.grid.values(id, { row: 2, col: 1, rows: 5, cols: 4 })).toEqual([
      ['', '', 12, ''],
      ['', 8, 2, 12],
      ['', 9, 3, 2],
      ['−', 4, 5, 7],
      ['', 4, 7, 5],
    ])
    const crossed = (row: number, col: number) => bench.grid.format(id, row, col).strikethrough
    expect([crossed(4, 2), crossed(4, 3), crossed(3, 3), crossed(2, 3), crossed(5, 3)]).toEqual([
      true,
      true,
      true,
      false,
      false,
    ])
    expect(bench.grid.format(id, 3, 3).fontSize).toBe(9)
    expect(bench.grid.format(id, 6, 2).borders.top?.style).toBe('Continuous')
    expect(bench.grid.format(id, 6, 2).borders.bottom?.style).toBe('Continuous')
  })

  it('is written as the school writes it: a small 1 beside the digit, carried tens below the answer', async () => {
    const { bench, id } = await emptyBench()
    const below: Notation = { exchange: 'beside', carry: 'below' }
    await insertLayout(await layoutPlace(asked('932 − 457'), below), false)
    expect(bench.grid.values(id, { row: 2, col: 1, rows: 4, cols: 4 })).toEqual([
      ['', 8, '¹2', ''],
      ['', 9, 3, '¹2'],
      ['−', 4, 5, 7],
      ['', 4, 7, 5],
    ])
    bench.select(bench.grid.sheets()[0]?.name ?? '', 'H3')
    await insertLayout(await layoutPlace(asked('789 + 642'), below), false)
    expect(bench.grid.values(id, { row: 2, col: 7, rows: 4, cols: 5 })).toEqual([
      ['', '', 7, 8, 9],
      ['+', '', 6, 4, 2],
      ['', 1, 4, 3, 1],
      ['', '', 1, 1, ''],
    ])
    expect(bench.grid.format(id, 5, 9).fontSize).toBe(9)
    expect(bench.grid.format(id, 4, 9).borders.bottom?.style).toBe('Continuous')
    expect(bench.grid.format(id, 5, 9).borders.bottom?.style ?? 'None').toBe('None')
  })

  it('names cells that are not empty, writes over them only when told, and Undo gives back what they held', async () => {
    const { bench, id } = await emptyBench('A1')
    bench.grid.write(id, 1, 1, [['mine']])
    bench.grid.setFormat(id, cellArea(1, 1), { fontSize: 14, horizontal: 'Right' })
    const question = asked('52 − 17')
    const place = await layoutPlace(question, ABOVE)
    expect(place.taken).toEqual(['B2'])
    await expect(insertLayout(place, false)).rejects.toThrow(/B2.*not empty/)
    expect(bench.grid.values(id, cellArea(1, 1))).toEqual([['mine']])
    const done = await insertLayout(place, true)
    expect(bench.grid.values(id, cellArea(1, 1))).not.toEqual([['mine']])
    await takeBack(done)
    expect(bench.grid.values(id, cellArea(1, 1))).toEqual([['mine']])
    expect(bench.grid.format(id, 1, 1)).toMatchObject({ fontSize: 14, horizontal: 'Right' })
    expect(bench.grid.used(id, true)).toEqual(cellArea(1, 1))
    const { bottom } = place.area
    expect(bench.grid.format(id, bottom, 1).borders.top?.style ?? 'None').toBe('None')
  })

  it('on a protected sheet is refused with a sentence, and nothing is changed', async () => {
    const { bench, id } = await emptyBench('A1')
    const question = asked('52 − 17')
    bench.book.sheet(id).protection = { options: {} }
    await expect(layoutPlace(question, ABOVE)).rejects.toThrow(/is protected/)
    await expect(insertPicture(picture)).rejects.toThrow(/is protected/)
    expect(bench.grid.used(id, true)).toBeNull()
  })
})

describe('the picture', () => {
  it('lies at the selected cell in the size given, told in words, and Undo takes it away', async () => {
    const { bench, id } = await emptyBench('C4')
    const done = await insertPicture(picture)
    const left = bench.grid.columnWidth(id, 0) + bench.grid.columnWidth(id, 1)
    expect(bench.book.sheet(id).shapes).toMatchObject([
      { name: picture.name, altText: picture.altText, left, width: 150, height: 120, image: PIXEL },
    ])
    await takeBack(done)
    expect(bench.book.sheet(id).shapes).toEqual([])
  })

  it('that the teacher has deleted already is no problem for Undo', async () => {
    const { bench, id } = await emptyBench()
    const done = await insertPicture(picture)
    bench.book.sheet(id).shapes = []
    expect(await takeBack(done)).toEqual([])
  })
})

describe('the question of the selected cell', () => {
  it('is the one in the cell', async () => {
    const { bench, id } = await emptyBench('B2')
    bench.grid.write(id, 1, 1, [['Q4) 7,214 − 86 =']])
    const { address, question, fault } = await selectedQuestion()
    expect([address, fault]).toEqual(['B2', null])
    expect(question).toEqual(asked('7,214 − 86'))
  })

  it('is the one that a selected answer answers, with the likeliest reason where it is wrong', async () => {
    const bench = await startBench()
    const { id, name } = bench.grid.sheets()[0] ?? { id: '', name: '' }
    bench.grid.write(id, 0, 0, [
      ['Name', '932 − 457', '305 − 128'],
      ['Robin A', 525, 177],
      ['Wren F', 475, 277],
      ['Lark M', '', 'abs'],
    ])
    const at = async (cell: string) => {
      bench.select(name, cell)
      const { question, fault } = await selectedQuestion()
      return [question, fault]
    }
    expect(await at('B2')).toEqual([asked('932 − 457'), 'takes-smaller-from-larger'])
    expect(await at('B3')).toEqual([asked('932 − 457'), null])
    expect(await at('C3')).toEqual([asked('305 − 128'), 'nine-for-free'])
    expect(await at('C4')).toEqual([asked('305 − 128'), null])
  })

  it('is none in a name or an empty cell, and the sentence says what to select', async () => {
    const bench = await benchOf('kestrel-plain')
    const { name } = bench.grid.sheets()[0] ?? { name: '' }
    bench.select(name, 'Z90')
    await expect(selectedQuestion()).rejects.toThrow('Cell Z90 is empty. Select a cell with a question')
  })
})
