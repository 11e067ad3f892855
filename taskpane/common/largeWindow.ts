import { Problem } from '../../src/office/edit/errors'

/**
 * Errors of Microsoft's Dialog API (from memory of its documentation): the window before is still open, since closing takes its time; the
 * person at the screen said no; the browser keeps windows from opening.
 */
const STILL_OPEN = 12007
const REFUSED = 12009
const BLOCKED = 12011

/** How often, and after how many milliseconds, a window is asked for again while the one before is still closing. */
const TRIES = 20
const PAUSE = 100

let open: Office.Dialog | null = null

/** Sends a message to the page at the other end; it may be closed by then. */
export type Send = (message: string) => void

/**
 * A page of ours for a window of its own. `hear` is called with what the page says, and with what answers it; `mustTalk` where the page
 * is nothing without an answer.
 */
export interface LargePage {
  readonly address: string
  readonly mustTalk: boolean
  readonly hear: (message: string, answer: Send) => void
}

/**
 * Shows a page in a large window: Excel's own where it has one, a window of the browser otherwise. A window that is open already
 * makes room. Gives what sends messages to the page. Throws Problem where neither can be opened.
 */
export async function openLargeWindow(page: LargePage): Promise<Send> {
  const needed = page.mustTalk ? '1.2' : '1.1'
  const send =
    (Office.context.requirements.isSetSupported('DialogApi', needed) ? await openDialog(page) : null) ??
    openOfBrowser(page)
  if (send) return send
  throw new Problem(
    'The large window could not be opened: this program does not let Columnwise open one.',
    'Allow pop-up windows for Columnwise and try again, or use what the pane itself offers.',
  )
}

/** Excel's own window, or null where it has none. Throws Problem where the teacher said no. */
function openDialog(page: LargePage, tries = TRIES): Promise<Send | null> {
  const { address, hear } = page
  open?.close()
  open = null
  return new Promise((resolve, reject) => {
    Office.context.ui.displayDialogAsync(address, { width: 90, height: 90 }, ({ status, value, error }) => {
      if (status !== Office.AsyncResultStatus.Succeeded) {
        if (error.code === REFUSED)
          reject(new Problem('The large window was not opened.', 'Allow it when Excel asks.'))
        else if (error.code === BLOCKED)
          reject(
            new Problem(
              'The browser keeps the large window from opening.',
              'Allow pop-up windows for this page in the browser, then try again.',
            ),
          )
        else if (error.code === STILL_OPEN && tries > 1)
          setTimeout(() => {
            openDialog(page, tries - 1).then(resolve, reject)
          }, PAUSE)
        else resolve(null)
        return
      }
      open = value
      const send = (message: string) => {
        if (open === value && Office.context.requirements.isSetSupported('DialogApi', '1.2'))
          value.messageChild(message)
      }
      value.addEventHandler(Office.EventType.DialogEventReceived, () => {
        if (open === value) open = null
      })
      value.addEventHandler(Office.EventType.DialogMessageReceived, (told) => {
        if ('message' in told) hear(told.message, send)
      })
      resolve(send)
    })
  })
}

/** A window of the browser, or null where it lets none be opened. */
function openOfBrowser({ address, hear }: LargePage): Send | null {
  const page = window.open(address, 'columnwise-large', 'popup,width=1280,height=800')
  if (page === null) return null
  const send = (message: string) => {
    if (!page.closed) page.postMessage(message, location.origin)
  }
  window.addEventListener('message', function listen({ source, origin, data }) {
    if (page.closed) window.removeEventListener('message', listen)
    if (source === page && origin === location.origin) hear(String(data), send)
  })
  return send
}
