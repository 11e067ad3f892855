import { HostError, inCellEditMode } from './errors'
import type { RequestBody } from './wireTypes'
import { ActionKind, PathKind } from './wireTypes'

/** A fault to come. */
export interface Fault {
  /** Which sync from now on fails, 1 being the next; syncs that only let go of kept objects do not count. */
  readonly sync?: number
  /** The error code the add-in gets, such as `GeneralException`. */
  readonly code: string
  readonly message?: string
  /** How many calls and property writes of that sync are done before the fault; loads do not count. Default 0. */
  readonly after?: number
}

const isHousekeeping = (name: string | undefined) => name === '_KeepReference' || name === '_RemoveReference'

/** Requests that the client sends of its own accord: to let go of kept objects, and to its own services. */
const isClientsOwn = ({ Actions, ObjectPaths }: RequestBody): boolean =>
  Object.values(ObjectPaths).some((path) => path.ObjectPathType === PathKind.New) ||
  (Actions.some(({ Name }) => Name === '_RemoveReference') &&
    Actions.every(
      ({ ActionType, Name }) => ActionType === ActionKind.Instantiate || Name === '_RemoveReference',
    ))

/** Whether an action changes something, as far as the wire tells. */
const isStep = (type: number, name: string | undefined): boolean =>
  type === ActionKind.SetProperty ||
  type === ActionKind.Update ||
  (type === ActionKind.Method && !isHousekeeping(name) && name !== '_ValidateArraySize')

/** The faults that a test has asked for. */
export class Faults {
  /** While true every request fails as it does when the user is typing in a cell. */
  editing = false
  readonly #planned: { syncsLeft: number; fault: Fault }[] = []

  plan(fault: Fault): void {
    this.#planned.push({ syncsLeft: fault.sync ?? 1, fault })
  }

  /** Starts a request; the function given back is to be called before each action and throws when its time has come. */
  begin(body: RequestBody): (type: number, name: string | undefined) => void {
    if (isClientsOwn(body)) return () => undefined
    if (this.editing)
      return () => {
        throw inCellEditMode()
      }
    for (const planned of this.#planned) planned.syncsLeft--
    const due = this.#planned.findIndex((planned) => planned.syncsLeft <= 0)
    const fault = due < 0 ? undefined : this.#planned.splice(due, 1)[0]?.fault
    if (!fault) return () => undefined
    const { code, message = 'There was an internal error while processing the request.', after = 0 } = fault
    let done = 0
    return (type, name) => {
      if (done >= after) throw new HostError(code, message, 500)
      if (isStep(type, name)) done++
    }
  }
}
