import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cellsEdit, type Content } from '../../../src/office/edit/cells'
import { perform, takeBack } from '../../../src/office/edit/edit'
import { benchWith, everything, problemIn } from '../host'

const ONE = { row: 0, col: 0, rows: 1, cols: 1 }

describe('a text that is written', () => {
  const hostile = fc.constantFrom(
    '=1+1',
    '12-5',
    '3/4',
    '1e5',
    '+44',
    '-7',
    '@SUM(A1)',
    'TRUE',
    'May 5',
    '£3.40',
    "'quoted",
    '#N/A',
    '007',
    '5%',
  )
  it('is in the cell as that text, whatever it looks like', async () => {
    const bench = await benchWith({ name: 'Texts', values: [['']] })
    const id = bench.grid.activeSheet()
    await fc.assert(
      fc.asyncProperty(fc.oneof(hostile, fc.string({ maxLength: 40, unit: 'grapheme' })), async (text) => {
        await perform('', [cellsEdit({ id, name: 'Texts' }, [{ top: 0, left: 0, rows: [[text]] }])])
        expect(bench.grid.formulas(id, ONE)).toEqual([[text]])
        expect(bench.grid.values(id, ONE)).toEqual([[text]])
        expect(bench.grid.format(id, 0, 0).numberFormat).toBe('General')
      }),
      { numRuns: 150 },
    )
  })
})

describe('Undo', () => {
  it('gives back texts, numbers, dates, formulas, TRUE and errors as they were', async () => {
    const values = [['12-5', 45_000, true, '#N/A', '', 'Ada', '007', 3]]
    const formulas = [['', '', '', '', '', '', '', '=1+2']]
    const formats = [['General', 'd-mmm', 'General', 'General', 'General', 'General', '@', 'General']]
    const bench = await benchWith({ name: 'Before', values, formulas, formats })
    const before = everything(bench)
    const id = bench.grid.activeSheet()
    const rows: Content[][] = [['a', 'b', 'c', 'd', 'e', 'f', 'g', { formula: '=2+2' }]]
    const done = await perform('', [cellsEdit({ id, name: 'Before' }, [{ top: 0, left: 0, rows }])])
    expect(everything(bench)).not.toEqual(before)
    expect(await takeBack(done)).toEqual([])
    expect(everything(bench)).toEqual(before)
    expect(bench.grid.format(id, 0, 1).numberFormat).toBe('d-mmm')
  })

  it('leaves what was changed since, and says how much', async () => {
    const bench = await benchWith({ name: 'S', values: [[1, 2, 3]] })
    const id = bench.grid.activeSheet()
    const done = await perform('', [cellsEdit({ id, name: 'S' }, [{ top: 0, left: 0, rows: [[7, 8, 9]] }])])
    bench.userEdit('S', 'A1:B1', [['x', 'y']])
    expect(await takeBack(done)).toEqual(['2 cells on S that changed since stayed as they are.'])
    expect(everything(bench)[0]?.formulas).toEqual([['x', 'y', 3]])
  })

  it('can be tried again where it failed', async () => {
    const bench = await benchWith({ name: 'S', values: [[1]] })
    const before = everything(bench)
    const id = bench.grid.activeSheet()
    const done = await perform('', [cellsEdit({ id, name: 'S' }, [{ top: 0, left: 0, rows: [[2]] }])])
    bench.host.failAt({ code: 'GeneralException' })
    const { sentence, next } = await problemIn(takeBack(done))
    expect(sentence).toMatch(/Not everything could be taken back/)
    expect(next).toMatch(/press Undo again/)
    await takeBack(done)
    expect(everything(bench)).toEqual(before)
  })
})

describe('cells that are not free', () => {
  it('are listed with their addresses, and nothing is written', async () => {
    const bench = await benchWith({ name: 'S', values: [['', 'mine', '', 'mine too']] })
    const before = everything(bench)
    const edit = cellsEdit(
      { id: bench.grid.activeSheet(), name: 'S' },
      [{ top: 0, left: 0, rows: [['a', 'b', 'c', null]] }],
      {
        isFree: (value) => value === '',
      },
    )
    const { sentence } = await problemIn(perform('', [edit]))
    expect(sentence).toBe('Cell B1 on S is not empty, and nothing of yours is overwritten.')
    expect(everything(bench)).toEqual(before)
  })
})
