import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { cellArea, contains, eachCell, intersect, subtract } from '../../src/bench/grid/area'
import type { Area } from '../../src/bench/grid/area'
import { constantFormula } from '../../src/bench/grid/constantFormula'
import { MemoryGrid } from '../../src/bench/grid/memoryGrid'
import { areaAddress, columnIndex, columnName, parseAddress } from '../../src/bench/host/address'
import { moveRule } from '../../src/bench/host/conditionalRules'
import { headerTexts } from '../../src/bench/host/tables'

const areas = fc.record({
  row: fc.nat(12),
  col: fc.nat(12),
  rows: fc.integer({ min: 1, max: 6 }),
  cols: fc.integer({ min: 1, max: 6 }),
})

const cellsOf = (area: Area): string[] => {
  const cells: string[] = []
  eachCell(area, (row, col) => cells.push(`${row},${col}`))
  return cells
}

describe('areas', () => {
  test('what is cut out and what is left make up the whole, without overlap', () => {
    fc.assert(
      fc.property(areas, areas, (area, hole) => {
        const left = subtract(area, hole).flatMap(cellsOf)
        const cut = intersect(area, hole)
        expect([...left, ...(cut ? cellsOf(cut) : [])].sort()).toEqual(cellsOf(area).sort())
      }),
    )
  })

  test('an address names the area it was made from', () => {
    fc.assert(
      fc.property(areas, (area) => {
        expect(parseAddress(areaAddress(area))).toEqual({ area })
        expect(parseAddress(`'It''s'!$${areaAddress(area)}`).sheet).toBe("It's")
      }),
    )
  })

  test('columns are named A to XFD', () => {
    expect([0, 25, 26, 701, 702, 16_383].map(columnName)).toEqual(['A', 'Z', 'AA', 'ZZ', 'AAA', 'XFD'])
    fc.assert(
      fc.property(fc.nat(16_383), (col) => {
        expect(columnIndex(columnName(col))).toBe(col)
      }),
    )
  })
})

describe('formulas over constants', () => {
  test.each([
    ['=475', 475],
    ['=12+5*2', 22],
    ['=(12+5)*2', 34],
    ['=-3^2', 9],
    ['=50%', 0.5],
    ['="a"&1', 'a1'],
    ['=1=1', true],
    ['=1/0', '#DIV/0!'],
    ['="a"+1', '#VALUE!'],
    ['=A1', '#NAME?'],
    ['=SUM(1,2)', '#NAME?'],
  ])('%s', (formula, value) => {
    expect(constantFormula(formula)).toBe(value)
  })
})

describe('the grid in memory', () => {
  test('a column format holds for cells not written yet, and for those with a format of their own', () => {
    const grid = new MemoryGrid()
    const id = grid.activeSheet()
    grid.setFormat(id, cellArea(1, 1), { bold: true })
    grid.setFormat(id, { ...parseAddress('B:B').area }, { fill: '#FFCC00' })
    expect(grid.format(id, 1, 1)).toMatchObject({ bold: true, fill: '#FFCC00' })
    expect(grid.format(id, 500, 1)).toMatchObject({ bold: false, fill: '#FFCC00' })
    expect(grid.format(id, 500, 2).fill).toBe(null)
  })

  test('the used area holds all that is written', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(50), fc.nat(50)), { minLength: 1 }), (cells) => {
        const grid = new MemoryGrid()
        const id = grid.activeSheet()
        for (const [row, col] of cells) grid.write(id, row, col, [['x']])
        const used = grid.used(id, true)
        expect(used && cells.every(([row, col]) => contains(used, cellArea(row, col)))).toBe(true)
        expect(used?.row).toBe(Math.min(...cells.map(([row]) => row)))
      }),
    )
  })
})

test('conditional formats keep a whole order when one is moved', () => {
  const rule = (id: string) => ({ id, areas: [], type: 'Custom', formula: '', stopIfTrue: false, style: {} })
  const rules = ['a', 'b', 'c'].map(rule)
  const moved = (id: string, priority: number) => moveRule(rules, id, priority).map((one) => one.id)
  expect(moved('a', 2)).toEqual(['b', 'c', 'a'])
  expect(moved('c', 0)).toEqual(['c', 'a', 'b'])
  expect(moved('a', -1)).toEqual(['b', 'c', 'a'])
})

test('table headers are named where blank and numbered where double', () => {
  expect(headerTexts(['Name', '', 'name', 'Name'])).toEqual(['Name', 'Column2', 'name2', 'Name3'])
})
