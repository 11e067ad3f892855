import type { Book } from './book'
import type { RequestBody, ResponseBody } from './wireTypes'

/** What has passed between the client and the host. */
export interface Stats {
  requests: number
  actions: number
  /** Characters sent by the client. */
  bytesIn: number
  /** Characters sent back. */
  bytesOut: number
}

/** One event for the client. */
export interface EventEntry {
  readonly messageCategory: number
  readonly messageType: number
  readonly targetId: string
  readonly message: string
}

/** The host's side of the transport. */
export interface Endpoint {
  readonly book: Book
  execute(body: RequestBody): Promise<ResponseBody>
  /** Called when a reply has reached the client. */
  replied(): void
}

/** Excel on the web takes and gives 5 MB at most in one request; the bench holds every add-in to that. */
const PAYLOAD_LIMIT = 5 * 1024 * 1024

/** Categories of events on the wire. */
export const CATEGORY = { document: 65536, customFunctions: 1 } as const

const MESSAGE = { response: 2, event: 3 } as const

const tooLarge = (what: 'Request' | 'Response'): ResponseBody => ({
  Results: [],
  Error: {
    Code: `${what}PayloadSizeLimitExceeded`,
    Message: `The ${what.toLowerCase()} payload size has exceeded the limit.`,
    Location: '',
    ActionIndex: 0,
    HttpStatusCode: 413,
  },
})

/**
 * The object that the client finds as `window._richApiNativeBridge` when it loads, and sends its requests through, one
 * after another. The host behind it can be exchanged.
 */
export class Transport {
  /** The client puts its receiver here. */
  onMessageFromHost: (text: string) => void = () => undefined
  endpoint: Endpoint | undefined
  stats: Stats = { requests: 0, actions: 0, bytesIn: 0, bytesOut: 0 }
  #queue: Promise<void> = Promise.resolve()

  /** The client calls this without `this`. */
  readonly sendMessageToHost = (text: string): void => {
    this.#queue = this.#queue.then(() => this.#answer(text))
  }

  sendEvents(entries: readonly EventEntry[]): void {
    if (entries.length > 0)
      this.onMessageFromHost(JSON.stringify({ type: MESSAGE.event, controlId: '', message: { entries } }))
  }

  async #answer(text: string): Promise<void> {
    const { endpoint, stats } = this
    if (!endpoint) return
    const request = JSON.parse(text) as { id: number; message: { body: string | RequestBody } }
    const { body } = request.message
    const wire = typeof body === 'string' ? (JSON.parse(body) as RequestBody) : body
    const response = text.length > PAYLOAD_LIMIT ? tooLarge('Request') : await endpoint.execute(wire)
    const envelope = (reply: ResponseBody) =>
      JSON.stringify({
        id: request.id,
        type: MESSAGE.response,
        message: { statusCode: 200, headers: {}, body: reply },
      })
    let reply = envelope(response)
    if (reply.length > PAYLOAD_LIMIT) reply = envelope(tooLarge('Response'))
    stats.requests++
    stats.actions += wire.Actions.length
    stats.bytesIn += text.length
    stats.bytesOut += reply.length
    this.onMessageFromHost(reply)
    endpoint.replied()
  }
}
