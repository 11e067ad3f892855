import type { Area } from '../../marksheet/layout/matrix'
import { addressArea, blocksOf } from '../edit/address'
import { problemOf } from '../edit/errors'

/** Ends a watch. */
export type EndWatch = () => Promise<void>

/** Calls `changed` whenever another sheet comes to the front. Throws Problem. */
export function watchSheets(changed: () => void): Promise<EndWatch> {
  return watching(({ onActivated }) => onActivated.add(telling(changed)))
}

/** Calls `changed` whenever other cells are selected, on any sheet. Throws Problem. */
export function watchSelection(changed: () => void): Promise<EndWatch> {
  return watching(({ onSelectionChanged }) => onSelectionChanged.add(telling(changed)))
}

/** The requirement set in which Excel says who has changed cells. */
const TELLS_WHO = '1.14'

/**
 * Calls `edited` whenever cells of a sheet hold something else; where Excel says so, not when the add-in has changed them itself. Throws
 * Problem.
 */
export function watchEdits(edited: (sheetId: string, areas: readonly Area[]) => void): Promise<EndWatch> {
  return watching(({ onChanged }) =>
    onChanged.add((change) => {
      const isOwn =
        Office.context.requirements.isSetSupported('ExcelApi', TELLS_WHO) &&
        change.triggerSource === 'ThisLocalAddin'
      if (!isOwn) edited(change.worksheetId, blocksOf(change.address).map(addressArea))
      return Promise.resolve()
    }),
  )
}

/** Milliseconds after the last change on a sheet, before it is read again. */
const PAUSE = 600

/** Calls `paused` a moment after cells of a sheet were last changed, with the sheet's id. Throws Problem. */
export function watchPauses(paused: (sheetId: string) => void): Promise<EndWatch> {
  const timers = new Map<string, ReturnType<typeof setTimeout>>()
  return watchEdits((sheetId) => {
    clearTimeout(timers.get(sheetId))
    timers.set(
      sheetId,
      setTimeout(() => {
        paused(sheetId)
      }, PAUSE),
    )
  })
}

function telling(changed: () => void): () => Promise<void> {
  return () => {
    changed()
    return Promise.resolve()
  }
}

async function watching<T>(
  add: (sheets: Excel.WorksheetCollection) => OfficeExtension.EventHandlerResult<T>,
): Promise<EndWatch> {
  try {
    const handler = await Excel.run(async (context) => {
      const added = add(context.workbook.worksheets)
      await context.sync()
      return added
    })
    return async () => {
      await Excel.run(handler.context, async (context) => {
        handler.remove()
        await context.sync()
      })
    }
  } catch (error) {
    throw problemOf(error)
  }
}
