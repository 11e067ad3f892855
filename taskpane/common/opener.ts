import type { Send } from './largeWindow'

/**
 * In a large window: takes what the pane says, by Excel and by the browser, since only one of them knows the pane. `onReady` is called
 * with what sends to the pane, once for each way that is there.
 */
export function listenToPane(take: (message: string) => void, onReady: (send: Send) => void): void {
  const opener = window.opener as Window | null
  window.addEventListener('message', ({ source, origin, data }) => {
    if (source === opener && origin === location.origin) take(String(data))
  })
  if (opener)
    onReady((message) => {
      opener.postMessage(message, location.origin)
    })
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
        onReady((message) => {
          ui.messageParent(message)
        })
      },
    )
  })
}
