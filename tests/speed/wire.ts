import type { Bench } from '../../src/bench/bench'
import { ActionKind, type RequestBody } from '../../src/bench/host/wireTypes'
import { startBench } from '../../src/bench/node'
import type { Matrix } from '../../src/marksheet/layout/matrix'

/** Requests over the wire: how many, and the largest of the questions and of the answers, in bytes. */
export interface Traffic {
  requests: number
  largestAsked: number
  largestAnswered: number
}

/** Excel on the web takes and gives 5 MB in a request (Microsoft Learn, "Performance optimization using the Excel JavaScript API"). */
export const REQUEST_LIMIT = 5_000_000

/** A workbook behind the real client library, with one sheet. */
export async function workbookWith({ name, values }: Matrix): Promise<Bench> {
  const bench = await startBench()
  const id = bench.grid.activeSheet()
  bench.grid.renameSheet(id, name)
  fill(bench, id, values)
  return bench
}

/** Adds a sheet and brings it to the front. */
export function addSheet(bench: Bench, { name, values }: Matrix): void {
  const id = bench.grid.addSheet(name)
  fill(bench, id, values)
  bench.grid.activateSheet(id)
}

function fill({ grid }: Bench, id: string, values: Matrix['values']): void {
  grid.write(
    id,
    0,
    0,
    values.map((row) => row.map((value) => value ?? '')),
  )
}

/** What the client asks by itself: to be told of events, and to let go of objects. */
const BY_ITSELF = ['NotifyActionHandlerReady', '_RemoveReference']

/** Counts the add-in's own requests from now on, those left out that the client makes by itself. */
export function trafficOf({ host }: Bench): Traffic {
  const traffic: Traffic = { requests: 0, largestAsked: 0, largestAnswered: 0 }
  const execute = host.execute.bind(host)
  host.execute = async (body: RequestBody) => {
    const reply = await execute(body)
    const isOwn = body.Actions.some(
      ({ ActionType, Name }) => ActionType !== ActionKind.Instantiate && !BY_ITSELF.includes(Name),
    )
    if (isOwn) traffic.requests++
    traffic.largestAsked = Math.max(traffic.largestAsked, JSON.stringify(body).length)
    traffic.largestAnswered = Math.max(traffic.largestAnswered, JSON.stringify(reply).length)
    return reply
  }
  return traffic
}

/** Bytes as megabytes, for people. */
export function megabytes(bytes: number): string {
  return `${(bytes / 1_000_000).toFixed(2)} MB`
}
