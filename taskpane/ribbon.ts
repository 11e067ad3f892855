import type {} from './commands'
import { FRONT } from './common/front'
import { RUNNER } from './common/pane'

/** Whether the sheet in front was marked: only where it holds one marksheet, so that there is nothing to ask. */
async function isMarked(): Promise<boolean> {
  const { sharedMarker } = await import(/* webpackChunkName: "marker" */ './mark/marker')
  const marker = sharedMarker()
  FRONT.turn()
  await marker.look()
  const { seen } = marker.state()
  if (seen?.marksheets.length !== 1) {
    if (seen) RUNNER.say(`${seen.reading.name} is not marked yet.`, 'See in Mark what was found there.')
    return false
  }
  while (RUNNER.state().running) await RUNNER.idle()
  return marker.mark()
}

/**
 * The ribbon's button Mark this sheet. Where something has to be asked or told, the pane opens; after the press is over, since Excel opens
 * none before (issue 3250 of office-js).
 */
async function markThisSheet(event: Office.AddinCommands.Event): Promise<void> {
  try {
    const marked = await isMarked().finally(() => {
      event.completed()
    })
    if (!marked) await Office.addin.showAsTaskpane()
  } catch (error) {
    RUNNER.tell(error)
  }
}

/** Acts on presses of the ribbon's button: on those that are waiting, and from now on. */
export function connectRibbon(): void {
  const { columnwisePresses: waiting } = window
  const push = (event: Office.AddinCommands.Event) => void markThisSheet(event)
  window.columnwisePresses = { push }
  if (Array.isArray(waiting)) waiting.forEach(push)
}
