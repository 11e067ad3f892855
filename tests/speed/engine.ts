import { createRequire } from 'node:module'

// The ES modules of the engine do not load in Node (a CommonJS dependency lacks named exports); its CommonJS build does.
const require = createRequire(import.meta.url)
const load = <T>(name: string) => require(name) as T

/** A sheet of a general spreadsheet engine without a screen, with as many rows and columns. */
export function engineSheet(rowCount: number, columnCount: number) {
  const { Univer, LocaleType, LogLevel } = load<typeof import('@univerjs/core')>('@univerjs/core')
  const { FUniver } = load<typeof import('@univerjs/core/facade')>('@univerjs/core/facade')
  const univer = new Univer({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: {} },
    logLevel: LogLevel.ERROR,
  })
  univer.registerPlugin(
    load<typeof import('@univerjs/engine-formula')>('@univerjs/engine-formula').UniverFormulaEnginePlugin,
  )
  univer.registerPlugin(load<typeof import('@univerjs/sheets')>('@univerjs/sheets').UniverSheetsPlugin)
  univer.registerPlugin(
    load<typeof import('@univerjs/sheets-formula')>('@univerjs/sheets-formula').UniverSheetsFormulaPlugin,
  )
  for (const name of ['sheets', 'engine-formula', 'sheets-formula']) require(`@univerjs/${name}/facade`)
  const sheets = { s: { id: 's', name: 'Sheet1', rowCount, columnCount } }
  const [sheet] = FUniver.newAPI(univer)
    .createWorkbook({ id: 'w', name: 'Speed', sheetOrder: ['s'], sheets })
    .getSheets()
  if (!sheet) throw new Error('A workbook without a sheet.')
  return sheet
}
