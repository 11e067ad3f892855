import { Problem } from '../../src/office/edit/errors'

/**
 * Errors of Microsoft's Dialog API (Microsoft Learn, "Handle errors and events in the Office dialog box"): the window before is still
 * open, since closing takes its time; the person at the screen said no; the browser keeps windows from opening.
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
 * Shows a page in a large window: Excel's own, or a window of the browser where Excel has none. A window that is open already makes room.
 * Gives what sends messages to the page. Throws Problem where it is not opened.
 */
export async function openLargeWindow(page: LargePage): Promise<Send> {
  if (!hasDialogs('1.1')) return openOfBrowser(page)
  if (page.mustTalk && !hasDialogs('1.2'))
    throw new Problem('This version of Excel cannot show it in a large window.', INSTEAD)
  return openDialog(page)
}

function hasDialogs(version: string): boolean {
  return Office.context.requirements.isSetSupported('DialogApi', version)
}

const INSTEAD = 'Use what the pane itself offers, or Excel on the web.'

/** What the codes of the Dialog API mean to a teacher; others mean that Excel could not open the window. */
const WORDS: Readonly<Record<number, readonly [sentence: string, next: string]>> = {
  [STILL_OPEN]: ['Another large window of Columnwise is still open.', 'Close it, then try again.'],
  [REFUSED]: ['The large window was not opened.', 'Allow it when Excel asks.'],
  [BLOCKED]: [
    'The browser keeps the large window from opening.',
    'Allow pop-up windows for this page in the browser, then try again.',
  ],
}

function openDialog(page: LargePage, tries = TRIES): Promise<Send> {
  const { address, hear } = page
  open?.close()
  open = null
  return new Promise((resolve, reject) => {
    Office.context.ui.displayDialogAsync(address, { width: 90, height: 90 }, ({ status, value, error }) => {
      if (status !== Office.AsyncResultStatus.Succeeded) {
        if (error.code === STILL_OPEN && tries > 1)
          setTimeout(() => {
            openDialog(page, tries - 1).then(resolve, reject)
          }, PAUSE)
        else reject(new Problem(...(WORDS[error.code] ?? ['Excel did not open the large window.', INSTEAD])))
        return
      }
      open = value
      const send = (message: string) => {
        if (open === value && hasDialogs('1.2')) value.messageChild(message)
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

function openOfBrowser({ address, hear }: LargePage): Send {
  const page = window.open(address, 'columnwise-large', 'popup,width=1280,height=800')
  if (page === null)
    throw new Problem(
      'The large window could not be opened.',
      'Allow pop-up windows for Columnwise and try again.',
    )
  const send = (message: string) => {
    if (!page.closed) page.postMessage(message, location.origin)
  }
  window.addEventListener('message', function listen({ source, origin, data }) {
    if (page.closed) window.removeEventListener('message', listen)
    if (source === page && origin === location.origin) hear(String(data), send)
  })
  return send
}
