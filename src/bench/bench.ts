import { MemoryGrid } from './grid/memoryGrid'
import type { CellValue, Grid } from './grid/grid'
import { cellArea } from './grid/area'
import type { Area } from './grid/area'
import type { FunctionResult } from './customFunctions'
import { readInvocation } from './customFunctions'
import { areaAddress, parseAddress } from './host/address'
import { Book } from './host/book'
import { HostContext } from './host/context'
import { readEntry } from './host/entry'
import { EVENT, Registrations } from './host/events'
import { AddinInternalService } from './host/excel/addinInternalService'
import { AppRuntimeService } from './host/excel/appRuntimeService'
import { CustomFunctionsService } from './host/excel/customFunctionsService'
import { Range } from './host/excel/range'
import { Workbook } from './host/excel/workbook'
import { Worksheet } from './host/excel/worksheet'
import type { ExcelContext } from './host/excelContext'
import type { BareWindow } from './host/officeHost'
import { installOfficeHost } from './host/officeHost'
import { CATEGORY, Transport } from './host/transport'
import type { Stats } from './host/transport'
import { valueType } from './host/values'
import { WireHost } from './host/wireHost'

/** How a bench is set up. */
export interface BenchOptions {
  readonly grid?: Grid
  /** Today, for dates typed without a year. */
  readonly today?: () => Date
  /** The transport the client is bound to, when it has been loaded before. */
  readonly transport?: Transport
}

/** The message type of a custom function's call. */
const INVOKE = 1000
/** How many ranges of past events can still be asked for. */
const REMEMBERED_EVENTS = 200

class SharedContext extends HostContext implements ExcelContext {
  readonly range = (sheetId: string, area: Area) => new Range(this, sheetId, area)
  readonly worksheet = (sheetId: string) => new Worksheet(this, sheetId)
}

/** A workbook in a grid, the host that serves it to office.js, and what a person at the grid does. */
export class Bench {
  readonly grid: Grid
  readonly book = new Book()
  /** The interpreter: faults are injected here (`failAt`, `editing`). */
  readonly host: WireHost
  readonly transport: Transport
  /** The state of the add-in's runtime: whether the add-in has asked for its pane to be shown. */
  readonly runtime = new AppRuntimeService()
  /** Resolves when the add-in's runtime takes calls of custom functions. */
  readonly customFunctionsReady: Promise<void>
  /** Resolves when presses of the ribbon's buttons are handed on; one with which nothing is associated by then is lost. */
  readonly actionsReady: Promise<void>
  readonly #context: SharedContext
  readonly #registrations = new Registrations()
  readonly #eventRanges = new Map<string, Range>()
  readonly #calls = new Map<number, (result: FunctionResult) => void>()
  #next = 1
  #answering = false
  /** The sheet that was last told to be in front. */
  #front: string

  constructor(options: BenchOptions = {}) {
    const { grid = new MemoryGrid(), today = () => new Date(), transport = new Transport() } = options
    this.grid = grid
    this.#front = grid.activeSheet()
    this.transport = transport
    this.#context = new SharedContext(grid, this.book, this.#registrations, today)
    let ready = (): void => undefined
    this.customFunctionsReady = new Promise((resolve) => (ready = resolve))
    const customFunctions = new CustomFunctionsService(ready, (results) => {
      for (const result of results) {
        this.#calls.get(result[0])?.(readInvocation(result))
        this.#calls.delete(result[0])
      }
    })
    let actions = (): void => undefined
    this.actionsReady = new Promise((resolve) => (actions = resolve))
    const services = {
      'Microsoft.ExcelServices.CustomFunctions': customFunctions,
      'Microsoft.InternalService.AddinInternalService': new AddinInternalService(() => {
        actions()
      }),
      'Microsoft.AppRuntime.AppRuntimeService': this.runtime,
    }
    this.host = new WireHost(new Workbook(this.#context, this.#eventRanges), services, {
      calculating: () => grid.calculating(),
      changing: (member) => {
        this.book.undo.changing(member)
      },
      finished: () => {
        grid.flush()
        this.book.undo.requestDone()
      },
    })
    transport.endpoint = {
      book: this.book,
      execute: (body) => {
        this.#answering = true
        return this.host.execute(body)
      },
      replied: () => {
        this.#answering = false
        this.#tellOwnChanges()
      },
    }
    grid.listen({
      editing: (typing) => {
        this.host.editing = typing
      },
      edited: (sheetId, area, before) => {
        this.book.undo.typed()
        this.#tellChange(sheetId, area, 'Unknown', before)
      },
      selected: (sheetId, area) => {
        if (!this.book.tellsSelections) return
        this.#tell(sheetId, EVENT.selectionChanged, () => ({
          type: 'WorksheetSelectionChanged',
          worksheetId: sheetId,
          address: areaAddress(area),
        }))
      },
      activated: (sheetId) => {
        this.#comeToFront(sheetId)
      },
    })
  }

  /** What has passed over the wire so far. */
  get stats(): Stats {
    return this.transport.stats
  }

  /** Makes a window ready for office.js; to be called before it loads. */
  install(window: BareWindow): void {
    installOfficeHost(window, this.transport)
  }

  /** The id of the sheet with that name. */
  sheetId(name: string): string {
    const sheet = this.grid.sheets().find((one) => one.name === name)
    if (!sheet) throw new Error(`The bench's workbook has no sheet called ${name}.`)
    return sheet.id
  }

  /** A person types into cells from `address` on: text is read as typed, and change events are told. */
  userEdit(sheetName: string, address: string, typed: readonly (readonly CellValue[])[]): void {
    const sheetId = this.sheetId(sheetName)
    const { row, col } = parseAddress(address).area
    const cols = typed[0]?.length ?? 0
    const before = this.grid.values(sheetId, cellArea(row, col))[0]?.[0]
    typed.forEach((line, i) => {
      line.forEach((text, j) => {
        const format = this.grid.format(sheetId, row + i, col + j).numberFormat
        const { content, numberFormat } = readEntry(text, format, this.#context.today())
        this.grid.write(sheetId, row + i, col + j, [[content]])
        if (numberFormat !== undefined && format === 'General')
          this.grid.setFormat(sheetId, cellArea(row + i, col + j), { numberFormat })
      })
    })
    this.grid.flush()
    this.book.undo.typed()
    this.#tellChange(sheetId, { row, col, rows: typed.length, cols }, 'Unknown', before)
  }

  /** A person selects cells; the sheet comes to the front. */
  select(sheetName: string, address: string): void {
    this.grid.select(this.sheetId(sheetName), parseAddress(address).area)
  }

  /** Calls a custom function through the add-in's runtime, as Excel does: an event there, results back in a request. */
  callCustomFunction(id: string, args: readonly unknown[], address = 'Sheet1!A1'): Promise<FunctionResult> {
    const call = this.#next++
    return new Promise((resolve) => {
      this.#calls.set(call, resolve)
      const message = JSON.stringify([call, id, args, address, 0])
      this.transport.sendEvents([
        { messageCategory: CATEGORY.customFunctions, messageType: INVOKE, targetId: '', message },
      ])
    })
  }

  /** Tells once that a sheet has come to the front: after the reply, where a request brings it there. */
  #comeToFront(sheetId: string): void {
    if (sheetId === this.#front) return
    if (this.grid.sheets().some(({ id }) => id === this.#front))
      this.#context.sheetEvents.push({ event: 'deactivated', sheetId: this.#front })
    this.#context.sheetEvents.push({ event: 'activated', sheetId })
    this.#front = sheetId
    if (!this.#answering) this.#tellOwnChanges()
  }

  #tell(sheetId: string, event: number, message: () => Readonly<Record<string, unknown>>): void {
    const targets = this.#registrations.targets(sheetId, event)
    if (targets.length === 0) return
    const text = JSON.stringify(message())
    this.transport.sendEvents(
      targets.map((target) => ({
        messageCategory: CATEGORY.document,
        messageType: event,
        targetId: target,
        message: text,
      })),
    )
  }

  #tellChange(sheetId: string, area: Area, triggerSource: string, before?: CellValue): void {
    this.#tell(sheetId, EVENT.changed, () => {
      const after = this.grid.values(sheetId, cellArea(area.row, area.col))[0]?.[0] ?? ''
      const details =
        area.rows * area.cols === 1 && before !== undefined
          ? {
              valueBefore: before,
              valueAfter: after,
              valueTypeBefore: valueType(before),
              valueTypeAfter: valueType(after),
            }
          : {}
      return {
        type: 'WorksheetChanged',
        worksheetId: sheetId,
        address: areaAddress(area),
        referenceId: this.#remember(sheetId, area),
        shiftDirection: 'None',
        changeType: 'RangeEdited',
        source: 'Local',
        triggerSource,
        ...details,
      }
    })
  }

  #tellOwnChanges(): void {
    const { written, sheetEvents } = this.#context
    this.#context.written = []
    this.#context.sheetEvents = []
    const sheets = new Set(this.grid.sheets().map(({ id }) => id))
    for (const { sheetId, area } of written)
      if (sheets.has(sheetId)) this.#tellChange(sheetId, area, 'ThisLocalAddin')
    for (const { event, sheetId } of sheetEvents)
      this.#tell(sheetId, EVENT[event], () => ({
        type: `Worksheet${event.charAt(0).toUpperCase()}${event.slice(1)}`,
        worksheetId: sheetId,
        source: 'Local',
      }))
  }

  #remember(sheetId: string, area: Area): string {
    const reference = `event-${this.#next++}`
    this.#eventRanges.set(reference, new Range(this.#context, sheetId, area))
    const [oldest] = this.#eventRanges.keys()
    if (this.#eventRanges.size > REMEMBERED_EVENTS && oldest !== undefined) this.#eventRanges.delete(oldest)
    return reference
  }
}
