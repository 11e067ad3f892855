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
  return marker.mark()
}

/** The ribbon's button Mark this sheet. Where something has to be asked or told, the pane opens. */
async function markThisSheet(event: Office.AddinCommands.Event): Promise<void> {
  try {
    if (!(await isMarked())) await Office.addin.showAsTaskpane()
  } catch (error) {
    RUNNER.tell(error)
  } finally {
    event.completed()
  }
}

/** Lets the ribbon's buttons act. The name is the one in the manifest. */
export function connectRibbon(): void {
  Office.actions.associate('markThisSheet', (event: Office.AddinCommands.Event) => void markThisSheet(event))
}
