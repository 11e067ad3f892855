import { useContext, useEffect, useRef } from 'react'
import { watchPauses, watchSheets, type EndWatch } from '../../src/office/workbook/watch'
import { FRONT } from './front'
import { OpenContext, useRunner, useStore } from './pane'

/** Calls `look` whenever another sheet comes to the front, as long as the component is there; `look` stays the same. */
export function useOtherSheet(look: () => Promise<void>): void {
  useWatch(watchSheets, look)
}

/** Lets the areas follow the sheet that comes to the front, as long as the component is there. */
export function useFollowing(): void {
  useWatch(watchSheets, followed)
}

const followed = () => Promise.resolve(FRONT.turn())

/**
 * Calls `look` when the area is first opened, and whenever another sheet has come to the front or `writes` has grown: while it is open at
 * once, else when it is opened again. `look` stays the same.
 */
export function useFront(look: () => Promise<void>, writes = 0): void {
  const isOpen = useContext(OpenContext)
  const { turns } = useStore(FRONT)
  const looked = useRef('')
  useEffect(() => {
    const now = `${turns} ${writes}`
    if (!isOpen || looked.current === now) return
    looked.current = now
    void look()
  }, [isOpen, turns, writes, look])
}

/** Calls `look` a moment after cells were changed, on any sheet; `look` stays the same and says nothing where it cannot. */
export function useTyping(look: () => Promise<void>): void {
  useWatch(watchPauses, look)
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
