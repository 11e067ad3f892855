import { useEffect } from 'react'
import { watchEdits, watchSheets, type EndWatch } from '../../src/office/workbook/watch'
import { useRunner } from './pane'

/** Calls `look` whenever another sheet comes to the front, as long as the component is there; `look` stays the same. */
export function useOtherSheet(look: () => Promise<void>): void {
  useWatch(watchSheets, look)
}

/** Milliseconds after the last change on a sheet, before it is read again. */
const PAUSE = 600

/** Calls `look` a moment after cells were changed, on any sheet; `look` stays the same and says nothing where it cannot. */
export function useTyping(look: () => Promise<void>): void {
  useWatch(watchPauses, look)
}

function watchPauses(changed: () => void): Promise<EndWatch> {
  let timer: ReturnType<typeof setTimeout> | undefined
  return watchEdits(() => {
    clearTimeout(timer)
    timer = setTimeout(changed, PAUSE)
  })
}

function useWatch(start: (changed: () => void) => Promise<EndWatch>, look: () => Promise<void>): void {
  const runner = useRunner()
  useEffect(() => {
    let isOver = false
    const watching = start(() => {
      if (!isOver) void look()
    })
    watching.catch(runner.tell)
    return () => {
      isOver = true
      void watching.then((end) => end())
    }
  }, [start, look, runner])
}
