import type { Handout } from '../../src/lesson/handout'
import { openLargeWindow } from '../common/largeWindow'

const READY = 'ready'

/**
 * Opens the window that shows a hand-out and prints it. The hand-out goes from window to window and nowhere else, not into the
 * window's address either: it may hold names. Throws Problem where no window can be opened.
 */
export function openHandout(handout: Handout): Promise<void> {
  return openLargeWindow({
    address: new URL('handout.html', location.href).href,
    message: JSON.stringify(handout),
  })
}

/** In that window: asks the pane for the hand-out, by Excel and by the browser, since only one of them knows the pane. */
export function askForHandout(show: (handout: Handout) => void): void {
  const take = (message: string) => {
    show(JSON.parse(message) as Handout)
  }
  const opener = window.opener as Window | null
  window.addEventListener('message', ({ source, origin, data }) => {
    if (source === opener && origin === location.origin) take(String(data))
  })
  opener?.postMessage(READY, location.origin)
  void Office.onReady(({ host }) => {
    if (host !== Office.HostType.Excel || !Office.context.requirements.isSetSupported('DialogApi', '1.2'))
      return
    const { ui } = Office.context
    ui.addHandlerAsync(
      Office.EventType.DialogParentMessageReceived,
      ({ message }: { readonly message: string }) => {
        take(message)
      },
      () => {
        ui.messageParent(READY)
      },
    )
  })
}
