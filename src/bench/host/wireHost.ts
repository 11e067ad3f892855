import { accessDenied, HostError, invalidArgument, notOnBench } from './errors'
import { Faults } from './faults'
import type { Fault } from './faults'
import { HostObject, classOf, findMember } from './hostObject'
import { readMember, runQuery, writeMember } from './query'
import type { Action, ArgumentInfo, RequestBody, ResponseBody, WireError } from './wireTypes'
import { ActionKind, PathKind, camelCase } from './wireTypes'

/** What the interpreter needs besides the objects. */
export interface WireHooks {
  /** Resolves when outstanding calculations are done; undefined when there are none. */
  readonly calculating?: () => Promise<void> | undefined
  /** Called for each member that is set or called to change something, as Class.member, before it is. */
  readonly changing?: (member: string) => void
  /** Called after each request, whether it failed or not. */
  readonly finished?: () => void
}

/** Methods that change nothing in the workbook. */
const READS = /^(?:_|get|is|load|select$|activate$)/

/** Objects found so far while a request is carried out; null is a null object. */
type Found = Map<number, HostObject | null>

/**
 * Carries out the client's requests over plain host objects. It knows the wire, not Excel: a member is found by its
 * public name, and what an object lacks is an error that names it.
 */
export class WireHost {
  /** What the add-in asked for and the bench lacks, as Class.member, with how often. */
  readonly unsupported = new Map<string, number>()
  readonly #faults = new Faults()
  readonly #kept = new Map<string, HostObject>()
  readonly #references = new WeakMap<HostObject, string>()
  #nextReference = 1

  constructor(
    private readonly root: HostObject,
    private readonly services: Readonly<Record<string, HostObject>> = {},
    private readonly hooks: WireHooks = {},
  ) {}

  /** Makes a later sync fail. */
  failAt(fault: Fault): void {
    this.#faults.plan(fault)
  }

  /** Whether the workbook is open for reading only, so that nothing can be changed in it. */
  readOnly = false

  /** Whether the user is typing in a cell, so that every request fails. */
  set editing(editing: boolean) {
    this.#faults.editing = editing
  }

  /** Carries out one request. Actions before a failing one stay done, as in Excel. */
  async execute(body: RequestBody): Promise<ResponseBody> {
    const results: { ActionId: number; Value: unknown }[] = []
    const found: Found = new Map()
    const watch = this.#faults.begin(body)
    let failure: WireError | undefined
    for (const [index, action] of body.Actions.entries()) {
      try {
        watch.before(action.ActionType, action.Name)
        const reads = action.ActionType === ActionKind.Query || action.ActionType === ActionKind.QueryAsJson
        const calculation = reads ? this.hooks.calculating?.() : undefined
        if (calculation) await calculation
        results.push({ ActionId: action.Id, Value: this.#act(action, body, found) ?? null })
        if (index === body.Actions.length - 1) watch.end()
      } catch (error) {
        failure = this.#describe(error, action, index, body, found)
        break
      }
    }
    this.hooks.finished?.()
    return failure ? { Results: results, Error: failure } : { Results: results }
  }

  #describe(error: unknown, action: Action, index: number, body: RequestBody, found: Found): WireError {
    const object = found.get(action.ObjectPathId)
    const where = object ? classOf(object) : (body.ObjectPaths[action.ObjectPathId]?.Name ?? '')
    const location = action.Name ? `${where}.${camelCase(action.Name)}` : where
    const known = error instanceof HostError
    if (!known) console.error('The bench host failed', error)
    if (known && error.code === 'ApiNotFound') {
      const member = /implement (.*)\.$/.exec(error.message)?.[1] ?? location
      this.unsupported.set(member, (this.unsupported.get(member) ?? 0) + 1)
    }
    return {
      Code: known ? error.code : 'GeneralException',
      Message: known
        ? error.message
        : `There was an internal error while processing the request. ${String(error)}`,
      Location: location,
      ActionIndex: index,
      HttpStatusCode: known ? error.status : 500,
    }
  }

  #act(action: Action, body: RequestBody, found: Found): unknown {
    if (action.ActionType === ActionKind.Trace) return null
    const object = this.#resolve(action.ObjectPathId, body, found)
    if (!object) return null
    switch (action.ActionType) {
      case ActionKind.Instantiate:
        return this.#identify(object)
      case ActionKind.Query:
      case ActionKind.QueryAsJson:
        return runQuery(object, action.QueryInfo ?? {}, this.#identify)
      case ActionKind.SetProperty:
        this.#change(object, action.Name)
        writeMember(object, action.Name, this.#arguments(action.ArgumentInfo, body, found)[0])
        return null
      case ActionKind.Update:
        for (const [name, value] of Object.entries(action.ObjectState ?? {})) {
          this.#change(object, name)
          writeMember(object, name, value)
        }
        return null
      case ActionKind.EnsureUnchanged:
        return null
      case ActionKind.Method:
        return this.#invoke(object, action.Name, this.#arguments(action.ArgumentInfo, body, found))
      default:
        throw notOnBench(`the wire's action type ${action.ActionType}`)
    }
  }

  #invoke(object: HostObject, name: string, args: readonly unknown[]): unknown {
    if (name === '_KeepReference') {
      const reference = this.#references.get(object) ?? `ref-${this.#nextReference++}`
      this.#references.set(object, reference)
      this.#kept.set(reference, object)
      return null
    }
    if (name === '_RemoveReference') {
      this.#kept.delete(String(args[0]))
      return null
    }
    const key = camelCase(name)
    if (!READS.test(key)) this.#change(object, key)
    const method: unknown = findMember(object, key)?.value
    if (typeof method !== 'function') throw notOnBench(`${classOf(object)}.${key}`)
    return Reflect.apply(
      method,
      object,
      args.map((arg) => arg ?? undefined),
    )
  }

  #resolve(id: number, body: RequestBody, found: Found): HostObject | null {
    const known = found.get(id)
    if (known !== undefined) return known
    const object = this.#follow(id, body, found)
    found.set(id, object)
    return object
  }

  #follow(id: number, body: RequestBody, found: Found): HostObject | null {
    const path = body.ObjectPaths[id]
    if (!path) throw invalidArgument()
    switch (path.ObjectPathType) {
      case PathKind.Global:
        return this.root
      case PathKind.New: {
        const service = this.services[path.Name]
        if (!service) throw notOnBench(`the service ${path.Name}`)
        return service
      }
      case PathKind.Reference: {
        const kept = this.#kept.get(path.Name)
        if (!kept)
          throw new HostError(
            'InvalidReference',
            'This reference is not valid for the current operation.',
            404,
          )
        return kept
      }
      case PathKind.Null:
        return null
    }
    const parent = this.#resolve(path.ParentObjectPathId ?? 0, body, found)
    if (!parent) return null
    if (path.ObjectPathType === PathKind.Property) return asObject(readMember(parent, path.Name), path.Name)
    const args = this.#arguments(path.ArgumentInfo, body, found)
    const method = path.ObjectPathType === PathKind.Indexer ? 'getItem' : path.Name
    return asObject(this.#invoke(parent, method, args), method)
  }

  #arguments(info: ArgumentInfo | undefined, body: RequestBody, found: Found): unknown[] {
    const ids = info?.ReferencedObjectPathIds
    const resolve = (value: unknown, id: unknown): unknown => {
      if (Array.isArray(id) && Array.isArray(value)) return value.map((part, i) => resolve(part, id[i]))
      return typeof id === 'number' && id > 0 ? this.#resolve(id, body, found) : value
    }
    return (info?.Arguments ?? []).map((value, i) => (ids ? resolve(value, ids[i]) : value))
  }

  #change(object: HostObject, name: string): void {
    if (this.readOnly) throw accessDenied()
    this.hooks.changing?.(`${classOf(object)}.${camelCase(name)}`)
  }

  readonly #identify = (object: HostObject): Record<string, unknown> => {
    const reference = this.#references.get(object)
    return {
      ...(reference !== undefined && this.#kept.has(reference) ? { _ReferenceId: reference } : {}),
      ...(object.wireId !== undefined ? { Id: object.wireId } : {}),
    }
  }
}

function asObject(value: unknown, name: string): HostObject | null {
  if (value === null || value instanceof HostObject) return value
  throw notOnBench(`${name} as an object`)
}
