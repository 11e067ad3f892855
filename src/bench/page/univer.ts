import { LocaleType, LogLevel, Univer, mergeLocales } from '@univerjs/core'
import type { Plugin, PluginCtor } from '@univerjs/core'
import { FUniver } from '@univerjs/core/facade'
import { UniverSheetsConditionalFormattingPreset } from '@univerjs/preset-sheets-conditional-formatting'
import conditionalFormattingWords from '@univerjs/preset-sheets-conditional-formatting/locales/en-US'
import { UniverSheetsCorePreset } from '@univerjs/preset-sheets-core'
import coreWords from '@univerjs/preset-sheets-core/locales/en-US'
import { UniverSheetsNotePreset } from '@univerjs/preset-sheets-note'
import noteWords from '@univerjs/preset-sheets-note/locales/en-US'
import '@univerjs/preset-sheets-core/lib/index.css'
import '@univerjs/preset-sheets-conditional-formatting/lib/index.css'
import '@univerjs/preset-sheets-note/lib/index.css'
import { UniverGrid } from '../grid/univerGrid'

/** A workbook with one empty sheet, drawn in the element with that id. */
export function univerGrid(container: string): UniverGrid {
  const univer = new Univer({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: mergeLocales(coreWords, conditionalFormattingWords, noteWords) },
    logLevel: LogLevel.ERROR,
  })
  const presets = [
    UniverSheetsCorePreset({ container }),
    UniverSheetsConditionalFormattingPreset(),
    UniverSheetsNotePreset(),
  ]
  for (const entry of presets.flatMap(({ plugins }) => plugins)) {
    const [plugin, options] = (Array.isArray(entry) ? entry : [entry]) as [PluginCtor<Plugin>, object?]
    univer.registerPlugin(plugin, options)
  }
  const api = FUniver.newAPI(univer)
  const workbook = api.createWorkbook({
    id: 'bench',
    name: 'Bench',
    sheetOrder: ['sheet-1'],
    sheets: { 'sheet-1': { id: 'sheet-1', name: 'Sheet1', rowCount: 1000, columnCount: 26 } },
  })
  return new UniverGrid(api, workbook)
}
