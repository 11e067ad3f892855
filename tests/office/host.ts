import { expect } from 'vitest'
import type { Bench } from '../../src/bench/bench'
import { cellArea } from '../../src/bench/grid/area'
import { ActionKind, type RequestBody } from '../../src/bench/host/wireTypes'
import { startBench } from '../../src/bench/node'
import { findMarksheets } from '../../src/marksheet/layout/find'
import type { Matrix } from '../../src/marksheet/layout/matrix'
import { Problem } from '../../src/office/edit/errors'
import { bytesOf, matricesOf, type WorkbookName } from '../marksheets'

/** A bench with one sheet that holds some cells. */
export async function benchWith({ name, values, formats, formulas }: Matrix): Promise<Bench> {
  const bench = await startBench()
  const id = bench.grid.activeSheet()
  bench.grid.renameSheet(id, name)
  const contents = values.map((row, i) =>
    row.map((value, j) => {
      const formula = formulas?.[i]?.[j]
      return formula ? { formula, value: value ?? '' } : (value ?? '')
    }),
  )
  contents.forEach((row, i) => {
    bench.grid.write(id, i, 0, [row])
  })
  formats?.forEach((row, i) => {
    row.forEach((numberFormat, j) => {
      if (numberFormat !== 'General') bench.grid.setFormat(id, cellArea(i, j), { numberFormat })
    })
  })
  return bench
}

/** The sheet of an invented class that holds its marksheet. */
export async function marksheetOf(name: WorkbookName): Promise<Matrix> {
  const matrices = await matricesOf(bytesOf(name))
  const found = matrices.find((matrix) => findMarksheets(matrix).length > 0)
  if (!found) throw new Error(`${name} holds no marksheet.`)
  return found
}

export async function benchOf(name: WorkbookName): Promise<Bench> {
  return benchWith(await marksheetOf(name))
}

/** What the sheets of a workbook hold and look like, for comparing before and after. */
export function everything({ grid }: Bench) {
  return grid.sheets().map(({ id, name, visible }) => {
    const used = grid.used(id, true)
    return {
      name,
      visible,
      formulas:
        used &&
        grid.formulas(id, {
          ...used,
          row: 0,
          col: 0,
          rows: used.row + used.rows,
          cols: used.col + used.cols,
        }),
      rules: grid.conditionalFormats(id).map(({ areas, formula, style }) => ({ areas, formula, style })),
    }
  })
}

/** What everything was but for the sheets that were added and then hidden again. */
export function shown(bench: Bench) {
  return everything(bench).filter(({ visible }) => visible)
}

/** Counts the add-in's own requests from now on; those that the client sends to let go of objects are not the add-in's. */
export function countSyncs(bench: Bench): () => number {
  const { host } = bench
  const execute = host.execute.bind(host)
  let count = 0
  host.execute = (body: RequestBody) => {
    const isOwn = ({ ActionType, Name }: RequestBody['Actions'][number]) =>
      ActionType !== ActionKind.Instantiate && Name !== '_RemoveReference'
    if (body.Actions.some(isOwn)) count++
    return execute(body)
  }
  return () => count
}

/** The problem with which an action fails. */
export async function problemIn(action: Promise<unknown>): Promise<Problem> {
  const outcome: unknown = await action.then(
    () => null,
    (error: unknown) => error,
  )
  expect(outcome).toBeInstanceOf(Problem)
  return outcome as Problem
}

/** A marksheet of so many pupils and questions, every third answer wrong, one in eleven left out. */
export function largeMarksheet(pupils: number, questions: number): Matrix {
  const tops = Array.from({ length: questions }, (_, index) => 4003 + 17 * index)
  const header = ['Name', ...tops.map((top) => `${top} − 1567`)]
  const rows = Array.from({ length: pupils }, (_, pupil) => [
    `Pupil ${letters(pupil)}`,
    ...tops.map((top, index) =>
      (pupil + index) % 11 === 0 ? '' : top - 1567 + ((pupil * index) % 3 === 1 ? 10 : 0),
    ),
  ])
  return { name: 'Large', values: [['Autumn check'], header, ...rows] }
}

function letters(index: number): string {
  const last = String.fromCharCode(65 + (index % 26))
  return index < 26 ? last : letters(Math.floor(index / 26) - 1) + last.toLowerCase()
}
