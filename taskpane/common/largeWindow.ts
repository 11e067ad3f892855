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

/** A page of ours for a window of its own; `message` is handed to it when it asks for one. */
export interface LargePage {
  readonly address: string
  readonly message?: string
}

/**
 * Shows a page in a large window: Excel's own where it has one, a window of the browser otherwise. A window that is open already
 * makes room. Throws Problem where neither can be opened.
 */
export async function openLargeWindow(page: LargePage): Promise<void> {
  const { requirements } = Office.context
  const needed = page.message === undefined ? '1.1' : '1.2'
  if (requirements.isSetSupported('DialogApi', needed) && (await openDialog(page))) return
  if (openOfBrowser(page)) return
  throw new Problem(
    'The large window could not be opened: this program does not let Columnwise open one.',
    'Allow pop-up windows for Columnwise and try again, or use what the pane itself offers.',
  )
}

/** Whether Excel has opened the window. Throws Problem where the teacher said no. */
function openDialog(page: LargePage, tries = TRIES): Promise<boolean> {
  const { address, message } = page
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
        else resolve(false)
        return
      }
      open = value
      value.addEventHandler(Office.EventType.DialogEventReceived, () => {
        if (open === value) open = null
      })
      if (message !== undefined && Office.context.requirements.isSetSupported('DialogApi', '1.2'))
        value.addEventHandler(Office.EventType.DialogMessageReceived, () => {
          value.messageChild(message)
        })
      resolve(true)
    })
  })
}

/** Whether the browser has opened the window. */
function openOfBrowser({ address, message }: LargePage): boolean {
  const page = window.open(address, 'columnwise-large', 'popup,width=1280,height=800')
  if (page === null) return false
  if (message !== undefined)
    window.addEventListener('message', function hand({ source, origin }) {
      if (page.closed) window.removeEventListener('message', hand)
      if (source === page && origin === location.origin) page.postMessage(message, location.origin)
    })
  return true
}
