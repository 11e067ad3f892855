import { createRequire } from 'node:module'
import { UniverGrid } from '../../src/bench/grid/univerGrid'

// The ES modules of the grid do not load in Node (a CommonJS dependency lacks named exports); its CommonJS build does.
const require = createRequire(import.meta.url)

/** The page's grid without a screen. */
export function headlessUniver(): UniverGrid {
  const load = <T>(name: string) => require(name) as T
  const { Univer, LocaleType, LogLevel } = load<typeof import('@univerjs/core')>('@univerjs/core')
  const { FUniver } = load<typeof import('@univerjs/core/facade')>('@univerjs/core/facade')
  const plugins = [
    load<typeof import('@univerjs/engine-formula')>('@univerjs/engine-formula').UniverFormulaEnginePlugin,
    load<typeof import('@univerjs/sheets')>('@univerjs/sheets').UniverSheetsPlugin,
    load<typeof import('@univerjs/sheets-formula')>('@univerjs/sheets-formula').UniverSheetsFormulaPlugin,
    load<typeof import('@univerjs/sheets-numfmt')>('@univerjs/sheets-numfmt').UniverSheetsNumfmtPlugin,
    load<typeof import('@univerjs/sheets-conditional-formatting')>('@univerjs/sheets-conditional-formatting')
      .UniverSheetsConditionalFormattingPlugin,
    load<typeof import('@univerjs/sheets-note')>('@univerjs/sheets-note').UniverSheetsNotePlugin,
  ]
  for (const name of [
    'sheets',
    'engine-formula',
    'sheets-formula',
    'sheets-conditional-formatting',
    'sheets-note',
  ])
    require(`@univerjs/${name}/facade`)
  const univer = new Univer({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: {} },
    logLevel: LogLevel.ERROR,
  })
  for (const plugin of plugins) univer.registerPlugin(plugin)
  const api = FUniver.newAPI(univer)
  const workbook = api.createWorkbook({
    id: 'bench',
    name: 'Bench',
    sheetOrder: ['sheet-1'],
    sheets: { 'sheet-1': { id: 'sheet-1', name: 'Sheet1', rowCount: 1000, columnCount: 26 } },
  })
  return new UniverGrid(api, workbook)
}
