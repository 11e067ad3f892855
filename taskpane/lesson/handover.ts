import type { Handout } from '../../src/lesson/handout'
import { openLargeWindow } from '../common/largeWindow'
import { listenToPane } from '../common/opener'

const READY = 'ready'

/**
 * Opens the window that shows a hand-out and prints it. The hand-out goes from window to window and nowhere else, not into the
 * window's address either: it may hold names. Throws Problem where no window can be opened.
 */
export async function openHandout(handout: Handout): Promise<void> {
  await openLargeWindow({
    address: new URL('handout.html', location.href).href,
    mustTalk: true,
    hear: (_, answer) => {
      answer(JSON.stringify(handout))
    },
  })
}

/** In that window: asks the pane for the hand-out. Whatever else comes, as from the host's own pages, is not for it. */
export function askForHandout(show: (handout: Handout) => void): void {
  listenToPane(
    (message) => {
      const handout = handoutIn(message)
      if (handout) show(handout)
    },
    (send) => {
      send(READY)
    },
  )
}

function handoutIn(message: string): Handout | null {
  try {
    const told = JSON.parse(message) as Partial<Handout> | null
    return Array.isArray(told?.sheets) ? (told as Handout) : null
  } catch {
    return null
  }
}
