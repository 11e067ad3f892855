import type { Bench } from '../../src/bench/bench'
import { intersect } from '../../src/bench/grid/area'
import { parseAddress } from '../../src/bench/host/address'
import { spillInto } from '../../src/bench/host/spills'
import type { Action } from './actions'

/**
 * Something that may be so when an action writes. `before` makes it so before the action reads, `between` after it has read, `after` once it
 * has written, before Undo; each gives false where it cannot be so for that action. `back` ends it before Undo.
 */
export interface Situation {
  readonly name: string
  before?(bench: Bench, action: Action): boolean
  between?(bench: Bench, action: Action): boolean
  after?(bench: Bench, action: Action): boolean
  back?(bench: Bench): void
  /** Whether the action has to refuse, as nothing can be written. */
  readonly refuses?: true
}

const idOf = ({ grid }: Bench, name: string) => grid.sheets().find((sheet) => sheet.name === name)?.id
const OPTIONS = { allowFormatCells: false, allowEditObjects: false, allowAutoFilter: false }

/** Does something to the sheet that an action writes to, where it is there. */
const onSheet =
  (change: (bench: Bench, id: string, action: Action) => unknown) =>
  (bench: Bench, action: Action): boolean => {
    const id = idOf(bench, action.sheet)
    return id !== undefined && change(bench, id, action) !== false
  }

/** Does something to the cells that an action writes to, where it writes some. */
const onCells = (
  change: (bench: Bench, id: string, area: ReturnType<typeof parseAddress>['area']) => unknown,
) =>
  onSheet(
    (bench, id, { cells }) => cells !== undefined && change(bench, id, parseAddress(cells).area) !== false,
  )

/** The same where the add-in does not lay out the whole sheet itself. */
const onTheirCells =
  (change: Parameters<typeof onCells>[0]) =>
  (bench: Bench, action: Action): boolean =>
    action.laysOut !== true && onCells(change)(bench, action)

const protect = (bench: Bench, id: string, options: object = {}) => {
  bench.book.sheet(id).protection = { options: { ...OPTIONS, ...options } }
}

const unlock = (bench: Bench, id: string) => {
  bench.grid.setFormat(id, { row: 0, col: 0, rows: 60, cols: 20 }, { locked: false })
}

const selectOn = (bench: Bench, { sheet }: Action, address: string) => {
  if (idOf(bench, sheet) === undefined) return false
  bench.select(sheet, address)
  return true
}

/** Everything that may be so, other than a request that fails. */
export const SITUATIONS: readonly Situation[] = [
  {
    name: 'a cell is still being typed in',
    between: (bench) => {
      bench.host.editing = true
      return true
    },
    back: (bench) => {
      bench.host.editing = false
    },
    refuses: true,
  },
  {
    name: 'the workbook is open for reading only',
    between: (bench) => {
      bench.host.readOnly = true
      return true
    },
    back: (bench) => {
      bench.host.readOnly = false
    },
    refuses: true,
  },
  { name: 'the sheet is protected', before: onSheet((bench, id) => protect(bench, id)) },
  { name: 'the sheet is protected while it is read', between: onSheet((bench, id) => protect(bench, id)) },
  {
    name: 'the sheet is protected with formats allowed',
    before: onSheet((bench, id) => protect(bench, id, { allowFormatCells: true })),
  },
  {
    name: 'the sheet is protected with its cells unlocked',
    before: onSheet((bench, id) => {
      unlock(bench, id)
      protect(bench, id)
    }),
  },
  {
    name: 'the sheet is protected with its cells unlocked and everything allowed',
    before: onSheet((bench, id) => {
      unlock(bench, id)
      const all = Object.fromEntries(
        [...Object.keys(OPTIONS), 'allowFormatColumns', 'allowFormatRows'].map((key) => [key, true]),
      )
      protect(bench, id, all)
    }),
  },
  {
    name: 'the sheet is protected between writing and Undo',
    after: onSheet((bench, id) => protect(bench, id)),
    back: (bench) => {
      for (const { id } of bench.grid.sheets()) bench.book.sheet(id).protection = null
    },
  },
  {
    name: 'the list of sheets is protected',
    before: (bench) => {
      bench.book.protection = { password: null }
      return true
    },
  },
  {
    name: 'the sheet is deleted while it is read',
    between: onSheet((bench, id) => {
      const other = bench.grid.addSheet('Other')
      bench.grid.activateSheet(other)
      bench.grid.removeSheet(id)
      bench.book.removeSheet(id)
    }),
  },
  {
    name: 'the sheet is renamed while it is read',
    between: onSheet((bench, id) => {
      bench.grid.renameSheet(id, 'Renamed')
    }),
  },
  {
    name: 'the sheet is deleted between writing and Undo',
    after: onSheet((bench, id) => {
      const other = bench.grid.addSheet('Other')
      bench.grid.activateSheet(other)
      bench.grid.removeSheet(id)
      bench.book.removeSheet(id)
    }),
  },
  {
    name: 'the sheet is renamed between writing and Undo',
    after: onSheet((bench, id) => {
      bench.grid.renameSheet(id, 'Renamed')
    }),
  },
  {
    name: 'somebody adds a sheet of that name while it is read',
    between: (bench, { sheet }) => {
      if (idOf(bench, sheet) !== undefined) return false
      bench.grid.write(bench.grid.addSheet(sheet), 0, 0, [['somebody else’s'], ['words']])
      return true
    },
  },
  {
    name: 'somebody has a sheet of that name already',
    before: (bench, { sheet }) => {
      if (idOf(bench, sheet) !== undefined) return false
      bench.grid.write(bench.grid.addSheet(sheet), 0, 0, [['somebody else’s'], ['words']])
      return true
    },
  },
  {
    name: 'cells are merged',
    before: onTheirCells((bench, id, area) => {
      bench.grid.merge(id, area)
      return area.rows * area.cols > 1
    }),
  },
  {
    name: 'the row of the cells is merged as a whole',
    before: onTheirCells((bench, id, area) => {
      bench.grid.merge(id, { row: area.row, col: Math.max(0, area.col - 1), rows: 1, cols: area.cols + 3 })
    }),
  },
  {
    name: 'rows and columns are hidden',
    before: onCells((bench, id, area) => {
      bench.grid.hideRows(id, area.row, 1, true)
      bench.grid.hideColumns(id, area.col, 1, true)
    }),
  },
  {
    name: 'rows are filtered away',
    before: onCells((bench, id, area) => {
      bench.book.sheet(id).filter = {
        area: { ...area, row: Math.max(0, area.row - 1) },
        columns: new Map([[0, ['none']]]),
      }
      bench.grid.hideRows(id, area.row, area.rows, true)
    }),
  },
  {
    name: 'the cells are in a table',
    before: onTheirCells((bench, id, area) =>
      tableOver(bench, id, { ...area, row: area.row - 1, rows: area.rows + 1 }),
    ),
  },
  {
    name: 'the cells are the heads of a table',
    before: onTheirCells((bench, id, area) =>
      tableOver(bench, id, { ...area, rows: Math.max(3, area.rows) }),
    ),
  },
  {
    name: 'a formula fills the cells',
    before: onTheirCells((bench, id, area) => {
      const values = Array.from({ length: area.rows }, (_, i) =>
        Array.from({ length: area.cols }, (__, j) => `v${i}${j}`),
      )
      spillInto(bench, id, { row: area.row, col: area.col }, '=VSTACK(Other)', values)
    }),
  },
  {
    name: 'a formula above fills down into the cells',
    before: onTheirCells((bench, id, area) => {
      const row = Math.max(0, area.row - 1)
      const [[above] = []] = bench.grid.values(id, { row, col: area.col, rows: 1, cols: 1 })
      if (above !== '') return false
      spillInto(bench, id, { row, col: area.col }, '=SORT(Other)', [['v'], ['w']])
      return true
    }),
  },
  { name: 'a whole column is selected', before: (bench, action) => selectOn(bench, action, 'A:A') },
  { name: 'a whole row is selected', before: (bench, action) => selectOn(bench, action, '1:1') },
  {
    name: 'the whole sheet is selected',
    before: (bench, action) => selectOn(bench, action, 'A1:XFD1048576'),
  },
  {
    name: 'somebody writes into the cells while they are read',
    between: onCells((bench, id, area) => {
      bench.grid.write(id, area.row, area.col, [['somebody’s']])
    }),
  },
  {
    name: 'somebody writes beside the cells while they are read',
    between: onCells((bench, id, area) => {
      bench.grid.write(id, area.row, area.col + area.cols + 2, [['beside']])
    }),
  },
  {
    name: 'somebody writes into the cells between writing and Undo',
    after: onCells((bench, id, area) => {
      bench.grid.write(id, area.row, area.col, [['somebody’s']])
    }),
  },
  {
    name: 'somebody writes beside the cells between writing and Undo',
    after: onSheet((bench, id) => {
      bench.grid.write(id, 3, 4, [['somebody’s']])
    }),
  },
  {
    name: 'somebody writes far below between writing and Undo',
    after: onSheet((bench, id) => {
      bench.grid.write(id, 300, 20, [['far below']])
    }),
  },
  {
    name: 'somebody colours cells between writing and Undo',
    after: onSheet((bench, id) => {
      bench.grid.setFormat(id, { row: 300, col: 0, rows: 1, cols: 1 }, { fill: '#FFFF00' })
    }),
  },
]

function tableOver(bench: Bench, sheetId: string, area: ReturnType<typeof parseAddress>['area']): boolean {
  if (
    area.row < 0 ||
    bench.book.tables.some((table) => table.sheetId === sheetId && intersect(table.area, area))
  )
    return false
  const heads = Array.from({ length: area.cols }, (_, index) => `Head ${index + 1}`)
  bench.grid.write(sheetId, area.row, area.col, [heads])
  bench.book.tables.push({
    id: '{somebody’s}',
    sheetId,
    name: 'Somebodys',
    area,
    showHeaders: true,
    showTotals: false,
    style: '',
    showFilterButton: true,
    showBandedRows: true,
  })
  return true
}
