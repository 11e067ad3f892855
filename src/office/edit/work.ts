import type { Steps } from '../../marksheet/layout/steps'
import { codeOf, Stopped } from './errors'

/** How long work tells how far it has come, and hears that it is to stop. */
export interface Work {
  readonly signal: AbortSignal
  /** `part` is the share done, from 0 to 1; `words` say what is being done, like "Reading row 4,000". */
  progress(part: number, words: string): void
}

/** Work that nobody watches or stops. */
export const UNWATCHED: Work = { signal: new AbortController().signal, progress: () => undefined }

/** Throws Stopped where the teacher has asked to stop. */
export function stopIfAsked({ signal }: Work): void {
  if (signal.aborted) throw new Stopped()
}

/** How long the pane works at a stretch, in milliseconds, before it lets the screen and the keyboard have their turn. */
const STRETCH = 20

/** The result of a long reckoning, worked out in stretches so that the pane is never blocked. Throws Stopped. */
export async function inTurns<T>(steps: Steps<T>, work: Pick<Work, 'signal'> = UNWATCHED): Promise<T> {
  let start = performance.now()
  for (;;) {
    const step = steps.next()
    if (step.done === true) return step.value
    if (performance.now() - start < STRETCH) continue
    await new Promise((resolve) => setTimeout(resolve, 0))
    if (work.signal.aborted) throw new Stopped()
    start = performance.now()
  }
}

/**
 * How many cells a request reads or writes at most, so that it stays well below the 5 MB that Excel on the web takes (Microsoft Learn,
 * "Performance optimization using the Excel JavaScript API").
 */
export const CELLS_PER_REQUEST = 20_000

/** Something to ask of Excel, and how many cells it is about. */
export interface Part {
  readonly cells: number
  queue(context: Excel.RequestContext): void
  /** Whether Excel's own undo ends with it, as with hiding a sheet, so that it is merged with nothing into one step of that. */
  readonly endsUndo?: boolean
  /** Where it may be left out: called where Excel does not do it. It is asked for after all others, by itself. */
  leftOut?(): void
  /** The same in pieces, where Excel may be unable to read some of what it is about. */
  apart?(): Promise<readonly Piece[]>
}

/** Something to ask of Excel that may be unreadable by itself; `missed` is called where it is. */
export interface Piece extends Part {
  missed(): void
}

/** Parts put together, in their order, as long as they are small enough for one request. */
export function requestsOf(parts: readonly Part[]): Part[][] {
  const requests: Part[][] = []
  let room = 0
  for (const part of parts) {
    if (requests.length === 0 || part.cells > room) {
      requests.push([])
      room = CELLS_PER_REQUEST
    }
    requests.at(-1)?.push(part)
    room -= part.cells
  }
  return requests
}

/** Asks for all parts, in as few requests as can be. What was asked for is loaded when this resolves. */
export async function askAll(parts: readonly Part[], work: Work, words: string): Promise<void> {
  const requests = requestsOf(parts)
  for (const [index, request] of requests.entries()) {
    stopIfAsked(work)
    if (requests.length > 1) work.progress(index / requests.length, words)
    await ask(request)
  }
}

/** The requirement set in which the requests of a run can become one step of Excel's own undo. */
const MERGES_UNDO = '1.20'

/** Requests that were to become one step of Excel's own undo failed; its cause says how. */
export class NotMerged extends Error {
  constructor(cause: unknown) {
    super('The requests could not be merged.', { cause })
    this.name = 'NotMerged'
  }
}

/**
 * Whether this Excel has failed at merging, as it may for reasons that cannot be known beforehand (UndoNotSupported, and issues 6255, 6491
 * and 6711 of office-js). It is not asked to again.
 */
let hasFailed = false

/**
 * Has all parts done that change something, in as few requests as can be, which become one step of Excel's own undo where it has that. What
 * may be left out comes last. Throws NotMerged where merging them failed; asked for again, they are not merged.
 */
export async function writeAll(parts: readonly Part[], work: Work, words: string): Promise<void> {
  const needed = parts.filter(({ leftOut }) => !leftOut)
  const isMerged =
    !hasFailed &&
    requestsOf(needed).length > 1 &&
    !needed.some(({ endsUndo }) => endsUndo) &&
    Office.context.requirements.isSetSupported('ExcelApi', MERGES_UNDO)
  if (isMerged) await writeMerged(requestsOf(needed), work, words)
  else await askAll(needed, work, words)
  await writeIfPossible(parts.filter(({ leftOut }) => leftOut))
}

async function writeIfPossible(parts: readonly Part[]): Promise<void> {
  if (parts.length === 0) return
  await send(parts).catch(async () => {
    for (const part of parts)
      await send([part]).catch(() => {
        part.leftOut?.()
      })
  })
}

async function writeMerged(requests: readonly Part[][], work: Work, words: string): Promise<void> {
  try {
    await Excel.run({ mergeUndoGroup: true }, async (context) => {
      for (const [index, request] of requests.entries()) {
        stopIfAsked(work)
        work.progress(index / requests.length, words)
        await sendIn(context, request)
      }
    })
  } catch (error) {
    if (error instanceof Stopped) throw error
    hasFailed = true
    throw new NotMerged(error)
  }
}

async function ask(request: readonly Part[]): Promise<void> {
  try {
    await send(request)
  } catch (error) {
    if (!isUnreadable(error) || !request.some(({ apart }) => apart)) throw error
    await send(request.filter(({ apart }) => !apart))
    let missed = 0
    for (const part of request) missed += await askApart((await part.apart?.()) ?? [])
    if (missed === 0) throw error
  }
}

/** Asks for pieces by halves, down to those that cannot be read; gives how many these are. */
async function askApart(all: readonly Piece[]): Promise<number> {
  try {
    if (all.length > 0) await send(all)
    return 0
  } catch (error) {
    if (!isUnreadable(error)) throw error
    if (all.length === 1) {
      all[0]?.missed()
      return 1
    }
    const half = Math.ceil(all.length / 2)
    return (await askApart(all.slice(0, half))) + (await askApart(all.slice(half)))
  }
}

/** The codes with which Excel answers where it cannot read a thing that it lists (ItemNotFound: issues 5222 and 6396 of office-js). */
const UNREADABLE: ReadonlySet<string> = new Set([
  'ItemNotFound',
  'InvalidOperation',
  'InvalidArgument',
  'GeneralException',
])
const isUnreadable = (error: unknown) => UNREADABLE.has(codeOf(error))

async function send(request: readonly Part[]): Promise<void> {
  await Excel.run((context) => sendIn(context, request))
}

async function sendIn(context: Excel.RequestContext, request: readonly Part[]): Promise<void> {
  for (const part of request) part.queue(context)
  await context.sync()
}

/** Pieces of at most `size` of the whole numbers from `first` to `last`. */
export function pieces(first: number, last: number, size: number): { first: number; last: number }[] {
  const count = Math.max(0, Math.ceil((last - first + 1) / size))
  return Array.from({ length: count }, (_, index) => ({
    first: first + index * size,
    last: Math.min(last, first + (index + 1) * size - 1),
  }))
}
