import { Problem } from '../../src/office/errors'
import { projectorAddress, type Projected } from './projected'

/** Error 12009 of Microsoft's Dialog API (from memory of its documentation): the person at the screen said no. */
const REFUSED = 12009

let open: Office.Dialog | null = null

/**
 * Shows a question in a large window: Excel's own where it has one, a window of the browser otherwise. A window that is open already
 * makes room. Throws Problem where neither can be opened.
 */
export async function openProjector(projected: Projected): Promise<void> {
  const address = projectorAddress(projected, location.href)
  if (Office.context.requirements.isSetSupported('DialogApi', '1.1') && (await openDialog(address))) return
  if (window.open(address, 'columnwise-projector', 'popup,width=1280,height=800')) return
  throw new Problem(
    'The large window could not be opened: this program does not let Columnwise open one.',
    'Make the pane wider by its edge instead, or allow pop-up windows and try again.',
  )
}

/** Whether Excel has opened the window. Throws Problem where the teacher said no. */
function openDialog(address: string): Promise<boolean> {
  open?.close()
  open = null
  return new Promise((resolve, reject) => {
    Office.context.ui.displayDialogAsync(address, { width: 90, height: 90 }, ({ status, value, error }) => {
      if (status !== Office.AsyncResultStatus.Succeeded) {
        if (error.code === REFUSED)
          reject(new Problem('The large window was not opened.', 'Allow it when Excel asks.'))
        else resolve(false)
        return
      }
      open = value
      value.addEventHandler(Office.EventType.DialogEventReceived, () => {
        if (open === value) open = null
      })
      resolve(true)
    })
  })
}
