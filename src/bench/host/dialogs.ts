/** The number by which the client library knows the messages of a dialog. */
const MESSAGES = 10
/** What a dialog tells of itself: a message, or that a person has closed it. */
const TOLD = { message: 0, closed: 12006 } as const
/** The failure of the host that the client library reads as "a dialog is open already" (12007). */
const OPEN_ALREADY = -2147467259
/** How long a dialog takes to close, and how often it is looked whether a person has closed it, in milliseconds. */
const CLOSING = 150
const LOOKING = 250

type Teller = (id: number, payload: readonly unknown[]) => void
type Answer = (status: number) => void

/** As much of a browser's window as dialogs need. */
interface Opener extends Pick<Window, 'addEventListener'> {
  open(address: string, name: string, features: string): Window | null
}

/**
 * The Dialog API of a desktop Excel, one window at a time: a window of the browser that takes its time to close. It talks with the pane by the
 * browser's messages, since a host that is none cannot reach into it. What the client library calls is in `natives`.
 */
export class Dialogs {
  #page: Window | null = null
  #isClosing = false

  constructor(private readonly opener: Opener) {}

  readonly natives = {
    RegisterEvent: (id: number, target: string, tell: Teller, answer: Answer): void => {
      if (id !== MESSAGES) throw new TypeError(`The bench host has no event ${id}.`)
      this.#open(JSON.parse(target) as { url: string }, tell)
      answer(0)
    },
    UnregisterEvent: (id: number, _: string, answer: Answer): void => {
      if (id !== MESSAGES) throw new TypeError(`The bench host has no event ${id}.`)
      this.#close()
      answer(0)
    },
    MessageChild2: (text: string): void => {
      const { messageContent } = JSON.parse(text) as { messageContent: string }
      // Posted from here, it would not come from the window that the dialog knows as its opener.
      const { opener, location } = this.#page ?? {}
      this.#page?.dispatchEvent(
        new MessageEvent('message', {
          data: messageContent,
          origin: location?.origin ?? '',
          source: (opener as Window | null | undefined) ?? null,
        }),
      )
    },
  }

  #open({ url }: { readonly url: string }, tell: Teller): void {
    if (this.#isClosing || (this.#page && !this.#page.closed))
      throw Object.assign(new Error('A dialog is open.'), { number: OPEN_ALREADY })
    const page = this.opener.open(url, 'columnwise-dialog', 'popup,width=1280,height=800')
    if (!page) throw new Error('The browser opens no window.')
    this.#page = page
    for (const window of new Set([this.opener, (page.opener as Opener | null | undefined) ?? this.opener]))
      window.addEventListener('message', ({ source, origin, data }) => {
        if (source === page) tell(MESSAGES, [TOLD.message, String(data), origin])
      })
    const looking = setInterval(() => {
      if (page.closed) clearInterval(looking)
      if (page.closed && this.#page === page) {
        this.#page = null
        tell(MESSAGES, [TOLD.closed])
      }
    }, LOOKING)
  }

  #close(): void {
    this.#page?.close()
    this.#page = null
    this.#isClosing = true
    setTimeout(() => {
      this.#isClosing = false
    }, CLOSING)
  }
}

/** The dialogs of a window that can open others. */
export function dialogsOf(window: object): Dialogs | null {
  return 'open' in window && typeof window.open === 'function' ? new Dialogs(window as Opener) : null
}
